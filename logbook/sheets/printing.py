"""What stands at the foot of a printed sheet."""


def in_margin(text: str) -> str:
    """Text for the foot of a page, where an ampersand begins a command; it leaves room for what stands at the right."""
    plain = " ".join(text.split())
    return (plain if len(plain) <= 48 else plain[:47] + "…").replace("&", "&&")
