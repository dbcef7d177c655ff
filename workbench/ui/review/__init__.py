"""The review on screen."""
