"""``python -m mountlimit``."""

from .cli import main

main()
