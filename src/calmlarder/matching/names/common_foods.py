"""Foods that most kitchens have, by the names most people write: what a slip of spelling is a slip of.

Common practice, no source.
"""

from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.words import words_of

# A row is added for what stands in most shops and is written in one or two words.
NAMES = tuple(
    name
    for row in """
    almond, almond milk, apple, apple juice, apricot, artichoke, arugula, asparagus, aubergine, avocado
    bacon, bagel, baguette, baked beans, balsamic vinegar, banana, barley, basil, basmati rice, beans, beansprouts
    beef, beef mince, beer, beetroot, biscuit, black beans, black pepper, blackberries, blueberries, bok choy, bread
    bread rolls, breadcrumbs, brie, broad beans, broccoli, broccolini, brown rice, brussels sprouts, buckwheat, bulgur
    burger buns, butter, butter beans, buttermilk, butternut squash
    cabbage, camembert, capers, capsicum, carrot, cashew, cauliflower, celeriac, celery, chard, cheddar, cheese, cherry
    cherry tomatoes, chicken, chicken breast, chicken thighs, chickpea, chickpea flour, chilli, chilli flakes, chives
    chocolate, chopped tomatoes, chorizo, cider vinegar, cilantro, cinnamon, coconut milk, coffee, coriander
    corn on the cob, corn tortillas, cornflakes, cornflour, cottage cheese, courgette, couscous, crackers, cranberries
    cream, cream cheese, crumpet, cucumber, cumin, curry paste, curry powder, custard, dark chocolate
    double cream, dill, duck, edamame, egg noodles, eggplant, eggs, fennel, feta, fish fingers, fish sauce, flour
    garam masala, garlic, gherkin, ginger, gnocchi, goats cheese, grapefruit, grapes, greek yoghurt, green beans
    green pepper, haddock, halloumi, ham, hazelnut, honey, hot dog buns, hummus, jam, kale, ketchup, kidney beans, kiwi
    lactose free milk, lamb, lamb chops, leek, lemon, lemon juice, lentils, lettuce, lime, macaroni, mackerel, mandarin
    mangetout, mango, maple syrup, margarine, marmalade, mayonnaise, melon, milk, milk chocolate, mint, mozzarella
    muesli, mushroom
    mussels, mustard, nutmeg, naan, nectarine, noodles
    oat milk, oats, okra, olive oil, olives, onion, orange, orange juice, oregano, oyster sauce
    paprika, parmesan, parsley, parsnip, pasta, peach, peanut, peanut butter, pear, peas, pecan, penne, pepper, pesto
    pineapple, pine nuts, pistachio, pitta, plum, polenta, popcorn, pork, pork chops, pork mince, porridge, potato
    prawn, prunes, pumpkin, pumpkin seeds, quinoa
    radish, raisins, raspberries, red cabbage, red onion, red pepper, rhubarb, rice, rice cakes, rice noodles, ricotta
    risotto rice, rocket, rosemary, salad, salami, salmon, salsa, salt, sardines, sausage, scallion, sesame oil
    sesame seeds, shallot, shrimp, sirloin, smoked salmon, sour cream, sourdough, soya milk, soya sauce, spaghetti
    spinach, spring greens, spring onion, steak, stock, stock cubes, strawberries, sugar, sultana, sunflower seeds
    swede, sweet potato, sweetcorn, swiss cheese, tahini, tempeh, thyme, tofu, tomato, tomato paste, tomato puree
    tortilla, trout, tuna, turkey, turkey mince, turmeric, turnip, vegetable, vinegar, walnut, watercress, watermelon
    white fish, white wine vinegar, wholemeal bread, wraps, yoghurt, yogurt, zucchini
    """.strip().splitlines()
    for name in row.strip().split(", ")
)
_LEAST = 3  # letters: ours


def _forms(word: str) -> tuple[str, ...]:
    """A word as it is written of one and of several."""
    if word.endswith("y") and word[-2] not in "aeiou":
        return word, f"{word[:-1]}ies"
    return (word, f"{word}es") if word.endswith(("o", "ch", "sh")) else (word, f"{word}s")


# Every form of a word of those names, and the word as it is compared.
FORMS: Mapping[str, str] = MappingProxyType(
    {
        form: ABBREVIATIONS.get(word, (word,))[0]
        for name in NAMES
        for word in words_of(name)
        if len(word) >= _LEAST
        for form in _forms(word)
    }
)
