"""A swatch with its yarn, stitch pattern and readings, and the gauge that they give."""
