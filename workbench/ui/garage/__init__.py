"""The garage on screen: the list of bikes, a bike's own sheet, the sheet for a new bike."""
