"""Riding on screen: start a session, enter runs, change one thing."""
