"""Top layer: a card goes in, text for a shell, a page or a program comes out."""
