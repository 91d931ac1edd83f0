"""A vessel, its leaks, its water and its gauge, simulated from first principles.

Written apart from the judge and sharing none of its equations: gas leaves oil
by the full diffusion series, walls give up gas over a spread of energies,
water evaporates and freezes with a heat balance, pressures even out between
two halves, gauges lag, count in bands and wander, and the temperature drifts.
"""
