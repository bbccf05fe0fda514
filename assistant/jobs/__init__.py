"""A job is an append-only list of events."""
