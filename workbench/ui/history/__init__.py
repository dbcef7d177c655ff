"""The sheet of the history."""
