"""One file a step, named by its schema number."""
