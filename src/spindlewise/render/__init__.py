"""How it reads: answers to terminal, text, Markdown, CSV and JSON; no arithmetic here."""
