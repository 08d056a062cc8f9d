"""What is wrong with sample_data/faulty.csv: the row as a spreadsheet shows it (the heading is 1), and the column."""

FAULTS: list[tuple[int, str]] = [
    (1, "shelf"),  # a column the log does not have
    (4, "stitches as worked"),  # "a dozen sts or so"
    (5, "stitches washed"),  # a reading of rows
    (6, "hook mm"),  # 0
    (8, "date"),  # 31 February
    (9, "yarn class"),  # 9
    (10, "tag"),  # the tag of row 3
    (11, "multiple"),  # 0
    (12, "plus"),  # "one more"
    (14, "extra chains"),  # 4, but first stitch in chain 8 and 4 chains covered make 3
    (15, "ball grams"),  # 100, and 50 in row 2
    (16, "terms"),  # "Australian"
    (17, "swatch grams"),  # less than nothing
    (19, "yarn"),  # only a colour and a note: nothing says what it was worked of, with which hook, or how wide it came out
    (19, "hook mm"),
    (19, "stitches as worked"),
    (21, "uid"),  # the uid of row 20
    (22, "worked"),  # "sideways", neither flat nor round
    (23, "rows in repeat"),  # 4, and 2 for the shell stitch of row 3
    (24, "hung grams"),  # "two pegs"
    (25, "strands"),  # 1.5
    (26, "rows washed"),  # a length of 0 cm
]
