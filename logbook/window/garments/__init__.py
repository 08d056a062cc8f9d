"""The garments on the page of pieces, shown."""
