"""Write all sample literature: ``python -m kb_samples.making [FOLDER]``."""

from __future__ import annotations

import sys
from pathlib import Path

from kb_samples.making.catalogue import write_all

LITERATURE = Path(__file__).resolve().parent.parent / "literature"


def main(arguments: list[str]) -> int:
    """Write every document into the folder named, or the committed one."""
    folder = Path(arguments[0]) if arguments else LITERATURE
    for path in write_all(folder):
        sys.stdout.write(f"{path.name}\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
