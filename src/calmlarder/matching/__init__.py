"""Words to foods, amounts and dates."""
