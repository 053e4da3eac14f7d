"""The counter: pages and forms for clerk, technician, owner and customer. Comes later; nothing decides here."""
