"""What the page of pieces decides."""
