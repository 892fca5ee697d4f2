"""Short forms and slips that stand for a word of a food's name, as people text them."""

from collections.abc import Mapping
from types import MappingProxyType

# What is written, and the words it stands for. A row is added when people write it of no other food.
ABBREVIATIONS: Mapping[str, tuple[str, ...]] = MappingProxyType({
    "caramelized": ("caramelised",), "crystallized": ("crystallised",), "carmelized": ("caramelised",),
    "chee": ("cheese",),
    "chz": ("cheese",), "cheez": ("cheese",), "gf": ("gluten", "free"), "glutenfree": ("gluten", "free"),
    "grinded": ("ground",), "lf": ("lactose", "free"), "lacto": ("lactose",), "lactosefree": ("lactose", "free"),
    "df": ("dairy", "free"), "dairyfree": ("dairy", "free"),
    **dict.fromkeys(("laktosefri", "laktosefritt", "laktosfri", "laktosfritt", "laktosefrei", "laktosefreie",
        "laktosefreier",
        "laktosefreies", "lactosevrij", "lactosevrije", "delactosada", "delattosato"), ("lactose", "free")),
    "ff": ("full", "fat"),
    "veg": ("vegetable",), "veggie": ("vegetable",), "veges": ("vegetable",),
    "tom": ("tomato",), "tommy": ("tomato",), "toms": ("tomato",),
    "pot": ("potato",), "pots": ("potato",), "spud": ("potato",), "tattie": ("potato",), "tater": ("potato",),
    "brocc": ("broccoli",), "broc": ("broccoli",), "cauli": ("cauliflower",), "caulie": ("cauliflower",),
    "caulif": ("cauliflower",),
    "yog": ("yoghurt",), "yogs": ("yoghurt",), "yogurt": ("yoghurt",), "yoghourt": ("yoghurt",), "yogart": ("yoghurt",),
    "bickie": ("biscuit",), "bicky": ("biscuit",), "bikky": ("biscuit",), "bikkie": ("biscuit",),
    "biccy": ("biscuit",), "biccie": ("biscuit",),
    "yoggie": ("yoghurt",), "choc": ("chocolate",), "choccy": ("chocolate",),
    "marg": ("margarine",), "marge": ("margarine",), "parm": ("parmesan",), "mozz": ("mozzarella",),
    "mayo": ("mayonnaise",), "avo": ("avocado",), "cuke": ("cucumber",), 
    "shroom": ("mushroom",), "mushie": ("mushroom",),
    "strawb": ("strawberry",), "blueb": ("blueberry",), "rasp": ("raspberry",),
    "aub": ("aubergine",), "courg": ("courgette",), "zuke": ("courgette",), "chx": ("chicken",),
    "spag": ("spaghetti",), "parsnp": ("parsnip",), 
    "soy": ("soya",), "chilies": ("chilli",), "chillies": ("chilli",), "chile": ("chilli",), "chili": ("chilli",),
    "chilly": ("chilli",), "chillie": ("chilli",),
    "houmous": ("hummus",), "humous": ("hummus",), "hummous": ("hummus",),
    "houmus": ("hummus",), "humus": ("hummus",), "beetroots": ("beetroot",), "beet": ("beetroot",),
    "no": ("without",), "minus": ("without",), "pb": ("peanut", "butter"), "evoo": ("olive", "oil"), "oj": ("orange",
    "juice"),
    **dict.fromkeys((
        "tk", "tiefkuhl", "gefroren", "surgele", "surgeles", "surgelee", "surgelees", "congelado", "congelada",
        "congelados", "congeladas", "surgelato", "surgelata", "surgelati", "surgelate", "mrozone", "mrozony",
        "fryst", "frysta", "frosne", "frossen", "pakastettu",
    ), ("frozen",)),
    **dict.fromkeys(("gekocht", "gekochte", "cuit", "cuite", "cuits", "cotto", "cotta", "cocido", "cocida", "cocidos",
        "cocidas", "gotowany", "gotowane", "rebus"), ("cooked",)),
    "mack": ("mackerel",), "mac": ("macaroni",), "vin": ("vinegar",), "micro": ("microwave",), "mwave": ("microwave",),
    "sweetpotato": ("sweet", "potato"), "springonion": ("spring", "onion"), 
    "nat": ("natural",), "daal": ("dal",), "dhal": ("dal",), "dahl": ("dal",), "pnut": ("peanut",),
    "coco": ("coconut",),
    "frz": ("frozen",), "frzen": ("frozen",), "bby": ("baby",), "brwn": ("brown",), "choccie": ("chocolate",),
    "tatoe": ("potato",), "tatoes": ("potato",), "potatoe": ("potato",), "tomatoe": ("tomato",),
    "wm": ("wholemeal",), "brn": ("brown",), "wht": ("white",), "grn": ("green",),
    "froze": ("frozen",), "frozed": ("frozen",), "freezed": ("frozen",), "pep": ("pepper",),
    "mylk": ("milk",), "milch": ("milk",), "melk": ("milk",), "mjolk": ("milk",), "maelk": ("milk",),
    "mlk": ("milk",), "butr": ("butter",), "buttr": ("butter",), "chix": ("chicken",), "chckn": ("chicken",),
    "zuc": ("courgette",), "zucc": ("courgette",), "zucch": ("courgette",),
    "strawbs": ("strawberry",),
    "oyl": ("oil",), "brd": ("bread",), "ses": ("sesame",), "grnd": ("ground",), "crm": ("cream",),
    "sossie": ("sausage",), "sossy": ("sausage",), "sozzie": ("sausage",), "sozzy": ("sausage",),
    "mushrm": ("mushroom",), "chees": ("cheese",), "ptato": ("potato",), "crrot": ("carrot",), "lettce": ("lettuce",),
    "eggz": ("egg",), "chkn": ("chicken",),
    "oate": ("oat",), "chily": ("chilli",),
    "beverage": ("drink",), "bev": ("drink",),
    "bbq": ("barbecue",), "frzn": ("frozen",), "frozn": ("frozen",), "froz": ("frozen",), "ckd": ("cooked",),
    "leftovers": ("leftover",), "tinned": ("canned",), "wholewheat": ("wholemeal",),
})  # fmt: skip
# Only where nothing but a food's word can be meant: `pot` is a container in `pot of cream`.
ONLY_BESIDE: Mapping[str, frozenset[str]] = MappingProxyType(
    {
        "pot": frozenset({"sweet", "new", "baby", "jacket", "salad", "baking"}),
        "pots": frozenset({"sweet", "new", "baby", "jacket", "salad", "baking", "roast"}),
        "mac": frozenset({"cheese"}),
        "vin": frozenset({"rice", "wine", "cider", "malt", "balsamic", "white", "red", "sherry", "apple"}),
    }
)
