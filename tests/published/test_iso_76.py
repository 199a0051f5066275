"""ISO 76:2006, Rolling bearings: static load ratings."""

from printed import exactly

from mountlimit.formulas import bearings


def test_static_load_of_deep_groove_bearings() -> None:
    """Computed: P0 = 0.6 Fr + 0.5 Fa but not under Fr. BST-01."""
    assert bearings.equivalent_static_load(1000.0, 500.0) == exactly(1000.0)
    assert bearings.equivalent_static_load(1000.0, 2000.0) == exactly(1600.0)
