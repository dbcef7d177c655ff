"""What can be done: one function a deed, one file a station."""
