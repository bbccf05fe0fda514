"""Invented makers' literature, rule packs, questions and dialogues."""
