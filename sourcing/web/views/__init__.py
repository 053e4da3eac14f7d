"""One module for each part of the counter; each brings its own blueprint, and `app.py` lists them."""
