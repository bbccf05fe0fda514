"""A sensor's published table that several tests of references hold to."""

from __future__ import annotations

TABLE_10K = {
    -30: 177000,
    -20: 97060,
    -10: 55319,
    0: 32654,
    10: 19903,
    20: 12493,
    25: 10000,
    30: 8056,
    40: 5327,
    45: 4370,
    48: 3889,
}
"""ohm; Carrier 30HX controls manual, table 39B."""
