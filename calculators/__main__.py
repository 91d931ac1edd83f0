"""``python -m calculators``."""

from calculators.outputs.cli import main

raise SystemExit(main())
