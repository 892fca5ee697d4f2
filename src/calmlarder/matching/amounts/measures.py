"""Units and kitchen measures by every name they go by."""

# Metric and imperial units in grams or millilitres; a millilitre counts as a gram (common practice, no source).
UNIT_GRAMS = {
    "kg": 1000, "kilo": 1000, "kilos": 1000, "kilogram": 1000, "kilograms": 1000, "mg": 0.001,
    "g": 1, "gr": 1, "gm": 1, "gms": 1, "grm": 1, "grms": 1, "gram": 1, "grams": 1, "gramme": 1, "grammes": 1,
    "l": 1000, "litre": 1000, "litres": 1000, "liter": 1000, "liters": 1000, "dl": 100, "cl": 10,
    "ml": 1, "millilitre": 1, "millilitres": 1,
    "oz": 28.35, "ounce": 28.35, "ounces": 28.35, "lb": 453.6, "lbs": 453.6, "pound": 453.6, "pounds": 453.6,
    "kgs": 1000, "mls": 1, "ltr": 1000, "ltrs": 1000, "lt": 1000, "litr": 1000, "floz": 29.57, "fl oz": 29.57,
    "quart": 946, "quarts": 946, "qt": 946, "qts": 946, "gallon": 3785, "gallons": 3785, "gal": 3785, "gals": 3785,
    "stone": 6350, "litro": 1000, "litros": 1000, "litri": 1000, "chilo": 1000, "quilo": 1000, "quilos": 1000,
    "gramos": 1, "gramas": 1, "grammi": 1, "gramm": 1, "etto": 100, "etti": 100, "dag": 10, "deka": 10,
    "derica": 850, "dericas": 850, "mudu": 1250, "mudus": 1250,  # tins and bowls of West African markets, by volume
}  # fmt: skip
CONTAINERS = (
    "tin", "can", "jar", "bag", "punnet", "block", "tub", "pot", "carton", "packet", "pouch", "bottle",
    "box", "loaf", "ball", "tube", "sleeve",
)  # fmt: skip
MEASURES = (
    *CONTAINERS, "tbsp", "tsp", "cup", "glass", "mug", "handful", "pinch", "dash", "splash", "drizzle", "glug",
    "knob", "bunch", "head", "bulb", "bowl", "plate", "portion", "slice", "wedge", "squeeze", "clove", "stalk",
    "stick", "spear", "leaf", "floret", "sprig", "cube", "piece", "fillet", "rasher", "nest", "bundle", "sheet",
    "cob", "roll", "heel", "thumb", "small", "medium", "large", "bar", "scoop", "pat", "pint", "sack", "log", "crown",
    "hand", "baguette", "gem", "matchbox", "tray", "sachet", "string", "shank", "hock", "joint",
)  # fmt: skip
_ALIASES = {
    "tablespoon": "tbsp", "tablespoons": "tbsp", "tbs": "tbsp", "tbsps": "tbsp", "teaspoon": "tsp",
    "teaspoons": "tsp", "tsps": "tsp", "leaves": "leaf", "loaves": "loaf", "bunches": "bunch",
    "boxes": "box", "pinches": "pinch", "dashes": "dash", "splashes": "splash", "glasses": "glass",
    "pack": "packet", "packs": "packet", "pkt": "packet", "pieces": "piece", "chunks": "piece", "sticks": "stick",
    "square": "piece", "squares": "piece",
    "pots": "pot", "end": "heel", "handfull": "handful",
    **dict.fromkeys(("big", "massive", "huge", "enormous", "ginormous", "humongous", "whopping"), "large"),
    **dict.fromkeys(("wee", "tiny", "titchy", "teeny"), "small"),
    "glob": "tbsp", "squirt": "tbsp", "dab": "tsp", "swig": "glug", "gulp": "glug",
    "spoon": "tbsp", "spoonful": "tbsp", "spoonfuls": "tbsp",
    "tablespoonful": "tbsp", "teaspoonful": "tsp",
    "tb": "tbsp", "tbl": "tbsp", "tbls": "tbsp", "msk": "tbsp", "tsk": "tsp", "ss": "tbsp", "dollop": "tbsp",
    "envelope": "sachet", "package": "packet", "strip": "rasher",
    "mugful": "mug", "cupful": "cup", "bowlful": "bowl", "glassful": "glass", "tumbler": "glass",
    "container": "box", "containers": "box", "pouches": "pouch",
    "wedges": "wedge", "squeezes": "squeeze",
    "brick": "block", "slab": "block", "bundle": "bunch", "mess": "bunch", "crate": "sack",
    "case": "packet", "pkts": "packet", "pk": "packet", "pks": "packet",
    "tetrapak": "carton", "pocket": "sack", "net": "bag", "baggie": "bag", "bagful": "bag",
    "vessel": "tub", "rind": "heel", "braid": "string", "jarful": "jar", "clamshell": "punnet", "clamshells": "punnet",
    "canister": "packet", "tupperware": "tub", "tupper": "tub",
    "hand": "hand", "ear": "cob", "ears": "cob",
    "pcs": "piece", "pc": "piece", "nos": "piece", "stems": "stalk",
    "stem": "stalk", "rope": "packet", "crust": "heel", "crusts": "heel",
    "pt": "pint", "pts": "pint", "hunk": "heel", "multipack": "packet", "4pack": "packet", 
}  # fmt: skip
# What packs, bunches and bowls are called in other kitchens.
_ELSEWHERE = {
    "bori": "sack", "ikat": "bunch", "tali": "bunch", "judi": "bunch", "maco": "bunch", "manojo": "bunch",
    "mazzo": "bunch", "bund": "bunch", "btl": "bottle", "bnch": "bunch", "bch": "bunch", "papan": "block",
    "katori": "bowl", "lata": "tin", "bote": "jar", "frasco": "jar", "flasche": "bottle", "paquet": "packet",
    "paquete": "packet", "boite": "tin", "paczka": "packet", "sloik": "jar", "puszka": "tin", "dabba": "box",
    "pkg": "packet", "lg": "large", "lge": "large", "lrg": "large", "med": "medium", "sm": "small", "sml": "small",
    **dict.fromkeys(("scheibe", "scheiben", "tranche", "tranches", "fette", "loncha", "lonchas", "rodaja",
        "rodajas", "rebanada", "rebanadas", "fatia", "fatias", "plaster", "plastry", "plasterki"), "slice"),
    **dict.fromkeys(("dose", "dosen", "latas", "boites", "scatola", "scatole", "scatoletta", "scatolette", "lattina",
        "kaleng", "puszki", "konserve"), "tin"),
    **dict.fromkeys(("bocal", "bocaux", "barattolo", "vasetto", "tarro", "tarros", "glaser", "sloiki", "frascos"),
        "jar"),
    **dict.fromkeys(("packung", "packungen", "pckg", "packerl", "paquetes", "pacote", "pacotes", "busta", "buste",
        "sobre",
        "opakowanie", "opakowania", "bungkus", "pacco", "confezione"), "packet"),
    **dict.fromkeys(("becher", "kubek", "vaschetta", "tarrina", "bakje"), "tub"),
    **dict.fromkeys(("beutel", "netz", "bolsa", "bolsas", "saco", "sacos", "sachetto", "sacchetto", "torebka", "sac",
        "nylon",
        "nylons"), "bag"),
    **dict.fromkeys(("botella", "botellas", "garrafa", "garrafas", "bottiglia", "bottiglie", "bouteille",
        "bouteilles",
        "flaschen", "butelka", "botol"), "bottle"),
    **dict.fromkeys(("peczek", "pek", "peczki", "molho", "molhos", "botte", "bottes", "mazzi", "manojos", "kattu",
        "gucchi"),
        "bunch"),
    **dict.fromkeys(("zehe", "zehen", "gousse", "gousses", "spicchio", "spicchi", "diente", "dientes", "dente",
        "dentes",
        "zabki", "siung"), "clove"),
    **dict.fromkeys(("kopf", "kopfe", "cabeza", "cabezas", "cabeca", "cespo", "cespi", "glowka"), "head"),
    **dict.fromkeys(("stuck", "stucke", "stk", "sztuk", "sztuki", "szt", "pezzo", "pezzi", "pieza", "piezas",
        "posta", "postas",
        "morceau", "morceaux", "buah", "biji", "butir", "ekor", "trozo", "trozos"), "piece"),
    **dict.fromkeys(("stange", "stangen", "tallo", "tallos", "branche", "branches", "gambo", "gambi"), "stalk"),
    **dict.fromkeys(("barquette", "barquettes", "cestino", "bandeja", "schale"), "punnet"),
    **dict.fromkeys(("brique", "briques", "karton", "brik", "briks"), "carton"),
    **dict.fromkeys(("bola", "bolas", "boule", "boules", "kugel", "kugeln", "kulka"), "ball"),
    **dict.fromkeys(("puno", "punado", "poignee", "manciata", "handvoll", "garsc", "genggam", "fistful"), "handful"),
    "cho": "block",
    "lembar": "sheet", "caja": "box", "cajas": "box", "caixa": "box", "bucket": "sack", "basket": "punnet",
    "bx": "box", "boxful": "box", "ctn": "carton", "pnt": "punnet", "hdful": "handful", "hndfl": "handful",
}  # fmt: skip
_NAMED = {**{name: name for name in MEASURES}, **_ALIASES, **_ELSEWHERE}
MEASURE_WORDS = {**{f"{word}s": name for word, name in _NAMED.items() if len(word) > 2}, **_NAMED}
UNIT = "|".join(sorted(UNIT_GRAMS, key=len, reverse=True))
MEASURE = "|".join(sorted(MEASURE_WORDS, key=len, reverse=True))
