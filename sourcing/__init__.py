"""From a folder of supplier price sheets to a customer's quote, orders and the margin of the job."""

__version__ = "0.1.0"
