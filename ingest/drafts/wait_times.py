"""Waits: `stays off for at least 3 minutes` in a table or a sentence. Pure."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.library.types import TableRow
from ingest.drafts.columns import Printed, cell
from ingest.drafts.facts import forbidden, mark_page, new_row
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.words import DURATION, durations, empty, slug

_TRIGGERS: Sequence[tuple[str, re.Pattern[str]]] = tuple(
    (trigger, re.compile(form, re.IGNORECASE))
    for trigger, form in (
        ("second_reset", r"\bsecond reset\b"),
        ("reset", r"\b(?:first |a |each |every |the )?reset\b"),
        (
            "power_restored",
            r"\b(?:supply|power|mains)\b(?: \w+){0,3}? (?:back|restored|returns?)\b",
        ),
        (
            "power_on",
            r"\b(?:supply|power|mains)(?: (?:is|has been))?(?: (?:switched|turned))? on"
            r"\b|\bpower[- ]?up\b|\bswitch(?:ed|ing) on\b",
        ),
        (
            "lamp_dark",
            r"\b(?:lamp|led|[a-z]{1,3}\d{1,2}) (?:goes|is|has gone) (?:dark|out|off)\b",
        ),
        (
            "compressor_stopped",
            r"\bcompressor (?:has )?stop(?:s|ped)?\b|\bstops? of the compressor\b"
            r"|\b(?:every|any|each|a) stop\b|^stop\b",
        ),
        ("compressor_started", r"\bcompressor (?:has )?start(?:s|ed)\b(?! after)"),
        (
            "defrost_ended",
            r"\b(?:end of|after) (?:the |a )?defrost(?:ing)?\b"
            r"|\bdefrost(?:ing)? (?:has )?ended\b",
        ),
        ("defrost_started", r"\bdefrost(?:ing)?\b"),
        ("setting_changed", r"\b(?:mode|setting)s? (?:is |are )?change[sd]?\b"),
        ("call_for_run", r"\bcalls? for (?:cooling|heat(?:ing)?)\b"),
        (
            "power_off",
            r"\b(?:supply|power|mains)(?: \w+){0,2}? off\b|\bswitch(?:ed)? off\b",
        ),
    )
)
_KINDS: Sequence[tuple[str, re.Pattern[str], tuple[str, ...]]] = tuple(
    (kind, re.compile(form, re.IGNORECASE), triggers)
    for kind, form, triggers in (
        (
            "capacitor_bleed",
            r"\b(?:capacitors?|stored charge|bus)\b[^.]*?\bwait\b"
            r"|\bwait\b[^.]*?\b(?:capacitors?|measure (?:the )?(?:bus|DC|between))\b",
            (),
        ),
        (
            "detection_time",
            r"\bmust (?:last|be|stay)\b[^.]*?\bbefore it (?:counts|is shown)\b",
            (),
        ),
        (
            "minimum_run",
            r"\bruns (?:on )?for at least\b|\bminimum run(?:ning)?[- ]time\b",
            ("compressor_started",),
        ),
        (
            "display_delay",
            r"\b(?:codes?|faults?|number of flashes|displays?)\b[^.]*?"
            r"\b(?:appears?|(?:is|are) shown|comes? up)\b",
            (),
        ),
        (
            "power_off_hold",
            r"\b(?:leave|keep|keeps|left|kept|remain)\b[^.]*?\boff\b"
            r"|\bswitch(?:ed)? off\b[^.]*?\bfor\b",
            ("power_off", "lamp_dark"),
        ),
        (
            "defrost",
            r"\bdefrost(?:ing)?\b[^.]*?\b(?:ends?|lasts?|takes?|at most)\b",
            (),
        ),
        (
            "minimum_off",
            r"\bstays? off\b|\b(?:minimum )?off[- ]time\b|\brestart delay\b"
            r"|\b(?:does|will|can)(?:not| not) (?:re)?start\b",
            ("compressor_stopped",),
        ),
        (
            "start_delay",
            r"\bwaits?\b|\bnothing turns\b|\bdelay(?:ed)?\b|\b(?:re)?starts? (?:only )?"
            r"after\b|\b(?:does|will|can)(?:not| not) (?:re)?start\b|\bstays? off\b",
            (),
        ),
    )
)
_NO_WAIT = re.compile(
    r"\b(?:hold|press|push|blinks?|flash(?:es)? (?:in|every)|lit and|revolutions|in a "
    r"row|no longer counts|sliding window)\b",
    re.IGNORECASE,
)
_LEAST = re.compile(r"\b(?:at least|minimum|not less than|no earlier than)\b", re.I)
_MOST = re.compile(
    r"\b(?:at most|at the latest|not longer than|no longer than)\b", re.I
)
_ABOUT = re.compile(r"\b(?:about|approximately|approx|roughly|some)\b", re.IGNORECASE)
_BEFORE = re.compile(
    r"\b(?:after|from the moment|counted from|once|when)\b(.*)", re.IGNORECASE
)
_RANGE = re.compile(r"\d\s*(?:-|–|to)\s*\d")
_TAIL = re.compile(
    r"(?:\s+(?:for|at|least|most|of|about|within|in|has|the|a|only|,))+$", re.IGNORECASE
)
_LENGTH = re.compile(
    r"(?:\b(?:for|of|in|within)\s+)?(?:\b(?:at least|at most|about|another)\s+)?"
    rf"(?:\d+ (?:to|-) )?{DURATION.pattern}",
    re.IGNORECASE,
)
_NAME_WORDS = 9
_RESETS = ("reset", "second_reset")
_VOLTS = re.compile(r"\b\d+(?:\.\d+)? ?V(?: DC)?\b")
_MARK = re.compile(
    r"\b(?:page|section|table|step)s? \d+(?:[.-]\d+)*|\b[A-Za-z]+-?\d[\w-]*|°", re.I
)
"""Figures that are no quantity: references, labels, numbers of documents."""
_FIGURE = re.compile(r"(?<![\w.])\d+(?:\.\d+)?")
_WITHIN = re.compile(rf"\b(?:within|in) {DURATION.pattern}", re.IGNORECASE)
_OWN_START = ("detection_time",)
"""Kinds whose trigger is their own and need not be said."""
_STARTS = re.compile(r"^(?:after|what starts it|starts? (?:with|at)|trigger)$", re.I)
_HOW_LONG = re.compile(r"^(?:wait|least|time|duration|minimum|delay|usual)\b", re.I)


def looks_like(table: Printed) -> bool:
    """Return whether a column says what starts a wait and another how long it is."""
    after, long = _places(table)
    return after is not None and long is not None


def _places(table: Printed) -> tuple[int | None, int | None]:
    after = [n for n, name in enumerate(table.header) if _STARTS.match(name)]
    long = [n for n, name in enumerate(table.header) if _HOW_LONG.match(name)]
    return (after[0] if after else None), (long[0] if long else None)


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return one row for each row of the table."""
    after, long = _places(table)
    drafted = []
    for row in table.rows:
        said, told = cell(row, after), cell(row, long)
        if empty(said) or empty(told):
            continue
        drafted.append(_of_row(table, row, page, (said, told)))
    return drafted


def _of_row(
    table: Printed, row: TableRow, page: PageView, cells: tuple[str, str]
) -> DraftRow:
    said, told = cells
    drafted = new_row("waits", table, row, page, 0.8)
    triggers = triggers_in(said)
    off = triggers == ["compressor_stopped"]
    drafted.fields["kind"] = "minimum_off" if off else "start_delay"
    _, long = _places(table)
    least = long is not None and re.match("least|min", table.header[long], re.I)
    _say(drafted, f"after {said}", triggers, told)
    if least and "usual" in drafted.fields:
        drafted.fields["minimum"] = drafted.fields.pop("usual")
    return drafted


def of_sentence(sentence: str, page: PageView) -> DraftRow | None:
    """Return the wait that a sentence tells, or None."""
    if not durations(sentence) or _NO_WAIT.search(sentence):
        return None
    triggers = _trigger_of(sentence)
    kind = _kind_of(sentence, triggers)
    if not kind:
        return None
    row = DraftRow("waits", "", {"kind": kind}, page.number, sentence, 0.7)
    mark_page(row, page)
    _say(row, sentence, triggers, sentence)
    return row


def triggers_in(text: str) -> list[str]:
    """Return what a text says a wait starts with, each once.

    Examples
    --------
    >>> triggers_in("After every stop"), triggers_in("a second reset")
    (['compressor_stopped'], ['second_reset'])
    """
    found, left = [], text
    for trigger, form in _TRIGGERS:
        if form.search(left):
            found.append(trigger)
            left = form.sub(" ", left)
    return found


def _trigger_of(sentence: str) -> list[str]:
    """Return the triggers behind `after` and the like, else those of the sentence."""
    behind = _BEFORE.search(sentence)
    near = triggers_in(behind[1]) if behind else []
    return near or triggers_in(sentence)


def _kind_of(sentence: str, triggers: list[str]) -> str:
    for kind, form, among in _KINDS:
        if form.search(sentence) and (not among or set(among) & set(triggers)):
            return kind
    return ""


def _say(row: DraftRow, text: str, triggers: list[str], told: str) -> None:
    name = _LENGTH.sub(" ", text).replace(" ,", ",").strip(" .,;")
    _say_kind(row, text, triggers)
    row.fields["name"] = _TAIL.sub("", " ".join(name.split()[:_NAME_WORDS]))
    if row.fields["kind"] in _OWN_START:
        triggers = []
    elif len(triggers) == 1:
        row.fields["trigger"] = triggers[0]
    else:
        many = f"several could: {', '.join(triggers)}" if triggers else "it is not said"
        row.doubt("trigger", f"what starts the wait? {many}", costs=0.6)
    _say_duration(row, told)
    _doubt_figures(row, text)
    if forbidden(text):
        row.doubt("step", f"the engine refuses it as a step: {forbidden(text)}")
    what = triggers[0].replace("_", "-") if len(triggers) == 1 else slug(text)
    row.id = f"wait-{row.fields['kind'].replace('_', '-')}-{what}"


def _say_kind(row: DraftRow, text: str, triggers: list[str]) -> None:
    """Put in what only some kinds say, and what their own trigger is."""
    kind = row.fields["kind"]
    if kind == "start_delay" and len(triggers) == 1 and triggers[0] in _RESETS:
        row.fields["kind"] = "reset_delay"
    if kind == "capacitor_bleed":
        volts = {found[0] for found in _VOLTS.finditer(text)}
        if len(volts) == 1:
            row.fields["below"] = volts.pop()
        if not set(triggers) & {"power_off", "lamp_dark"}:
            triggers.clear()


def _doubt_figures(row: DraftRow, text: str) -> None:
    """Doubt a wait beside which another figure stands: it may change what it says."""
    left = _MARK.sub(" ", DURATION.sub(" ", text))
    used = str(row.fields.get("below", ""))
    other = [each for each in _FIGURE.findall(left) if each not in used]
    window = _WITHIN.search(text)
    if row.fields.get("trigger") == "second_reset" and window:
        row.fields["within"] = f"{window[1]} {window[2].rstrip('.')}"
    elif row.table:
        other += durations(text)
    if other:
        told = f"another figure stands beside it: {', '.join(other)}"
        row.doubt("figures", told, costs=0.7)


def _say_duration(row: DraftRow, told: str) -> None:
    """Put in the one duration as minimum, give-up or usual; several are a doubt."""
    found = durations(told)
    if len(found) != 1 or _RANGE.search(told):
        what = f"several times: {told}" if found else f"`{told}` is no time"
        row.doubt("duration", f"how long is the wait? {what}", costs=0.6)
        return
    if _LEAST.search(told) or row.fields["kind"] == "detection_time":
        row.fields["minimum"] = found[0]
    elif _MOST.search(told):
        row.fields["give_up"] = found[0]
    else:
        row.fields["usual"] = found[0]
    if _ABOUT.search(told):
        row.fields["approx"] = True
