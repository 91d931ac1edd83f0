"""Questions made from cards, their marking, and the lessons that ask them."""
