"""The catalog's rules, one a file; each sees the whole catalog and returns problems."""
