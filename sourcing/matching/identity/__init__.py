"""Which part a need is and what it asks: evidence judged, offers' words read, what contradicts them named."""
