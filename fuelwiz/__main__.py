"""`python -m fuelwiz`."""

import sys

from fuelwiz.cli import main

if __name__ == "__main__":
    sys.exit(main())
