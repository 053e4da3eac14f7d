"""Step 3: what an order costs at the door, and the day it comes."""
