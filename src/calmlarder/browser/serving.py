"""The screens served to one browser window: loopback, a secret in the address, the right host, one at a time."""

import asyncio
import hmac
import ipaddress
import secrets
import shlex
import socket
import subprocess
import sys
from collections.abc import Awaitable, Callable, Sequence
from contextlib import suppress
from urllib.parse import urlsplit

from aiohttp import web
from textual_serve.server import Server

from calmlarder.browser.page import STYLE, headers, page
from calmlarder.problems import CannotGoOn, Problem

_SECRET_BYTES = 24  # 192 bits: nobody guesses it
_LEAVES_S = 5.0  # a window that is opened anew waits so long for the one before to end
_ENDS_S = 5.0  # so long has the program to end in order, once asked to
_FONT_PX = (8, 16, 40)  # least, usual, most
_MOST_BYTES = 1_000_000  # of one message: a paste, no more

_Handler = Callable[[web.Request], Awaitable[web.StreamResponse]]


def is_loopback(address: str) -> bool:
    """Whether only programs of this machine reach an address."""
    with suppress(ValueError):
        return ipaddress.ip_address(address).is_loopback
    return address == "localhost"


def listening(address: str, port: int) -> socket.socket:
    """A socket that waits at the address; 0 takes a free port. Raises CannotGoOn where it cannot be had."""
    family = socket.AF_INET6 if ":" in address else socket.AF_INET
    try:
        return socket.create_server((address, port), family=family)
    except (OSError, OverflowError) as error:
        told = f"{address} port {port} cannot be used ({getattr(error, 'strerror', None) or error})"
        raise CannotGoOn([Problem(where="browser", what=told, remedy="name another --port, or leave it out")]) from None


class Serving:
    """One run: its secret, its window, and what it answers."""

    def __init__(self, words: Sequence[str], waiting: socket.socket) -> None:
        """`words` are the arguments of `calmlarder` for the program behind the page."""
        self._secret = secrets.token_urlsafe(_SECRET_BYTES)
        self._socket = waiting
        self._address, self._port = waiting.getsockname()[:2]
        command = [sys.executable, "-m", "calmlarder", *words]
        line = subprocess.list2cmdline(command) if sys.platform == "win32" else shlex.join(command)
        self._server = Server(line, host=self._address, port=self._port, title="calmlarder")
        self._one = asyncio.Lock()
        self._window: asyncio.Task[object] | None = None

    @property
    def url(self) -> str:
        """Where to open it, with the secret."""
        host = f"[{self._address}]" if ":" in self._address else self._address
        return f"http://{host}:{self._port}/{self._secret}/"

    def run(self) -> None:
        """Serve until Ctrl-C."""
        web.run_app(
            self._application(),
            sock=self._socket,
            print=None,
            access_log=None,
            handle_signals=True,
            shutdown_timeout=_ENDS_S,
        )

    def _application(self) -> web.Application:
        app = web.Application(middlewares=[self._guard], client_max_size=_MOST_BYTES)
        app.add_routes(
            [
                web.get("/{secret}/", self._page),
                web.get("/{secret}/page.css", self._style),
                web.get("/{secret}/ws", self._screens),
                web.static(f"/{self._secret}/static", self._server.statics_path),
            ]
        )
        app.on_shutdown.append(self._end_window)
        return app

    @web.middleware
    async def _guard(self, request: web.Request, handler: _Handler) -> web.StreamResponse:
        """Who does not know the secret, or came by another name or from another page, finds nothing here."""
        given = request.path.split("/")[1]
        if not hmac.compare_digest(given.encode(), self._secret.encode()) or not self._is_ours(request):
            raise web.HTTPNotFound
        return await handler(request)

    def _is_ours(self, request: web.Request) -> bool:
        """A name that somebody else's page made lead here (DNS rebinding) is refused, and so is that page itself."""
        host = urlsplit(f"//{request.host}").hostname or ""
        if is_loopback(self._address) and not is_loopback(host):
            return False
        if host != "localhost":
            try:
                ipaddress.ip_address(host)
            except ValueError:
                return False
        origin = request.headers.get("Origin")
        return origin is None or origin == f"http://{request.host}"

    async def _page(self, request: web.Request) -> web.Response:
        least, usual, most = _FONT_PX
        asked = request.query.get("font", "")
        font = max(least, min(most, int(asked))) if asked.isascii() and asked.isdecimal() and len(asked) < 4 else usual
        body = page("calmlarder", f"ws://{request.host}/{self._secret}/ws", font)
        return web.Response(text=body, content_type="text/html", headers=headers(request.host))

    async def _style(self, request: web.Request) -> web.Response:
        return web.Response(text=STYLE, content_type="text/css", headers=headers(request.host))

    async def _screens(self, request: web.Request) -> web.StreamResponse:
        """The program, for as long as the window is open; a second window is refused."""
        if request.headers.get("Origin") is None:  # a browser always names it here (RFC 6455, 4.1)
            raise web.HTTPForbidden
        try:
            await asyncio.wait_for(self._one.acquire(), _LEAVES_S)
        except TimeoutError:
            raise web.HTTPConflict(text="it is open in another window") from None
        try:
            self._window = asyncio.current_task()
            return await self._server.handle_websocket(request)  # type: ignore[no-any-return, unused-ignore]
        finally:
            self._window = None
            self._one.release()

    async def _end_window(self, _: web.Application) -> None:
        """The program behind the page leaves in order, so that its store is closed."""
        if self._window is not None:
            self._window.cancel()
            with suppress(asyncio.CancelledError, TimeoutError):
                await asyncio.wait_for(asyncio.shield(self._window), _ENDS_S)
