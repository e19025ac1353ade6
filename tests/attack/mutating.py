"""Inputs nobody meant: a good one with a few of the changes that break parsers. The same dice give the same inputs."""

AWKWARD = (
    *(
        b"",
        b"\x00",
        b"\xff\xfe",
        b"\xed\xa0\x80",
        b"\xc0\xaf",
        b"\r\n",
        b"\n",
        b"\t",
        b" ",
        b"\xe2\x80\xae",
        b"\xef\xbb\xbf",
    ),
    *(b"%", b"%00", b"%ff", b"%zz", b"&", b"=", b";", b"+", b"#", b"?", b"/", b"..", b"\\", b"'", b'"', b"<", b">"),
    *(b"0", b"-1", b"1e999", b"NaN", b"Infinity", b"9" * 40, b"0x10", b"1_000", b"\xd9\xa3", b"\xc2\xb2", b"-0", b".5"),
    *(b"{", b"}", b"[", b"]", b": ", b"- ", b"&a", b"*a", b"!!python/object", b"<<: ", b"|", b"---", b"~", b"null"),
    *(
        b"true",
        b"yes",
        b"2031-13-45",
        b"q=",
        b",",
        b"*",
        b"--boundary",
        b"\x1b[0m",
        b"{{",
        b"%s",
        b"__proto__",
        b"a" * 700,
    ),
)
CHANGES = (1, 1, 1, 2, 3, 6)
LONGEST = 200_000


def mutated(dice, good):
    """`good`, changed a few times; now and then as it is, or nothing but noise."""
    chance = dice.random()
    if chance < 0.02:
        return good
    if chance < 0.06:
        return dice.randbytes(dice.randrange(200))
    for _ in range(dice.choice(CHANGES)):
        good = _changed(dice, good)[:LONGEST]
    return good


def _changed(dice, good):
    at = dice.randrange(len(good) + 1)
    to = min(len(good), at + dice.choice((1, 1, 2, 4, 16, 64)))
    match dice.randrange(8):
        case 0:
            return good[:at] + dice.choice(AWKWARD) + good[at:]
        case 1:
            return good[:at] + dice.choice(AWKWARD) + good[to:]
        case 2:
            return good[:at] + good[to:]
        case 3:
            return good[:at] + good[at:to] * dice.choice((2, 3, 40)) + good[to:]
        case 4:
            return good[:at]
        case 5:
            return good[:at] + dice.randbytes(to - at) + good[to:]
        case 6:
            other = dice.randrange(len(good) + 1)
            return good[:at] + good[other : other + to - at] + good[at:]
        case _:
            return good[:at] + bytes(byte ^ 1 << dice.randrange(8) for byte in good[at:to]) + good[to:]
