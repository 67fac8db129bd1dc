//! Factors against their definitions, and the tables of kinds against each other.
//!
//! Definitions from memory: yard and pound agreement of 1959; NIST SP 811 appendix B for columns of mercury, torr, psi and fluid ounces;
//! the imperial gallon of 4.54609 L. Troy weights as in the trade's tables: ounce 31.1034768 g = 20 pennyweights = 480 grains.

use pourbook::quantity::{Kind, Style, Units};

fn base(kind: Kind, symbol: &str, number: f64) -> f64 {
    kind.unit_named(symbol).unwrap_or_else(|| panic!("{kind:?} has no {symbol}")).to_base(number)
}

#[track_caller]
fn near(left: f64, right: f64) {
    assert!((left - right).abs() <= 4.0 * f64::EPSILON * right.abs(), "{left} is not {right}");
}

#[test]
fn lengths_and_weights_are_exact_by_definition() {
    near(base(Kind::Length, "in", 1.0), 25.4);
    near(base(Kind::Length, "ft", 1.0), 12.0 * 25.4);
    near(base(Kind::Length, "thou", 1000.0), 25.4);
    near(base(Kind::Altitude, "ft", 1.0), 0.3048);
    near(base(Kind::Area, "in²", 1.0), 25.4 * 25.4);
    near(base(Kind::Volume, "in³", 1.0), 2.54 * 2.54 * 2.54);
    near(base(Kind::Volume, "US fl oz", 128.0), 231.0 * 16.387_064);
    near(base(Kind::Volume, "imp fl oz", 160.0), 4546.09);
    near(base(Kind::Mass, "ozt", 1.0), 31.103_476_8);
    near(base(Kind::Mass, "dwt", 20.0), 31.103_476_8);
    near(base(Kind::Mass, "grain", 480.0), 31.103_476_8);
    near(base(Kind::Mass, "grain", 7000.0), 453.592_37);
    near(base(Kind::Mass, "oz av", 16.0), 453.592_37);
    near(base(Kind::Mass, "lb", 1.0), 453.592_37);
    near(base(Kind::Mass, "ct", 5.0), 1.0);
}

#[test]
fn the_ratios_of_exact_units_agree_as_whole_numbers() {
    // Cross-multiplied, so that no rounding hides a digit that is wrong.
    let ratio =
        |kind: Kind, symbol: &str| kind.unit_named(symbol).map(|unit| (i128::from(unit.ratio().0), i128::from(unit.ratio().1))).unwrap();
    let same = |left: (i128, i128), count: i128, right: (i128, i128)| assert_eq!(left.0 * right.1, count * right.0 * left.1);
    same(ratio(Kind::Mass, "ozt"), 480, ratio(Kind::Mass, "grain"));
    same(ratio(Kind::Mass, "ozt"), 20, ratio(Kind::Mass, "dwt"));
    same(ratio(Kind::Mass, "lb"), 7000, ratio(Kind::Mass, "grain"));
    same(ratio(Kind::Mass, "lb"), 16, ratio(Kind::Mass, "oz av"));
    same(ratio(Kind::Length, "ft"), 12, ratio(Kind::Length, "in"));
    same(ratio(Kind::Pressure, "atm"), 760, ratio(Kind::Pressure, "torr"));
    let inverse = |(num, den): (i128, i128)| (den, num);
    for (price, mass) in [("/ozt", "ozt"), ("/dwt", "dwt"), ("/kg", "kg"), ("/ct", "ct"), ("/lb", "lb"), ("/oz av", "oz av"), ("/g", "g")] {
        same(ratio(Kind::PricePerGram, price), 1, inverse(ratio(Kind::Mass, mass)));
    }
}

#[test]
fn pressures_follow_their_conventional_definitions() {
    // Column of mercury: 13.5951 g/cm³ × 9.80665 m/s²; pound-force on a square inch.
    near(base(Kind::Pressure, "mmHg", 1.0), 13.5951 * 9.80665 / 1000.0);
    near(base(Kind::Pressure, "inHg", 1.0), 25.4 * 13.5951 * 9.80665 / 1000.0);
    near(base(Kind::Pressure, "psi", 1.0), 0.453_592_37 * 9.80665 / (0.0254 * 0.0254) / 1000.0);
    near(base(Kind::Pressure, "torr", 760.0), 101.325);
    near(base(Kind::Pressure, "hPa", 1013.25), 101.325);
    near(base(Kind::Pressure, "mbar", 1000.0), 100.0);
    near(base(Kind::Pressure, "bar", 1.0), 100.0);
    // The figures NIST SP 811 prints, to its seven digits.
    assert!((base(Kind::Pressure, "inHg", 1.0) - 3.386_389).abs() < 5e-7);
    assert!((base(Kind::Pressure, "psi", 1.0) - 6.894_757).abs() < 5e-7);
    assert!((base(Kind::Density, "lb/in³", 1.0) - 27.679_90).abs() < 5e-6);
    assert!((base(Kind::Density, "lb/ft³", 1.0) - 0.016_018_46).abs() < 5e-9);
    near(base(Kind::Density, "ozt/in³", 1.0), 31.103_476_8 / 16.387_064);
}

#[test]
fn temperatures_and_their_differences_are_told_apart() {
    near(base(Kind::Temperature, "°F", 212.0), 100.0);
    assert!(base(Kind::Temperature, "°F", 32.0).abs() < 1e-13);
    near(base(Kind::Temperature, "°F", -40.0), -40.0);
    near(base(Kind::Temperature, "K", 0.0), -273.15);
    near(base(Kind::TemperatureDifference, "°F", 90.0), 50.0);
    near(base(Kind::TemperatureDifference, "°C", 7.0), 7.0);
    near(base(Kind::TemperatureRate, "°F/h", 180.0), 100.0);
    near(base(Kind::TemperatureRate, "°C/min", 5.0), 300.0);
    near(base(Kind::TemperatureRate, "°F/min", 9.0), 300.0);
}

#[test]
fn the_first_unit_is_the_stored_one_and_every_unit_goes_there_and_back() {
    for kind in Kind::ALL {
        let units = kind.units();
        assert_eq!(units[0].ratio(), (1, 1), "{kind:?}");
        assert!(units[0].to_base(0.0) == 0.0, "{kind:?}");
        let printed = Units::METRIC.of(kind).symbol;
        let stored = match kind {
            Kind::Money => "",
            Kind::PricePerGram => "/g",
            Kind::Moment => "UTC",
            _ => kind.unit(),
        };
        assert_eq!(printed, stored, "{kind:?}");
        let mut symbols: Vec<&str> = units.iter().map(|unit| unit.symbol).collect();
        symbols.sort_unstable();
        symbols.dedup();
        assert_eq!(symbols.len(), units.len(), "{kind:?} has two units printed alike");
        for unit in units {
            assert!(unit.size() > 0.0);
            for value in [kind.sensible().0, kind.sensible().1, 1.0, 0.3] {
                let back = unit.to_base(unit.from_base(value));
                assert!((back - value).abs() <= 1e-12 * value.abs().max(300.0), "{kind:?} {} {value} {back}", unit.symbol);
            }
        }
    }
}

#[test]
fn every_kind_has_a_name_a_dimension_and_ranges_that_nest() {
    let mut names: Vec<&str> = Kind::ALL.iter().map(|kind| kind.name()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), Kind::ALL.len());
    for (place, kind) in Kind::ALL.into_iter().enumerate() {
        assert_eq!(kind as usize, place, "Kind::ALL is not in the order of declaration");
        let told = kind.describe();
        assert!(told.possible.0 <= told.sensible.0 && told.sensible.0 < told.sensible.1 && told.sensible.1 <= told.possible.1, "{kind:?}");
        assert_eq!(told.unit, kind.unit());
        assert_eq!(kind.dimension().absolute, matches!(kind, Kind::Temperature | Kind::Moment));
    }
    // A price times a mass is money; a density is a mass on a volume; a rate is a difference on a time.
    let exponents = |kind: Kind| kind.dimension().exponents;
    let minus = |left: [i8; 5], right: [i8; 5]| std::array::from_fn::<i8, 5, _>(|place| left[place] - right[place]);
    assert_eq!(exponents(Kind::PricePerGram), minus(exponents(Kind::Money), exponents(Kind::Mass)));
    assert_eq!(exponents(Kind::Density), minus(exponents(Kind::Mass), exponents(Kind::Volume)));
    assert_eq!(exponents(Kind::TemperatureRate), minus(exponents(Kind::TemperatureDifference), exponents(Kind::Duration)));
    assert_eq!(minus(exponents(Kind::Volume), exponents(Kind::Area)), exponents(Kind::Length));
}

#[test]
fn a_set_of_units_can_be_changed_for_one_kind_but_not_to_karats() {
    let units = Units::METRIC.with(Kind::Mass, "ozt").unwrap();
    assert_eq!(units.of(Kind::Mass).symbol, "ozt");
    assert_eq!(units.of(Kind::Length).symbol, "mm");
    assert!(Units::METRIC.with(Kind::Mass, "mm").is_none());
    assert!(Units::METRIC.with(Kind::Fineness, "k").is_none());
    assert!(Units::METRIC.with(Kind::Fineness, "%").is_some());
    let trade = Style::TRADE.units;
    let symbols = [Kind::Length, Kind::Temperature, Kind::Mass, Kind::Pressure, Kind::PricePerGram].map(|kind| trade.of(kind).symbol);
    assert_eq!(symbols, ["in", "°F", "dwt", "inHg", "/ozt"]);
}
