"""Proofreading of a finished pattern: its numbers found, told by kind, and held against the numbers that are known."""
