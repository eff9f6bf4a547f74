"""Draw the figures of every example into a folder, as SVG and PNG, for looking at.

python tools/figures.py FOLDER [EXAMPLE.yaml ...]
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent


def figures_of(problem):
    """(name, figure) of everything that can be drawn of a problem."""
    from unpin.draw import figure
    from unpin.statics.assemble import assemble
    from unpin.statics.inspect import inspect
    from unpin.statics.isolate import isolate

    sys.path.insert(0, str(ROOT / "tests" / "draw"))
    from frames import LETTERING

    plain, seen = assemble(problem), inspect(problem)
    yield "problem", figure.problem_figure(plain, LETTERING)
    if hasattr(figure, "apart_figure"):
        yield "apart", figure.apart_figure(seen, LETTERING)
        names = [b.name for b in seen.bodies]
        yield "free whole", figure.free_body_figure(isolate(seen, names), seen, LETTERING, centre=problem.points[0].name)
        for name in names:
            yield f"free {name}", figure.free_body_figure(isolate(seen, [name]), seen, LETTERING)
        values = {}
        try:
            from unpin.statics.solve import solve

            values = solve(seen)
        except (ValueError, ZeroDivisionError) as fault:  # a picture of the rest is still wanted
            print("no values:", fault)
        if values:
            yield "final", figure.final_figure(seen, LETTERING, values)


def main() -> None:
    import typst

    from unpin.draw import fonts, svg
    from unpin.draw.figure import draw
    from unpin.draw.meter import meter

    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    sys.path.insert(0, str(ROOT / "tests" / "draw"))
    if len(sys.argv) > 2 and not sys.argv[2].endswith(".yaml"):
        from frames import ALL

        problems = {n: ALL[n]() for n in sys.argv[2:]}
    else:
        from unpin.read.reader import read_text

        files = [Path(f) for f in sys.argv[2:]] or sorted((ROOT / "examples").glob("*.yaml"))
        problems = {}
        for f in files:
            reading = read_text(f.read_text("utf-8"))
            problem = getattr(reading, "problem", reading)
            if problem is not None:
                problems[f.stem] = problem
    for stem, problem in problems.items():
        cells, faults = [], []
        for name, figure in figures_of(problem):
            scene = draw(figure)
            target = folder / f"{stem} {name}.svg".replace(" ", "_")
            target.write_text(svg.write(scene, fonts="name"), "utf-8")
            faults += [f"{stem} {name}: {fault}" for fault in meter(scene)]
            cells.append(f'box(stroke: 0.2pt + luma(80%), inset: 3pt)[#text(6pt)[{name}]\\ #image("{target.name}")]')
        page = '#set page(width: 1000pt, height: auto, margin: 8pt)\n#set text(font: "Unpin Text")\n' + "\n#h(4pt)\n".join(
            "#" + c for c in cells
        )
        source = folder / f"{stem}.typ"
        source.write_text(page, "utf-8")
        typst.compile(
            str(source),
            output=str(folder / f"{stem}.png"),
            format="png",
            ppi=110,
            font_paths=[str(fonts.opentype_folder())],
            ignore_system_fonts=True,
        )
        print(stem, len(cells), "figures", *faults, sep="\n  ")


if __name__ == "__main__":
    main()
