"""More minutes, at a price."""

from calmlarder.compose.draft import Draft
from calmlarder.compose.problem import SERVING_MINUTES
from calmlarder.compose.weights import MINUTE_LATE, POINT


class MinutesGive:
    """The slowest food may take longer than the minutes asked for; each minute costs."""

    def __init__(self, minutes: int | None) -> None:
        self._minutes = minutes

    def post(self, draft: Draft) -> None:
        """Bound the delay from below; the timeline may make it longer."""
        if self._minutes is None:
            return
        late = draft.model.new_int_var(0, 600, "")
        draft.model.add(late >= draft.time + SERVING_MINUTES - self._minutes)
        draft.given.append((-MINUTE_LATE * POINT, late))
