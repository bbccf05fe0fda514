"""The parts of an answer, each computed from the view of the turn."""
