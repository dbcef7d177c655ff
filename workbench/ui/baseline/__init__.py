"""The baseline on screen."""
