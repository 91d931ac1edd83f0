"""Bottom layer: plain functions, SI floats in and out, ``math`` only."""
