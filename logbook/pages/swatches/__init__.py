"""The page of swatches: finding them, the form of the one in hand, and its starting chain."""
