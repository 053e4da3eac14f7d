"""Step 1: the bytes of a supplier's file become offers, structure and problems; every row is accounted for."""
