"""Keys handed out one at a time: each finds the screen as the one before left it.

Textual puts a key into the queue of whatever has the focus when it arrives. Of keys
that arrive together, by a paste, a slow line or fast hands, the second would go to a
widget that the first is about to leave. Here it waits until the first was handled and
the screen that it opened has its focus.
"""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Awaitable, Callable, Sequence

from textual.events import Event
from textual.message_pump import MessagePump

PATIENCE = 0.8
"""Seconds that a key waits at most for anything; leaving must not take longer."""
ROUNDS = 12
"""Most times that the queues on a key's way are gone through."""
QUIET_ROUNDS = 2
"""A key makes one message of its own at most that makes another."""


class Gate:
    """Holds keys back until those before them were handled.

    Parameters
    ----------
    hand_out : callable
        Gives an event to whatever has the focus.
    way : callable
        Returns what a key goes through now: the focused widget, its parents, the app.
    ready : callable
        Says whether an event can be handed out, or waits for the worker.
    """

    def __init__(
        self,
        hand_out: Callable[[Event], Awaitable[None]],
        way: Callable[[], Sequence[MessagePump]],
        ready: Callable[[Event], bool],
    ) -> None:
        self._hand_out = hand_out
        self._way = way
        self._ready = ready
        self._held: deque[Event] = deque()
        self._task: asyncio.Task[None] | None = None

    @property
    def idle(self) -> bool:
        """Whether every key was handled."""
        return self._task is None

    def take(self, event: Event) -> None:
        """Take an event in; it is handed out behind those before it."""
        self._held.append(event)
        if self._task is None:
            self._task = asyncio.create_task(self._work())
            self._task.add_done_callback(self._ended)

    def stop(self) -> None:
        """Hand out nothing more."""
        self._held.clear()
        if self._task is not None:
            self._task.cancel()

    async def _work(self) -> None:
        try:
            while self._held:
                await self._until_ready(self._held[0])
                await self._hand_out(self._held.popleft())
                await self._until_handled()
        finally:
            self._task = None

    async def _until_ready(self, event: Event) -> None:
        for _ in range(int(PATIENCE / 0.01)):
            # What the worker told is shown before the question is put.
            await _pass_through(self._way()[-1])
            if self._ready(event):
                return
            await asyncio.sleep(0.01)

    async def _until_handled(self) -> None:
        """Go through the queues behind the key until its last consequence is out."""
        before: Sequence[MessagePump] = ()
        for nth in range(ROUNDS):
            way = self._way()
            for pump in way:
                await _pass_through(pump)
            empty = all(pump.message_queue_size == 0 for pump in way)
            if nth >= QUIET_ROUNDS and empty and way == before:
                return
            before = way

    def _ended(self, task: asyncio.Task[None]) -> None:
        """Let a failure of an action reach the app, as it does without a gate."""
        failure = None if task.cancelled() else task.exception()
        if failure is not None:
            self._way()[-1].call_later(_fail, failure)


def _fail(failure: BaseException) -> None:
    raise failure


async def _pass_through(pump: MessagePump) -> None:
    """Wait until a queue has done what is in it now."""
    done = asyncio.Event()
    if pump.call_later(done.set):
        try:
            await asyncio.wait_for(done.wait(), PATIENCE)
        except TimeoutError:
            return  # it is being closed, and takes no more
