"""What swatches tell: washing, hanging, drift, comparison, nearest gauge, which hook."""
