"""A piece from its gauges: chain, length, marks, fit, shaping, yarn, and its drawing."""
