"""The only users of pyqtgraph."""
