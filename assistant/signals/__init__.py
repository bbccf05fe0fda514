"""Lamps, flash trains and displays: what is seen, what it can mean."""
