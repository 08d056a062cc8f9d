"""The written pattern of a garment: its parts, as text and as a page to print."""
