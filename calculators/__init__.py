"""Worked calculators for evacuating refrigeration and air-conditioning systems."""
