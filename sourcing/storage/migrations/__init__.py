"""Steps from one schema to the next; Alembic runs them in order."""
