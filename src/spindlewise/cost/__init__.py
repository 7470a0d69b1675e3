"""What it costs: the cost-per-gram-saved ladder, ownership, seconds per gram; plain numbers only."""
