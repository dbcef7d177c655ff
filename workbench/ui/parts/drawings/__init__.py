"""The line drawings: where a person would look rather than read."""

from workbench.ui.parts.drawings.view import KINDS, DrawingValues, DrawingView

__all__ = ["KINDS", "DrawingValues", "DrawingView"]
