"""The counter: pages and forms for clerk, technician, owner and customer. It gathers input, calls one action, shows."""
