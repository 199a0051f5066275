"""The formulas: one function is one equation, its docstring is its data sheet with the source."""
