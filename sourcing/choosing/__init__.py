"""Step 4: rank the offers of one part, mark the cost and date front, find the best plan for many needs."""
