"""Which is best: curves, weights, score, stability, break-even, dominance, second opinions; plain numbers only."""
