/* A QR code (ISO/IEC 18004) of an address as an SVG, drawn on the phone: bytes, level L, the smallest version that holds
   it. `tests/browser/test_qr_code.py` reads the codes back with an independent decoder. */

/** @typedef {boolean | undefined} Module whether it is dark; undefined where a bit goes */

/* By version, at level L: error correction bytes of a block, and blocks. */
// biome-ignore format: a table
const CORRECTION = [
  7, 10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22, 24, 28, 30, 28, 28, 28, 28, 30, 30, 26, 28,
  ...Array(14).fill(30),
];
const BLOCKS = [
  1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4, 6, 6, 6, 6, 7, 8, 8, 9, 9, 10, 12, 12, 12, 13, 14, 15, 16, 17, 18, 19, 19,
  20, 21, 22, 24, 25,
];
const LEVEL_L = 1;
const QUIET = 4;
/** @type {((x: number, y: number) => number)[]} */
const MASKS = [
  (x, y) => (x + y) % 2,
  (x, y) => y % 2,
  (x) => x % 3,
  (x, y) => (x + y) % 3,
  (x, y) => (Math.floor(x / 3) + Math.floor(y / 2)) % 2,
  (x, y) => ((x * y) % 2) + ((x * y) % 3),
  (x, y) => (((x * y) % 2) + ((x * y) % 3)) % 2,
  (x, y) => (((x + y) % 2) + ((x * y) % 3)) % 2,
];

/** The code, or null where the text is longer than any code holds. @param {string} text */
export function drawCode(text) {
  const modules = codeOf(text);
  if (!modules) return null;
  const size = modules.length + 2 * QUIET;
  const path = modules.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : "")));
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  /** @param {string} name @param {Object<string, string>} attributes */
  const part = (name, attributes) => {
    const shape = document.createElementNS(svg.namespaceURI, name);
    for (const [key, value] of Object.entries(attributes)) shape.setAttribute(key, value);
    svg.append(shape);
  };
  for (const [key, value] of Object.entries({
    viewBox: `0 0 ${size} ${size}`,
    class: "qr",
    "shape-rendering": "crispEdges",
  })) {
    svg.setAttribute(key, value);
  }
  part("path", { fill: "#fff", d: `M0 0h${size}v${size}H0z` });
  part("path", { fill: "#000", d: path.join("") });
  return svg;
}

/** Rows of modules, true where dark; null where the text is too long.
 * @param {string} text @returns {Module[][] | null} */
export function codeOf(text) {
  const bytes = new TextEncoder().encode(text);
  const version = versionFor(bytes.length);
  if (!version) return null;
  const bits = placed(version, interleaved(version, dataBytes(version, bytes)));
  const masked = MASKS.map((mask, number) => finished(version, bits, mask, number));
  return masked.reduce((best, other) => (penalty(other) < penalty(best) ? other : best));
}

/** @param {number} version */
function rawBytes(version) {
  const aligned = version > 1 ? Math.floor(version / 7) + 2 : 0;
  const patterns = aligned ? (25 * aligned - 10) * aligned - 55 + (version > 6 ? 36 : 0) : 0;
  return Math.floor(((16 * version + 128) * version + 64 - patterns) / 8);
}

/** @param {number} version */
const room = (version) => rawBytes(version) - CORRECTION[version - 1] * BLOCKS[version - 1];
/** @param {number} version */
const countBits = (version) => (version < 10 ? 8 : 16);

/** @param {number} length */
function versionFor(length) {
  for (let version = 1; version <= 40; version++) {
    if (4 + countBits(version) + 8 * length <= 8 * room(version)) return version;
  }
  return 0;
}

/** @param {number} version @param {Uint8Array} bytes */
function dataBytes(version, bytes) {
  /** @type {number[]} */
  const bits = [];
  /** @param {number} value @param {number} count */
  const push = (value, count) => {
    for (let at = count - 1; at >= 0; at--) bits.push((value >>> at) & 1);
  };
  push(4, 4);
  push(bytes.length, countBits(version));
  bytes.forEach((byte) => push(byte, 8));
  const whole = 8 * room(version);
  push(0, Math.min(4, whole - bits.length));
  push(0, -bits.length & 7);
  for (let pad = 0xec; bits.length < whole; pad ^= 0xec ^ 0x11) push(pad, 8);
  return Array.from({ length: whole / 8 }, (_none, at) =>
    bits.slice(8 * at, 8 * at + 8).reduce((sum, bit) => 2 * sum + bit, 0),
  );
}

/** Product in the field of 256 elements with x^8 + x^4 + x^3 + x^2 + 1. @param {number} one @param {number} other */
function times(one, other) {
  let product = 0;
  for (let at = 7; at >= 0; at--) {
    product = (product << 1) ^ ((product >>> 7) * 0x11d);
    product ^= ((other >>> at) & 1) * one;
  }
  return product;
}

/** @param {number} degree */
function generator(degree) {
  const factors = [...Array(degree - 1).fill(0), 1];
  for (let step = 0, root = 1; step < degree; step++, root = times(root, 2)) {
    for (let at = 0; at < degree; at++) factors[at] = times(factors[at], root) ^ (factors[at + 1] ?? 0);
  }
  return factors;
}

/** @param {number[]} block @param {number[]} divisor */
function corrections(block, divisor) {
  const rest = divisor.map(() => 0);
  for (const byte of block) {
    const factor = byte ^ rest.shift();
    rest.push(0);
    divisor.forEach((worth, at) => (rest[at] ^= times(worth, factor)));
  }
  return rest;
}

/** @param {number} version @param {number[]} bytes */
function interleaved(version, bytes) {
  const count = BLOCKS[version - 1];
  const length = Math.floor(bytes.length / count);
  const divisor = generator(CORRECTION[version - 1]);
  let from = 0;
  const blocks = Array.from({ length: count }, (_none, at) => {
    const block = bytes.slice(from, (from += length + (at >= count - (bytes.length % count) ? 1 : 0)));
    return [block, corrections(block, divisor)];
  });
  return [0, 1]
    .flatMap((kind) => {
      const longest = Math.max(...blocks.map((pair) => pair[kind].length));
      return Array.from({ length: longest }, (_none, at) => blocks.map((pair) => pair[kind][at])).flat();
    })
    .filter((byte) => byte !== undefined);
}

/** @param {number} version @returns {number[]} */
function alignments(version) {
  if (version === 1) return [];
  const count = Math.floor(version / 7) + 2;
  const step = version === 32 ? 26 : 2 * Math.ceil((4 * version + 4) / (2 * count - 2));
  const rest = Array.from({ length: count - 1 }, (_none, at) => 4 * version + 10 - step * at);
  return [6, ...rest.reverse()];
}

/** The patterns that are alike in every code of a version; undefined where bits go.
 * @param {number} version @returns {Module[][]} */
function frame(version) {
  const size = 17 + 4 * version;
  /** @type {Module[][]} */
  const rows = Array.from({ length: size }, () => Array(size));
  /** @param {number} x @param {number} y @param {number} reach @param {(ring: number) => boolean} isDark */
  const square = (x, y, reach, isDark) => {
    for (let dy = -reach; dy <= reach; dy++) {
      for (let dx = -reach; dx <= reach; dx++) {
        if (rows[y + dy] && x + dx >= 0 && x + dx < size)
          rows[y + dy][x + dx] = isDark(Math.max(Math.abs(dx), Math.abs(dy)));
      }
    }
  };
  for (let at = 0; at < size; at++) rows[6][at] = rows[at][6] = at % 2 === 0;
  const places = alignments(version);
  const last = places.length - 1;
  places.forEach((x, i) =>
    places.forEach((y, j) => {
      if (!((i === 0 && (j === 0 || j === last)) || (i === last && j === 0))) square(x, y, 2, (ring) => ring !== 1);
    }),
  );
  for (const [x, y] of [
    [3, 3],
    [size - 4, 3],
    [3, size - 4],
  ])
    square(x, y, 4, (ring) => ring !== 2 && ring !== 4);
  markFormat(rows, 0);
  if (version > 6) markVersion(rows, version);
  return rows;
}

/** @param {number} value @param {number} divisor @param {number} length */
function remainder(value, divisor, length) {
  let rest = value;
  for (let step = 0; step < length; step++) rest = (rest << 1) ^ ((rest >>> (length - 1)) * divisor);
  return (value << length) | rest;
}

/** Level and mask, twice. @param {Module[][]} rows @param {number} mask */
function markFormat(rows, mask) {
  const size = rows.length;
  const bits = remainder((LEVEL_L << 3) | mask, 0x537, 10) ^ 0x5412;
  /** @param {number} at */
  const bit = (at) => ((bits >>> at) & 1) === 1;
  for (let at = 0; at < 15; at++) {
    rows[at < 6 ? at : at < 8 ? at + 1 : size - 15 + at][8] = bit(at);
    rows[8][at < 8 ? size - 1 - at : at < 9 ? 7 : 14 - at] = bit(at);
  }
  rows[size - 8][8] = true;
}

/** @param {Module[][]} rows @param {number} version */
function markVersion(rows, version) {
  const bits = remainder(version, 0x1f25, 12);
  for (let at = 0; at < 18; at++) {
    const [far, near] = [rows.length - 11 + (at % 3), Math.floor(at / 3)];
    rows[near][far] = rows[far][near] = ((bits >>> at) & 1) === 1;
  }
}

/** Where each bit goes: two columns at a time from the right, up and down in turn.
 * @param {number} version @param {number[]} bytes */
function placed(version, bytes) {
  const rows = frame(version);
  const size = rows.length;
  /** @type {[x: number, y: number, dark: boolean][]} */
  const bits = [];
  for (let right = size - 1, up = true; right > 0; right -= right === 8 ? 3 : 2, up = !up) {
    for (let step = 0; step < size; step++) {
      const y = up ? size - 1 - step : step;
      for (const x of [right, right - 1]) {
        if (rows[y][x] !== undefined) continue;
        const at = bits.length;
        bits.push([x, y, at < 8 * bytes.length && ((bytes[at >>> 3] >>> (7 - (at & 7))) & 1) === 1]);
      }
    }
  }
  return bits;
}

/** @param {number} version @param {[x: number, y: number, dark: boolean][]} bits
 * @param {(x: number, y: number) => number} mask @param {number} number of the mask */
function finished(version, bits, mask, number) {
  const rows = frame(version);
  markFormat(rows, number);
  for (const [x, y, dark] of bits) rows[y][x] = dark !== (mask(x, y) === 0);
  return rows;
}

/** How hard a code is to read, as the standard scores it. @param {Module[][]} rows */
function penalty(rows) {
  const size = rows.length;
  const columns = rows.map((_row, x) => rows.map((row) => row[x]));
  let score = 0;
  let dark = 0;
  for (const line of [...rows, ...columns]) {
    const text = line.map(Number).join("");
    for (const run of text.match(/0{5,}|1{5,}/g) ?? []) score += run.length - 2;
    for (let at = text.indexOf("1011101"); at >= 0; at = text.indexOf("1011101", at + 1)) {
      if (/0000$/.test(text.slice(Math.max(0, at - 4), at)) || /^0000/.test(text.slice(at + 7, at + 11))) score += 40;
    }
  }
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      dark += Number(rows[y][x]);
      const same =
        x && y && rows[y][x] === rows[y - 1][x] && rows[y][x] === rows[y][x - 1] && rows[y][x] === rows[y - 1][x - 1];
      if (same) score += 3;
    }
  }
  return score + 10 * Math.floor(Math.abs((20 * dark) / size ** 2 - 10));
}
