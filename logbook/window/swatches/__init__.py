"""The page of swatches as it is shown."""
