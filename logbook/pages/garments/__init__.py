"""What the garments on the page of pieces decide: typed text in, shown text out."""
