"""`python -m tui` is the command `faultleaf`."""

from __future__ import annotations

import sys

from tui.main import main

if __name__ == "__main__":
    sys.exit(main())
