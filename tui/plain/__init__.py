"""The conversation as plain lines."""
