"""Where gas comes from: a leak, oil, walls, water. Each gives pressure against time.

Pressures [Pa] are those the gas adds to the vessel at its first temperature.
Constants here are written out again on purpose: nothing is taken from the
package that is being tested.
"""

import math
from dataclasses import dataclass, field

GAS_CONSTANT = 8.314462618  # J/(mol K)
WATER = 0.018015  # kg/mol
ATMOSPHERE = 101_325.0  # Pa


@dataclass(frozen=True)
class Leak:
    """Air through a capillary: laminar, so as the difference of the squared pressures."""

    throughput: float  # Pa m3/s into a vacuum
    volume: float  # m3

    def curve(self, times):
        pressure, before, out = 0.0, 0.0, []
        for at in times:
            drive = 1.0 - (pressure / ATMOSPHERE) ** 2
            pressure += self.throughput / self.volume * drive * (at - before)
            before = at
            out.append(pressure)
        return out


@dataclass(frozen=True)
class OilLayer:
    """Gas diffusing out of a layer of oil: Crank's series for a plane sheet, one side sealed."""

    amount: float  # Pa, when all of it has come out
    diffusion_time: float  # s, thickness squared over diffusivity

    def curve(self, times):
        return [self.amount * self._share(at / self.diffusion_time) for at in times]

    def _share(self, fourier):
        if fourier <= 0.0:
            return 0.0
        if fourier < 0.05:  # before the gas notices the far side: 2 sqrt(Dt/pi)/L
            return 2.0 * math.sqrt(fourier / math.pi)
        total = 0.0
        for order in range(60):
            odd = 2 * order + 1
            term = math.exp(-(odd**2) * math.pi**2 * fourier / 4.0) / odd**2
            total += term
            if term < 1e-12:
                break
        return 1.0 - 8.0 / math.pi**2 * total

    @property
    def final(self):
        return self.amount


@dataclass(frozen=True)
class Walls:
    """Gas bound to walls with a spread of energies: a mixture of first-order releases."""

    amount: float  # Pa
    time: float  # s, of the middle energy
    spread: float  # e-folds of the time between the middle and the ends

    def curve(self, times):
        kinds = [(-1.0, 0.2), (-0.5, 0.2), (0.0, 0.2), (0.5, 0.2), (1.0, 0.2)]
        rates = [(share, 1.0 / (self.time * math.exp(self.spread * z))) for z, share in kinds]
        return [
            self.amount * sum(share * -math.expm1(-rate * at) for share, rate in rates)
            for at in times
        ]

    @property
    def final(self):
        return self.amount


def vapor_pressure(temperature):
    """Water or ice, Magnus form, within 1 % from -50 to 60 degC (Alduchov & Eskridge 1996)."""
    celsius = temperature - 273.15
    if celsius < 0.0:
        return 611.21 * math.exp(22.587 * celsius / (celsius + 273.86))
    return 610.94 * math.exp(17.625 * celsius / (celsius + 243.04))


@dataclass
class Puddle:
    """Water at a wet spot: cools as it evaporates, may freeze, is warmed by its surroundings.

    Enthalpy of the spot is counted from ice at 0 degC.
    """

    mass: float  # kg
    conductance: float  # m3/s from the wet spot to the vessel
    warming: float  # W/K from the surroundings
    metal: float  # J/K of metal that cools with it
    start_temperature: float  # K of the spot at isolation
    surroundings: float  # K
    volume: float  # m3
    vapor: float  # Pa of vapor in the vessel at isolation
    drift: float = 0.0  # K/s by which the surroundings warm
    until: float = 0.0  # s, end of the test, where ``final`` is counted
    final: float = field(init=False)

    FUSION = 333.4e3  # J/kg
    VAPORIZATION = 2.5e6  # J/kg from liquid
    WATER_HEAT, ICE_HEAT, VAPOR_HEAT = 4190.0, 2100.0, 1860.0  # J/(kg K)

    def __post_init__(self):
        self.warm(self.drift, self.until)

    def warm(self, drift, until):
        """Let the surroundings warm evenly by ``drift`` [K/s] until a time [s]."""
        self.drift, self.until = drift, until
        all_of_it = self.mass / WATER * GAS_CONSTANT * self.surroundings / self.volume
        balance = vapor_pressure(self.surroundings + self.drift * self.until) - self.vapor
        self.final = max(min(all_of_it, balance), 0.0)

    def curve(self, times):
        mass, vapor, added = self.mass, self.vapor, 0.0
        heat = self._enthalpy(self.start_temperature, mass)
        out, now = [], 0.0
        per_kilogram = GAS_CONSTANT * self.surroundings / (WATER * self.volume)
        for at in times:
            while now < at - 1e-9:
                if mass <= 1e-9:
                    now = at
                    break
                temperature, frozen = self._state(heat, mass)
                pressure = vapor_pressure(temperature)
                flow = (
                    self.conductance
                    * (pressure - vapor)
                    * WATER
                    / (GAS_CONSTANT * self.surroundings)
                )
                latent = self.VAPORIZATION + frozen * self.FUSION
                capacity = self.metal + mass * (self.ICE_HEAT if frozen else self.WATER_HEAT)
                steep = pressure * 6100.0 / temperature**2  # dp/dT of the vapor curve
                rate = (
                    self.conductance
                    * (
                        1.0 / self.volume
                        + steep * latent * WATER / (GAS_CONSTANT * self.surroundings) / capacity
                    )
                    + self.warming / capacity
                )
                step = min(at - now, 0.2 / rate, max(0.1 * mass / max(abs(flow), 1e-30), 1e-3))
                moved = max(min(flow * step, mass), -added / per_kilogram)
                carried = self.FUSION + self.VAPORIZATION + self.VAPOR_HEAT * (temperature - 273.15)
                around = self.surroundings + self.drift * now
                heat += self.warming * (around - temperature) * step - moved * carried
                mass -= moved
                added += moved * per_kilogram
                vapor += moved * per_kilogram
                now += step
            out.append(added)
        return out

    def _enthalpy(self, temperature, mass):
        celsius = temperature - 273.15
        if celsius > 0.0:
            return mass * (self.FUSION + self.WATER_HEAT * celsius) + self.metal * celsius
        return (mass * self.ICE_HEAT + self.metal) * celsius

    def _state(self, heat, mass):
        """Temperature [K] and frozen share from the enthalpy."""
        melt = mass * self.FUSION
        if heat >= melt:
            return 273.15 + (heat - melt) / (mass * self.WATER_HEAT + self.metal), 0.0
        if heat > 0.0:
            return 273.15, 1.0 - heat / melt
        return 273.15 + max(heat / (mass * self.ICE_HEAT + self.metal), -100.0), 1.0
