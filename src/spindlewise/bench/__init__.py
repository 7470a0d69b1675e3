"""What we measured: weighings, recordings, alignment, agreement, three meters."""
