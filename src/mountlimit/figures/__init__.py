"""Figures of the report, one file per figure: ``read`` takes numbers from the answer, ``draw`` draws
them, ``alt`` says them in words. matplotlib is loaded when this package is imported, not before.
"""
