"""What a text is read in the light of: words of the packs, and what was asked."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words of the packs in force.

    `models` are patterns or names. `sensors` pairs a role with what people call
    it; `checks` a global id with what people call it; `options` the global id of a
    look check with its answers; `stop_phrases` a global id with its phrases. The rest
    are names as the packs write them.
    """

    models: tuple[str, ...] = ()
    sensors: tuple[tuple[str, tuple[str, ...]], ...] = ()
    checks: tuple[tuple[str, tuple[str, ...]], ...] = ()
    labels: tuple[str, ...] = ()
    boards: tuple[str, ...] = ()
    colours: tuple[str, ...] = ()
    stop_phrases: tuple[tuple[str, tuple[str, ...]], ...] = ()
    protection_events: tuple[str, ...] = ()
    codes: tuple[str, ...] = ()
    """Display codes, as the packs spell them."""
    options: tuple[tuple[str, tuple[str, ...]], ...] = ()
    devices: tuple[tuple[str, str], ...] = ()
    """Devices whose stops are counted alone, each with the stop it counts for."""
    series: tuple[str, ...] = ()
    families: tuple[str, ...] = ()
    fittings: tuple[str, ...] = ()
    """Parts that a unit may or may not have, where a pack makes it a condition."""


@dataclass(frozen=True, slots=True)
class Pending:
    """What was asked last.

    Attributes
    ----------
    slot : str
        ``count``, ``pause``, ``colour``, ``box``, ``board``, ``label``, ``code``,
        ``state``, ``phase``, ``short``, ``long``, ``rate``, ``window``, ``emitter``,
        ``sub``, ``display_level``, ``stored``, ``precondition:<words>``,
        ``unit``, ``unit:<plate item>``, ``role``, ``mode``,
        ``time:<trigger>``, ``context:<name>``, ``look:<check>``,
        ``unit_of:<measurand>``, ``reading:<check>``, ``temperature:<check>``,
        ``lamp:<label>``, ``reset_which``, ``reset_by``, ``off_time:<from when>``,
        ``before_reset``, ``attempt``; empty when nothing was asked.
    options : tuple of str
        The answers in the order they were put; "the other one" is the second of two.
        For ``unit_of`` they are the quantities in question, such as ``9.8 kohm``.
    last_reading_of : str, optional
        Measurand of the last reading, for "sorry kilohms, not ohms".
    last_reading : str
        That reading as written, such as ``9.8 ohm``.
    """

    slot: str = ""
    options: tuple[str, ...] = ()
    last_reading_of: str | None = None
    last_reading: str = ""

    @property
    def about(self) -> tuple[str, str]:
        """Return the slot's name and what follows its colon."""
        name, _, subject = self.slot.partition(":")
        return name, subject
