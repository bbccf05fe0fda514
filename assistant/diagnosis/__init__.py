"""Causes, evidence, ranking, and which check comes next."""
