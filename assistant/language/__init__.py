"""Text to facts: what a technician typed, as data."""
