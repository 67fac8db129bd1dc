//! Digits, signs, spaces and ties.

use pourbook::quantity::{Kind, MINUS, Style, THIN, align, print};

#[track_caller]
fn reads(value: f64, kind: Kind, style: Style, wanted: &str) {
    assert_eq!(print(value, kind, &style).to_string().replace(THIN, " ").replace(MINUS, "-"), wanted, "{value} {kind:?}");
}

const METRIC: Style = Style::METRIC;
const TRADE: Style = Style::TRADE;

#[test]
fn digits_fit_the_quantity() {
    reads(12.5, Kind::Mass, METRIC, "12.50 g");
    reads(99.994, Kind::Mass, METRIC, "99.99 g");
    reads(99.996, Kind::Mass, METRIC, "100.0 g");
    reads(1250.04, Kind::Mass, METRIC, "1 250.0 g");
    reads(1250.5, Kind::Mass, METRIC.for_powder(), "1 251 g");
    reads(1250.5, Kind::Mass, TRADE.for_powder(), "1 251 g");
    reads(31.103_476_8, Kind::Mass, TRADE, "20.00 dwt");
    reads(88.9, Kind::Length, METRIC, "88.9 mm");
    reads(88.9, Kind::Length, METRIC.finer(), "88.90 mm");
    reads(88.9, Kind::Length, TRADE, "3.50 in");
    reads(31.75, Kind::Length, TRADE.finer(), "1.250 in");
    reads(732.4, Kind::Temperature, METRIC, "732 °C");
    reads(732.0, Kind::Temperature, TRADE, "1 350 °F");
    reads(50.0, Kind::TemperatureDifference, METRIC, "50 K");
    reads(50.0, Kind::TemperatureDifference, TRADE, "90 °F");
    reads(101.325, Kind::Pressure, METRIC, "101.3 kPa");
    reads(101.325, Kind::Pressure, TRADE, "29.92 inHg");
    reads(0.4, Kind::Ratio, METRIC, "0.400");
    reads(0.0125, Kind::Ratio, METRIC, "0.0125");
    reads(1.25, Kind::Ratio, METRIC, "1.25");
    reads(585.0, Kind::Fineness, METRIC, "585 ‰");
    reads(14_000.0 / 24.0, Kind::Fineness, METRIC, "583.3 ‰");
    reads(213.4, Kind::Volume, METRIC, "213 cm³");
    reads(0.544, Kind::Volume, METRIC, "0.54 cm³");
    reads(10.357, Kind::Density, METRIC, "10.36 g/cm³");
    reads(10.357, Kind::Density, METRIC.finer(), "10.357 g/cm³");
    reads(12.0, Kind::Count, METRIC, "12");
    reads(45.0, Kind::Angle, METRIC, "45.0°");
    reads(1234.5, Kind::Money, METRIC, "1 234.50");
    reads(1.0, Kind::PricePerGram, TRADE, "31.10/ozt");
    reads(29_500_000.0, Kind::Moment, METRIC, "2026-02-02 02:40 UTC");
    reads(1250.04, Kind::Mass, Style { comma: true, ..METRIC }, "1 250,0 g");
}

#[test]
fn durations_are_read_as_a_clock_says_them() {
    for (value_min, wanted) in [
        (0.0, "0 min"),
        (0.05, "3.0 s"),
        (0.2, "12 s"),
        (2.5, "2 min 30 s"),
        (3.0, "3 min"),
        (9.999, "10 min"),
        (45.0, "45 min"),
        (59.6, "1 h"),
        (200.0, "3 h 20 min"),
        (199.5, "3 h 20 min"),
        (-90.0, "-1 h 30 min"),
        (180.0, "3 h"),
        (75_030.0, "1 250 h 30 min"),
    ] {
        reads(value_min, Kind::Duration, METRIC, wanted);
    }
}

#[test]
fn ties_go_away_from_zero_on_the_decimal_a_person_wrote() {
    // As binary numbers all of these lie a hair beside the tie.
    for (value, wanted) in [(1.005, "1.01"), (2.675, "2.68"), (0.125, "0.13"), (-1.005, "-1.01"), (1.004_999_999, "1.00"), (0.285, "0.29")]
    {
        reads(value, Kind::Money, METRIC, wanted);
    }
    // 0.3175 mm is 0.0125 in and 0.0635 mm 0.0025 in.
    reads(0.3175, Kind::Length, TRADE.finer(), "0.013 in");
    reads(0.0635, Kind::Length, TRADE.finer(), "0.003 in");
    reads(3.175, Kind::Length, TRADE, "0.13 in");
    reads(3.048 * 0.5, Kind::Altitude, TRADE, "5 ft");
    reads(0.5, Kind::TemperatureDifference, TRADE, "0.9 °F");
    reads(0.25, Kind::Temperature, TRADE.finer(), "32.5 °F");
    // 2.5 °C lies on 36.5 °F.
    reads(2.5, Kind::Temperature, TRADE, "37 °F");
}

#[test]
fn every_tie_of_an_inch_goes_up() {
    // (k + ½)/100 in, for a thousand k, through millimetres that no binary number holds.
    for k in 0..1000_u32 {
        let millimetres: f64 = format!("{}e-3", 254 * (2 * k + 1) / 2).parse().unwrap();
        reads(millimetres, Kind::Length, TRADE, &format!("{}.{:02} in", (k + 1) / 100, (k + 1) % 100));
    }
}

#[test]
fn zero_has_no_minus() {
    for kind in Kind::ALL {
        for style in [METRIC, TRADE, METRIC.finer(), METRIC.for_powder()] {
            for value in [-0.0, -1e-9, -1e-300] {
                let printed = print(value, kind, &style).number;
                let nothing = printed.chars().filter(char::is_ascii_digit).all(|digit| digit == '0');
                assert!(!(nothing && printed.contains([MINUS, '-'])) || kind == Kind::Moment, "{kind:?} {printed}");
            }
        }
    }
    reads(-0.004, Kind::Mass, METRIC, "0.00 g");
    reads(-0.006, Kind::Mass, METRIC, "-0.01 g");
}

#[test]
fn what_is_not_finite_prints_as_a_dash_and_nothing_panics() {
    for kind in Kind::ALL {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(print(value, kind, &METRIC).to_string(), "–");
        }
        for value in [f64::MAX, f64::MIN, f64::MIN_POSITIVE, 1e22, 1e-22, 5e-324] {
            for style in [METRIC, TRADE] {
                assert!(!print(value, kind, &style).number.is_empty());
            }
        }
    }
}

#[test]
fn a_column_stands_on_its_decimal_marks() {
    let column: Vec<_> = [7.25, 1250.0, 99.5].iter().map(|value| print(*value, Kind::Mass, &METRIC)).collect();
    let whole = print(12.0, Kind::Count, &METRIC);
    let lines = align(&[column[0].clone(), column[1].clone(), column[2].clone(), whole]);
    let width: Vec<usize> = lines.iter().map(|line| line.chars().count()).collect();
    assert!(width.iter().all(|count| *count == width[0]), "{lines:?}");
    let marks: Vec<Option<usize>> = lines.iter().take(3).map(|line| line.chars().position(|sign| sign == '.')).collect();
    assert_eq!(marks, [Some(5); 3], "{lines:?}");
    assert!(align(&[]).is_empty());
}
