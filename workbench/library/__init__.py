"""What is remembered: the library file. The only room with SQL."""
