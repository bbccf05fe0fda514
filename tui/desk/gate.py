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

from textual.events import Event, Key
from textual.message_pump import MessagePump

PATIENCE = 10.0
"""Seconds that a key waits at most for the worker, or for a queue that is stuck."""
LEAVE_WITHIN = 0.8
"""The same, once the key that leaves stands behind it."""
LOOK = 0.01
"""Seconds between two looks at the worker."""
LEAVES = "q"
AT_ONCE = ("ctrl+q",)
"""Keys that wait for nothing; those before them are let go."""
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
        if _key_of(event) in AT_ONCE:
            self._held.clear()
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
        looks, leaving = PATIENCE / LOOK, LEAVE_WITHIN / LOOK
        while looks > 0 and leaving > 0:
            ready = self._held[0] is not event or self._ready(event)
            # A worker that rests has told all; the app takes that in first.
            await _pass_through(self._way()[-1])
            if ready:
                return
            await asyncio.sleep(LOOK)
            looks -= 1
            leaving -= any(_key_of(each) == LEAVES for each in self._held)

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


def _key_of(event: Event) -> str:
    return event.key if isinstance(event, Key) else ""


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
