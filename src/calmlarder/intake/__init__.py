"""What one sitting can bear: cap profiles, fermentable groups, and how much of one food fits."""
