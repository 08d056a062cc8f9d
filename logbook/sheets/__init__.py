"""Workbooks and CSV: the one table of columns, reading with limits, writing."""
