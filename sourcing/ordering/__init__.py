"""Step 6: purchase orders from approved lines, receipts, differences."""
