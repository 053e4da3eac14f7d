"""The customer's page: one quote, read and answered once by a link nobody can guess."""

from flask import Blueprint

blueprint = Blueprint("customer", __name__)
