"""Every rule that holds of each dinner; a new one is listed here."""

from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.amounts import Amounts
from calmlarder.compose.rules.asked import Asked
from calmlarder.compose.rules.dose import DoseWeighed
from calmlarder.compose.rules.flavour_family import OneFamily
from calmlarder.compose.rules.goes_together import (
    EggsByThemselves,
    FewProteins,
    FishByItself,
    NoSaltOnSalt,
    NotBeside,
    OnlyBeside,
    SourWithNuts,
    SweetBesideNuts,
    SweetSpiceBesideAnother,
)
from calmlarder.compose.rules.held import Holding
from calmlarder.compose.rules.limits import Limits
from calmlarder.compose.rules.lysine import LysineFloor
from calmlarder.compose.rules.minutes import SlowestFood
from calmlarder.compose.rules.not_again import NotAgain
from calmlarder.compose.rules.one_slot_filled import OneOf
from calmlarder.compose.rules.own_fat import OwnFat
from calmlarder.compose.rules.protein import ProteinFloor
from calmlarder.compose.rules.slots import Slots
from calmlarder.compose.rules.two_mains import TwoMains

RULES: tuple[Rule, ...] = (
    Amounts(), Slots(), Holding(), OwnFat(), OneOf(), OneFamily(), SlowestFood(), Limits(), ProteinFloor(),
    LysineFloor(), SourWithNuts(), SweetBesideNuts(), SweetSpiceBesideAnother(), EggsByThemselves(), FishByItself(),
    NoSaltOnSalt(), NotBeside(), OnlyBeside(), FewProteins(), TwoMains(), Asked(), DoseWeighed(), NotAgain(),
)  # fmt: skip
