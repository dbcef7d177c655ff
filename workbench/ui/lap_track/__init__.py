"""The sheet for lap times from a recorded track."""
