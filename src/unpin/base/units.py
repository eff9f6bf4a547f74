"""Units with exact factors to SI, and the dimension each belongs to.

Inside the program every number is SI (m, N, N·m, N/m, kg, degrees for angles); it is converted on the way in by
the reader and on the way out by `words.numbers`. Factors: NIST SP 811 (2008), appendix B.8 (from memory, checked
against pint in the tests); the pound-force is the avoirdupois pound times the standard acceleration 9.80665 m/s²,
the kilogram-force (kilopond) the kilogram times the same.
"""

from __future__ import annotations

from fractions import Fraction

from unpin.base.record import record


@record
class Dimension:
    """Exponents of length, force, mass and angle. A moment is length 1, force 1."""

    length: int = 0
    force: int = 0
    mass: int = 0
    angle: int = 0

    def __mul__(self, other: Dimension) -> Dimension:
        return Dimension(self.length + other.length, self.force + other.force, self.mass + other.mass, self.angle + other.angle)

    def __truediv__(self, other: Dimension) -> Dimension:
        return Dimension(self.length - other.length, self.force - other.force, self.mass - other.mass, self.angle - other.angle)


NUMBER = Dimension()
LENGTH = Dimension(length=1)
FORCE = Dimension(force=1)
MOMENT = Dimension(length=1, force=1)
SPREAD = Dimension(length=-1, force=1)
MASS = Dimension(mass=1)
ANGLE = Dimension(angle=1)
ACCELERATION = Dimension(force=1, mass=-1)  # N/kg, the same as m/s²
PRESSURE = Dimension(length=-2, force=1)  # typed only: the width it acts on makes a spread load of it
PER_VOLUME = Dimension(length=-3, force=1)  # typed only: times a depth it is a pressure

DIMENSION_NAMES = {NUMBER: "number", LENGTH: "length", FORCE: "force", MOMENT: "moment", SPREAD: "spread",
                   MASS: "mass", ANGLE: "angle", ACCELERATION: "acceleration"}


@record
class Unit:
    """`symbol` as printed; `spellings` as typed; `factor` turns one of it into SI; `system` is si, us or both."""

    symbol: str
    dimension: Dimension
    factor: Fraction
    system: str
    spellings: tuple[str, ...] = ()


_FOOT = Fraction(3048, 10000)
_INCH = _FOOT / 12
_POUND_MASS = Fraction(45359237, 100000000)
_STANDARD = Fraction(980665, 100000)
_POUND = _POUND_MASS * _STANDARD

UNITS: tuple[Unit, ...] = (
    Unit("m", LENGTH, Fraction(1), "si"),
    Unit("mm", LENGTH, Fraction(1, 1000), "si"),
    Unit("cm", LENGTH, Fraction(1, 100), "si"),
    Unit("km", LENGTH, Fraction(1000), "si"),
    Unit("ft", LENGTH, _FOOT, "us"),
    Unit("in", LENGTH, _INCH, "us"),
    Unit("N", FORCE, Fraction(1), "si"),
    Unit("kN", FORCE, Fraction(1000), "si"),
    Unit("MN", FORCE, Fraction(1000000), "si"),
    Unit("kgf", FORCE, _STANDARD, "si", ("kp",)),
    Unit("tf", FORCE, _STANDARD * 1000, "si"),
    Unit("daN", FORCE, Fraction(10), "si"),
    Unit("lb", FORCE, _POUND, "us", ("lbf",)),
    Unit("kip", FORCE, _POUND * 1000, "us", ("kips",)),
    Unit("N·m", MOMENT, Fraction(1), "si", ("N m", "N*m", "Nm")),
    Unit("kN·m", MOMENT, Fraction(1000), "si", ("kN m", "kN*m", "kNm")),
    Unit("N·mm", MOMENT, Fraction(1, 1000), "si", ("N mm", "N*mm", "Nmm")),
    Unit("kgf·m", MOMENT, _STANDARD, "si", ("kgf m", "kgf*m")),
    Unit("kgf·cm", MOMENT, _STANDARD / 100, "si", ("kgf cm", "kgf*cm")),
    Unit("tf·m", MOMENT, _STANDARD * 1000, "si", ("tf m", "tf*m")),
    Unit("lb·ft", MOMENT, _POUND * _FOOT, "us", ("lb ft", "lb*ft", "ft lb", "ft*lb")),
    Unit("lb·in", MOMENT, _POUND * _INCH, "us", ("lb in", "lb*in", "in lb", "in*lb")),
    Unit("kip·ft", MOMENT, _POUND * 1000 * _FOOT, "us", ("kip ft", "kip*ft")),
    Unit("kip·in", MOMENT, _POUND * 1000 * _INCH, "us", ("kip in", "kip*in")),
    Unit("N/m", SPREAD, Fraction(1), "si"),
    Unit("kN/m", SPREAD, Fraction(1000), "si"),
    Unit("N/mm", SPREAD, Fraction(1000), "si"),
    Unit("kgf/m", SPREAD, _STANDARD, "si"),
    Unit("kgf/cm", SPREAD, _STANDARD * 100, "si"),
    Unit("tf/m", SPREAD, _STANDARD * 1000, "si"),
    Unit("lb/ft", SPREAD, _POUND / _FOOT, "us", ("plf",)),
    Unit("lb/in", SPREAD, _POUND / _INCH, "us"),
    Unit("kip/ft", SPREAD, _POUND * 1000 / _FOOT, "us", ("klf",)),
    Unit("N/m²", PRESSURE, Fraction(1), "si", ("N/m2", "N/m^2")),
    Unit("kN/m²", PRESSURE, Fraction(1000), "si", ("kN/m2", "kN/m^2", "kPa")),
    Unit("kgf/m²", PRESSURE, _STANDARD, "si", ("kgf/m2", "kgf/m^2")),
    Unit("tf/m²", PRESSURE, _STANDARD * 1000, "si", ("tf/m2", "tf/m^2")),
    Unit("lb/ft²", PRESSURE, _POUND / _FOOT**2, "us", ("lb/ft2", "lb/ft^2", "psf")),
    Unit("N/m³", PER_VOLUME, Fraction(1), "si", ("N/m3", "N/m^3")),
    Unit("kN/m³", PER_VOLUME, Fraction(1000), "si", ("kN/m3", "kN/m^3")),
    Unit("kgf/m³", PER_VOLUME, _STANDARD, "si", ("kgf/m3", "kgf/m^3")),
    Unit("tf/m³", PER_VOLUME, _STANDARD * 1000, "si", ("tf/m3", "tf/m^3")),
    Unit("lb/ft³", PER_VOLUME, _POUND / _FOOT**3, "us", ("lb/ft3", "lb/ft^3", "pcf")),
    Unit("kg", MASS, Fraction(1), "si"),
    Unit("Mg", MASS, Fraction(1000), "si", ("t",)),
    Unit("g", MASS, Fraction(1, 1000), "si"),
    Unit("slug", MASS, _POUND / _FOOT, "us", ("slugs",)),
    Unit("m/s²", ACCELERATION, Fraction(1), "si", ("m/s2", "m/s^2", "N/kg")),
    Unit("ft/s²", ACCELERATION, _FOOT, "us", ("ft/s2", "ft/s^2")),
    Unit("°", ANGLE, Fraction(1), "both", ("deg", "degrees")),
)

BY_SPELLING: dict[str, Unit] = {s: u for u in UNITS for s in (u.symbol, *u.spellings)}

STANDARD_GRAVITY = {"si": Fraction(981, 100), "us": Fraction(322, 10) * _FOOT}
"""What classes use: 9.81 m/s² and 32.2 ft/s² (common practice, no source), not the 9.80665 of the standard."""
