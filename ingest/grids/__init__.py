"""Finds the tables that rules, fills and bands make on a page: pure geometry."""
