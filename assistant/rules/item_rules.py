"""What one written item must keep beyond its shape: limits in order, ways out named."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.kinds import BandCheck, BetaSensor, CheckBase, LookCheck
from assistant.record import Item
from assistant.rules.findings import Finding
from assistant.rules.mistakes import Path, suggest
from assistant.rules.references import results_of
from assistant.rules.scope_rules import check_scopes
from assistant.signals.kinds import MultiFault, SeveralLamps, SignalBase
from assistant.timing.stop_kinds import StopBase, resets_at
from assistant.timing.wait_kinds.base import WaitBase
from assistant.timing.wait_kinds.frost import Defrost
from assistant.timing.wait_kinds.runs import OrderStep, StartUpOrder
from assistant.units.quantity import Quantity


def check_item(item: Item) -> Iterator[Finding]:
    """Yield what is wrong inside one item, whatever else the pack holds."""
    yield from check_scopes(item.applies_to, ("applies_to",))
    match item:
        case SignalBase():
            yield from _signal(item)
        case MultiFault():
            yield from _policy(item)
        case WaitBase():
            yield from _wait(item)
        case StopBase():
            yield from _stop(item)
        case CheckBase():
            yield from _check(item)
        case BetaSensor():
            yield from _beta(item)
        case _:
            pass


def _signal(item: SignalBase) -> Iterator[Finding]:
    if item.limit_days is not None and item.operates is not True:
        told = "`limit_days` counts the days that the unit runs on"
        yield Finding(("limit_days",), told, "add `operates: true`")
    if isinstance(item, SeveralLamps):
        yield from _lamps(item)


def _policy(item: MultiFault) -> Iterator[Finding]:
    policy = item.multi_fault_policy
    if item.priority and policy != "priority":
        told = f"`priority` has no use where the policy is {policy}"
        yield Finding(("priority",), told)


def _beta(item: BetaSensor) -> Iterator[Finding]:
    for name in ("r0", "beta"):
        if getattr(item, name).value <= 0:
            yield Finding((name,), f"`{name}` is not above zero")


def _lamps(item: SeveralLamps) -> Iterator[Finding]:
    for place, state in enumerate(item.lamps):
        if (state.state == "count") != (state.count is not None):
            yield Finding(
                ("lamps", place),
                "a lamp with `state: count` has a `count`, and no other has",
            )


def _wait(item: WaitBase) -> Iterator[Finding]:
    yield from _rising(item, _LIMITS, ())
    if item.bypass is not None and item.bypass_side_effect is None:
        yield Finding(
            ("bypass",),
            "`bypass` is without `bypass_side_effect`",
            "say what the board ignores meanwhile",
        )
    yield from _lengths(item)
    if isinstance(item, StartUpOrder):
        yield from _order(item.order, "order")
    if isinstance(item, Defrost):
        yield from _order(item.after, "after")


_LIMITS = ("minimum", "usual", "give_up")


def _lengths(item: WaitBase) -> Iterator[Finding]:
    """Yield further lengths of a wait that are below zero."""
    for field in type(item).model_fields:
        held = getattr(item, field)
        several = isinstance(held, tuple)
        for place, one in enumerate(held if several else (held,)):
            if field in _LIMITS or not isinstance(one, Quantity) or one.unit != "s":
                continue
            if one.value < 0:
                at: Path = (field, place) if several else (field,)
                yield Finding(at, f"`{field}` {one.text} is below zero")


def _order(steps: tuple[OrderStep, ...], field: str) -> Iterator[Finding]:
    known = ["trigger"]
    for place, step in enumerate(steps):
        at: Path = (field, place)
        if step.after not in known:
            yield Finding(
                (*at, "after"),
                f"`after: {step.after}` names no part above it",
                suggest(step.after, known) or "write `trigger` or an earlier part",
            )
        if step.part in known:
            yield Finding((*at, "part"), f"part `{step.part}` is there already")
        known.append(step.part)
        yield from _rising(step, ("earliest", "latest"), at)


def _stop(item: StopBase) -> Iterator[Finding]:
    for at, reset in resets_at(item):
        yield from _rising(reset, ("off_at_least", "off_at_most"), at)
    yield from _above_zero(item, ())
    for place, level in enumerate(getattr(item, "levels", ())):
        yield from _above_zero(level, ("levels", place))


def _above_zero(record: object, at: Path) -> Iterator[Finding]:
    for field in ("window", "within", "retry_after", "release_after"):
        span: Quantity | None = getattr(record, field, None)
        if span is not None and span.value <= 0:
            yield Finding((*at, field), f"{field} {span.text} is not above zero")


def _rising(record: object, fields: tuple[str, ...], at: Path) -> Iterator[Finding]:
    """Yield durations below zero, and a later limit smaller than an earlier one."""
    before: tuple[str, Quantity] | None = None
    for field in fields:
        value: Quantity | None = getattr(record, field)
        if value is None:
            continue
        if value.value < 0:
            yield Finding((*at, field), f"`{field}` {value.text} is below zero")
        if before is not None and value.value < before[1].value:
            yield Finding(
                (*at, field),
                f"`{field}` {value.text} is shorter than "
                f"`{before[0]}` {before[1].text}",
            )
        before = (field, value)


def _check(item: CheckBase) -> Iterator[Finding]:
    allowed = results_of(item)
    named = [outcome.result for outcome in item.outcomes]
    meant = {suggest(result, allowed) for result in named if result not in allowed}
    for place, result in enumerate(named):
        at: Path = ("outcomes", place, "result")
        if result not in allowed:
            hint = suggest(result, allowed) or f"one of {', '.join(allowed)}"
            yield Finding(at, f"result `{result}` is not one of this check", hint)
        elif result in named[:place]:
            yield Finding(at, f"result `{result}` is there already")
    if isinstance(item, LookCheck):
        for option in item.options:
            if option not in named and f"did you mean `{option}`?" not in meant:
                yield Finding(("options",), f"option `{option}` has no outcome")
    if isinstance(item, BandCheck):
        yield from _band(item)


def _band(item: BandCheck) -> Iterator[Finding]:
    if item.low is None and item.high is None:
        yield Finding((), "a band has `low`, `high` or both")
    elif item.low is not None and item.high is not None:
        if item.low.unit != item.high.unit:
            yield Finding(
                ("high",),
                f"`low` {item.low.text} and `high` {item.high.text} differ "
                "in what they measure",
            )
        elif item.low.value > item.high.value:
            yield Finding(
                ("high",),
                f"`high` {item.high.text} is below `low` {item.low.text}",
            )
