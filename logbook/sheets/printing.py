"""What stands at the head of a printed sheet."""


def in_margin(text: str) -> str:
    """Text for the head of a page, where an ampersand begins a command and 255 characters are the most."""
    plain = " ".join(text.split())
    return (plain if len(plain) <= 80 else plain[:79] + "…").replace("&", "&&")
