"""The page of pieces as it is shown."""
