"""Waits and protection-stop counters as values."""
