"""Step 5: selling price, quote, the totals of each choice, the customer's answers."""
