"""What the page of stitch patterns decides."""
