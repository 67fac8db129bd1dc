//! The kinds of quantity Pourbook computes with, and the one unit each is computed in.

/// What a number measures. A temperature and a difference of temperatures are different kinds, and so are a moment and a duration.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// mm
    Length,
    /// m above sea level
    Altitude,
    /// mm²
    Area,
    /// cm³
    Volume,
    /// g
    Mass,
    /// g/cm³
    Density,
    /// °C, absolute
    Temperature,
    /// K, a difference
    TemperatureDifference,
    /// K/h
    TemperatureRate,
    /// min
    Duration,
    /// min since the Unix epoch, absolute
    Moment,
    /// kPa, absolute
    Pressure,
    /// kPa below the barometer: what a vacuum gauge reads
    Vacuum,
    /// a plain ratio (0.40 for 40 per 100)
    Ratio,
    /// parts per thousand by mass
    Fineness,
    /// a whole number of things
    Count,
    /// degrees of arc
    Angle,
    /// the studio's currency
    Money,
    /// the studio's currency per gram
    PricePerGram,
    /// s: what is over in the pour itself
    Seconds,
    /// m/s
    Velocity,
    /// m/s²
    Acceleration,
    /// turns a minute
    Rotation,
    /// N/m
    SurfaceTension,
    /// kJ/kg
    HeatByMass,
    /// kWh
    Energy,
    /// kJ/(kg·K)
    SpecificHeat,
    /// W/(m·K)
    Conductivity,
    /// mm²/s
    Diffusivity,
}

/// Exponents of length, mass, time, temperature and money, and whether the quantity counts from a zero of its own (absolute).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dimension {
    /// Exponents in the order length, mass, time, temperature, money.
    pub exponents: [i8; 5],
    /// True for temperatures and moments, whose sum means nothing.
    pub absolute: bool,
}

impl Kind {
    /// Every kind, in the order of declaration.
    pub const ALL: [Self; 29] = [
        Self::Length,
        Self::Altitude,
        Self::Area,
        Self::Volume,
        Self::Mass,
        Self::Density,
        Self::Temperature,
        Self::TemperatureDifference,
        Self::TemperatureRate,
        Self::Duration,
        Self::Moment,
        Self::Pressure,
        Self::Vacuum,
        Self::Ratio,
        Self::Fineness,
        Self::Count,
        Self::Angle,
        Self::Money,
        Self::PricePerGram,
        Self::Seconds,
        Self::Velocity,
        Self::Acceleration,
        Self::Rotation,
        Self::SurfaceTension,
        Self::HeatByMass,
        Self::Energy,
        Self::SpecificHeat,
        Self::Conductivity,
        Self::Diffusivity,
    ];

    /// The unit of stored values, as printed.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::Length => "mm",
            Self::Altitude => "m",
            Self::Area => "mm²",
            Self::Volume => "cm³",
            Self::Mass => "g",
            Self::Density => "g/cm³",
            Self::Temperature => "°C",
            Self::TemperatureDifference => "K",
            Self::TemperatureRate => "K/h",
            Self::Duration => "min",
            Self::Moment => "min since 1970-01-01T00:00Z",
            Self::Pressure | Self::Vacuum => "kPa",
            Self::Ratio | Self::Count => "",
            Self::Fineness => "‰",
            Self::Angle => "°",
            Self::Money => "currency",
            Self::PricePerGram => "currency/g",
            Self::Seconds => "s",
            Self::Velocity => "m/s",
            Self::Acceleration => "m/s²",
            Self::Rotation => "rpm",
            Self::SurfaceTension => "N/m",
            Self::HeatByMass => "kJ/kg",
            Self::Energy => "kWh",
            Self::SpecificHeat => "kJ/kgK",
            Self::Conductivity => "W/mK",
            Self::Diffusivity => "mm²/s",
        }
    }

    /// The dimension of the kind, for checking formulas.
    #[must_use]
    pub fn dimension(self) -> Dimension {
        let exponents = match self {
            Self::Length | Self::Altitude => [1, 0, 0, 0, 0],
            Self::Area => [2, 0, 0, 0, 0],
            Self::Volume => [3, 0, 0, 0, 0],
            Self::Mass => [0, 1, 0, 0, 0],
            Self::Density => [-3, 1, 0, 0, 0],
            Self::Temperature | Self::TemperatureDifference => [0, 0, 0, 1, 0],
            Self::TemperatureRate => [0, 0, -1, 1, 0],
            Self::Duration | Self::Moment | Self::Seconds => [0, 0, 1, 0, 0],
            Self::Pressure | Self::Vacuum => [-1, 1, -2, 0, 0],
            Self::Ratio | Self::Fineness | Self::Count | Self::Angle => [0; 5],
            Self::Money => [0, 0, 0, 0, 1],
            Self::PricePerGram => [0, -1, 0, 0, 1],
            Self::Velocity => [1, 0, -1, 0, 0],
            Self::Acceleration => [1, 0, -2, 0, 0],
            Self::Rotation => [0, 0, -1, 0, 0],
            Self::SurfaceTension => [0, 1, -2, 0, 0],
            Self::HeatByMass => [2, 0, -2, 0, 0],
            Self::Energy => [2, 1, -2, 0, 0],
            Self::SpecificHeat => [2, 0, -2, -1, 0],
            Self::Conductivity => [1, 1, -3, -1, 0],
            Self::Diffusivity => [2, 0, -1, 0, 0],
        };
        Dimension { exponents, absolute: matches!(self, Self::Temperature | Self::Moment) }
    }
}
