"""Every public law states its units, limits and source, and works an example."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable
from types import ModuleType

import pytest

from assistant import checks
from assistant.checks.law import Law

_FOUND = [
    importlib.import_module(f"assistant.checks.{module.name}")
    for module in pkgutil.iter_modules(checks.__path__)
]
MODULES = tuple(m for m in _FOUND if "\n@stated(" in inspect.getsource(m))
Function = Callable[..., object]
UNITS = r"name|dK|W|m3/s|kg/m|kg/m3|J/kg|V/ohm|K/Pa|K|ohm|" + (
    r"V|A|F|Hz|s|m|m2|kg|J|Pa|PaG|1|%|digits|any unit|unit of `\w+`"
)


def public(module: ModuleType) -> list[tuple[str, Function]]:
    return [
        (f"{module.__name__}.{name}", function)
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_")
    ]


LAWS = dict(pair for module in MODULES for pair in public(module))


def text(name: str) -> str:
    return inspect.getdoc(LAWS[name]) or ""


def section(name: str, heading: str) -> str:
    found = re.search(
        rf"^{heading}\n-+\n(.*?)(?=^\S[^\n]*\n-+$|\Z)", text(name), re.M | re.S
    )
    assert found, f"{name} lacks {heading}"
    return found[1]


def test_the_laws_are_found() -> None:
    assert len(LAWS) >= 13


@pytest.mark.parametrize("name", LAWS)
def test_every_argument_is_documented_with_its_unit(name: str) -> None:
    parameters = section(name, "Parameters")

    for argument in inspect.signature(LAWS[name]).parameters:
        entry = re.search(
            rf"^[^\n]*\b{argument}\b[^\n]*\n((?:[ ]+[^\n]*\n?)+)", parameters, re.M
        )
        assert entry, f"{name}: {argument} is not documented"
        told = entry[1]
        units = re.search(rf"\[(?:{UNITS})\]", told)
        assert units, f"{name}: {argument} has no unit"


@pytest.mark.parametrize("name", LAWS)
def test_the_result_has_a_unit_or_is_a_verdict(name: str) -> None:
    returns = section(name, "Returns")

    assert re.search(r"\[.+\]", returns) or "inconclusive" in returns


@pytest.mark.parametrize("name", LAWS)
def test_formula_limits_and_source_are_printed(name: str) -> None:
    notes, source = section(name, "Notes"), section(name, "References")

    assert re.search(r"Limits:\n\n(?:- .+ to .+\n)+", notes)
    assert source.strip()


@pytest.mark.parametrize("name", LAWS)
def test_an_example_is_worked(name: str) -> None:
    assert doctest.DocTestParser().get_examples(text(name))


@pytest.mark.parametrize("module", MODULES)
def test_every_law_written_is_printed_into_a_function(module: ModuleType) -> None:
    laws = [value for value in vars(module).values() if isinstance(value, Law)]
    printed = "\n".join(text(name) for name, _ in public(module))

    for law in laws:
        assert law.formula in printed
        assert law.source in printed
        assert law.limits
        for limit in law.limits:
            assert str(limit) in printed
            assert limit.low < limit.high
            assert limit.basis
