"""``python -m calculators``."""

import os
import sys

from calculators.outputs.cli import main

try:
    status = main()
    sys.stdout.flush()
except BrokenPipeError:  # the reader, such as head, has gone: say nothing more
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    status = 0
except KeyboardInterrupt:
    status = 130
raise SystemExit(status)
