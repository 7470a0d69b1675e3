"""What moves: saddle, stance and the leg model; plain numbers only."""
