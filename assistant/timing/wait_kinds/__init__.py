"""The kinds of wait that a pack may write, each one closed, frozen model."""
