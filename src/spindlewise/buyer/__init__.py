"""Who asks: needs, weights as stated, receivers, present pedals, bike and riding."""
