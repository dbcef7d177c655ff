"""What the runs say: pure functions over ratings and times."""
