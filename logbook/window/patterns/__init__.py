"""The page of stitch patterns."""
