"""What every answer tells the browser: only the counter's own scripts and styles, no frames of others, keep nothing.

Follows OWASP ASVS 4.0.3, chapter 14.4.
"""

import base64
import hashlib
import re

from flask import Response, g, request

from .desks import counter
from .show import asset

PAGE = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "font-src 'none'; frame-src 'self'; manifest-src 'none'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors {ancestors}"
)
PAPER = "default-src 'none'; style-src {styles}; img-src 'self' data:; base-uri 'none'; form-action 'none'; "
PAPER += "frame-ancestors 'self'; sandbox allow-same-origin allow-modals"
FILE = "default-src 'none'; frame-ancestors 'none'; sandbox"

STYLE = re.compile(r"<style>(.*?)</style>", re.DOTALL)
A_YEAR = 31_536_000
A_DAY = 86_400
IMMUTABLE = f"public, max-age={A_YEAR}, immutable"
"""RFC 8246: the same address never gives anything else, so no browser need ask again."""


def paper_policy(paper: str) -> str:
    """The policy for a paper shown as it was kept: no scripts, no forms, and only the styles that stand in it."""
    hashes = (hashlib.sha256(style.encode()).digest() for style in STYLE.findall(paper))
    styles = " ".join(f"'sha256-{base64.b64encode(one).decode()}'" for one in hashes)
    return PAPER.format(styles=styles or "'none'")


def tell_browser(response: Response) -> Response:
    """After every request."""
    headers = response.headers
    headers["Content-Security-Policy"] = g.get("policy") or PAGE.format(ancestors="'none'")
    headers["X-Content-Type-Options"] = "nosniff"
    headers["Referrer-Policy"] = g.get("referrer_policy") or "same-origin"
    headers["Cross-Origin-Opener-Policy"] = "same-origin"
    headers["Cross-Origin-Resource-Policy"] = "same-origin"
    headers["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=(), payment=(), usb=()"
    headers["X-Robots-Tag"] = "noindex"
    if request.endpoint == "static":
        headers["Cache-Control"] = IMMUTABLE if _named_by_content(response) else f"public, max-age={A_DAY}"
    else:
        headers.setdefault("Cache-Control", "no-store")
    if counter().is_https:
        headers["Strict-Transport-Security"] = f"max-age={A_YEAR}"
    return response


def _named_by_content(response: Response) -> bool:
    """Whether a style or script was asked for by the address with its own hash, as pages do."""
    file = (request.view_args or {}).get("filename", "")
    return response.status_code in (200, 304) and request.full_path == asset(file)
