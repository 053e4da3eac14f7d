"""Step 2: which of our parts is an offer? Numbers, paths of statements, a veto by size, look-alikes to judge."""
