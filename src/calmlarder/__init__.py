"""calmlarder decides tonight's dinner from what is left in the fridge."""

import os

# Whatever plugin happens to be installed beside pydantic has no part in this program; looking for one takes time.
os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")

__version__ = "0.1.0"
