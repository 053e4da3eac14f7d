"""One thing a person does: load, call steps, save, in one transaction. This is the library API too."""
