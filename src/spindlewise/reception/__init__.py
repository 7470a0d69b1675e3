"""What arrives: reading mode, error of a doubled side, uncertainty of the reading; plain numbers only."""
