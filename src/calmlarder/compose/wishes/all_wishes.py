"""Every wish that is weighed in each dinner; a new one is listed here."""

from calmlarder.compose.wishes import Wish
from calmlarder.compose.wishes.again import NotAgainSoon
from calmlarder.compose.wishes.day import WithinDay
from calmlarder.compose.wishes.dislike import NotDisliked
from calmlarder.compose.wishes.effort import FewOpenings, FewThawed, FewWeighings, LittleTime, WholePacks
from calmlarder.compose.wishes.fitting import (
    CookedBase,
    FilledBase,
    FittingBase,
    InfusedOil,
    NotInWater,
    OilBeforeButter,
    TortillasFirst,
)
from calmlarder.compose.wishes.flavour import AtHome, Tastes
from calmlarder.compose.wishes.likeness import Near
from calmlarder.compose.wishes.nourish import NotTooMuch, Nourishing
from calmlarder.compose.wishes.plate import UsualItems, UsualPortions
from calmlarder.compose.wishes.rescue import Rescue
from calmlarder.compose.wishes.seasoning import (
    Dressed,
    FlavoursAtHand,
    LittleGarlic,
    NotDry,
    NotPlain,
    Rounded,
    SaltedNuts,
    Seasoned,
    SpicesAtHand,
    SweetenedNuts,
)
from calmlarder.compose.wishes.steady import Steady
from calmlarder.compose.wishes.tolerated import Tolerated
from calmlarder.compose.wishes.variety import TwoKinds

WISHES: tuple[Wish, ...] = (
    Rescue(), FewWeighings(), FewOpenings(), LittleTime(), UsualItems(), UsualPortions(), AtHome(), Tastes(),
    Seasoned(), Rounded(), NotPlain(), Dressed(), LittleGarlic(), TwoKinds(), NotDisliked(), Near(), Nourishing(),
    WithinDay(), NotAgainSoon(), Tolerated(), Steady(), InfusedOil(), OilBeforeButter(), NotInWater(), FittingBase(),
    TortillasFirst(), CookedBase(), FilledBase(), FewThawed(), WholePacks(),
    NotTooMuch(), NotDry(), SaltedNuts(), SweetenedNuts(), FlavoursAtHand(), SpicesAtHand(),
)  # fmt: skip
