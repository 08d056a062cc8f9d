"""What each page of the window decides: typed text in, shown text out. No tkinter."""
