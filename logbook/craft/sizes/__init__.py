"""The sizes a garment is written for, what is printed of them, and what was published."""
