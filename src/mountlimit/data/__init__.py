"""Tables of the trade: chains, threads, bolts, bearings, keys, set screws, friction, stock."""
