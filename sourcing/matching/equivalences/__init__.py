"""The equivalence table: reading and writing it, every number of a part with its path, and what is wrong in it."""
