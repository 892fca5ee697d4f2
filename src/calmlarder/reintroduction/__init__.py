"""After elimination: challenges group by group, what they say of one person's own limits, and when to see a doctor."""
