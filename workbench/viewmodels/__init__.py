"""What is shown: one frozen State a screen. QtCore only."""
