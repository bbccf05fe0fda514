"""The one table of what can be done: keys, palette, help and key line read it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from textual.binding import Binding, BindingType

Place = Literal["desk", "tap", "source", "library", "jobs", "list", "page"]
"""Where an action is at hand; `list` and `page` are any list and any long text."""


@dataclass(frozen=True, slots=True)
class Action:
    """One thing a person can do.

    Attributes
    ----------
    name : str
        Its word after ``/`` and the method ``action_NAME`` that does it.
    key : str
        As Textual names it.
    label : str
        On the key line; a word or two.
    help : str
        A sentence.
    place : Place
        Where the key acts.
    shown : bool
        Whether the key line names it.
    """

    name: str
    key: str
    label: str
    help: str
    place: Place = "desk"
    shown: bool = True


ACTIONS: tuple[Action, ...] = (
    Action("write", "tab", "write", "Go to the line for writing, or leave it."),
    Action("palette", "slash", "all", "List every action and find one by its words."),
    Action("tap", "t", "tap", "Count flashes: one key a flash."),
    Action("reading", "r", "reading", "Enter a reading with its unit and conditions."),
    Action("sources", "s", "sources", "Open a cited page with the words marked."),
    Action("view", "v", "view", "Next pane: talk, timers, unit, causes, check..."),
    Action("jobs", "j", "jobs", "List the jobs: switch, begin, park, close."),
    Action("acknowledge", "a", "seen", "Take a timer that is over off the top."),
    Action("copy", "c", "copy", "Save the last answer with its sources, and copy it."),
    Action("unit", "u", "unit", "Enter the unit's nameplate and who you are."),
    Action("library", "l", "library", "What the library holds; add to it."),
    Action("now", "w", "now", "Say again how the job stands now.", shown=False),
    Action("older", "o", "older", "Show older turns of this job.", shown=False),
    Action("new", "n", "new job", "Begin another job.", shown=False),
    Action("park", "p", "park", "Set this job aside.", shown=False),
    Action("close", "x", "close", "End this job with its outcome.", shown=False),
    Action("help", "question_mark", "help", "What every key does."),
    Action("quit", "q", "quit", "Leave; the job stays as it is."),
    Action("flash", "space", "flash", "The light flashed: press with it.", "tap"),
    Action("use", "enter", "use it", "Enter what was counted into the job.", "tap"),
    Action("undo", "u", "undo", "Take the last tap back.", "tap"),
    Action("round", "r", "round", "Watch once more, beside what was counted.", "tap"),
    Action("window", "w", "window", "Change the seconds that are counted over.", "tap"),
    Action("light", "l", "light", "Say which light it is.", "tap"),
    Action("long", "m", "long flash", "A long flash, among quick ones.", "tap"),
    Action("leave", "q", "back", "Leave without entering anything.", "tap"),
    Action("next_page", "n", "next", "The next page of the document.", "source"),
    Action("page_before", "b", "before", "The page before.", "source"),
    Action("cited", "m", "marked", "Back to the cited page and its marks.", "source"),
    Action("viewer", "o", "viewer", "Open the file at this page outside.", "source"),
    Action("leave", "q", "back", "Back to the conversation.", "source"),
    Action("add", "a", "add", "Add a file or a folder to the library.", "library"),
    Action("stop", "s", "stop", "Stop adding; what is stored stays.", "library"),
    Action("leave", "q", "back", "Back to the conversation.", "library"),
    Action("open", "enter", "open", "Go on with the job under the cursor.", "jobs"),
    Action("new", "n", "new", "Begin another job.", "jobs"),
    Action("acknowledge", "a", "seen", "Take its ended timers off the top.", "jobs"),
    Action("park", "p", "park", "Set the job under the cursor aside.", "jobs"),
    Action("close", "x", "close", "End the job under the cursor.", "jobs"),
    Action("leave", "q", "back", "Back to the conversation.", "jobs"),
    Action("leave", "q", "back", "Back to the conversation.", "list"),
    Action("leave", "q", "back", "Back to the conversation.", "page"),
)
PLACE_NAMES: dict[Place, str] = {
    "desk": "In the conversation (outside the line for writing)",
    "tap": "In the tap counter",
    "source": "On a page",
    "library": "In the library",
    "jobs": "In the list of jobs",
    "list": "In any other list",
    "page": "In any other text",
}
KEY_NAMES = {
    "slash": "/",
    "question_mark": "?",
    "space": "Space",
    "tab": "Tab",
    "enter": "Enter",
}
CHOICES = tuple("123456789")
"""Keys that answer the open question."""


def at(place: Place) -> tuple[Action, ...]:
    """Return what can be done in a place, in the table's order."""
    return tuple(action for action in ACTIONS if action.place == place)


def bindings(
    place: Place, own: Iterable[str] | None = None, others: str = ""
) -> list[BindingType]:
    """Return the keys of a place for a screen.

    Parameters
    ----------
    place : str
    own : iterable of str, optional
        Names of the actions that the screen does itself; None is all of them.
    others : str
        Who does the rest, such as ``app``.
    """
    return [
        Binding(
            action.key,
            action.name
            if own is None or action.name in own
            else f"{others}.{action.name}",
            action.label,
            show=False,
            # Focus moves before the next key is handed out, however fast it follows.
            priority=action.key == "tab",
        )
        for action in at(place)
    ]


def key_name(action: Action) -> str:
    """Return the key as it stands on the keyboard."""
    return KEY_NAMES.get(action.key, action.key)


def found(text: str, actions: Iterable[Action]) -> list[Action]:
    """Return the actions that a typed word means, the nearest first."""
    asked = text.strip().lstrip("/").casefold()
    ranked = [(rank, action) for action in actions if (rank := _rank(action, asked))]
    ranked.sort(key=lambda pair: pair[0])
    return [action for _, action in ranked]


def _rank(action: Action, asked: str) -> int:
    """Return how near an action is to a word, 1 the nearest; 0 is not at all."""
    if not asked or action.name.startswith(asked):
        return 1
    if action.label.startswith(asked):
        return 2
    return 3 if asked in f"{action.label} {action.help}".casefold() else 0
