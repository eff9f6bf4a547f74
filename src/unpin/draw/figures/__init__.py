"""One file a figure: from a structure or free body to the items it shows."""
