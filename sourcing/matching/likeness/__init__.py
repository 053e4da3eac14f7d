"""Candidates for a person: which of our parts a row resembles by number, words, measures and price, and how much that means."""
