"""Where it stands: the static pages."""
