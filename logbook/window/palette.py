"""The colours of the window, light and dark."""

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from logbook.craft.drawing.drawing import Role


class Palette(NamedTuple):
    """Every colour as ``#rrggbb``.

    Text stands on ``page``, ``surface``, ``stripe``, ``selection``, ``unfocused``, ``error_field`` or a button.
    """

    page: str
    surface: str
    stripe: str
    line: str
    outline: str
    ink: str
    muted: str
    button: str
    button_hover: str
    button_pressed: str
    accent: str
    accent_hover: str
    accent_pressed: str
    on_accent: str
    focus: str
    selection: str
    unfocused: str
    error: str
    error_field: str
    warning: str
    good: str
    series1: str
    series2: str
    series3: str
    band: str

    def of_role(self, role: "Role") -> str:
        """The colour in which a drawing's role is shown; the measures share the teal of the focus ring."""
        colour: str = getattr(self, "focus" if role == "measure" else role)
        return colour


LIGHT = Palette(
    page="#F4F1EA",
    surface="#FFFDF8",
    stripe="#F8F5EF",
    line="#D9D3C7",
    outline="#827A6C",
    ink="#23262F",
    muted="#595C66",
    button="#E9E5DA",
    button_hover="#F1EEE6",
    button_pressed="#DDD7CA",
    accent="#7A3B5D",
    accent_hover="#8E4A6E",
    accent_pressed="#632D4A",
    on_accent="#FFFFFF",
    focus="#0A666E",
    selection="#EBD9E2",
    unfocused="#E6E1D8",
    error="#A12622",
    error_field="#FCEBE8",
    warning="#7A5200",
    good="#2E6B3F",
    series1="#7A3B5D",
    series2="#0A6C74",
    series3="#946300",
    band="#EBDCE4",
)

DARK = Palette(
    page="#1F2127",
    surface="#272A31",
    stripe="#2C2F37",
    line="#3D414B",
    outline="#928D82",
    ink="#ECE8DF",
    muted="#B0ADA6",
    button="#343842",
    button_hover="#3F444F",
    button_pressed="#2B2E36",
    accent="#D9A0C0",
    accent_hover="#E6B8D1",
    accent_pressed="#C889AB",
    on_accent="#2A1421",
    focus="#6CC7CE",
    selection="#523446",
    unfocused="#3B3F49",
    error="#FF9C92",
    error_field="#44292B",
    warning="#E8BF6A",
    good="#8FCF9E",
    series1="#D9A0C0",
    series2="#6CC7CE",
    series3="#E3B55F",
    band="#4D3B47",
)
