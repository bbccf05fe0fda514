"""Whether what a pack says applies to the unit at hand: confirmed, possible, excluded.

What is not known never excludes and never confirms.
"""

from __future__ import annotations

from assistant.record import Record, Scope
from assistant.rules.fittings import (
    compare_fitted,
    compare_settings,
    settings_in,
    settings_together,
    together,
    without,
)
from assistant.rules.patterns import can_match, fully_read
from assistant.rules.plates import COMPARED, compare_words
from assistant.rules.ranges import Verdict
from assistant.rules.serials import compare_built, compare_serial, compare_version

__all__ = [
    "Plate",
    "Verdict",
    "laid_over",
    "match_both",
    "match_scopes",
    "missing_for",
    "verdicts_of",
]


class Plate(Record):
    """What is known of the unit; None is not known.

    A model may hold ``?`` for a character that cannot be read and end in ``*`` where
    only its beginning is known. `built` is a year, ``2023-W14`` or ``2023-04``.
    `switch_settings`, `fitted` and `not_fitted` are lists written with commas.
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
    board_pn: str | None = None
    firmware: str | None = None
    built: str | None = None
    series: str | None = None
    family: str | None = None
    fitted: str | None = None
    not_fitted: str | None = None


def laid_over(before: Plate, told: Plate) -> Plate:
    """Return what is known once more was told: the later word counts.

    Settings and parts add up; a part told to be there is no longer missing.

    Examples
    --------
    >>> plate = Plate(voltage="230", switch_settings="SW1 on", not_fitted="drain pump")
    >>> more = Plate(voltage="115", switch_settings="SW2 off", fitted="drain pump")
    >>> plate = laid_over(plate, more)
    >>> plate.voltage, plate.switch_settings, plate.fitted, plate.not_fitted
    ('115', 'SW1 on, SW2 off', 'drain pump', None)
    """
    update: dict[str, str | None] = told.model_dump(exclude_none=True)
    if told.switch_settings and settings_in(told.switch_settings):
        update["switch_settings"] = settings_together(
            before.switch_settings, told.switch_settings
        )
    if told.fitted or told.not_fitted:
        there = without(before.fitted, told.not_fitted)
        missing = without(before.not_fitted, told.fitted)
        update["fitted"] = together(there, told.fitted)
        update["not_fitted"] = together(missing, told.not_fitted)
    return before.model_copy(update=update)


_MODELS = {"outdoor": ("outdoor_model",), "indoor": ("indoor_model",)}
_OTHER = {"outdoor": "indoor", "indoor": "outdoor"}
UNNAMED = "some_models"
"""No plate item decides what a document only calls "some models"."""


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
        fields = verdicts_of(scope, plate)
        if "excluded" not in fields.values():
            wanted |= {
                name for name, verdict in fields.items() if verdict != "confirmed"
            }
    named = {slot for name in wanted for slot in _slots(name, scopes)}
    if "serial" in named and plate.serial is not None:
        # The serial was read and does not fit the format: the date may still decide.
        named = (named - {"serial"}) | ({"built"} if plate.built is None else set())
    return tuple(name for name in Plate.model_fields if name in named)


def _slots(field: str, scopes: tuple[Scope, ...]) -> tuple[str, ...]:
    if field == UNNAMED:
        return ()
    roles = {scope.unit_role or "" for scope in scopes if getattr(scope, field, None)}
    if field == "paired_with":
        roles = {_OTHER.get(role, "") for role in roles}
    elif field != "models":
        return _NAMES.get(field, (field,))
    slots = {_MODELS.get(role, ()) for role in roles}
    if slots and () not in slots:
        return tuple(slot for held in slots for slot in held)
    return ("outdoor_model", "indoor_model")


_NAMES = {
    "settings": ("switch_settings",),
    "not_fitted": ("fitted",),
}
"""Fields of a scope that the plate holds under another name."""


def _scope(scope: Scope, plate: Plate) -> Verdict:
    verdicts = verdicts_of(scope, plate).values()
    if "excluded" in verdicts:
        return "excluded"
    return "confirmed" if verdicts and set(verdicts) == {"confirmed"} else "possible"


def verdicts_of(scope: Scope, plate: Plate) -> dict[str, Verdict]:
    """Return the verdict of each field that the scope states."""
    found: dict[str, Verdict] = {}
    if scope.models or scope.exclude:
        found["models"] = _models(scope, plate)
    if scope.paired_with:
        found["paired_with"] = _paired(scope, plate)
    for name, compare in COMPARED.items():
        stated, read = getattr(scope, name), getattr(plate, name)
        if stated is not None:
            found[name] = "possible" if read is None else compare(stated, read)
    if scope.unit_role is not None and not (
        scope.models and scope.unit_role in _MODELS
    ):
        found["unit_role"] = (
            "possible"
            if plate.unit_role is None
            else compare_words(scope.unit_role, plate.unit_role)
        )
    if scope.some_models:
        found[UNNAMED] = "possible"
    return found | _made(scope, plate) | _equipped(scope, plate)


def _made(scope: Scope, plate: Plate) -> dict[str, Verdict]:
    """Compare when the unit was made, and what its board says of itself."""
    found: dict[str, Verdict] = {}
    if scope.serial is not None:
        found["serial"] = _serial(scope, plate)
    if scope.board_pn:
        told = [plate.board_pn] if plate.board_pn else []
        found["board_pn"] = _fits(scope.board_pn, told) if told else "possible"
    if scope.firmware is not None:
        found["firmware"] = (
            "possible"
            if plate.firmware is None
            else compare_version(scope.firmware, plate.firmware)
        )
    return found


def _serial(scope: Scope, plate: Plate) -> Verdict:
    """Compare the serial number; a build date where the serial decides nothing."""
    stated = scope.serial
    verdict: Verdict = "possible"
    if stated is not None and plate.serial is not None:
        verdict = compare_serial(stated, plate.serial)
    if stated is not None and verdict == "possible" and plate.built is not None:
        verdict = compare_built(stated, plate.built)
    return verdict


def _equipped(scope: Scope, plate: Plate) -> dict[str, Verdict]:
    """Compare switch settings and fitted parts."""
    found: dict[str, Verdict] = {}
    if scope.settings:
        found["settings"] = compare_settings(scope.settings, plate.switch_settings)
    if scope.fitted:
        found["fitted"] = compare_fitted(scope.fitted, plate.fitted, plate.not_fitted)
    if scope.not_fitted:
        found["not_fitted"] = compare_fitted(
            scope.not_fitted, plate.not_fitted, plate.fitted
        )
    return found


def _paired(scope: Scope, plate: Plate) -> Verdict:
    """Compare the model of the other unit of a pair."""
    slots = _MODELS.get(_OTHER.get(scope.unit_role or "", ""), ())
    known = [
        model
        for slot in slots or ("outdoor_model", "indoor_model")
        if (model := getattr(plate, slot))
    ]
    if not known:
        return "possible"
    verdict = _fits(scope.paired_with, known)
    every = len(known) == len(slots or ("outdoor_model", "indoor_model"))
    return verdict if verdict != "excluded" or every else "possible"


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
