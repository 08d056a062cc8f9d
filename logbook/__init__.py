"""The swatch and gauge logbook: from crocheted swatches to garments that come out the size they should."""

__version__ = "0.1.0"
