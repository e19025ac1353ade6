"""What tests ask of a drawing: where a shape is, which there are of a kind, and whether all stay inside."""


def at(shape, name):
    return float(dict(shape.at)[name])


def only(drawing, kind):
    return [shape for shape in drawing.shapes if kind in shape.kind.split()]


def inside(drawing):
    for shape in drawing.shapes:
        across = [float(value) for name, value in shape.at if name in ("x", "x1", "x2", "cx")]
        down = [float(value) for name, value in shape.at if name in ("y", "y1", "y2", "cy")]
        if any(not 0 <= x <= drawing.width for x in across) or any(not 0 <= y <= drawing.height for y in down):
            return False
    return True
