"""The sheet of backups, and what is shown when a library cannot be opened."""
