"""Words beside the food: those that never matter, and those that make another food of it."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.plain_words import PLAIN_WORDS

# Said of many foods, and in the name of some: left over, they change nothing.
HARMLESS = frozenset({
    "organic", "chopped", "sliced", "diced", "grated", "shredded", "loose", "washed", "ripe", "raw", "fresh", "spare",
    "opened", "open", "unopened", "good", "nice", "old", "new", "unsweetened", "plain", "drained", "rinsed", "peeled",
    "whole", "big", "large", "small", "medium", "little", "mini", "about", "roughly", "approx", "or", "so", "left",
    "bit", "piece", "chunk", "floret", "more", "for", "to", "each", "is", "are", "still", "shop", "bought", "own",
    "homemade", "home", "g", "reduced", "finely", "freshly", "coarsely", "thinly", "minced", "seeded", "pitted",
    "toasted", "lightly", "loosely", "packed", "squeezed", "melted", "softened", "unsalted", "salted", "optional",
    "taste", "serve", "garnish", "cut", "into", "cubed", "trimmed", "crumbled", "juicy", "tiny", "quality", "best",
    "boneless", "skinless", "generous", "thick", "thin", "few", "last", "rest", "baby", "young", "tender", "long",
    "short", "flat", "round", "sheet", "strip", "stick", "slice", "fillet", "rasher", "spear", "stalk", "stem",
    "head", "heart", "leaf", "bulb", "sprig", "cube", "cup", "bag", "box", "bottle", "jar", "tin", "can", "carton",
    "shell", "ring", "thread", "bar", "ready", "eat", "eating", "cooking", "baking", "vine", "garden",
    "free", "range", "english", "french", "italian", "spanish", "indian", "danish", "swiss", "greek", "lebanese",
    "all", "just", "set", "mature", "mild", "strong", "extra", "very", "soft", "firm", "hard",
    "runny", "smooth", "crunchy", "chunky", "fine", "jumbo", "rolled", "instant", "quick", "easy", "premium", "value",
    "basic", "royal", "real", "proper", "decent", "ok", "full", "half", "quarter", "third", "end", "part",
    "single", "double", "snack", "dinner", "lunch", "breakfast", "day", "week", "today", "natural", "pure",
    "virgin", "sea", "table", "kosher", "halal", "iceberg", "wee", "drink", "fat", "low", "high", "one", "two", "three",
    "closed", "button", "podded", "shelled", "skinned", "with", "con", "in", "and", "on", "off", "not", "no",
    "american", "asian", "mexican", "bunched", "crispy", "crushed", "curly", "deep", "delicious", "snap", "grilling",
    "light", "mixed", "pointed", "processed", "pod", "pound", "russet", "sharp", "slivered", "soaked", "striped",
    "summer", "textured", "tuscan", "unripe", "vac", "waxy", "heavy", "bottled", "maris", "king", "fizzy", "without",
    "inoil", "inbrine", "inwater", "onbone", "offbone", "lean", "sized",
    "giant", "seven", "five", "made", "dessert", "cold", "hot", "rock", "star", "clear",
})  # fmt: skip
# Nouns that say what a thing is when they stand last: another food than what stands before them.
PRODUCTS = frozenset({
    "batter", "jerky", "creamer",
    "powder", "oil", "milk", "sauce", "juice", "paste", "puree", "flour", "starch", "butter", "cheese", "cream",
    "bread", "drink", "water", "syrup", "sugar", "vinegar", "seed", "nut", "flake", "chip", "crisp", "cake",
    "biscuit",
    "cracker", "noodle", "pasta", "rice", "jam", "chutney", "pickle", "relish", "salad", "stock", "broth", "bouillon",
    "granule", "spice", "seasoning", "mix", "blend", "spread", "yoghurt", "curd", "mince", "sausage", "burger",
    "wrap",
    "tortilla", "meal", "extract", "essence", "concentrate", "protein", "kernel", "bran", "germ", "grit", "groat",
    "dip", "dressing", "leaf", "root", "skin", "zest", "peel", "shoot", "frond", "flower", "blossom", "top",
    "liqueur", "alternative", "substitute", "flavour", "crumb", "crust", "dough", "pastry", "yolk", "rind", "bone",
})  # fmt: skip
# Qualities that make another food of it, or change what is in it.
QUALITIES = frozenset({
    "dried", "pickled", "smoked", "canned", "cooked", "leftover", "powdered", "vegan", "vegetarian", "plant", "dairy",
    "lactose", "gluten", "sour", "soured", "condensed", "evaporated", "flavoured", "infused", "sweetened", "candied",
    "caramelised", "silken", "instant", "wild", "sweet", "malt", "cider", "fermented", "buttermilk", "mashed",
    "breaded", "crumbed",
    "battered", "stuffed", "marinated", "cured", "baked", "fried", "roasted", "roast", "boiled", "steamed",
    "dry", "frozen", "ground", "sprouted", "lamb", "mutton", "venison", "duck", "veal", "rabbit", "bean", "pea",
    "goose", "pheasant", "partridge", "grouse", "pigeon", "quail", "ostrich", "kangaroo", "horse", "boar", "bison",
    "moose", "reindeer", "hare", "crocodile", "emu", "alligator", "turkey", "fake", "mock", "faux",
    "lentil", "egg", "fruit", "teriyaki", "tandoori", "spicy", "herby", "garlicky", "oniony", "peppered", "honeyed",
    "jerk", "cajun", "escovitch", "escoveitch", "satay", "bulgogi", "karaage", "shawarma", "souvlaki", "glazed",
    "curried", "creamed", "devilled", "crystallised", "chocolatey", "minty", "meatless",
    "veggie", "refried", "mushy",
})  # fmt: skip
DECIDING = PRODUCTS | QUALITIES
# The same in other tongues, where a strange word beside a name is else a note: what is seasoned may hold garlic.
DECIDING_ELSEWHERE = frozenset({
    "temperado", "temperada", "temperados", "temperadas", "adobado", "adobada", "adobados", "adobadas", "marinado",
    "marinada", "marinados", "marinadas", "mariniert", "mariniertes", "marinierte", "gewurzt", "gewurzte", "kryddad",
    "kryddade", "krydret", "marinert", "marinerad", "marinerade", "gekruid", "gekruide", "gemarineerd",
    "gemarineerde", "condito", "condita", "marinato", "marinata", "assaisonne", "assaisonnee", "marine", "marinee",
    "przyprawiony", "marynowany", "marynowana", "relleno", "rellena", "rellenos", "rellenas", "gefullt", "gefullte",
    "gevuld", "gevulde", "fylld", "fyllda", "fylt", "fyldt", "ripieno", "ripiena", "ripieni", "ripiene", "farci",
    "farcie", "farcis", "farcies", "recheado", "recheada", "recheados", "recheadas", "nadziewany", "empanado",
    "empanados", "empanadas", "rebozado", "rebozada", "panado", "panados", "paniert", "panierte", "paniertes",
    "gepaneerd", "gepaneerde", "panerad", "panerade", "panert", "paneret", "pane", "panee", "impanato", "impanata",
    "impanati", "impanate", "panierowany", "ahumado", "ahumada", "ahumados", "ahumadas", "fumado", "fumada",
    "affumicato", "affumicata", "gerauchert", "geraucherte", "geraucherter", "gerookt", "gerookte", "rokt", "rokte",
    "roget", "fume", "fumee", "wedzony", "wedzona", "encurtido", "encurtida", "encurtidos", "encurtidas", "eingelegt",
    "eingelegte", "ingelegd", "ingelegde", "inlagd", "inlagda", "syltet", "syltede", "sottaceto", "sottolio",
    "marynowane", "frito", "frita", "fritos", "fritas", "gebraten", "gebratene", "gebakken", "stekt", "stegt",
    "fritto", "fritta", "fritti", "fritte", "frit", "frite", "frits", "frites", "smazony", "smazona", "asado",
    "asada", "asados", "asadas", "assado", "assada", "assados", "assadas", "arrosto", "arrosta", "geroosterd",
    "rostet", "roti", "rotie", "pieczony", "pieczona", "confitado", "confitada", "caramelizado", "caramelizada",
    "caramelise", "candito", "candita", "kandiert", "polvo", "pulver", "poudre", "poeder", "polvere", "proszek",
    "zumo", "saft", "jus", "sap", "succo", "suco", "sok", "harina", "farinha", "farine", "mehl", "meel", "mjol",
    "sopa", "soupe", "suppe", "soep", "zuppa", "zupa", "molho", "sosse", "saus", "sugo", "ensalada", "salade",
    "salat", "insalata", "salatka", "mermelada", "marmelade", "marmellata", "confiture", "sylt", "syltetoj", "geleia",
    "torta", "tarte", "kuchen", "taart", "kaka", "kake", "kage", "bolo", "gateau", "ciasto",
})  # fmt: skip
# A noun that makes a dish of the food before it: a dish may hold anything, so it is asked about.
DISHES = frozenset({
    "bite", "nibble", "popper", "skewer", "gefilte", "dosa", "dosai", "idli", "uttapam", "vada", "upma", "pongal",
    "soup", "stew", "curry", "bhaji", "bhajia", "pie", "crumble", "quiche", "lasagne", "lasagna", "risotto", "bake",
    "casserole", "gratin", "mash", "fritter", "pakora", "samosa", "dumpling", "gyoza", "kiev", "nugget", "finger",
    "sandwich", "pasty", "tart", "pizza", "omelette", "frittata", "roast", "stir-fry", "stirfry", "tikka", "masala",
    "korma", "biryani", "pilaf", "pilau", "paella", "chilli", "ragu", "bolognese", "carbonara", "goulash", "tagine",
    "hotpot", "ramen", "pho", "laksa", "salsa", "guacamole", "slaw", "coleschlaw", "coleslaw", "tabbouleh", "dal",
    "dhal", "daal", "sabzi", "gravy", "stuffing", "pudding", "muffin", "brownie", "cookie", "cereal", "granola",
    "muesli", "smoothie", "shake", "sorbet", "jelly", "terrine", "pate", "mousse", "souffle", "croquette", "rosti",
    "hash", "wellington", "schnitzel", "katsu", "tempura", "kebab", "kofta", "meatball", "fishcake", "turnover",
    "strudel", "scone", "bun", "roll", "focaccia", "naan", "bagel", "pancake", "waffle", "cordial", "liqueur", "wing",
    "krispy", "krispie", "krispies", "crispies", "cornflakes", "crunch", "puff", "twist", "straw", "stick", "popcorn",
    "surprise", "thing",
    "medley", "parcel", "ravioli", "gnocchi", "tortellini", "tea", "bomb", "wonton", "roulade", "patty",
    "loaf", "scramble", "adobo", "sinigang", "caldereta", "kaldereta", "menudo", "afritada", "tinola", "sisig",
    "jollof", "egusi", "moussaka", "stroganoff", "cacciatore", "chasseur", "fricassee", "rendang", "vindaloo",
    "jalfrezi", "madras", "rogan", "dopiaza", "balti", "bhuna", "enchilada", "fajita", "quesadilla", "chimichanga",
    "empanada", "tamale", "jambalaya", "gumbo", "chowder", "bisque", "minestrone", "stovies", "coddle", "potjie",
    "bredie", "bobotie", "dauphinoise", "boulangere", "parmigiana", "ratatouille", "caponata", "pastitsio",
    "tartiflette", "cassoulet", "ceviche", "escabeche", "cordon", "marsala", "piccata", "lollipop", "carcass",
    "giblet", "foot", "feet", "filler", "filling", "coronation", "rusk",
})  # fmt: skip
# A colour tells two foods apart only where both are in the tables (red and green peppers).
COLOURS = frozenset({
    "red", "green", "yellow", "orange", "purple", "white", "black", "brown", "pink", "blue", "golden", "gold",
    "rainbow",
})  # fmt: skip
# The same in other tongues; `amarillo` is a chilli of its own.
COLOURS_ELSEWHERE = frozenset({
    "braun", "brauner", "braune", "weiss", "weisse", "rot", "rote", "roter", "grun", "grune", "gruner", "gelb", "gelbe",
    "schwarz", "schwarze", "bruin", "bruine", "witte", "rode", "groene", "gele", "zwarte", "brun", "brune", "hvid",
    "hvide", "hvit", "hvite", "vit", "vita", "rod", "gron", "gronne", "gul", "gule", "sort", "sorte",
    "blanco", "blanca", "blancos", "blancas", "rojo", "roja", "rojos", "rojas", "verde", "verdes",
    "amarilla", "amarillos", "amarillas", "negro", "negra", "negros", "negras", "morado", "morada", "branco", "branca",
    "brancos", "brancas", "vermelho", "vermelha", "roxo", "roxa", "amarelo", "amarela", "preto", "preta", "claro",
    "clara", "escuro", "escura", "bianco", "bianca", "bianchi", "bianche", "rosso", "rossa", "rossi", "rosse", "verdi",
    "giallo", "gialla", "gialli", "gialle", "nero", "nera", "neri", "nere", "blanc", "blanche", "rouge", "vert",
    "verte", "jaune", "noir", "noire", "bialy", "biala", "biale", "czerwony", "czerwona", "czerwone", "zielony",
    "zielona", "zielone", "zolty", "zolta", "czarny", "czarna",
})  # fmt: skip
# Of breads, pastas and the like these tell which grain it is of.
GRAINS = frozenset({
    "wholemeal", "wholegrain", "wholewheat", "brown", "granary", "multigrain", "seeded", "malted", "rye", "spelt",
    "oat",
    "corn", "buckwheat", "white", "black", "red", "wild", "soda", "wheat", "maize", "rice", "egg", "naan", "roti",
})  # fmt: skip
GRAIN_KINDS = frozenset({"bread", "wrap", "pasta", "noodle", "rice", "flour", "grain"})
# Dishes whose name is also a food of the tables: a measure or a part there, a dish when it is left over or home-made.
SELF_MADE = frozenset({"leftover", "homemade", "takeaway", "takeout", "yesterday"})
# Made at home or left over, nobody can know what is in these, unless more is said (`leftover chilli con carne`).
DISH_WHEN_MADE = frozenset({
    "dal", "dhal", "daal", "rajma", "rajmah", "chole", "curry", "chilli",
    "stock", "soup", "stew", "bake", "pasta", "casserole", "broth",
    "vegetable", "veggie", "stir", "fry", "takeaway", "takeout", "meal", "dinner", "roast", "pie", "hotpot", "tagine",
})  # fmt: skip
# `without onion` names no onion.
WITHOUT = frozenset({"no", "without", "minus", "free"})
LACKING = "without "  # begins what is taken for granted of a food that is said to lack what it usually holds
WITH = frozenset({"with", "w", "has", "contains", "includes", "plus"})
# Words that say how a thing is, where it stands or what somebody thinks of it, and name none.
NOTES = frozenset({
    "cheapo", "abt", "morning", "evening", "etc", "style",
    "oval", "round", "square", "oblong", "bits", "bobs", "night", "nite", "noon", "weekend",
    "actually", "again", "almost", "alrdy", "already", "am", "any", "anyway", "apparently", "are", "around",
    "at", "away", "back", "barely", "be", "been", "before", "behind", "being", "but", "by", "came", "can", "cheap",
    "check", "clean", "close", "did", "do", "does", "done", "dodgy", "down", "else", "enough", "even", "ever",
    "everything", "fairly", "find", "first", "forgot", "found", "from", "front", "gave", "get", "got", "had", "has",
    "have", "he", "her", "here", "hers", "his", "huge", "i", "if", "inside", "intact", "it", "its", "ive", "keep",
    "kept", "kind", "know", "later", "like", "lil", "lol", "long", "look", "lot", "luckily", "main", "maybe", "me",
    "meant", "might", "most", "much", "must", "my", "near", "never", "new", "next", "normal", "now", "odd", "of",
    "oh",
    "only", "other", "our", "out", "over", "perfect", "plenty", "pls", "please", "possibly", "posh", "prob", "quite",
    "random", "regular", "sad", "same", "says", "she", "shop", "should", "side", "since", "solid", "sort", "spare",
    "still", "stuff", "sure", "than", "that", "the", "their", "them", "then", "there", "theyre", "they", "this",
    "though", "too", "total", "two", "type", "under", "up", "used", "usual", "version", "very", "was", "way", "we",
    "weird", "well", "were", "what", "when", "where", "which", "will", "wonky", "would", "yes", "yet", "you", "your",
    "himself", "herself", "myself", "yourself", "themselves",
    "cocinar", "zum", "zur", "sul", "sulla", "nel", "nella", "num", "numa", "mediano", "mediana", "medianos",
    "medianas", "medio",
    "mellan", "cucinare", "cucina", "cuisiner",
    "cozinhar", "kochen", "plana", "plano", "planas", "planos", "brick",
    "market", "supermarket", "farm", "local", "leftover", "abit", "bout", "nearly", "ish", "tho",
    "gerieben", "geriebener", "geriebene", "festkochend", "mehligkochend", "mehlig", "jung", "reif", "offen",
    "geoffnet",
    "angebrochen", "rallado", "rallada", "rapado", "ralado", "rape", "tritato", "picado", "picada", "maduro",
    "maduros",
    "maduras", "mur", "mure", "mures", "abierto", "abierta", "ouvert", "ouverte", "aperto", "aperta", "demolhado",
    "inteiro", "entero", "entera", "entier", "entiere", "intero", "intera", "natur", "nature", "naturale", "starty",
    "swiezy", "swieza", "swieze", "carolino", "caseiro", "casero", "casera", "maison", "hausgemacht", "selbstgemacht",
    "domowy", "domowa", "segar", "sehat", "manky", "ekologiczny", "besar", "kecil", "grande", "grandes", "gross",
    "klein", "petit", "petite", "gros", "piccolo", "piccola", "chico",
    "chica", "pequeno", "pequena", "mala", "duzy", "maly", "size", "lunchbox", "filet", "filetto", "bio", "fresco",
    "fresca", "frisch", "frische", "fresh",
    "thx", "ty", "fyi", "imo", "tbc", "tba", "btw", "omg", "ugh", "meh", "nvm", "cos", "coz", "bc", "def",
    "lid", "foil",
    # Hindi and Urdu beside a food: a little, left, old, of, and the like.
    "thodi", "thoda", "thode", "sa", "si", "bacha", "bachi", "bache", "hua", "hui", "hue", "wala", "wali", "wale",
    "purana", "purani", "taza", "tazi", "hai", "bas", "kuch", "bahut", "zyada", "aadha", "aadhi", "adha", "chota",
    "choti", "chhota", "bada", "badi", "khula", "bhara", "khatam", "wapas", "ghar",
    # West African, Caribbean, South African and Singaporean English.
    "wetin", "dey", "abeg", "sha", "oga", "una", "allyuh", "eh", "nah", "lah", "leh", "lor", "alr", "alrd", "hor",
    "lekker", "braai", "sies", "ja", "howzit", "fi", "di", "mi", "gwan", "nutten", "nuff", "likkle", "arvo", "mate",
    "aye", "bonny", "wee", "ken", "dinnae", "wasnae", "yous", "youse", "defo", "reckon", "smth", "sth", "kak",
    "tbh", "idk", "ok", "okay", "x", "xl", "xxl", "med", "lge", "sm", "approx", "ca", "circa", "ea", "per", "pp",
})  # fmt: skip
_NOTE_ENDING = LatePattern(r".{2,}(?:y|ed|ing|ish|ful|less|able|est|ier|er|ly)$")


def is_note(word: str) -> bool:
    """Whether a word that stands in no food's name is plainly a note, and names no food that the tables lack."""
    return len(word) < 3 or word in HARMLESS or word in NOTES or word in PLAIN_WORDS or bool(_NOTE_ENDING.match(word))


NO_SLIPS = frozenset({
    "coke", "brain", "carb", "gratin", "macaroon", "matha", "monster", "pastichio", "pinot",
    "vela", "kashk", "kishk", "kashkaval",
    "quark", "ugu", "soko", "tete", "ewedu", "dawadawa", "ogiri", "iru", "zereshk",
    "bitter", "batter", "better", "butler", "litter", "letter", "chilled", "chiller", "chunky", "creamy", "spread",
    "breaded", "sliced", "slices", "chopped", "shredded", "please", "leaves", "leaved", "marinated", "market",
    "martin", "masher", "peeler", "peeled", "planted", "planter", "potted", "rooted", "salter", "seeded", "smoker",
    "spring", "sprout", "sweets", "sweaty", "tinned", "tender", "whites", "greens", "blacks", "bottom", "bottle",
    "bottles", "carton", "cartoon", "corner", "counter", "cracked", "cooker", "cooking", "cooled", "fridge", "frosty",
    "freezer", "freeze", "garden", "goodish", "halves", "halved", "heated", "honest", "hungry", "kitchen", "little",
    "minced", "mister", "monday", "mother", "natural", "number", "opened", "packed", "packet", "pieces", "poured",
    "powder", "pretty", "rather", "recent", "remain", "rubber", "sealed", "second", "shaved", "shelf", "shrunk",
    "single", "smelly", "sorted", "stored", "thawed", "toasty", "topped", "unused", "wilted", "wilting", "wrapped",
    "yellowing", "crispy", "crumbs", "crumbed", "crusty", "dusted", "floury", "grated", "heaped", "juicer", "lumpy",
    "plated", "pressed", "rolled", "stringy", "trimmed", "warmed", "washed", "watery", "children", "chicks",
    "personal", "parents", "brother", "sister", "partner", "flatmate", "housemate", "roommate", "neighbour",
    "caught", "bought", "before", "behind", "caster", "coaster", "cluster", "custom", "holder", "hotter", "larger",
    "lighter", "longer", "melted", "mildly", "mostly", "nearly", "slimmer", "slightly", "smaller", "softer",
    "stemmed", "destemmed", "deribbed", "ribbed", "veined", "deveined", "deseeded", "destoned", "cored", "hulled",
    "husked", "shucked", "picked", "tailed", "torn", "shelled", "scrubbed", "scored", "portioned",
    "standard", "starter", "sticks", "strips", "tasted", "wedges", "wedge", "wobbly", "pepped", "pasted",
})  # fmt: skip
# Foods of which there are so many kinds that a strange word before them may name one that the tables lack.
MANY_KINDS = frozenset({
    "bean", "pea", "nut", "seed", "flour", "paste", "sauce", "berry", "root", "powder", "drink", "syrup", "gourd",
    "steak", "mince", "fillet", "chop", "green", "fish", "cheese",
})  # fmt: skip
KINDS_OF_MANY = frozenset({"flour", "pulse"})  # the same of kinds of food, whatever tongue names them
# Words for what a food is, which go without saying behind the word that tells which (`kalamata`, `basmati`).
GENERIC = frozenset({
    "sauce", "oil", "bread", "cheese", "nut", "seed", "syrup", "bean", "lentil", "rice", "noodle", "olive",
    "mushroom",
    "squash", "cabbage", "potato", "flour", "vinegar", "wine", "milk", "leaf", "lettuce", "tomato", "onion", "pea",
    "pasta", "mustard", "paste", "sugar", "ham", "fish", "berry", "spread", "seasoning", "pepper", "bulb", "root",
})  # fmt: skip
