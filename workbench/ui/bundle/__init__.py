"""The sheet on which bikes go in and out."""
