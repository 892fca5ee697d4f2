"""Fresh Python processes, timed as a user meets them: with compiled modules kept between runs."""

import os
import subprocess
import sys
import time

# Where this is set, Python reads all our modules from source each time; on a cook's machine it is not.
_ENVIRONMENT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def seconds(*arguments: str) -> float:
    """Wall time of a fresh Python with these arguments. Raises CalledProcessError where it fails."""
    start = time.perf_counter()
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=_ENVIRONMENT)
    return time.perf_counter() - start


def processor_seconds(*arguments: str, cache: str) -> float:
    """Processor time of the same, with a cache folder of its own: another version's would be written anew each time."""
    before = os.times()
    environment = {**_ENVIRONMENT, "XDG_CACHE_HOME": cache}
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=environment)
    after = os.times()
    return after.children_user + after.children_system - before.children_user - before.children_system
