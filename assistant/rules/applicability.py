"""Whether what a pack says applies to the unit at hand: confirmed, possible, excluded.

What is not known never excludes and never confirms.
"""

from __future__ import annotations

from assistant.record import Record, Scope
from assistant.rules.patterns import can_match, fully_read
from assistant.rules.plates import (
    Verdict,
    compare_capacity,
    compare_phase,
    compare_serial,
    compare_voltage,
    compare_words,
)

__all__ = ["Plate", "Verdict", "match_both", "match_scopes", "missing_for"]


class Plate(Record):
    """What is known of the unit; None is not known.

    A model may hold ``?`` for a character that cannot be read and end in ``*`` where
    only its beginning is known.
    """

    outdoor_model: str | None = None
    indoor_model: str | None = None
    serial: str | None = None
    voltage: str | None = None
    phase: str | None = None
    refrigerant: str | None = None
    charge: str | None = None
    board_mark: str | None = None
    switch_settings: str | None = None
    capacity_class: str | None = None
    unit_role: str | None = None
    market: str | None = None


_COMPARED = {
    "voltage": compare_voltage,
    "phase": compare_phase,
    "board_mark": compare_words,
    "capacity_class": compare_capacity,
    "market": compare_words,
}
_MODELS = {"outdoor": ("outdoor_model",), "indoor": ("indoor_model",)}


def match_scopes(scopes: tuple[Scope, ...], plate: Plate) -> Verdict:
    """Return how a unit fits alternatives, of which one must agree in every field.

    No scope, or one that states nothing, leaves it possible. Alternatives for the
    outdoor and for the indoor unit describe halves of one system: where one half's
    model is known and fits none of its own, an unknown other half does not keep the
    whole possible.

    Examples
    --------
    >>> scopes = (Scope(models=("KX-24*",), voltage="230"),)
    >>> match_scopes(scopes, Plate(outdoor_model="KX24A", voltage="208/230"))
    'confirmed'
    >>> match_scopes(scopes, Plate(outdoor_model="KX24A"))
    'possible'
    >>> match_scopes(scopes, Plate(outdoor_model="KX36A"))
    'excluded'
    """
    if not scopes:
        return "possible"
    by_role: dict[str, list[Verdict]] = {}
    told_roles: set[str] = set()
    for scope in scopes:
        role = scope.unit_role or ""
        by_role.setdefault(role, []).append(_scope(scope, plate))
        if _is_told(role, plate) or _known_for(scope, plate):
            told_roles.add(role)
    if any("confirmed" in verdicts for verdicts in by_role.values()):
        return "confirmed"
    told = [by_role[role] for role in by_role if role in told_roles]
    deciding = told or list(by_role.values())
    fits = any("possible" in verdicts for verdicts in deciding)
    return "possible" if fits else "excluded"


def _is_told(role: str, plate: Plate) -> bool:
    """Whether a role's own model is known, or its scopes ask for no one's model."""
    return role not in _MODELS or any(getattr(plate, slot) for slot in _MODELS[role])


def match_both(
    pack: tuple[Scope, ...], item: tuple[Scope, ...], plate: Plate
) -> Verdict:
    """Return how a unit fits an item: its own scope narrows that of its pack."""
    stated = [match_scopes(scopes, plate) for scopes in (pack, item) if scopes]
    for verdict in ("excluded", "possible", "confirmed"):
        if verdict in stated:
            return verdict
    return "possible"


def missing_for(scopes: tuple[Scope, ...], plate: Plate) -> tuple[str, ...]:
    """Return the plate fields that would decide, in the order of `Plate`.

    Examples
    --------
    >>> scopes = (Scope(models=("KX-24",), board_mark="orange"),)
    >>> missing_for(scopes, Plate(outdoor_model="KX-24"))
    ('board_mark',)
    """
    if match_scopes(scopes, plate) != "possible":
        return ()
    wanted: set[str] = set()
    for scope in scopes:
        fields = _fields(scope, plate)
        if "excluded" not in fields.values():
            wanted |= {
                name for name, verdict in fields.items() if verdict != "confirmed"
            }
    named = {slot for name in wanted for slot in _slots(name, scopes)}
    return tuple(name for name in Plate.model_fields if name in named)


def _slots(field: str, scopes: tuple[Scope, ...]) -> tuple[str, ...]:
    if field != "models":
        return (field,)
    roles = {_MODELS.get(scope.unit_role or "", ()) for scope in scopes if scope.models}
    if roles and () not in roles:
        return tuple(slot for role in roles for slot in role)
    return ("outdoor_model", "indoor_model")


def _scope(scope: Scope, plate: Plate) -> Verdict:
    verdicts = _fields(scope, plate).values()
    if "excluded" in verdicts:
        return "excluded"
    return "confirmed" if verdicts and set(verdicts) == {"confirmed"} else "possible"


def _fields(scope: Scope, plate: Plate) -> dict[str, Verdict]:
    """Return the verdict of each field that the scope states."""
    found: dict[str, Verdict] = {}
    if scope.models or scope.exclude:
        found["models"] = _models(scope, plate)
    for name, compare in _COMPARED.items():
        stated, read = getattr(scope, name), getattr(plate, name)
        if stated is not None:
            found[name] = "possible" if read is None else compare(stated, read)
    if scope.serial is not None:
        found["serial"] = (
            "possible"
            if plate.serial is None
            else compare_serial(scope.serial, plate.serial)
        )
    if scope.unit_role is not None and not (
        scope.models and scope.unit_role in _MODELS
    ):
        found["unit_role"] = (
            "possible"
            if plate.unit_role is None
            else compare_words(scope.unit_role, plate.unit_role)
        )
    return found


def _models(scope: Scope, plate: Plate) -> Verdict:
    """Compare the models known; with a stated unit role, that unit's model first."""
    known = _known_for(scope, plate)
    if not known:
        return "possible"
    left_out = _fits(scope.exclude, known)
    if left_out == "confirmed":
        return "excluded"
    within = _fits(scope.models, known) if scope.models else "confirmed"
    if within == "confirmed" and left_out == "possible":
        return "possible"
    return within


def _known_for(scope: Scope, plate: Plate) -> list[str]:
    """Return the models a scope is compared with.

    A model is often told without saying of which unit. Under the wrong unit it still
    counts where it fits; only the model of the stated unit excludes.
    """
    every = [model for model in (plate.outdoor_model, plate.indoor_model) if model]
    if scope.unit_role not in _MODELS:
        return every
    own = [
        model for slot in _MODELS[scope.unit_role] if (model := getattr(plate, slot))
    ]
    elsewhere = [m for m in every if _fits(scope.models, [m]) != "excluded"]
    return own or elsewhere


def _fits(patterns: tuple[str, ...], models: list[str]) -> Verdict:
    hits = [
        model
        for model in models
        if any(can_match(pattern, model) for pattern in patterns)
    ]
    if any(fully_read(model) for model in hits):
        return "confirmed"
    return "possible" if hits else "excluded"
