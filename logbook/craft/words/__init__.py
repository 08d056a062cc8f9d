"""Words and units: numbers, lengths, hooks and terms as people write them."""
