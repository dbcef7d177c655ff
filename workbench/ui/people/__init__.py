"""The people on screen."""
