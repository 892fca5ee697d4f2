"""Lines that name several foods, and what stands between them."""
