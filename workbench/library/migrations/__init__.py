"""Steps from one schema number to the next. A step never imports today's code: it must stay true for old files."""
