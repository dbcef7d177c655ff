"""The springs on screen."""
