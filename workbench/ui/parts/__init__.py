"""Shared widgets, the theme and the drawings."""
