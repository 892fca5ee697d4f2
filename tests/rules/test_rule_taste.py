"""What no cook leaves out or puts together. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.taste import FewProteins, FishByItself, SourWithNuts
from tiny import Tiny


def test_nuts_want_something_sour(pan: Callable[..., Tiny]) -> None:
    """Tahini alone, and with lime.

    firm tofu 280g
    tahini
    lime
    """
    assert not pan().holds(SourWithNuts(), {"tofu-firm": 80, "tahini": 15})
    assert pan().holds(SourWithNuts(), {"tofu-firm": 80, "tahini": 15, "lime": 10})


def test_two_protein_things_at_most(pan: Callable[..., Tiny]) -> None:
    """Three are there.

    firm tofu 280g
    tempeh 200g
    eggs x6
    """
    assert pan().holds(FewProteins(), {"tofu-firm": 80, "tempeh": 50})
    assert not pan().holds(FewProteins(), {"tofu-firm": 80, "tempeh": 50, "egg": 55})


def test_fish_shares_no_plate_with_tofu(pan: Callable[..., Tiny]) -> None:
    """Either the salmon or the tofu; eggs may go with fish.

    firm tofu 280g
    salmon fillets 300g
    eggs x6
    """
    assert pan().holds(FishByItself(), {"salmon": 100})
    assert pan().holds(FishByItself(), {"salmon": 100, "egg": 55})
    assert pan().holds(FishByItself(), {"tofu-firm": 80, "egg": 55})
    assert not pan().holds(FishByItself(), {"salmon": 100, "tofu-firm": 80})
