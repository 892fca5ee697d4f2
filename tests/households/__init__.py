"""Made-up households over weeks: what three ways to choose dinner throw away. See `life.py` for how it is counted."""
