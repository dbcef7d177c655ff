"""What comes and goes: files in and out."""
