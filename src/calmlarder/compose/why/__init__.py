"""Why a food is in tonight's dinner, or why it is not, and what the answer hangs on."""
