"""What is asked of a program that tells what it shows."""

LOOK, LATER, THOROUGHLY = b"?", b".", b"!"
"""What is shown; what is shown a moment later; what is shown, and whether it is true."""
