//! The tables of units. Factors are exact by definition: yard and pound agreement of 1959 (1 in = 25.4 mm, 1 lb = 453.59237 g), and the
//! conventional values of NIST SP 811 appendix B for columns of mercury (13.5951 g/cm³ under 9.80665 m/s²), all from memory.

use super::Kind;
use super::unit::{Meaning, Mistake, Unit};

/// Grams in ten million troy ounces; 31.1034768 g = 480 grains of 64.79891 mg.
const OZT: i64 = 311_034_768;

const LENGTH: &[Unit] = &[
    Unit::new("mm", &["millimetre", "millimetres", "millimeter", "millimeters"], 1, 1),
    Unit::new("cm", &["centimetre", "centimetres", "centimeter", "centimeters"], 10, 1),
    Unit::new("m", &["metre", "metres", "meter", "meters"], 1000, 1),
    Unit::new("in", &["inch", "inches", "\"", "''"], 254, 10),
    Unit::new("ft", &["foot", "feet", "'"], 3048, 10),
    Unit::new("thou", &[], 254, 10_000),
    Unit::new("µm", &["um", "micron", "microns"], 1, 1000),
];
const ALTITUDE: &[Unit] = &[
    Unit::new("m", &["metre", "metres", "meter", "meters"], 1, 1),
    Unit::new("ft", &["foot", "feet", "'"], 3048, 10_000),
    Unit::new("km", &[], 1000, 1),
];
const AREA: &[Unit] =
    &[Unit::new("mm²", &["sq mm"], 1, 1), Unit::new("cm²", &["sq cm"], 100, 1), Unit::new("in²", &["sq in", "sq inch"], 64_516, 100)];
const VOLUME: &[Unit] = &[
    Unit::new("cm³", &["cc", "ccm"], 1, 1),
    Unit::new("mL", &["millilitre", "millilitres", "milliliter", "milliliters"], 1, 1),
    Unit::new("L", &["litre", "litres", "liter", "liters"], 1000, 1),
    Unit::new("cL", &[], 10, 1),
    Unit::new("dL", &[], 100, 1),
    Unit::new("mm³", &[], 1, 1000),
    Unit::new("in³", &["cu in", "cubic inch", "cubic inches"], 16_387_064, 1_000_000),
    Unit::new("US fl oz", &["fl oz US", "US fluid ounce", "US fluid ounces"], 295_735_295_625, 10_000_000_000),
    Unit::new("imp fl oz", &["fl oz imp", "fl oz UK", "UK fl oz", "imperial fl oz"], 284_130_625, 10_000_000),
];
const US_FL_OZ: usize = 7;
const MASS: &[Unit] = &[
    Unit::new("g", &["gram", "grams", "gramme", "grammes", "gm", "gms"], 1, 1),
    Unit::new("kg", &["kilo", "kilos", "kilogram", "kilograms"], 1000, 1),
    Unit::new("mg", &["milligram", "milligrams"], 1, 1000),
    Unit::new("ozt", &["oz t", "oz.t", "troy oz", "oz troy", "troy ounce", "troy ounces", "t oz"], OZT, 10_000_000),
    Unit::new("dwt", &["pwt", "pennyweight", "pennyweights"], OZT, 200_000_000),
    Unit::new("grain", &["grains", "troy grain", "troy grains"], 6_479_891, 100_000_000),
    Unit::new("ct", &["cts", "carat", "carats"], 2, 10),
    Unit::new(
        "oz av",
        &["oz avdp", "avdp oz", "av oz", "oz avoirdupois", "avoirdupois ounce", "avoirdupois ounces"],
        28_349_523_125,
        1_000_000_000,
    ),
    Unit::new("lb", &["lbs", "pound", "pounds"], 45_359_237, 100_000),
];
const OZ_T: usize = 3;
const GRAIN: usize = 5;
const OZ_AV: usize = 7;
const DENSITY: &[Unit] = &[
    Unit::new("g/cm³", &["g/cc", "g/ccm", "g/mL", "kg/L", "kg/dm³"], 1, 1),
    Unit::new("kg/m³", &["g/L"], 1, 1000),
    Unit::new("ozt/in³", &["ozt/cu in"], OZT, 163_870_640),
    Unit::new("lb/in³", &["lb/cu in"], 453_592_370, 16_387_064),
    Unit::new("lb/ft³", &["lb/cu ft"], 453_592_370_000, 28_316_846_592_000),
];
const TEMPERATURE: &[Unit] = &[
    Unit::new("°C", &["C", "℃", "deg C", "degrees C", "celsius", "degrees celsius"], 1, 1),
    Unit::new("°F", &["F", "℉", "deg F", "degrees F", "fahrenheit", "degrees fahrenheit"], 5, 9).counted_from(-160, 9),
    Unit::new("K", &["kelvin", "kelvins"], 1, 1).counted_from(-27_315, 100),
];
const DIFFERENCE: &[Unit] = &[
    Unit::new("K", &["kelvin", "kelvins"], 1, 1),
    Unit::new("°C", &["C", "℃", "deg C", "degrees C", "celsius", "degrees celsius"], 1, 1),
    Unit::new("°F", &["F", "℉", "deg F", "degrees F", "fahrenheit", "degrees fahrenheit"], 5, 9),
];
const RATE: &[Unit] = &[
    Unit::new("K/h", &["K per h", "K per hour", "K/hr"], 1, 1),
    Unit::new("°C/h", &["C/h", "C/hr", "°C/hr", "°C per h", "°C per hour", "C per hour", "deg C/h"], 1, 1),
    Unit::new("°F/h", &["F/h", "F/hr", "°F/hr", "°F per h", "°F per hour", "F per hour", "deg F/h"], 5, 9),
    Unit::new("K/min", &["K per min"], 60, 1),
    Unit::new("°C/min", &["C/min", "°C per min", "C per min"], 60, 1),
    Unit::new("°F/min", &["F/min", "°F per min", "F per min"], 300, 9),
];
const DURATION: &[Unit] = &[
    Unit::new("min", &["m", "mins", "minute", "minutes"], 1, 1),
    Unit::new("h", &["hr", "hrs", "hour", "hours"], 60, 1),
    Unit::new("s", &["sec", "secs", "second", "seconds"], 1, 60),
    Unit::new("d", &["day", "days"], 1440, 1),
];
const MOMENT: &[Unit] = &[Unit::new("UTC", &["Z"], 1, 1)];
const PRESSURE: &[Unit] = &[
    Unit::new("kPa", &[], 1, 1),
    Unit::new("hPa", &[], 1, 10),
    Unit::new("mbar", &["mb", "millibar"], 1, 10),
    Unit::new("inHg", &["in Hg", "\"Hg", "inches Hg", "inches of mercury"], 3_386_388_640_341, 1_000_000_000_000),
    Unit::new("mmHg", &["mm Hg"], 133_322_387_415, 1_000_000_000_000),
    Unit::new("torr", &[], 101_325, 760_000),
    Unit::new("psi", &["lb/in²", "lbf/in²"], 44_482_216_152_605, 6_451_600_000_000),
    Unit::new("bar", &[], 100, 1),
    Unit::new("atm", &[], 101_325, 1000),
    Unit::new("Pa", &[], 1, 1000),
];
const RATIO: &[Unit] = &[
    Unit::new("", &[], 1, 1),
    Unit::new("%", &["per 100", "per cent", "percent", "per hundred", "pct", "/100 g", "g/100 g", "g per 100 g"], 1, 100),
    Unit::new("‰", &["per 1000", "per mille", "per mil"], 1, 1000),
];
const FINENESS: &[Unit] = &[
    Unit::new("‰", &["per 1000", "per mille", "per mil"], 1, 1),
    Unit::new("%", &["per 100", "per cent", "percent", "pct"], 10, 1),
    Unit::new("k", &["kt", "karat", "karats"], 1000, 24),
    Unit::new("fine", &[], 1, 1),
];
/// Index of the karat, whose numbers are read as marks too.
pub(super) const KARAT: usize = 2;
/// Index of `fine`, which stands behind 0.999 and behind 999 alike.
pub(super) const FINE: usize = 3;
const COUNT: &[Unit] = &[
    Unit::new("", &["pc", "pcs", "piece", "pieces", "off"], 1, 1),
    Unit::new("dozen", &["doz"], 12, 1),
    Unit::new("pairs", &["pair"], 2, 1),
];
const ANGLE: &[Unit] = &[Unit::new("°", &["deg", "degree", "degrees"], 1, 1)];
const MONEY: &[Unit] = &[Unit::new("", &[], 1, 1)];
const PRICE: &[Unit] = &[
    Unit::new("/g", &["per g", "per gram", "per gm", "/gram", "/gm"], 1, 1),
    Unit::new("/kg", &["per kg", "per kilo"], 1, 1000),
    Unit::new(
        "/ozt",
        &["per ozt", "/oz t", "per oz t", "per troy oz", "/troy oz", "per oz troy", "per troy ounce", "/troy ounce"],
        10_000_000,
        OZT,
    ),
    Unit::new("/dwt", &["per dwt", "per pennyweight"], 200_000_000, OZT),
    Unit::new("/ct", &["per ct", "per carat", "/carat"], 10, 2),
    Unit::new("/oz av", &["per oz av", "per avoirdupois ounce"], 1_000_000_000, 28_349_523_125),
    Unit::new("/lb", &["per lb", "per pound"], 100_000, 45_359_237),
];
const SECONDS: &[Unit] =
    &[Unit::new("s", &["sec", "secs", "second", "seconds"], 1, 1), Unit::new("min", &["mins", "minute", "minutes"], 60, 1)];
const VELOCITY: &[Unit] = &[Unit::new("m/s", &["m per s"], 1, 1), Unit::new("mm/s", &[], 1, 1000), Unit::new("ft/s", &[], 3048, 10_000)];
const ACCELERATION: &[Unit] = &[Unit::new("m/s²", &[], 1, 1)];
const ROTATION: &[Unit] = &[Unit::new("rpm", &["turns per minute", "turns a minute", "revs per minute", "U/min"], 1, 1)];
const SURFACE_TENSION: &[Unit] = &[Unit::new("N/m", &[], 1, 1), Unit::new("mN/m", &[], 1, 1000)];
const HEAT_BY_MASS: &[Unit] = &[Unit::new("kJ/kg", &["J/g"], 1, 1)];
const ENERGY: &[Unit] = &[Unit::new("kWh", &["kW h"], 1, 1), Unit::new("MJ", &[], 10, 36)];
const SPECIFIC_HEAT: &[Unit] = &[Unit::new("kJ/kgK", &["J/gK"], 1, 1)];
const CONDUCTIVITY: &[Unit] = &[Unit::new("W/mK", &[], 1, 1)];
const DIFFUSIVITY: &[Unit] = &[Unit::new("mm²/s", &[], 1, 1)];

/// The units of `kind`, its own first.
pub(super) fn units(kind: Kind) -> &'static [Unit] {
    match kind {
        Kind::Length => LENGTH,
        Kind::Altitude => ALTITUDE,
        Kind::Area => AREA,
        Kind::Volume => VOLUME,
        Kind::Mass => MASS,
        Kind::Density => DENSITY,
        Kind::Temperature => TEMPERATURE,
        Kind::TemperatureDifference => DIFFERENCE,
        Kind::TemperatureRate => RATE,
        Kind::Duration => DURATION,
        Kind::Moment => MOMENT,
        Kind::Pressure | Kind::Vacuum => PRESSURE,
        Kind::Ratio => RATIO,
        Kind::Fineness => FINENESS,
        Kind::Count => COUNT,
        Kind::Angle => ANGLE,
        Kind::Money => MONEY,
        Kind::PricePerGram => PRICE,
        Kind::Seconds => SECONDS,
        Kind::Velocity => VELOCITY,
        Kind::Acceleration => ACCELERATION,
        Kind::Rotation => ROTATION,
        Kind::SurfaceTension => SURFACE_TENSION,
        Kind::HeatByMass => HEAT_BY_MASS,
        Kind::Energy => ENERGY,
        Kind::SpecificHeat => SPECIFIC_HEAT,
        Kind::Conductivity => CONDUCTIVITY,
        Kind::Diffusivity => DIFFUSIVITY,
    }
}

type Doubtful = &'static [(&'static [&'static str], Meaning)];

const MASS_DOUBTFUL: Doubtful = &[
    (&["oz", "ounce", "ounces", "ozs"], Meaning::Either([&MASS[OZ_T], &MASS[OZ_AV]])),
    (&["gr", "grs"], Meaning::Either([&MASS[GRAIN], &MASS[0]])),
    (&["k", "kt", "karat", "karats"], Meaning::Refused(Mistake::KaratForMass)),
];
const VOLUME_DOUBTFUL: Doubtful =
    &[(&["fl oz", "oz", "fluid ounce", "fluid ounces", "ounces"], Meaning::Either([&VOLUME[US_FL_OZ], &VOLUME[US_FL_OZ + 1]]))];
const DEGREES: &[&str] = &["°", "deg", "degree", "degrees"];
const TEMPERATURE_DOUBTFUL: Doubtful = &[(DEGREES, Meaning::Either([&TEMPERATURE[0], &TEMPERATURE[1]]))];
const DIFFERENCE_DOUBTFUL: Doubtful = &[(DEGREES, Meaning::Either([&DIFFERENCE[1], &DIFFERENCE[2]]))];
const RATE_DOUBTFUL: Doubtful = &[
    (&["°/h", "deg/h", "degrees per hour", "°/hr"], Meaning::Either([&RATE[1], &RATE[2]])),
    (&["°/min", "deg/min", "degrees per minute"], Meaning::Either([&RATE[4], &RATE[5]])),
];
const FINENESS_DOUBTFUL: Doubtful = &[(&["ct", "cts", "carat", "carats"], Meaning::Refused(Mistake::CaratForFineness))];
const CURRENCIES: &[&str] = &["€", "$", "£", "¥", "₹", "EUR", "USD", "GBP", "CHF", "CAD", "AUD"];
const MONEY_DOUBTFUL: Doubtful = &[(CURRENCIES, Meaning::Refused(Mistake::Currency))];
const PRICE_DOUBTFUL: Doubtful = &[
    (CURRENCIES, Meaning::Refused(Mistake::Currency)),
    (&["/oz", "per oz", "per ounce", "/ounce"], Meaning::Either([&PRICE[2], &PRICE[5]])),
];

/// Words that mean two things, or something else, in a field of `kind`.
pub(super) fn doubtful(kind: Kind) -> Doubtful {
    match kind {
        Kind::Mass => MASS_DOUBTFUL,
        Kind::Volume => VOLUME_DOUBTFUL,
        Kind::Temperature => TEMPERATURE_DOUBTFUL,
        Kind::TemperatureDifference => DIFFERENCE_DOUBTFUL,
        Kind::TemperatureRate => RATE_DOUBTFUL,
        Kind::Fineness => FINENESS_DOUBTFUL,
        Kind::Money => MONEY_DOUBTFUL,
        Kind::PricePerGram => PRICE_DOUBTFUL,
        _ => &[],
    }
}
