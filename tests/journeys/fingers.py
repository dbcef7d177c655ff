"""Fingers on the keys and the mouse of the X server: one xdotool for all a hand does."""

from __future__ import annotations

import subprocess


class Fingers:
    """Sends keys and mouse events; each is under way when its call returns. Begins with the first one."""

    def __init__(self) -> None:
        self._tool: subprocess.Popen[str] | None = None

    def do(self, *words: str) -> None:
        """Carry out one command of xdotool."""
        if self._tool is None:
            self._tool = subprocess.Popen(
                ["stdbuf", "-oL", "xdotool", "-"],  # answers line by line
                stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
            )  # fmt: skip
        assert self._tool.stdin is not None
        assert self._tool.stdout is not None
        assert not any('"' in word or "\n" in word for word in words), words
        line = " ".join(f'"{word}"' for word in words)
        self._tool.stdin.write(f"{line}\ngetdisplaygeometry\n")
        self._tool.stdin.flush()
        answer = self._tool.stdout.readline()
        assert answer.replace(" ", "").strip().isdigit(), f"{line}: {answer}"

    def rest(self) -> None:
        """Let go of the keys."""
        if self._tool is None:
            return
        for pipe in (self._tool.stdin, self._tool.stdout):
            assert pipe is not None
            pipe.close()
        self._tool.wait()
        self._tool = None
