"""What a gauge is worth: how sure it is and what would help, what it is like, which hook gives it."""
