"""How springs behave: pure functions, numbers in, numbers out."""
