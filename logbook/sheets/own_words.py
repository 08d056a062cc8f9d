"""The words over the columns of makers' own sheets, in English and the languages of near neighbours, folded to plain letters.

Each column of the log with the headings that mean it; what a gauge counts; the state it was measured in; months; totals.
"""

import re
import unicodedata

HEADINGS: dict[str, str] = {
    "uid": "uid",
    "tag": (
        "tag|label|swatch|swatch no|swatch nr|swatch number|swatch id|sample|sample no|no|nr|number|nummer|id|"
        "probe|probe nr|probennummer|lfd nr|muster nr|n|numero|num|echantillon no|echantillon n|reference|ref|"
        "provlapp|provlapp nr|prov nr|lapp|etikett|etiquette|etiqueta|merke|staal|proeflapje|prove|hakelprobe"
    ),
    "date": "date|datum|dato|fecha|data|day|when|wann|gehakelt am|fait le|virkad|made on|date made|worked on",
    "yarn": (
        "yarn|yarn name|name of yarn|yarn used|wool|garn|garnname|name des garns|wolle|wollsorte|fil|fil utilise|"
        "laine|nom du fil|pelote|garnnamn|garnsort|hilo|lana|nombre del hilo|filato|garen|garnnavn"
    ),
    "fibre": (
        "fibre|fiber|fibre content|fiber content|content|contents|material|faser|zusammensetzung|composition|"
        "matiere|fibres|fiberinnehall|sammansattning|innehall|materialsammansattning|composicion|composizione|"
        "samenstelling|fibra"
    ),
    "yarn class": (
        "yarn class|yarn weight|thickness|ply|garnstarke|garndicke|garnklasse|epaisseur|grosseur|categorie|"
        "tjocklek|garntjocklek|garngrupp|grosor|weight class|cyc|weight category"
    ),
    "ball grams": (
        "ball grams|ball weight|skein weight|grams per ball|g per ball|g ball|knauelgewicht|knauel g|"
        "gramm pro knauel|gewicht knauel|poids de la pelote|poids pelote|g pelote|nystanvikt|nystan g|"
        "gram per nystan|vikt per nystan"
    ),
    "ball metres": (
        "ball metres|ball meters|metres|meters|yardage|yards|metres per ball|meters per ball|m per ball|"
        "yards per ball|lauflange|lange knauel|meter pro knauel|metrage|longueur|metres par pelote|lopmangd|"
        "lopande meter|meter per nystan|langd per nystan|metraje"
    ),
    "colour": (
        "colour|color|colourway|colorway|shade|colour name|farbe|farbton|farbname|couleur|coloris|teinte|farg|"
        "kulor|fargnamn|kleur|farve|farge|colore"
    ),
    "dye lot": (
        "dye lot|dyelot|lot|batch|dye batch|partie|farbpartie|partienummer|bain|bain de teinture|lot de teinture|"
        "fargbad|partinummer|parti|farvebad|lote|bagno|verfbad"
    ),
    "strands": (
        "strands|strands held|held together|no of strands|faden|fadenzahl|anzahl faden|brins|nombre de brins|"
        "tradar|antal tradar|draden|hebras|number of strands"
    ),
    "hook mm": (
        "hook|hook mm|hook size|hook used|hook size mm|size of hook|crochet hook|hakelnadel|nadel|nadelstarke|"
        "nadel mm|ns|hakelnadelstarke|hakelnadel mm|crochet|taille du crochet|taille de crochet|crochet mm|"
        "crochet no|numero de crochet|n de crochet|virknal|nal|nalstorlek|virknalsstorlek|virknal mm|haaknaald|"
        "naald|haeklenal|heklenal|ganchillo|aguja|uncinetto|hook no"
    ),
    "hook note": (
        "hook note|hook make|hook brand|hook type|hook material|nadelart|nadelmaterial|hakelnadelart|type de crochet|virknalstyp"
    ),
    "foundation hook mm": "foundation hook mm|foundation hook|hook for chain|hook for foundation|nadel anschlag|anschlagnadel",
    "stitch pattern": (
        "stitch pattern|stitch|pattern|stitch used|stitch name|name of stitch|muster|grundmuster|maschenart|"
        "hakelmuster|mustername|maschen muster|point|points|motif|point utilise|nom du point|monster|virkmonster|"
        "maska|masktyp|stygn|monstrets namn|monster maska|mønster|steek|steekpatroon|punto|patron de punto"
    ),
    "multiple": (
        "multiple|multiple of|repeat of|sts in repeat|stitches in repeat|stitch multiple|rapport|mustersatz|"
        "teilbar durch|maschenzahl teilbar durch|rapport maschen|multiple de|delbart med|rapport maskor|multipel"
    ),
    "plus": "plus|plus sts|plus stitches|plus maschen|plus mailles|plus maskor",
    "extra chains": "extra chains|extra ch",
    "rows in repeat": "rows in repeat|row repeat|reihen im rapport|rangs du motif|varv i rapport",
    "terms": "terms|terminology|us or uk|us uk",
    "worked": "worked|flat or round|flat round|how worked|gearbeitet",
    "worked by": (
        "worked by|maker|made by|who|by|crocheter|gehakelt von|von|wer|fait par|par|crochete par|virkad av|av|vem|gehaakt door"
    ),
    "way of washing": (
        "way of washing|washing|wash|how washed|care|washed how|wasche|waschen|waschgang|gewaschen wie|pflege|"
        "lavage|entretien|mode de lavage|tvatt|tvattrad|skotsel|tvattsatt|lavado|vask"
    ),
    "swatch grams": (
        "swatch grams|swatch weight|weight of swatch|swatch g|gewicht|gewicht der probe|gewicht probe|gewicht g|"
        "poids|poids echantillon|poids g|vikt|provlappens vikt|vikt g|peso"
    ),
    "swatch stitches": "swatch stitches|stitches in swatch|swatch sts",
    "swatch rows": "swatch rows|rows in swatch",
    "notes": (
        "notes|note|remarks|remark|comments|comment|notes on it|bemerkung|bemerkungen|notiz|notizen|anmerkung|"
        "anmerkungen|kommentar|kommentare|remarque|remarques|commentaire|commentaires|anteckning|anteckningar|"
        "notering|noteringar|observations|opmerking|opmerkingen|notas|note e osservazioni|kommentarer|ovrigt|"
        "sonstiges|divers"
    ),
    "ball price": "ball price|price|price per ball|cost|preis|preis pro knauel|prix|prix pelote|pris|pris per nystan|precio",
    "currency": "currency|wahrung|devise|valuta",
    "minutes": "minutes|time|minutes taken|minuten|zeit|temps|tid|minuter",
}
"""The headings that mean a column, parted by ``|``."""

COLUMN_OF = {heading: column for column, headings in HEADINGS.items() for heading in headings.split("|")}

GAUGE = re.compile(
    r"\b(?:gauge|tension|maschenprobe|mp|jauge|echantillon|masktathet|stickfasthet|virkfasthet|maskfasthet|"
    r"muestra|campione|stekenverhouding|haeklefasthed|heklefasthet)\b"
)
STITCHES = re.compile(
    r"\b(?:sts?|stitch(?:es)?|maschen?|m|mailles?|mls?|maskor|mask|steken|masker|puntos|punti|sc|dc|hdc|fm|"
    r"stb)\b"
)
ROWS = re.compile(
    r"\b(?:rows?|reihen?|r|rd|runden?|rangs?|rgs?|rg|varv|v|rader|toeren|omgange|pinde|vueltas|righe|rounds?|"
    r"rnds?)\b"
)
REPEATS = re.compile(r"\b(?:repeats?|reps?|rapporte?|motifs?|mustersatze?)\b")
PINNED = re.compile(
    r"\b(?:blocked|pinned|gespannt|aufgespannt|bloque|bloquee|spand|blockad|uppspand|apres blocage|"
    r"after blocking)\b"
)
WASHED = re.compile(r"\b(?:washed|gewaschen|wasche|waschen|lave|lavee|lavage|tvattad|tvatt|wash|gewassen|vasket)\b")
UNWASHED = re.compile(
    r"\b(?:unwashed|before|raw|as worked|ungewaschen|vor|non lave|non lavee|avant|otvattad|fore|unblocked|"
    r"on the hook|nicht|not)\b"
)
TOTALS = re.compile(
    r"(?:grand |sub ?)?(?:totals?|sum|average|avg|mean|count|summe|gesamt|insgesamt|mittelwert|durchschnitt|"
    r"anzahl|somme|total general|moyenne|nombre|summa|totalt|medel|medelvarde|genomsnitt|antal|totaal|"
    r"gemiddelde|i alt)\b"
)
UNITS = {
    "tum": "in", "zoll": "in", "pouce": "in", "pouces": "in", "inch": "in", "inches": "in", "in": "in", '"': "in", "cm": "cm",
}  # fmt: skip

_MONTHS = (
    "jan januar january janvier januari enero", "feb februar february fevrier fevr februari febrero",
    "mar marz march mars mrz marzo maart", "apr april avril avr abril", "may mai maj mayo mei", "jun june juni juin junio",
    "jul july juli juillet juil julio", "aug august aout augusti agosto", "sep sept september septembre septiembre",
    "oct okt october oktober octobre octubre", "nov november novembre noviembre",
    "dec dez december dezember decembre diciembre des",
)  # fmt: skip
MONTHS = {word: number for number, words in enumerate(_MONTHS, start=1) for word in words.split()}

CLASS_WORDS = {
    "lace": 0, "2 ply": 0, "super fine": 1, "superfine": 1, "sock": 1, "4 ply": 1, "fingering": 1,
    "fine": 2, "sport": 2, "baby": 2, "5 ply": 2, "light": 3, "dk": 3, "8 ply": 3,
    "double knitting": 3, "medium": 4, "worsted": 4, "aran": 4, "10 ply": 4, "bulky": 5, "chunky": 5,
    "12 ply": 5, "super bulky": 6, "super chunky": 6, "14 ply": 6, "jumbo": 7,
}  # fmt: skip
"""The trade's names of thickness classes."""


def folded_heading(text: str) -> str:
    """Small plain letters and digits, parted by single blanks: ``Häkelnadel (mm)`` → ``hakelnadel mm``."""
    plain = "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
    return " ".join(re.sub(r"[^0-9a-zø\"]+", " ", plain.replace("″", '"').replace("”", '"')).split())
