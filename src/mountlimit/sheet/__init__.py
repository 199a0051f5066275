"""The sheet: one page that a hobbyist looks at and an adviser checks.

``content`` makes it from an assessment as plain blocks of text, tables and pictures; ``html``,
``markdown`` and ``as_data`` only write those blocks down.
"""
