"""mountlimit: how many motor amperes a home-made chain-drive motor mount can take, and what gives first."""

from __future__ import annotations

__version__ = "0.1.0"
