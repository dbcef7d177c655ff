"""What is seen: the only widgets."""
