"""The arithmetic of the trade and the records it works on. Pure: no file, clock, locale, window.

Its rooms, each importing only those before it:

    words      numbers, lengths, hooks and terms as people write them; numbers of all sizes in one line
    drawing    shapes that canvas and SVG both show
    swatches   a swatch with its yarn, stitch pattern and readings, and the gauge that they give
    gauges     what swatches tell: washing, hanging, drift, comparison, nearest gauge, which hook
    rows       written rows, read and laid onto each other
    pieces     a piece from its gauges: chain, length, marks, fit, shaping, yarn, and its drawing
    sizes      the sizes a garment is written for, the lines of its pattern, and what was published
    garments   several pieces together: measures by formula, shapes, joins, yarn
    proofreading  a finished text held against the numbers
"""
