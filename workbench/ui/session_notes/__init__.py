"""The sheet for a session typed or pasted as text."""
