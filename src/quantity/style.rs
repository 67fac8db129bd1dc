//! In which units and how finely figures are printed.

use super::unit::Unit;
use super::{Kind, unit_table};

/// One unit for every kind: what figures are printed in and what a bare number in a field means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Units([u8; Kind::ALL.len()]);

impl Units {
    /// Millimetres, grams, °C, kPa, money per gram: the units of stored values.
    pub const METRIC: Self = Self([0; Kind::ALL.len()]);

    /// Inches, feet, pennyweights, °F, inches of mercury, money per troy ounce. Volumes stay in cm³: bench graduates are marked in mL.
    pub const TRADE: Self = Self::METRIC
        .index(Kind::Length, 3)
        .index(Kind::Altitude, 1)
        .index(Kind::Area, 2)
        .index(Kind::Mass, 4)
        .index(Kind::Temperature, 1)
        .index(Kind::TemperatureDifference, 2)
        .index(Kind::TemperatureRate, 2)
        .index(Kind::Pressure, 3)
        .index(Kind::Vacuum, 3)
        .index(Kind::PricePerGram, 2);

    const fn index(mut self, kind: Kind, index: u8) -> Self {
        self.0[kind as usize] = index;
        self
    }

    /// The unit for `kind`.
    #[must_use]
    pub fn of(&self, kind: Kind) -> &'static Unit {
        let units = kind.units();
        &units[usize::from(self.0[kind as usize]).min(units.len() - 1)]
    }

    /// The same units but for `kind`, which takes the one printed as `symbol`. `None` where the kind has no such unit, or where
    /// a rounded number of it would not say what it means: 14 k is 14/24 or the mark 585, and things are counted one by one.
    #[must_use]
    pub fn with(self, kind: Kind, symbol: &str) -> Option<Self> {
        let index = kind.units().iter().position(|unit| unit.symbol == symbol)?;
        let doubtful = match kind {
            Kind::Fineness => index == unit_table::KARAT || index == unit_table::FINE,
            Kind::Count => index > 0,
            _ => false,
        };
        (!doubtful).then_some(self.index(kind, u8::try_from(index).ok()?))
    }
}

impl Default for Units {
    fn default() -> Self {
        Self::METRIC
    }
}

/// How figures are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Style {
    /// One unit for every kind.
    pub units: Units,
    /// A decimal more: 0.01 mm, 0.001 in, 0.1 °C, 0.001 g/cm³.
    pub fine: bool,
    /// Weights of powder: whole grams, in every unit set.
    pub powder: bool,
    /// Comma for the decimal mark, point otherwise.
    pub comma: bool,
}

impl Style {
    /// Metric units, usual digits, decimal point.
    pub const METRIC: Self = Self { units: Units::METRIC, fine: false, powder: false, comma: false };
    /// Trade units, usual digits, decimal point.
    pub const TRADE: Self = Self { units: Units::TRADE, ..Self::METRIC };

    /// The same with whole grams.
    #[must_use]
    pub const fn for_powder(self) -> Self {
        Self { powder: true, ..self }
    }

    /// The same with a decimal more.
    #[must_use]
    pub const fn finer(self) -> Self {
        Self { fine: true, ..self }
    }

    pub(super) fn unit(&self, kind: Kind) -> &'static Unit {
        if self.powder && kind == Kind::Mass { &kind.units()[0] } else { self.units.of(kind) }
    }
}

/// Steps of `(below, decimals)`: the first step counts whose bound the rounded number stays under.
pub(super) type Digits = &'static [(f64, usize)];

const ANY: f64 = f64::INFINITY;
const WHOLE: Digits = &[(ANY, 0)];
const ONE: Digits = &[(ANY, 1)];
const TWO: Digits = &[(ANY, 2)];
const THREE: Digits = &[(ANY, 3)];
const FOUR: Digits = &[(ANY, 4)];
const BELOW_TEN: Digits = &[(10.0, 1), (ANY, 0)];
const METAL: Digits = &[(100.0, 2), (ANY, 1)];

/// Decimals for `kind` in `unit`. Common practice, no source; three decimals only where the thousandfold would be impossible, so that
/// what is printed can be typed.
pub(super) fn digits(kind: Kind, unit: &Unit, style: &Style) -> Digits {
    match (kind, unit.symbol) {
        (Kind::Length, "in") if style.fine => THREE,
        (Kind::Length, "mm" | "thou") if !style.fine => ONE,
        (Kind::Length, "cm") if style.fine => THREE,
        (Kind::Length, "µm") | (Kind::Altitude, "m" | "ft") => WHOLE,
        (Kind::Area, "mm²") | (Kind::Angle, _) => ONE,
        (Kind::Volume, "cm³" | "mL") => &[(10.0, 2), (100.0, 1), (ANY, 0)],
        (Kind::Volume, "mm³") => WHOLE,
        (Kind::Mass, "g") if style.powder => WHOLE,
        (Kind::Mass, "g" | "dwt" | "ct") => METAL,
        (Kind::Mass, "kg" | "ozt") => FOUR,
        (Kind::Mass, "mg") => WHOLE,
        (Kind::Mass, "grain") => ONE,
        (Kind::Density, "g/cm³" | "lb/in³") if style.fine => THREE,
        (Kind::Density, "kg/m³" | "lb/ft³") => WHOLE,
        (Kind::Temperature, _) => {
            if style.fine {
                ONE
            } else {
                WHOLE
            }
        }
        (Kind::TemperatureDifference, _) | (Kind::TemperatureRate, "K/h" | "°C/h" | "°F/h") => BELOW_TEN,
        (Kind::TemperatureRate, _) | (Kind::Pressure | Kind::Vacuum, "kPa" | "psi") | (Kind::Vacuum, "inHg") => ONE,
        (Kind::Pressure | Kind::Vacuum, "bar" | "atm") => THREE,
        (Kind::Pressure | Kind::Vacuum, "hPa" | "mbar" | "mmHg" | "torr" | "Pa") | (Kind::Count, "") => WHOLE,
        (Kind::Ratio, "") => &[(0.1, 4), (1.0, 3), (ANY, 2)],
        (Kind::Fineness, "‰") => ONE,
        (Kind::PricePerGram, _) if style.fine => FOUR,
        (Kind::Rotation, _) | (Kind::HeatByMass, _) => WHOLE,
        _ => TWO,
    }
}
