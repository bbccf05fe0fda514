"""Word lists of the trade, as plain data."""
