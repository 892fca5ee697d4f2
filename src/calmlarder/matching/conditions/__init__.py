"""What state a thing is in: soft, mouldy, cooked, dry."""
