"""The screens served to a browser: who may come in, one window at a time, and left in order. Real process, real socket.

aiohttp's client stands in for the browser; what a browser draws was looked at with headless Chromium by hand.
"""

import asyncio
import json
import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import aiohttp
import pytest

from calmlarder.cli import main
from terminal import PATIENCE_S

CODES = re.compile(rb"\x1b(\[[0-9;?<>=]*[ -/]*[@-~]|\][^\x07\x1b]*(\x07|\x1b\\)|[()].|.)")


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[str, "subprocess.Popen[str]", Path]]:
    home = tmp_path / "home"
    words = [sys.executable, "-m", "calmlarder", "--home", str(home), "browser"]
    process = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        assert process.stdout is not None
        line = process.stdout.readline()
        url = re.search(r"http://127\.0\.0\.1:\d+/[\w-]{32}/", line)
        assert url is not None, line
        yield url[0], process, home
    finally:
        if process.poll() is None:
            process.kill()
        process.communicate()


async def heard(window: aiohttp.ClientWebSocketResponse, word: str) -> None:
    """Until the program has drawn a word."""
    seen = b""
    while word not in CODES.sub(b"", seen).decode("utf-8", "replace"):
        message = await window.receive(PATIENCE_S)
        assert message.type in {aiohttp.WSMsgType.BINARY, aiohttp.WSMsgType.TEXT}, (message, seen[-2000:])
        seen += message.data if isinstance(message.data, bytes) else b""


async def typed(window: aiohttp.ClientWebSocketResponse, keys: str) -> None:
    await window.send_str(json.dumps(["stdin", keys]))


async def visit(url: str) -> None:
    origin = url.split("/")[2]
    async with aiohttp.ClientSession() as browser:

        async def status(path: str, **headers: str) -> int:
            async with browser.get(path, headers=headers) as answer:
                return answer.status

        root = url.rsplit("/", 2)[0]
        assert await status(url) == 200
        assert await status(f"{root}/") == 404
        assert await status(f"{root}/{'A' * 32}/") == 404
        assert await status(f"{root}/{'A' * 32}/static/js/textual.js") == 404
        assert await status(f"{url}static/js/textual.js") == 200
        assert await status(url, Host="evil.example") == 404  # DNS rebinding
        upgrade = {"Connection": "Upgrade", "Upgrade": "websocket", "Sec-WebSocket-Version": "13",
                   "Sec-WebSocket-Key": "A" * 22 + "=="}  # fmt: skip
        assert await status(f"{url}ws", **upgrade, Origin="http://evil.example") == 404
        assert await status(f"{url}ws", **upgrade) == 403
        async with browser.get(url) as answer:
            assert "default-src 'none'" in answer.headers["Content-Security-Policy"]
            assert not re.findall(r"https?://", await answer.text())
        window = await browser.ws_connect(f"{url}ws", origin=f"http://{origin}")
        await heard(window, "Welcome")  # the first questions
        await typed(window, "\x1b")
        await heard(window, "what came in?")
        await typed(window, "kale 150g\r")
        await heard(window, "kept:")
        assert await status(f"{url}ws", **upgrade, Origin=f"http://{origin}") == 409  # a second window


def test_one_window_that_knows_the_secret(served: tuple[str, "subprocess.Popen[str]", Path]) -> None:
    url, process, home = served
    asyncio.run(visit(url))
    process.send_signal(signal.SIGINT)
    _, said = process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 0, said
    assert "Traceback" not in said
    assert (home / "larder.copy.sqlite3").exists()  # the program behind the page has closed its store
    run = [sys.executable, "-m", "calmlarder", "--home", str(home), "larder", "list"]
    assert "kale" in subprocess.run(run, capture_output=True, text=True, check=True).stdout


@pytest.mark.parametrize("address", ["0.0.0.0", "192.168.1.5", "::", "example.org"])
def test_other_interfaces_are_refused_and_what_they_mean_is_said(
    address: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--home", str(tmp_path / "home"), "browser", "--address", address]) == 2
    assert "--open-to-network" in capsys.readouterr().err
