"""Mistakes in `sensors.yaml` and the tables it names."""

from __future__ import annotations

from tests.pack_folders import GOOD
from tests.seeded.form import Seeded

TABLES: dict[str, Seeded] = {
    "a table that is not there": (
        "sensors.yaml",
        "table: discharge.csv",
        "table: dischrage.csv",
        "table: dischrage.csv",
        "did you mean `discharge.csv`?",
    ),
    "a table outside the pack": (
        "sensors.yaml",
        "table: discharge.csv",
        "table: ../discharge.csv",
        "table: ../discharge.csv",
        "lies outside the pack",
    ),
    "a misspelt column": (
        "tables/discharge.csv",
        "resistance kohm",
        "resistence kohm",
        "resistence kohm",
        "unknown column `resistence kohm`; did you mean `resistance`?",
    ),
    "a cell that is no number": (
        "tables/discharge.csv",
        "20,68,",
        "20,6B,",
        "20,6B,",
        "resistance: '6B'",
    ),
    "a resistance that turns back": (
        "tables/discharge.csv",
        "20,68,",
        "20,6.8,",
        "60,14.5,",
        "does not fall from 6.8 kohm on line 3",
    ),
    "a temperature given twice": (
        "tables/discharge.csv",
        "60,14.5",
        "20,14.5",
        "20,14.5",
        "temperature 20 degC is there already, on line 3",
    ),
    "a decimal comma in a table": (
        "tables/discharge.csv",
        '20,68,40,"20 68"',
        '20,68,5,40,"20 68"',
        "20,68,5",
        "has more cells than the header",
    ),
    "a cell left out of a table": (
        "tables/discharge.csv",
        "20,68,",
        "20,,",
        "20,,",
        "resistance: ",
    ),
    "the cells of a row exchanged": (
        "tables/discharge.csv",
        "0,180,40",
        "180,0,40",
        "180,0,40",
        "resistance: 0 kohm is not above zero",
    ),
    "a page of a table that is a word": (
        "tables/discharge.csv",
        "20,68,40",
        "20,68,p40",
        "20,68,p40",
        "page `p40` is not a page number from 1",
    ),
    "a quote that is never closed": (
        "tables/discharge.csv",
        '"60 14.5"',
        '"60 14.5',
        '"60 14.5',
        "is not CSV here",
    ),
    "two columns of one name": (
        "tables/discharge.csv",
        "resistance kohm,page",
        "resistance kohm,resistance ohm,page",
        "resistance ohm",
        "column `resistance` is written twice",
    ),
    "a table with a row of a document that is not named": (
        "tables/discharge.csv",
        GOOD["tables/discharge.csv"],
        "temperature degC,resistance kohm,doc,page,quote\n0,180,servise,40,0 180\n"
        "20,68,service,40,20 68\n60,14.5,service,40,60 14.5\n",
        "servise",
        "`servise` is not a document of this pack",
    ),
}
