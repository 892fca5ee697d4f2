"""What each command may be given: options only, so that `--help` loads nothing heavy."""
