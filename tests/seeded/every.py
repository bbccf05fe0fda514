"""Mistakes of the kinds a shop makes, one a pack, which the loader refuses."""

from __future__ import annotations

from itertools import chain

from tests.seeded.form import Seeded
from tests.seeded.in_head import HEAD
from tests.seeded.in_signals import SIGNALS
from tests.seeded.in_tables import TABLES
from tests.seeded.in_times import TIMES
from tests.seeded.in_work import WORK

_GROUPS = (SIGNALS, HEAD, TIMES, WORK, TABLES)
SEEDED: dict[str, Seeded] = dict(chain.from_iterable(g.items() for g in _GROUPS))
