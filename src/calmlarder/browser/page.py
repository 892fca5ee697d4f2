"""The page that holds the screens: ours, since the one that comes with textual-serve asks another host for a font."""

from html import escape
from string import Template

_PAGE = Template("""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>$title</title>
<link rel="stylesheet" href="static/css/xterm.css">
<link rel="stylesheet" href="page.css">
<script src="static/js/textual.js"></script>
</head>
<body>
<div id="opening">calmlarder is opening…</div>
<div id="closed">calmlarder has ended here, or is open in another window. <a href="">Open it again</a></div>
<div id="terminal" class="textual-terminal" data-session-websocket-url="$socket" data-font-size="$font"></div>
</body>
</html>
""")

# textual.js marks the body with these two classes: at the first byte, and when the connection is closed.
STYLE = """
body { background: #121212; color: #e6e6e6; font: 1.1rem/1.5 monospace; margin: 0; }
#opening, #closed { position: absolute; inset: 0; display: flex; align-items: center; justify-content: center;
  gap: 1ch; flex-wrap: wrap; padding: 1rem; background: #121212; z-index: 10; }
#closed, body.-first-byte #opening { display: none; }
body.-closed #closed { display: flex; }
a { color: inherit; }
"""


def page(title: str, socket: str, font: int) -> str:
    """The page; `socket` is the address of its web socket, `font` the size of its letters in px."""
    return _PAGE.substitute(title=escape(title), socket=escape(socket), font=font)


def headers(host: str) -> dict[str, str]:
    """What a browser may do with it: nothing but this host, and nobody may frame, keep or be told of it.

    textual.js makes its own styles and functions as it runs, hence the two `unsafe`.
    """
    policy = (
        "default-src 'none'; script-src 'self' 'unsafe-eval'; style-src 'self' 'unsafe-inline'; "
        f"connect-src ws://{host}; img-src 'self' data:; font-src 'self'; base-uri 'none'; form-action 'none'; "
        "frame-ancestors 'none'"
    )
    return {
        "Content-Security-Policy": policy,
        "Referrer-Policy": "no-referrer",
        "Cache-Control": "no-store",
        "X-Content-Type-Options": "nosniff",
        "Cross-Origin-Opener-Policy": "same-origin",
        "Cross-Origin-Resource-Policy": "same-origin",
    }
