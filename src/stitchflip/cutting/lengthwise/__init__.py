"""Lengths out of lengths, in whole units, with proof."""
