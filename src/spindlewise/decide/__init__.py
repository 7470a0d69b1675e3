"""Which is best: curves, weights, score, stability, break-even, dominance; plain numbers only."""
