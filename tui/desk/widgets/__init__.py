"""The parts of the screens, one file each."""
