"""The one error the engine raises: a pack whose parts do not fit together."""


class PackError(ValueError):
    """A pack, region or model that cannot be reasoned with; the message names the part and the reason."""
