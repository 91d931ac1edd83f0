"""Constants of nature and of definition, each with its unit and source."""

MOLAR_GAS_CONSTANT = 8.31446261815324  # J/(mol K), exact, k * N_A of the SI (BIPM-SI-9)
BOLTZMANN_CONSTANT = 1.380649e-23  # J/K, exact (BIPM-SI-9)
STANDARD_GRAVITY = 9.80665  # m/s2, exact (NIST-SP811, appendix B.8)
STANDARD_ATMOSPHERE = 101325.0  # Pa, exact (NIST-SP811, appendix B.8)
TORR = STANDARD_ATMOSPHERE / 760.0  # Pa, exact by definition (NIST-SP811, appendix B.8)
MICRON = TORR / 1000.0  # Pa, one millitorr; what the trade calls a micron of mercury
ZERO_CELSIUS = 273.15  # K, exact (BIPM-SI-9)
YEAR = 31_557_600.0  # s, Julian year of 365.25 d; a year of 365 d is 0.07 % shorter

WATER_TRIPLE_TEMPERATURE = 273.16  # K (IAPWS-R14-08)
WATER_TRIPLE_PRESSURE = 611.657  # Pa (IAPWS-R14-08); 4,587.8 micron
WATER_CRITICAL_TEMPERATURE = 647.096  # K (IAPWS-SR1-86)
WATER_CRITICAL_PRESSURE = 22.064e6  # Pa (IAPWS-SR1-86)
WATER_MOLAR_MASS = 0.018015268  # kg/mol (IAPWS-R6-95)
