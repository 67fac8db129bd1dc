//! Properties over random entries and figures.

use pourbook::quantity::{EntryErrorKind, Grams, Habits, Kind, Style, Units, parse, parse_grams, print};
use proptest::prelude::*;
use rust_decimal::{Decimal, RoundingStrategy};

fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases: cases.max(ProptestConfig::default().cases),
        failure_persistence: None,
        max_global_rejects: 100_000,
        ..ProptestConfig::default()
    }
}

fn kinds() -> impl Strategy<Value = Kind> {
    prop::sample::select(Kind::ALL.to_vec())
}

/// A decimal with a point and no more digits than are exact everywhere: its text, and its value in ten-thousandths.
fn number() -> impl Strategy<Value = (String, i128)> {
    (0_i128..=9999, 0_usize..4, 0_i128..=9999).prop_map(|(whole, form, part)| match form {
        0 => (whole.to_string(), whole * 10_000),
        1 => (format!("{whole}.{}", part % 10), whole * 10_000 + part % 10 * 1000),
        2 => (format!("{whole}.{:02}", part % 100), whole * 10_000 + part % 100 * 100),
        _ => (format!("{whole}.{part:04}"), whole * 10_000 + part),
    })
}

/// A sum of products of random numbers, with brackets and signs.
fn sums() -> impl Strategy<Value = String> {
    let leaf = number().prop_map(|(text, _)| text);
    leaf.prop_recursive(4, 24, 4, |inner| {
        let divisor = (1_u32..=99).prop_map(|number| number.to_string());
        prop_oneof![
            (inner.clone(), prop::sample::select(vec!["+", "-", " + ", " - "]), inner.clone())
                .prop_map(|(left, sign, right)| format!("{left}{sign}{right}")),
            (inner.clone(), inner.clone()).prop_map(|(left, right)| format!("({left})*({right})")),
            (inner.clone(), divisor).prop_map(|(left, right)| format!("({left})/{right}")),
            inner.prop_map(|inner| format!("-({inner})")),
        ]
    })
}

proptest! {
    #![proptest_config(config(2000))]

    /// An independent expression evaluator, on binary numbers.
    #[test]
    fn arithmetic_agrees_with_another_evaluator(text in sums()) {
        prop_assume!(text.len() <= 200);
        let other: f64 = exmex::eval_str(&text).unwrap();
        prop_assume!(other.abs() < 1e10);
        let ours = parse(&text, Kind::Money, &Habits::default());
        let ours = ours.map(|parsed| parsed.value).unwrap_or_else(|error| panic!("{text}: {error:?}"));
        // Binary rounding of the other grows with its largest part, below 10⁴ each and at most five factors deep.
        let largest = text.split(['+', '-', '*', '/', '(', ')', ' ']).filter_map(|part| part.parse::<f64>().ok()).fold(1.0, f64::max);
        prop_assert!((ours - other).abs() <= 1e-11 * (other.abs() + largest.powi(4)), "{} is {}, not {}", text, ours, other);
    }

    /// Sums of products of two, against decimals: not one digit is lost.
    #[test]
    fn weights_are_exact_on_decimals(parts in prop::collection::vec((number(), 1_u32..=99, any::<bool>()), 1..6)) {
        let mut text = String::from("100000000");
        let mut exact = Decimal::from(100_000_000);
        for ((number, ten_thousandths), count, minus) in &parts {
            let part = Decimal::from_i128_with_scale(*ten_thousandths, 4) * Decimal::from(*count);
            text.push_str(&format!(" {} {number}*{count}", if *minus { '-' } else { '+' }));
            exact += if *minus { -part } else { part };
        }
        text.push_str(" - 100000000 + 5000000");
        exact -= Decimal::from(100_000_000 - 5_000_000);
        let scaled = format!("({text})/100");
        let wanted = (exact / Decimal::from(100)).round_dp_with_strategy(6, RoundingStrategy::MidpointAwayFromZero);
        prop_assert_eq!(parse_grams(&scaled, &Habits::default()).ok(), Grams::new(wanted), "{}", scaled);
    }

    #[test]
    fn a_decimal_is_the_nearest_binary_number(whole in 0_u64..=99_999, digits in "[0-9]{4,17}") {
        let text = format!("{whole}.{digits}");
        prop_assert_eq!(parse(&text, Kind::Money, &Habits::default()).map(|parsed| parsed.value).ok(), text.parse().ok());
    }

    #[test]
    fn the_twin_with_a_comma_means_the_same(text in sums(), kind in kinds()) {
        let habits = Habits::default();
        let (point, comma) = (parse(&text, kind, &habits), parse(&text.replace('.', ","), kind, &habits));
        prop_assert_eq!(point.as_ref().ok(), comma.as_ref().ok());
        prop_assert_eq!(point.err().map(|error| (error.key(), error.at)), comma.err().map(|error| (error.key(), error.at)));
    }

    #[test]
    fn one_separator_before_three_digits_offers_two_values(
        whole in 1_u32..=9,
        part in 0_u32..=999,
        comma in any::<bool>(),
        kind in prop::sample::select(vec![Kind::Mass, Kind::Money, Kind::Length, Kind::Area, Kind::Duration, Kind::Volume, Kind::PricePerGram]),
    ) {
        let text = format!("{whole}{}{part:03}", if comma { ',' } else { '.' });
        let error = parse(&text, kind, &Habits::default()).unwrap_err();
        prop_assert_eq!(&error.kind, &EntryErrorKind::AmbiguousSeparator(if comma { ',' } else { '.' }));
        prop_assert_eq!(error.at.clone(), 0..text.len());
        let values: Vec<f64> = error.readings.iter().map(|reading| reading.value).collect();
        let thousandths = f64::from(whole * 1000 + part);
        prop_assert_eq!(values, vec![thousandths, thousandths / 1000.0]);
    }

    #[test]
    fn a_number_of_a_unit_is_that_many(kind in kinds(), pick in any::<prop::sample::Index>(), tenths in 1_u32..=20_000) {
        prop_assume!(kind != Kind::Moment && kind != Kind::Count);
        let unit = pick.get(kind.units());
        prop_assume!(unit.symbol != "k" && unit.symbol != "fine");
        let number = f64::from(tenths) / 10.0;
        let (least, most) = kind.possible();
        let wanted = unit.to_base(number);
        prop_assume!((least..=most).contains(&wanted));
        for text in [format!("{number} {}", unit.symbol), format!("{number}{}", unit.symbol)] {
            let parsed = parse(&text, kind, &Habits::default()).unwrap_or_else(|error| panic!("{kind:?} {text}: {error:?}"));
            prop_assert!((parsed.value - wanted).abs() <= 1e-12 * (wanted.abs() + 300.0), "{:?} {} is {}", kind, text, parsed.value);
        }
    }
}

/// Signs an entry may hold and a few that it may not.
const SIGNS: &[&str] = &[
    "0",
    "1",
    "2",
    "3",
    "5",
    "9",
    "12",
    "125",
    "250",
    "000",
    ".",
    ",",
    " ",
    "\u{202F}",
    "'",
    "’",
    "+",
    "-",
    "−",
    "*",
    "×",
    "/",
    "÷",
    "(",
    ")",
    ":",
    "x",
    "½",
    "g",
    "oz",
    "oz av",
    "ozt",
    "gr",
    "lb",
    "dwt",
    "ct",
    "k",
    "in",
    "\"",
    "ft",
    "mm",
    "cm³",
    "fl oz",
    "C",
    "°F",
    "°",
    "K",
    "h",
    "min",
    "s",
    "%",
    "‰",
    "per 100",
    "/oz",
    "per",
    "fine",
    "inHg",
    "kPa",
    "€",
    "e",
    "nan",
    "é",
    "日",
    "\u{301}",
    "^",
    "2026-03-04 14:30",
    "UTC",
];

/// Whatever was refused is refused properly.
fn proper(text: &str, kind: Kind, habits: &Habits) -> Result<(), TestCaseError> {
    match parse(text, kind, habits) {
        Ok(parsed) => {
            let (least, most) = kind.possible();
            prop_assert!(parsed.value.is_finite() && (least..=most).contains(&parsed.value), "{:?} {:?}: {}", kind, text, parsed.value);
        }
        Err(error) => {
            prop_assert!(text.get(error.at.clone()).is_some(), "{:?} {:?}: place {:?}", kind, text, error.at);
            prop_assert!(error.to_string().ends_with('.'));
            for (place, reading) in error.readings.iter().enumerate() {
                prop_assert!(
                    error.readings[..place].iter().all(|other| other.value != reading.value),
                    "{:?} {:?}: {:?}",
                    kind,
                    text,
                    error.readings
                );
                let again = parse(&reading.text, kind, habits).map(|parsed| parsed.value);
                prop_assert_eq!(again, Ok(reading.value), "{:?} {:?} offers {:?}", kind, text, &reading.text);
            }
            if error.key().starts_with("entry-ambiguous") {
                prop_assert!(!error.readings.is_empty(), "{:?} {:?}", kind, text);
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(config(4000))]

    #[test]
    fn any_text_is_taken_or_refused_properly(text in any::<String>(), kind in kinds()) {
        proper(&text, kind, &Habits::default())?;
    }

    #[test]
    fn any_heap_of_signs_is_taken_or_refused_properly(
        signs in prop::collection::vec(prop::sample::select(SIGNS.to_vec()), 0..12),
        kind in kinds(),
        trade in any::<bool>(),
    ) {
        let units = if trade { Units::TRADE } else { Units::METRIC };
        proper(&signs.concat(), kind, &Habits { units, ..Habits::default() })?;
        proper(&signs.join(" "), kind, &Habits { units, ..Habits::default() })?;
    }

    /// Numbers with units of the kind, or words that mean two: mostly taken, often ambiguous.
    #[test]
    fn likely_entries_are_taken_or_refused_properly(
        (first, second) in ("[0-9]{1,3}([.,][0-9]{1,4})?", prop::option::of("[-+*/] ?[0-9]{1,3}([.,][0-9]{1,4})?")),
        units in any::<[prop::sample::Index; 2]>(),
        bare in any::<[bool; 2]>(),
        kind in kinds(),
        trade in any::<bool>(),
    ) {
        let mut words: Vec<&str> = kind.units().iter().map(|unit| unit.symbol).collect();
        words.extend(["oz", "gr", "°", "k", "ct"]);
        let [one, two] = units.map(|pick| *pick.get(&words));
        let text = format!(
            "{first} {} {}",
            if bare[0] { "" } else { one },
            second.map_or_else(String::new, |second| format!("{second} {}", if bare[1] { "" } else { two })),
        );
        let units = if trade { Units::TRADE } else { Units::METRIC };
        proper(&text, kind, &Habits { units, ..Habits::default() })?;
    }
}

/// Half of the last printed digit, in the unit of stored values.
fn half_digit(number: &str, size: f64) -> f64 {
    let places = number.split_once(['.', ',']).map_or(0, |(_, decimals)| decimals.len());
    0.5 * 10_f64.powi(-i32::try_from(places).expect("a few places")) * size
}

fn prints_and_reads(value: f64, kind: Kind, style: Style) -> Result<(), TestCaseError> {
    let habits = Habits { units: style.units, signed: value < 0.0, ..Habits::default() };
    let printed = print(value, kind, &style);
    let back = parse(&printed.to_string(), kind, &habits).unwrap_or_else(|error| panic!("{kind:?} {printed}: {error:?}")).value;
    let within = match kind {
        Kind::Moment => 0.5,
        Kind::Duration if value.abs() < 10.0 / 60.0 => 0.05 / 60.0,
        Kind::Duration if value.abs() < 9.991 => 0.5 / 60.0,
        Kind::Duration => 0.5,
        Kind::Fineness if !printed.number.contains(['.', ',']) => 0.05,
        _ => half_digit(&printed.number, kind.unit_named(printed.unit).expect("prints its own units").size()),
    };
    prop_assert!((back - value).abs() <= within * (1.0 + 1e-9) + 1e-12, "{:?} {} prints {} and reads {}", kind, value, printed, back);
    // A field in these units shows the number alone.
    if !matches!(kind, Kind::Duration | Kind::Moment) && (kind != Kind::Mass || !style.powder) {
        prop_assert_eq!(parse(&printed.number, kind, &habits).map(|parsed| parsed.value).ok(), Some(back), "{:?} {}", kind, printed.number);
    }
    Ok(())
}

proptest! {
    #![proptest_config(config(3000))]

    #[test]
    fn what_is_printed_can_be_typed(
        kind in kinds(),
        share in 0.0..=1.0_f64,
        small in any::<bool>(),
        pick in any::<prop::sample::Index>(),
        (trade, fine, powder, comma, below) in any::<(bool, bool, bool, bool, bool)>(),
    ) {
        let (least, most) = kind.sensible();
        let value = if small { least + (most - least) * share.powi(6) } else { least + (most - least) * share };
        let value = if kind == Kind::Count { value.round() } else { value };
        let set = if trade { Units::TRADE } else { Units::METRIC };
        let units = set.with(kind, pick.get(kind.units()).symbol).unwrap_or(set);
        // Below zero where an offset or a change of the kind makes sense.
        let offset = matches!(kind, Kind::Length | Kind::Mass | Kind::TemperatureDifference | Kind::TemperatureRate | Kind::Duration | Kind::Money);
        let value = if below && offset { -value } else { value };
        for units in [set, units] {
            prints_and_reads(value, kind, Style { units, fine, powder, comma })?;
        }
    }

    /// Against the rounding of the decimal crate, on the shortest decimal of the number.
    #[test]
    fn rounding_is_half_away_from_zero(value in prop_oneof![-1e9..1e9_f64, -10.0..10.0_f64, (-4000_i32..4000).prop_map(|eighths| f64::from(eighths) / 200.0)]) {
        let printed = print(value, Kind::Money, &Style::METRIC).number;
        let plain: String = printed.chars().filter(|sign| *sign != '\u{202F}').map(|sign| if sign == '\u{2212}' { '-' } else { sign }).collect();
        let wanted: Decimal = value.to_string().parse::<Decimal>().unwrap().round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero);
        prop_assert_eq!(plain.parse::<Decimal>().unwrap(), wanted, "{}", value);
    }
}

#[test]
fn the_bounds_of_every_kind_print_and_read_in_every_unit() {
    for kind in Kind::ALL {
        for set in [Units::METRIC, Units::TRADE] {
            for unit in kind.units() {
                let units = set.with(kind, unit.symbol).unwrap_or(set);
                for (fine, comma) in [(false, false), (true, true)] {
                    let (least, most) = kind.sensible();
                    for value in [least, most] {
                        prints_and_reads(value, kind, Style { units, fine, powder: false, comma }).unwrap();
                    }
                }
            }
        }
    }
}
