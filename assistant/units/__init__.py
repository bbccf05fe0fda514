"""Quantities with units: parsed at the edge, SI inside."""
