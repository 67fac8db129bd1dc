//! What each kind of quantity is called and within which bounds it is sensible, and possible at all.
//!
//! Outside the sensible range an entry is taken with a caution; outside the possible range it is refused.

use super::Kind;

/// A kind in words and bounds, for fields, tables, texts and tests.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Description {
    /// What a person calls it.
    pub name: &'static str,
    /// The unit of stored values.
    pub unit: &'static str,
    /// Bounds in that unit that a small casting studio meets.
    pub sensible: (f64, f64),
    /// Bounds in that unit beyond which an entry is refused.
    pub possible: (f64, f64),
}

/// Minutes from 1970 to the start of 2020, 2040 and 2200, all in UTC.
const YEAR_2020: f64 = 26_297_280.0;
const YEAR_2040: f64 = 36_816_480.0;
const YEAR_2200: f64 = 120_968_640.0;

impl Kind {
    /// Name, unit and both ranges. The bounds are common practice, no source, save absolute zero.
    #[must_use]
    pub fn describe(self) -> Description {
        let (name, sensible, possible) = match self {
            Self::Length => ("length", (0.1, 500.0), (0.0, 10_000.0)),
            Self::Altitude => ("altitude", (0.0, 4000.0), (-430.0, 9000.0)),
            Self::Area => ("area", (0.1, 250_000.0), (0.0, 1e8)),
            Self::Volume => ("volume", (0.01, 20_000.0), (0.0, 1e6)),
            Self::Mass => ("weight", (0.01, 5000.0), (0.0, 1e6)),
            Self::Density => ("density", (0.8, 22.0), (0.01, 30.0)),
            Self::Temperature => ("temperature", (15.0, 1900.0), (-273.15, 3500.0)),
            Self::TemperatureDifference => ("temperature difference", (0.0, 400.0), (-3500.0, 3500.0)),
            Self::TemperatureRate => ("rate of heating", (0.0, 1000.0), (-20_000.0, 20_000.0)),
            Self::Duration => ("time", (0.0, 2880.0), (0.0, 525_600.0)),
            Self::Moment => ("date and time", (YEAR_2020, YEAR_2040), (0.0, YEAR_2200)),
            Self::Pressure => ("pressure", (50.0, 110.0), (0.0, 1000.0)),
            Self::Vacuum => ("vacuum", (0.0, 101.0), (0.0, 110.0)),
            Self::Ratio => ("ratio", (0.01, 1.5), (-1.0, 100.0)),
            Self::Fineness => ("fineness", (1.0, 1000.0), (0.0, 1000.0)),
            Self::Count => ("count", (1.0, 200.0), (0.0, 1e6)),
            Self::Angle => ("angle", (0.0, 180.0), (-360.0, 360.0)),
            Self::Money => ("amount of money", (0.0, 100_000.0), (-99_999_999_999.0, 99_999_999_999.0)),
            Self::PricePerGram => ("price by weight", (0.01, 1000.0), (0.0, 1e6)),
            Self::Seconds => ("short time", (0.01, 600.0), (0.0, 1e6)),
            Self::Velocity => ("speed", (0.01, 20.0), (0.0, 1000.0)),
            Self::Acceleration => ("acceleration", (9.0, 10.0), (0.0, 1e5)),
            Self::Rotation => ("speed of rotation", (50.0, 1000.0), (0.0, 5000.0)),
            Self::SurfaceTension => ("surface tension", (0.3, 2.0), (0.0, 10.0)),
            Self::HeatByMass => ("heat by weight", (20.0, 1500.0), (0.0, 10_000.0)),
            Self::Energy => ("energy", (0.01, 200.0), (0.0, 1e5)),
            Self::SpecificHeat => ("specific heat", (0.1, 4.2), (0.01, 20.0)),
            Self::Conductivity => ("conductivity", (0.1, 450.0), (0.001, 3000.0)),
            Self::Diffusivity => ("diffusivity", (0.1, 200.0), (0.001, 2000.0)),
        };
        Description { name, unit: self.unit(), sensible, possible }
    }

    /// What a person calls it: `weight`, `temperature difference`.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.describe().name
    }

    /// Lower and upper bound, in the kind's unit, of what a small casting studio meets. Outside is worth a caution.
    #[must_use]
    pub fn sensible(self) -> (f64, f64) {
        self.describe().sensible
    }

    /// Lower and upper bound, in the kind's unit, beyond which an entry is refused.
    #[must_use]
    pub fn possible(self) -> (f64, f64) {
        self.describe().possible
    }
}
