"""Where the tables stand on a worksheet, and which of their rows are structure."""
