"""What is asked of a program that tells what it shows."""

LOOK, THOROUGHLY = b"?", b"!"
"""What is shown, and also whether it is true."""
