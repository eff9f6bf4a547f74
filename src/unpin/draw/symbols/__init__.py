"""One file a symbol: its marks, the room it takes, where it may be grabbed, and the code of its spoken description."""
