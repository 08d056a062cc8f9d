"""What each page shows: tkinter, thin."""
