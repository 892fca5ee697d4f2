"""More minutes, at a price."""

from calmlarder.compose.problem import SERVING_MINUTES
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import GIVES_AT_ALL, MINUTE_LATE, POINT


class MinutesGive:
    """The slowest food may take longer than the minutes asked for; each minute costs."""

    def __init__(self, minutes: int | None) -> None:
        self._minutes = minutes

    def post(self, draft: DishVariables) -> None:
        """Bound the delay from below; the timeline may make it longer."""
        if self._minutes is None:
            return
        late, gives = draft.model.new_int_var(0, 600, ""), draft.model.new_bool_var("")
        draft.model.add(late >= draft.time + SERVING_MINUTES - self._minutes)
        draft.model.add(late <= 600 * gives)
        draft.given.append((-GIVES_AT_ALL * POINT, gives))
        draft.given.append((-MINUTE_LATE * POINT, late))
