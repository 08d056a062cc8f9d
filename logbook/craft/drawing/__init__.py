"""Shapes that canvas and SVG both show."""
