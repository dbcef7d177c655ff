"""The card on screen and on paper."""
