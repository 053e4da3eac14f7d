"""Values in; HTML, XLSX, CSV or text out: the only user of the templates. Papers compute and decide nothing."""
