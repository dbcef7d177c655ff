"""The check-in on screen."""
