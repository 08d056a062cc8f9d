"""What a gauge is worth, as it is shown: on the page of swatches and in dialogs one key from it."""
