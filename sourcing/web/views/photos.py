"""Photos of a job: taken with the phone, shown, taken out."""

from flask import Blueprint

blueprint = Blueprint("photos", __name__)
