//! A table of entries that are taken, with their values worked out by hand.

use pourbook::quantity::{Habits, Kind, Units, parse};

use Kind::{
    Altitude, Angle, Area, Count, Density, Duration, Fineness, Length, Mass, Moment, Money, Pressure, PricePerGram, Ratio, Temperature,
    TemperatureDifference, TemperatureRate, Vacuum, Volume,
};

const OZT: f64 = 31.103_476_8;
const LB: f64 = 453.592_37;

const TABLE: &[(Kind, &str, f64)] = &[
    // Numbers.
    (Mass, "12.5", 12.5),
    (Mass, "12,5", 12.5),
    (Mass, " 12.5 ", 12.5),
    (Mass, ".5", 0.5),
    (Mass, ",5", 0.5),
    (Mass, "5.", 5.0),
    (Mass, "0,250", 0.25),
    (Mass, "0.250", 0.25),
    (Mass, ".250", 0.25),
    (Mass, "1,250.5", 1250.5),
    (Mass, "1.250,5", 1250.5),
    (Mass, "1,250.500", 1250.5),
    (Mass, "100,250.", 100_250.0),
    (Mass, "123,456,7", f64::NAN),
    (Money, "1,250,000", 1_250_000.0),
    (Money, "1.250.000", 1_250_000.0),
    (Mass, "1250,500", 1250.5),
    (Mass, "1.2500", 1.25),
    (Mass, "1 250", 1250.0),
    (Mass, "1 250,5", 1250.5),
    (Mass, "1\u{2009}250.5 g", 1250.5),
    (Mass, "1\u{202F}250", 1250.0),
    (Mass, "1\u{A0}250", 1250.0),
    (Mass, "1'250", 1250.0),
    (Mass, "1’250.25", 1250.25),
    (Mass, "1 250 + 2 500", 3750.0),
    (Mass, "007", 7.0),
    (Money, "-12.50", -12.5),
    (Money, "−12,50", -12.5),
    // Arithmetic.
    (Mass, "4.2*6+1.1", 26.3),
    (Mass, "4,2*6+1,1", 26.3),
    (Mass, "4.2×6+1.1", 26.3),
    (Mass, "4.2 x 6 + 1.1", 26.3),
    (Mass, "(4.2+1.1)*6", 31.8),
    (Mass, "12/4", 3.0),
    (Mass, "12 ÷ 4", 3.0),
    (Mass, "10 − 2 − 3", 5.0),
    (Mass, "48/4/3", 4.0),
    (Mass, "2+3*4", 14.0),
    (Mass, "-(2-5)", 3.0),
    (Mass, "5--2", 7.0),
    (Mass, "+5", 5.0),
    (Mass, "2*-3+10", 4.0),
    (Mass, "0.1+0.2", 0.3),
    (Mass, "1/3*3", 1.0),
    (Mass, "1,250*0", 0.0),
    // Units of weight.
    (Mass, "12 dwt", 12.0 * OZT / 20.0),
    (Mass, "12dwt", 12.0 * OZT / 20.0),
    (Mass, "1 ozt", OZT),
    (Mass, "1 oz t", OZT),
    (Mass, "2 troy ounces", 2.0 * OZT),
    (Mass, "1 oz av", LB / 16.0),
    (Mass, "1 oz avdp", LB / 16.0),
    (Mass, "1 avoirdupois ounce", LB / 16.0),
    (Mass, "4 lb", 4.0 * LB),
    (Mass, "1 lb 4 oz av", LB * 1.25),
    (Mass, "1lb4oz av", LB * 1.25),
    (Mass, "1 kg 250 g", 1250.0),
    (Mass, "5 grains", 5.0 * OZT / 480.0),
    (Mass, "5 grain", 5.0 * OZT / 480.0),
    (Mass, "5 gram", 5.0),
    (Mass, "5 gm", 5.0),
    (Mass, "5 G", 5.0),
    (Mass, "5 MG", f64::NAN),
    (Mass, "250 mg", 0.25),
    (Mass, "3 ct", 0.6),
    (Mass, "3 carats", 0.6),
    (Mass, "1 ozt 5 dwt", OZT * 1.25),
    (Mass, "0 oz", 0.0),
    (Mass, "10 g + 5 dwt", 10.0 + OZT / 4.0),
    (Mass, "4.2*6 + 1.1 dwt", 26.3 * OZT / 20.0),
    (Mass, "2*(10 g + 5 dwt)", 20.0 + OZT / 2.0),
    (Mass, "84 g / 12", 7.0),
    (Mass, "84 / 12 g", 7.0),
    // Lengths.
    (Length, "3.5 in", 88.9),
    (Length, "3.5\"", 88.9),
    (Length, "3.5″", 88.9),
    (Length, "3.5 Inches", 88.9),
    (Length, "1 1/2 in", 38.1),
    (Length, "1½ in", 38.1),
    (Length, "1 ½″", 38.1),
    (Length, "3/4 in", 19.05),
    (Length, "3 125/500 in", 82.55),
    (Length, "0.1 m + 50", 150.0),
    (Length, "½ in", 12.7),
    (Length, "3/4 in + 2 mm", 21.05),
    (Length, "2 mm + 3/4 in", 21.05),
    (Length, "6 / 2 in", 76.2),
    (Length, "3 in + 2 mm", 78.2),
    (Length, "3 + 2 in", 127.0),
    (Length, "(3 + 2) in", 127.0),
    (Length, "2*(3 in + 2 in)", 254.0),
    (Length, "5' 3\"", 1600.2),
    (Length, "5′3″", 1600.2),
    (Length, "1 ft 1 1/2 in", 342.9),
    (Length, "1 ft 1/2 in", 317.5),
    (Length, "2.5 cm", 25.0),
    (Length, "0.1 m", 100.0),
    (Length, "20 thou", 0.508),
    (Length, "50 µm", 0.05),
    (Length, "50 um", 0.05),
    (Length, "1.250 in", 31.75),
    (Altitude, "5280 ft", 1609.344),
    (Altitude, "-12", -12.0),
    (Area, "1 in2", 645.16),
    (Area, "2 cm²", 200.0),
    (Area, "2 cm^2", 200.0),
    // Volumes and densities.
    (Volume, "250 mL", 250.0),
    (Volume, "250 ml", 250.0),
    (Volume, "1.5 L", 1500.0),
    (Volume, "2 in³", 32.774_128),
    (Volume, "2 in^3", 32.774_128),
    (Volume, "3 cc", 3.0),
    (Volume, "12 US fl oz", 354.882_354_75),
    (Volume, "12 fl oz US", 354.882_354_75),
    (Volume, "10 imp fl oz", 284.130_625),
    (Density, "10.357", 10.357),
    (Density, "10,357 g/cm3", 10.357),
    (Density, "10357 kg/m³", 10.357),
    (Density, "10.36 g / cc", 10.36),
    // Temperatures.
    (Temperature, "350 F", 1590.0 / 9.0),
    (Temperature, "350 °F", 1590.0 / 9.0),
    (Temperature, "350F", 1590.0 / 9.0),
    (Temperature, "32 F", 0.0),
    (Temperature, "450 C", 450.0),
    (Temperature, "450 ºC", 450.0),
    (Temperature, "1000 K", 726.85),
    (Temperature, "-10", -10.0),
    (Temperature, "-10 C", -10.0),
    (Temperature, "-40 F", -40.0),
    (Temperature, "450 C + 20 K", 470.0),
    (Temperature, "20 K + 450 C", 470.0),
    (Temperature, "450 C - 20 K", 430.0),
    (Temperature, "350 F + 20 K", 1590.0 / 9.0 + 20.0),
    (Temperature, "450 + 20", 470.0),
    (Temperature, "450 + 20 C", 470.0),
    (Temperature, "450 C + 20", 470.0),
    (Temperature, "450 C + (30 C - 10 C)", 470.0),
    (Temperature, "900/2 C", 450.0),
    (Temperature, "300 K + 20 K", 46.85),
    (Temperature, "-273.15", -273.15),
    (Temperature, "0 K", -273.15),
    (TemperatureDifference, "90 F", 50.0),
    (TemperatureDifference, "50 C", 50.0),
    (TemperatureDifference, "50 °C", 50.0),
    (TemperatureDifference, "50 K", 50.0),
    (TemperatureDifference, "50", 50.0),
    (TemperatureDifference, "90 F + 10 K", 60.0),
    (TemperatureRate, "5 C/min", 300.0),
    (TemperatureRate, "180 F/h", 100.0),
    (TemperatureRate, "150", 150.0),
    (TemperatureRate, "150 °C per hour", 150.0),
    // Times.
    (Duration, "90", 90.0),
    (Duration, "1:30", 90.0),
    (Duration, "1:30 h", 90.0),
    (Duration, "0:05:30", 5.5),
    (Duration, "1 h 30", 90.0),
    (Duration, "1 h 30 min", 90.0),
    (Duration, "1h30m", 90.0),
    (Duration, "1h30", 90.0),
    (Duration, "1.5 h", 90.0),
    (Duration, "1,5 hours", 90.0),
    (Duration, "1 1/2 h", 90.0),
    (Duration, "2 d", 2880.0),
    (Duration, "45 s", 0.75),
    (Duration, "2 min 30 s", 2.5),
    (Duration, "1:30 + 0:45", 135.0),
    (Duration, "2 * 1 h 30", 180.0),
    (Duration, "1 h 30 / 2", 45.0),
    (Duration, "1 h 30 + 15 min", 105.0),
    (Moment, "1970-01-01 00:00", 0.0),
    (Moment, "2020-01-01 00:00 UTC", 26_297_280.0),
    (Moment, "2040-01-01T00:00Z", 36_816_480.0),
    // Pressures.
    (Pressure, "1013.25 hPa", 101.325),
    (Pressure, "1013.25 mbar", 101.325),
    (Pressure, "101.325", 101.325),
    (Pressure, "29.92 inHg", 29.92 * 3.386_388_640_341),
    (Pressure, "29.92 in Hg", 29.92 * 3.386_388_640_341),
    (Pressure, "760 mmHg", 760.0 * 0.133_322_387_415),
    (Pressure, "1 bar", 100.0),
    (Vacuum, "28 inHg", 28.0 * 3.386_388_640_341),
    (Vacuum, "95", 95.0),
    // Ratios.
    (Ratio, "0.4", 0.4),
    (Ratio, "40 %", 0.4),
    (Ratio, "40%", 0.4),
    (Ratio, "40 per 100", 0.4),
    (Ratio, "40/100", 0.4),
    (Ratio, "40:100", 0.4),
    (Ratio, "40/100 g", 0.4),
    (Ratio, "5 ‰", 0.005),
    (Ratio, "-0.35 %", -0.0035),
    // Fineness.
    (Fineness, "585", 585.0),
    (Fineness, "585 ‰", 585.0),
    (Fineness, "58.5 %", 585.0),
    (Fineness, "9 k", 375.0),
    (Fineness, "9kt", 375.0),
    (Fineness, "18 K", 750.0),
    (Fineness, "18 karat", 750.0),
    (Fineness, "0.999 fine", 999.0),
    (Fineness, ".925 fine", 925.0),
    (Fineness, "999 fine", 999.0),
    (Fineness, "1 fine", 1000.0),
    (Fineness, "14/24 fine", 14_000.0 / 24.0),
    // Counts, angles, money.
    (Count, "3 + 4", 7.0),
    (Count, "2 doz", 24.0),
    (Count, "3 pairs", 6.0),
    (Count, "12 pcs", 12.0),
    (Count, "6/2", 3.0),
    (Angle, "45", 45.0),
    (Angle, "45°", 45.0),
    (Angle, "45 deg", 45.0),
    (PricePerGram, "62.4", 62.4),
    (PricePerGram, "1850 per ozt", 1850.0 / OZT),
    (PricePerGram, "1850/ozt", 1850.0 / OZT),
    (PricePerGram, "1850 / ozt", 1850.0 / OZT),
    (PricePerGram, "62400 /kg", 62.4),
    (PricePerGram, "3 per dwt", 60.0 / OZT),
    (PricePerGram, "1850/31.1", 1850.0 / 31.1),
];

#[test]
fn every_entry_of_the_table_has_its_value() {
    let habits = Habits::default();
    let mut wrong = Vec::new();
    for (kind, text, wanted) in TABLE {
        match parse(text, *kind, &habits) {
            Ok(parsed) if (parsed.value - wanted).abs() <= 2.0 * f64::EPSILON * wanted.abs() => {}
            // A line of the table without a value stands for an entry that must be refused.
            Err(_) if wanted.is_nan() => {}
            other => wrong.push(format!("{kind:?} {text:?}: {other:?}, not {wanted}")),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_bare_number_is_in_the_fields_own_unit() {
    let trade = Habits { units: Units::TRADE, ..Habits::default() };
    for (kind, text, wanted) in [
        (Length, "3.5", 88.9),
        (Length, "3.5 mm", 3.5),
        (Length, "1 1/2", 38.1),
        (Length, "3 in + 2", 127.0),
        (Mass, "20", OZT),
        (Mass, "4.2*5", 21.0 * OZT / 20.0),
        (Temperature, "212", 100.0),
        (Temperature, "350 F + 20", 1590.0 / 9.0 + 100.0 / 9.0),
        (TemperatureDifference, "90", 50.0),
        (Pressure, "29.92", 29.92 * 3.386_388_640_341),
        (PricePerGram, "1850", 1850.0 / OZT),
    ] {
        let value = parse(text, kind, &trade).map(|parsed| parsed.value);
        assert!(value.as_ref().is_ok_and(|value| (value - wanted).abs() <= 2.0 * f64::EPSILON * wanted), "{kind:?} {text}: {value:?}");
    }
}

#[test]
fn the_unit_named_last_and_unusual_values_are_told() {
    let habits = Habits::default();
    let told =
        |text: &str, kind: Kind| parse(text, kind, &habits).map(|parsed| (parsed.unit.map(|unit| unit.symbol), parsed.unusual)).unwrap();
    assert_eq!(told("3.5 in", Length), (Some("in"), false));
    assert_eq!(told("3 in + 2 mm", Length), (Some("mm"), false));
    assert_eq!(told("88.9", Length), (None, false));
    assert_eq!(told("900", Length), (None, true));
    assert_eq!(told("40", Ratio), (None, true));
    assert_eq!(told("0.585", Fineness), (None, true));
    assert_eq!(told("2500 C", Temperature), (Some("°C"), true));
}

#[test]
fn a_field_for_offsets_takes_values_below_zero() {
    let signed = Habits { signed: true, ..Habits::default() };
    assert_eq!(parse("-0.05", Length, &signed).map(|parsed| parsed.value), Ok(-0.05));
    assert!(parse("-0.05", Length, &Habits::default()).is_err());
    assert!(parse("-300", Temperature, &signed).is_err(), "nothing is colder than absolute zero");
}
