"""Step 7: what the job earned and where it leaked."""
