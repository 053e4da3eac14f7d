"""Readers of designations by published standards, one file a family, and the comparison of two sizes."""
