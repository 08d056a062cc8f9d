"""Reads written rows of a stitch pattern and lays each row onto the one below."""
