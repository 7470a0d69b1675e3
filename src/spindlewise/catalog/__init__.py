"""What is known: strict YAML with places, models, the price log, money and the as-of view."""
