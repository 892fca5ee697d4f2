"""What `--use` names is in the dish. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.asked import Asked
from tiny import Tiny


def test_it_is_there(pan: Callable[..., Tiny]) -> None:
    """One of the two is asked for.

    firm tofu 280g
    tempeh 200g
    """
    assert pan(use=("tempeh",)).holds(Asked(), {"tempeh": 80})
    assert not pan(use=("tempeh",)).holds(Asked(), {"tofu-firm": 80})
    assert pan().holds(Asked(), {"tofu-firm": 80})
