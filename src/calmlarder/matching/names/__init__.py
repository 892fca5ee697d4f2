"""From words to foods: every name weighed, slips of spelling mended."""
