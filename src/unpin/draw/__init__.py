"""Drawings: what to show (`figure`), marks at their places (`scene`), and SVG text (`svg`).

Read in this order: `items` (a figure before it has a place), `figures/` (one file a figure), `compose` and `layout` (from
items to marks), `symbols/` (one file a symbol), `arrows`, `dimensions`, `angles` (where things stand), `field` and `place` (labels),
`svg` and `theme` (how they look), `meter` (what a legible drawing is). The room knows no sentence and solves nothing: text
comes in through `lettering`, values through the model.
"""
