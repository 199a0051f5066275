"""Plates: flat facets of six-node triangles, their bolts, contact and stress (SI floats throughout)."""
