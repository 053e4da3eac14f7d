"""The only place that knows SQL: tables, migrations, and functions that take values in and give values back."""
