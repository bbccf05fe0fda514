"""Drafts of rules: rows that look like rules, each with its quote and its doubts."""
