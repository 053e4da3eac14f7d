"""Candidates for a person: which part a row resembles by number, words, measures and price, and what that means."""
