"""A garment of several pieces: measures by formula, shaped pieces, what is joined to what, in all its sizes."""
