"""`python -m calmlarder` is the same as `calmlarder`."""

import sys

from calmlarder.cli import main

if __name__ == "__main__":
    sys.exit(main())
