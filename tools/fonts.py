"""Make the subset fonts that ship with the package, and the table of their advances.

Run by hand when the choice of characters changes:
    npm pack @fontsource/stix-two-text@5.3.0 @fontsource/stix-two-math@5.3.0   (unpack both)
    python tools/fonts.py FOLDER_WITH_THE_WOFF2_FILES

Needs fonttools and brotli. The sources are under the SIL Open Font License; the subsets carry names of their own, so
that they are never taken for the complete fonts.
"""

from __future__ import annotations

import json
import sys
from io import BytesIO
from pathlib import Path

from fontTools.merge import Merger
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

TARGET = Path(__file__).parent.parent / "src" / "unpin" / "draw" / "fonts"
TEXT, MATH = "Unpin Text", "Unpin Math"
STYLES = {
    "text": ("400", "normal", "Regular"),
    "text-italic": ("400", "italic", "Italic"),
    "text-bold": ("700", "normal", "Bold"),
}

LATIN = [*range(0x20, 0x7F), *range(0xA0, 0x180)]
GREEK = [*range(0x386, 0x3CF), 0x3D1, 0x3D5, 0x3F5]
MARKS = [*range(0x2009, 0x200C), *range(0x2010, 0x2028), 0x202F, 0x2030, *range(0x2032, 0x2038), 0x20AC, 0x2122]
SIGNS = [
    *range(0x2190, 0x219A),
    0x21B6,
    0x21B7,
    0x21BA,
    0x21BB,
    0x21D2,
    0x21D4,
    *range(0x2200, 0x2300),
    0x25A1,
    0x25B3,
    0x25CB,
    0x2713,
]
FEW_SIGNS = [ord(c) for c in "−∓∕∆←↑→↓↔↕↶↷↺↻∑√∞∠∥∟≈≠≤≥⋅⊥△✓"]
LETTERS = [*range(0x1D400, 0x1D468), *range(0x1D6A4, 0x1D6E2), *range(0x1D6FC, 0x1D71C), *range(0x1D7CE, 0x1D7D8), 0x210E]
MATHS = [
    *range(0x302, 0x30F),
    *range(0x2061, 0x2065),
    *range(0x2070, 0x2090),
    *range(0x27E8, 0x27EA),
    *range(0x2308, 0x230C),
    *range(0x239B, 0x23AE),
]


def subset(font: TTFont, characters: list[int], keep: tuple[str, ...] = ()) -> TTFont:
    options = Options()
    options.layout_features = ["ssty", "rtlm"] if keep else []
    options.drop_tables += [t for t in ("GSUB", "GPOS", "GDEF", "STAT", "DSIG") if t not in keep]
    options.hinting = False
    options.name_IDs = ["*"]
    options.notdef_outline = True
    work = Subsetter(options)
    work.populate(unicodes=characters)
    work.subset(font)
    return font


def rename(font: TTFont, family: str, style: str) -> None:
    full = family if style == "Regular" else f"{family} {style}"
    kept = {n.nameID: str(n) for n in font["name"].names if n.nameID in (0, 13, 14)}
    names = {**kept, 1: family, 2: style, 3: full.replace(" ", "-"), 4: full, 5: "Version 1.000", 6: full.replace(" ", "-")}
    font["name"].names = []
    for number, text in sorted(names.items()):
        font["name"].setName(text, number, 3, 1, 0x409)


def save(font: TTFont, name: str) -> None:
    font["head"].created = font["head"].modified = 3_400_000_000  # any fixed moment: the same bytes each time
    font.recalcTimestamp = False
    font.flavor = None
    font.save(TARGET / f"{name}.ttf")
    font.flavor = "woff2"
    font.save(TARGET / f"{name}.woff2")


def text_font(source: Path, name: str) -> TTFont:
    weight, slant, style = STYLES[name]
    taken: set[int] = set()
    pieces = []
    mathematical = next(source.rglob("stix-two-math-latin-400-normal.woff2"))
    files = [next(source.rglob(f"stix-two-text-{s}-{weight}-{slant}.woff2")) for s in ("latin", "latin-ext", "greek")]
    for path in (*files, mathematical):
        font = TTFont(path)
        wanted = [c for c in (LATIN + GREEK + MARKS + FEW_SIGNS) if c in font.getBestCmap() and c not in taken]
        taken.update(wanted)
        font.flavor = None
        whole = BytesIO()
        font = subset(font, wanted)
        for table in ("prep", "gasp", "fpgm", "cvt ", "MATH"):
            if table in font:
                del font[table]
        font.save(whole)
        whole.seek(0)
        pieces.append(whole)
    font = Merger().merge(pieces)
    first = TTFont(files[0])
    for table in ("hhea", "OS/2"):
        for field in (
            "ascent",
            "descent",
            "lineGap",
            "sTypoAscender",
            "sTypoDescender",
            "sTypoLineGap",
            "usWinAscent",
            "usWinDescent",
        ):
            if hasattr(first[table], field):
                setattr(font[table], field, getattr(first[table], field))
    rename(font, TEXT, style)
    return font


def main() -> None:
    source = Path(sys.argv[1])
    advances = {}
    for name in STYLES:
        font = text_font(source, name)
        save(font, name)
        cmap, widths = font.getBestCmap(), font["hmtx"]
        advances[name] = {chr(c): widths[g][0] for c, g in sorted(cmap.items())}
    font = TTFont(next(source.rglob("stix-two-math-latin-400-normal.woff2")))
    font = subset(font, LATIN + GREEK + MARKS + SIGNS + LETTERS + MATHS, keep=("GSUB", "GDEF"))
    rename(font, MATH, "Regular")
    save(font, "math")
    (TARGET / "advances.json").write_text(
        json.dumps(advances, ensure_ascii=False, separators=(",", ":"), sort_keys=True) + "\n", "utf-8"
    )
    licence = next(source.rglob("LICENSE")).read_text("utf-8")
    (TARGET / "OFL.txt").write_text(licence, "utf-8")


if __name__ == "__main__":
    main()
