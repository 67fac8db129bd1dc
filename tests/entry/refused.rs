//! A table of entries that are refused, with the reason, the place and what is offered instead.

use pourbook::quantity::{EntryError, EntryErrorKind as Why, Habits, Kind, Mistake, Units, parse, print_moment};

use Kind::{
    Angle, Count, Duration, Fineness, Length, Mass, Moment, Money, Pressure, PricePerGram, Ratio, Temperature, TemperatureDifference,
    Vacuum, Volume,
};

fn refused(kind: Kind, text: &str) -> EntryError {
    match parse(text, kind, &Habits::default()) {
        Err(error) => error,
        Ok(parsed) => panic!("{kind:?} {text:?} is taken as {}", parsed.value),
    }
}

/// Kind, entry, key of the sentence, first byte at fault.
const TABLE: &[(Kind, &str, &str, usize)] = &[
    (Mass, "", "entry-empty", 0),
    (Mass, " \u{A0} ", "entry-empty", 0),
    (Mass, "nan", "entry-not-a-number", 0),
    (Mass, "NaN", "entry-not-a-number", 0),
    (Length, "inf", "entry-not-a-number", 0),
    (Mass, "3 + Infinity", "entry-not-a-number", 4),
    (Mass, "∞", "entry-not-a-number", 0),
    (Mass, "1e5", "entry-power-of-ten", 1),
    (Mass, "1.5E5", "entry-power-of-ten", 3),
    (Mass, "hello", "entry-unknown-word", 0),
    (Mass, "5 quux", "entry-unknown-word", 2),
    (Mass, "5 $", "entry-unknown-sign", 2),
    (Mass, "=5", "entry-unknown-sign", 0),
    (Mass, "5;3", "entry-unknown-sign", 1),
    (Mass, "1:30", "entry-unknown-sign", 1),
    (Mass, "5 mm", "entry-other-kind", 2),
    (Length, "5 kg", "entry-other-kind", 2),
    (Pressure, "5 mm", "entry-other-kind", 2),
    (Mass, "1,2,3", "entry-bad-number", 0),
    (Mass, "1.2.3", "entry-bad-number", 0),
    (Mass, "5 + 12,34,567", "entry-bad-number", 4),
    (Mass, "1,250.5.5", "entry-bad-number", 0),
    (Mass, "0,250.5", "entry-bad-number", 0),
    (Mass, "3 4", "entry-two-numbers", 2),
    (Mass, "1 25", "entry-two-numbers", 2),
    (Length, "1 5/2 in", "entry-two-numbers", 2),
    (Mass, "3(4)", "entry-two-numbers", 1),
    (Mass, "5 +", "entry-missing-number", 3),
    (Mass, "5 + ", "entry-missing-number", 3),
    (Mass, "*5", "entry-missing-number", 0),
    (Mass, "5 */ 3", "entry-missing-number", 3),
    (Mass, "g", "entry-missing-number", 0),
    (Mass, "()", "entry-bracket", 1),
    (Mass, "(5", "entry-bracket", 0),
    (Mass, "5)", "entry-bracket", 1),
    (Mass, "5 g g", "entry-two-units", 4),
    (Mass, "(5 g) kg", "entry-two-units", 6),
    (Mass, "4 oz av 1 lb", "entry-compound-order", 8),
    (Mass, "1 lb 4", "entry-two-numbers", 5),
    (Length, "5 ft 3", "entry-two-numbers", 5),
    (Duration, "30 min 1 h", "entry-compound-order", 7),
    (Duration, "1:75", "entry-bad-clock", 0),
    (Duration, "1:30 min", "entry-bad-clock", 0),
    (Duration, "1:2:3:4", "entry-bad-clock", 0),
    (Duration, "1:", "entry-bad-clock", 0),
    (Duration, "1.5:30", "entry-bad-clock", 0),
    (Mass, "5/0", "entry-division-by-zero", 2),
    (Mass, "5/(3-3)", "entry-division-by-zero", 2),
    (Mass, "0/0", "entry-division-by-zero", 2),
    (Length, "3 mm * 4 mm", "entry-amount-times-amount", 7),
    (Length, "3 / (2 in)", "entry-divided-by-amount", 4),
    (Length, "3 mm / 4 mm", "entry-divided-by-amount", 7),
    (Temperature, "450 C + 20 C", "entry-two-temperatures", 0),
    (Temperature, "350 F + 20 F", "entry-two-temperatures", 0),
    (Temperature, "450 C + 20 F", "entry-two-temperatures", 0),
    (Temperature, "450 C + 20 C - 10 C", "entry-two-temperatures", 0),
    (Temperature, "450 C - 20 C", "entry-only-a-difference", 0),
    (Temperature, "20 K - 450 C", "entry-only-a-difference", 0),
    (Temperature, "2 * (450 C + 20 K)", "entry-scaled-temperature", 4),
    (Temperature, "450 C * 2", "entry-scaled-temperature", 8),
    (Temperature, "-274", "entry-too-small", 0),
    (Temperature, "-1 K", "entry-too-small", 0),
    (Temperature, "-460 F", "entry-too-small", 0),
    (Temperature, "10 C - 300 K", "entry-too-small", 0),
    (Mass, "-5", "entry-too-small", 0),
    (Mass, "3 - 5 g", "entry-too-small", 0),
    (Mass, "99999999999999999999999999999999999999999999999", "entry-too-large", 0),
    (Length, "9999999*9999999*9999999*9999999", "entry-too-large", 0),
    (Fineness, "1001", "entry-too-large", 0),
    (Fineness, "25 k", "entry-too-large", 0),
    (Count, "2.5", "entry-not-whole", 0),
    (Count, "1/3", "entry-not-whole", 0),
    (Mass, "14 k", "entry-karat-for-weight", 3),
    (Mass, "14kt", "entry-karat-for-weight", 2),
    (Fineness, "9 ct", "entry-carat-for-fineness", 2),
    (Fineness, "9 ct gold", "entry-carat-for-fineness", 2),
    (Fineness, "18 carat", "entry-carat-for-fineness", 3),
    (Money, "€ 12", "entry-currency", 0),
    (Money, "12 USD", "entry-currency", 3),
    (PricePerGram, "$12", "entry-currency", 0),
    (Moment, "tomorrow", "entry-moment-form", 0),
    (Moment, "03/04/2026 14:30", "entry-moment-form", 0),
    (Moment, "2026-02-30 14:30", "entry-moment-form", 0),
    (Moment, "2026-03-04", "entry-moment-form", 0),
    (Moment, "2026-03-04 24:30", "entry-moment-form", 0),
    (Moment, "1969-12-31 23:59", "entry-too-small", 0),
    (Angle, "400", "entry-too-large", 0),
    (Mass, "5 Mg", "entry-unknown-word", 2),
];

#[test]
fn every_entry_of_the_table_is_refused_for_its_reason_at_its_place() {
    let mut wrong = Vec::new();
    for (kind, text, key, at) in TABLE {
        match parse(text, *kind, &Habits::default()) {
            Err(error) if error.key() == *key && error.at.start == *at => {
                assert!(text.get(error.at.clone()).is_some(), "{text:?}: the place {:?} is not in the entry", error.at);
                let sentence = error.to_string();
                assert!(sentence.ends_with('.') && sentence.len() < 200, "{sentence}");
            }
            other => wrong.push(format!("{kind:?} {text:?}: {other:?}, not {key} at {at}")),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Kind, entry, key, and the values offered, in order.
const AMBIGUOUS: &[(Kind, &str, &str, &[f64])] = &[
    (Mass, "1,250", "entry-ambiguous-separator", &[1250.0, 1.25]),
    (Mass, "1.250", "entry-ambiguous-separator", &[1250.0, 1.25]),
    (Mass, "1,255 g", "entry-ambiguous-separator", &[1255.0, 1.255]),
    (Mass, "12.500*2", "entry-ambiguous-separator", &[25_000.0, 25.0]),
    (Mass, "1,250 + 2,500", "entry-ambiguous-separator", &[3750.0, 3.75]),
    (Mass, "1.000", "entry-ambiguous-separator", &[1000.0, 1.0]),
    (Money, "1,250", "entry-ambiguous-separator", &[1250.0, 1.25]),
    (Temperature, "1,250 C", "entry-ambiguous-separator", &[1250.0, 1.25]),
    (Duration, "1.440", "entry-ambiguous-separator", &[1440.0, 1.44]),
    (Length, "1.250 mm", "entry-ambiguous-separator", &[1250.0, 1.25]),
    (Mass, "1 oz", "entry-ambiguous-unit", &[31.103_476_8, 28.349_523_125]),
    (Mass, "1oz", "entry-ambiguous-unit", &[31.103_476_8, 28.349_523_125]),
    (Mass, "1,250*0 + 1 oz", "entry-ambiguous-unit", &[31.103_476_8, 28.349_523_125]),
    (Mass, "35000 oz", "entry-ambiguous-unit", &[992_233.309_375]),
    (Mass, "2 ounces", "entry-ambiguous-unit", &[62.206_953_6, 56.699_046_25]),
    (Mass, "5 gr", "entry-ambiguous-unit", &[0.323_994_55, 5.0]),
    (Mass, "1,250 oz", "entry-ambiguous-separator", &[38_879.346, 35_436.903_906_25, 38.879_346, 35.436_903_906_25]),
    (Mass, "1 lb 4 oz", "entry-ambiguous-unit", &[578.006_277_2, 566.990_462_5]),
    (Volume, "1 fl oz", "entry-ambiguous-unit", &[29.573_529_562_5, 28.413_062_5]),
    (Temperature, "350°", "entry-ambiguous-unit", &[350.0, 1590.0 / 9.0]),
    (Temperature, "350 deg", "entry-ambiguous-unit", &[350.0, 1590.0 / 9.0]),
    (TemperatureDifference, "90°", "entry-ambiguous-unit", &[90.0, 50.0]),
    (PricePerGram, "1850/oz", "entry-ambiguous-unit", &[1850.0 / 31.103_476_8, 1850.0 / 28.349_523_125]),
    (Fineness, "14 k", "entry-ambiguous-karat", &[14_000.0 / 24.0, 585.0]),
    (Fineness, "14k", "entry-ambiguous-karat", &[14_000.0 / 24.0, 585.0]),
    (Fineness, "22 kt", "entry-ambiguous-karat", &[22_000.0 / 24.0, 916.0]),
    (Fineness, "24 k", "entry-ambiguous-karat", &[1000.0, 999.0]),
    (Length, "3 in + 2", "entry-ambiguous-bare", &[78.2, 127.0]),
    (Length, "2*(3 in + 2)", "entry-ambiguous-bare", &[156.4, 254.0]),
    (Length, "2 + 3 in + 4 mm", "entry-ambiguous-bare", &[131.0, 82.2]),
    (Length, "1-1/2 in", "entry-ambiguous-fraction", &[38.1, 12.7]),
    (Temperature, "1 + 0.1250 K", "entry-ambiguous-bare", &[1.125, -272.025]),
    (Temperature, "450 + 20 K", "entry-ambiguous-bare", &[470.0, 196.85]),
];

#[test]
fn what_can_mean_two_things_is_refused_and_both_are_offered() {
    for (kind, text, key, wanted) in AMBIGUOUS {
        let error = refused(*kind, text);
        assert_eq!(error.key(), *key, "{kind:?} {text:?}");
        let offered: Vec<f64> = error.readings.iter().map(|reading| reading.value).collect();
        assert_eq!(offered.len(), wanted.len(), "{kind:?} {text:?}: {:?}", error.readings);
        for (offered, wanted) in offered.iter().zip(*wanted) {
            assert!((offered - wanted).abs() <= 2.0 * f64::EPSILON * wanted.abs(), "{kind:?} {text:?}: {offered}, not {wanted}");
        }
        for reading in &error.readings {
            let again = parse(&reading.text, *kind, &Habits::default());
            assert_eq!(again.map(|parsed| parsed.value), Ok(reading.value), "{text:?} offers {:?}", reading.text);
        }
    }
}

#[test]
fn every_reason_is_met_and_has_its_key_in_the_list() {
    let mut met: Vec<&str> = TABLE.iter().map(|line| line.2).chain(AMBIGUOUS.iter().map(|line| line.2)).collect();
    met.extend(["entry-too-long", "entry-too-deep", "entry-moment-skipped", "entry-moment-twice"]);
    met.sort_unstable();
    met.dedup();
    let mut keys = EntryError::KEYS.to_vec();
    keys.sort_unstable();
    assert_eq!(met, keys);
}

#[test]
fn the_arguments_name_what_was_typed_and_what_is_asked() {
    assert_eq!(
        refused(Mass, "5 mm").args(),
        [("word", "mm"), ("measures", "length"), ("asked", "weight")].map(|(name, text)| (name, text.to_owned()))
    );
    assert_eq!(
        refused(Fineness, "1200").args(),
        [("asked", "fineness"), ("bound", "1000"), ("unit", "‰")].map(|(name, text)| (name, text.to_owned()))
    );
    assert_eq!(refused(Mass, "1,250").args(), [("sign", ",".to_owned())]);
}

#[test]
fn readings_keep_what_was_typed_where_they_can() {
    let texts = |kind: Kind, text: &str| refused(kind, text).readings.into_iter().map(|reading| reading.text).collect::<Vec<_>>();
    assert_eq!(texts(Mass, "1,250*6 + 2"), ["1250*6 + 2", "1.25*6 + 2"]);
    assert_eq!(texts(Mass, "1,255"), ["1255", "1.2550"]);
    assert_eq!(texts(Mass, "1oz"), ["1 ozt", "1 oz av"]);
    assert_eq!(texts(Mass, "5 gr"), ["5 grain", "5 g"]);
    assert_eq!(texts(Fineness, "14 k"), ["14/24 fine", "585 ‰"]);
    assert_eq!(texts(Length, "3 in + 2"), ["3 in + 2 mm", "3 in + 2 in"]);
    assert_eq!(texts(Length, "1-1/2 in"), ["1 1/2 in", "1 - 1/2 in"]);
    assert_eq!(texts(Temperature, "350°"), ["350°C", "350°F"].map(|text| text.replace("350°", "350 °")));
}

#[test]
fn carats_typed_for_fineness_offer_karats() {
    let error = refused(Fineness, "9 ct gold");
    assert_eq!(error.kind, Why::Mistaken(Mistake::CaratForFineness));
    assert_eq!(error.readings.iter().map(|reading| reading.value).collect::<Vec<_>>(), [375.0]);
    assert!(error.to_string().contains("British"));
    let values: Vec<f64> = refused(Fineness, "14 ct").readings.iter().map(|reading| reading.value).collect();
    assert_eq!(values, [14_000.0 / 24.0, 585.0]);
}

#[test]
fn a_vacuum_read_below_zero_offers_the_same_above() {
    let error = refused(Vacuum, "-28 inHg");
    assert_eq!(error.key(), "entry-too-small");
    assert_eq!(error.readings.len(), 1);
    assert!((error.readings[0].value - 28.0 * 3.386_388_640_341).abs() < 1e-12);
}

#[test]
fn a_reading_that_cannot_be_is_not_offered() {
    // Nothing is counted in quarters: one reading is left, too unusual to be taken unasked.
    let error = refused(Count, "1,250");
    assert_eq!(error.key(), "entry-ambiguous-separator");
    assert_eq!(error.readings.iter().map(|reading| reading.value).collect::<Vec<_>>(), [1250.0]);
    // Five thousand kilograms cannot be, five and a quarter can, if seldom.
    assert_eq!(parse("5,250 kg", Mass, &Habits::default()).map(|parsed| (parsed.value, parsed.unusual)), Ok((5250.0, true)));
    // There is no density above ten thousand, and no ratio of 1250.
    assert_eq!(parse("10,357", Kind::Density, &Habits::default()).map(|parsed| parsed.value), Ok(10.357));
    assert_eq!(parse("1.250", Ratio, &Habits::default()).map(|parsed| parsed.value), Ok(1.25));
}

#[test]
fn in_a_trade_field_a_step_without_unit_is_asked_for() {
    let trade = Habits { units: Units::TRADE, ..Habits::default() };
    let error = parse("450 C + 20", Temperature, &trade).unwrap_err();
    assert_eq!(error.key(), "entry-ambiguous-bare");
    let mut values: Vec<f64> = error.readings.iter().map(|reading| reading.value).collect();
    values.sort_by(f64::total_cmp);
    assert!((values[0] - (450.0 + 100.0 / 9.0)).abs() < 1e-9 && (values[1] - 470.0).abs() < 1e-9, "{values:?}");
    // What cannot be written as a sum is offered as its result, with a digit more where three would be doubtful again.
    let error = parse("1 C + 0.1250", Temperature, &trade).unwrap_err();
    let texts: Vec<&str> = error.readings.iter().map(|reading| reading.text.as_str()).collect();
    assert!(texts.contains(&"1.1250 °C"), "{texts:?}");
    for reading in &error.readings {
        assert_eq!(parse(&reading.text, Temperature, &trade).map(|parsed| parsed.value), Ok(reading.value));
    }
}

#[test]
fn places_are_given_in_characters_too() {
    let text = "½ × ∞";
    let error = refused(Mass, text);
    assert_eq!(&text[error.at.clone()], "∞");
    assert_eq!(error.characters(text), 4..5);
}

#[test]
fn long_and_deep_entries_are_refused() {
    assert_eq!(refused(Mass, &"1+".repeat(101)).key(), "entry-too-long");
    // What is too much begins between two characters.
    let degrees = format!("1{}", "°".repeat(100));
    assert_eq!(refused(Mass, &degrees).at, 199..201);
    // `oz av` in the place of `oz` would be too long.
    let ounces = refused(Mass, &format!("1{}oz", " ".repeat(196)));
    assert_eq!(ounces.readings.len(), 2);
    for reading in &ounces.readings {
        assert_eq!(parse(&reading.text, Mass, &Habits::default()).map(|parsed| parsed.value), Ok(reading.value));
    }
    assert_eq!(refused(Mass, &format!("{}1{}", "(".repeat(21), ")".repeat(21))).key(), "entry-too-deep");
    assert!(parse(&format!("{}1{}", "(".repeat(20), ")".repeat(20)), Mass, &Habits::default()).is_ok());
    assert!(parse(&format!("{}1", "-".repeat(198)), Mass, &Habits::default()).is_ok());
}

#[test]
fn a_time_of_day_that_comes_twice_or_not_at_all() {
    // Berlin, 2026: clocks go forward on 29 March at 02:00 and back on 25 October at 03:00.
    let berlin = Habits { zone: jiff::tz::TimeZone::get("Europe/Berlin").unwrap(), ..Habits::default() };
    let value = |text: &str| parse(text, Moment, &berlin).map(|parsed| parsed.value);
    assert_eq!(value("2026-07-01 14:30"), value("2026-07-01 12:30 UTC"));
    assert_eq!(value("2026-12-01 14:30"), value("2026-12-01 13:30 UTC"));
    assert_eq!(value("2026-03-29 02:30").unwrap_err().kind, Why::MomentSkipped);
    for text in ["2026-07-01 14:30", "2026-12-31 23:59", "2026-03-29 03:00"] {
        assert_eq!(print_moment(value(text).unwrap(), &berlin.zone), text);
    }
    let twice = value("2026-10-25 02:30").unwrap_err();
    assert_eq!(twice.kind, Why::MomentTwice);
    assert_eq!(twice.readings.len(), 2);
    assert!((twice.readings[1].value - twice.readings[0].value - 60.0).abs() < 1e-9);
    for reading in &twice.readings {
        assert_eq!(value(&reading.text), Ok(reading.value));
    }
    // Clocks go back then too, but no job is so far away: what is impossible is not offered.
    let far = value("2826-10-25 02:30").unwrap_err();
    assert_eq!((far.key(), far.readings.len()), ("entry-too-large", 0));
}
