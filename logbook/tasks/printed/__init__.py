"""Pages to print, as HTML that a browser shows: tags, a piece, a run of sizes."""
