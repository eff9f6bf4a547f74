"""The formula tree in four dress: Unicode text, MathML Core, Typst mathematics, and words for a voice.

One module each, none knows another; each has one function `write(formula) -> str`.
"""
