"""Spindlewise: from claims, measurements and prices of power pedals to a recommendation for one buyer."""
