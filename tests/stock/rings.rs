//! Ring scales against tables made outside this crate, every row.

use pourbook::stock::{RingScale, SizeError};
use proptest::prelude::*;

use crate::{outside, shelf};

fn scale(id: &str) -> &'static RingScale {
    shelf().get::<RingScale>(id).unwrap()
}

/// Text of a size and its inner diameter, mm, from columns of a table.
fn rows(path: &str, size: usize, diameter: usize) -> Vec<(String, f64)> {
    let table = outside(path);
    let cells = table.lines().skip(1).map(|line| line.split(',').collect::<Vec<_>>());
    cells.map(|cells| (cells[size].to_owned(), cells[diameter].parse().unwrap())).collect()
}

fn agrees(id: &str, rows: &[(String, f64)], least: usize) {
    assert!(rows.len() >= least, "{id}: {} rows", rows.len());
    let scale = scale(id);
    assert_eq!(scale.sizes().count(), rows.len(), "{id}: as many sizes as the table has rows");
    for ((text, diameter_mm), size) in rows.iter().zip(scale.sizes()) {
        let got = scale.inner_diameter_mm(text).unwrap_or_else(|error| panic!("{id} {text}: {error:?}"));
        assert!((got - diameter_mm).abs() < 1e-6, "{id} {text}: {got} against {diameter_mm}");
        let back = scale.nearest(*diameter_mm).unwrap();
        assert_eq!(&back.label, text, "{id}: back from the diameter");
        assert!((back.size - size).abs() < 1e-9 && back.off_mm.abs() < 1e-6);
    }
}

#[test]
fn every_iso_size() {
    agrees("ring-iso", &rows("ringsize/iso_sizes.csv", 0, 2), 71);
}

#[test]
fn every_us_size() {
    agrees("ring-us", &rows("ringsize/us_sizes.csv", 0, 2), 65);
}

#[test]
fn every_uk_letter() {
    agrees("ring-uk", &rows("ringsize/uk_sizes.csv", 0, 3), 57);
}

#[test]
fn known_sizes() {
    // ISO 54: 54/π = 17.19 mm. US 6: 0.650 in = 16.51 mm, also on a supply chart. Both rounded to 0.01 mm.
    assert!((scale("ring-iso").inner_diameter_mm("54").unwrap() - 17.19).abs() < 0.005);
    assert!((scale("ring-us").inner_diameter_mm("6").unwrap() - 16.51).abs() < 0.005);
    // UK Z: circumference 68.75, a found chart prints 68.77.
    assert!((scale("ring-uk").inner_diameter_mm("Z").unwrap() * std::f64::consts::PI - 68.77).abs() < 0.03);
}

#[test]
fn sizes_as_people_write_them() {
    let us = scale("ring-us");
    for text in ["6.25", "6,25", "6 1/4", "6¼", " 6.25 ", "6.250"] {
        assert!((us.inner_diameter_mm(text).unwrap() - (11.6332 + 0.8128 * 6.25)).abs() < 1e-9, "{text}");
    }
    assert!((us.inner_diameter_mm("½").unwrap() - 12.0396).abs() < 1e-9);
    let uk = scale("ring-uk");
    for text in ["M 1/2", "M½", "m 1/2", "M1/2", " m½ "] {
        assert!((uk.inner_diameter_mm(text).unwrap() - 16.910213).abs() < 1e-6, "{text}");
    }
    for text in ["Z+1", "Z + 1", "z+1"] {
        assert!((uk.inner_diameter_mm(text).unwrap() - 22.281692).abs() < 1e-6, "{text}");
    }
}

#[test]
fn off_the_scale_says_the_range() {
    let off = |lowest: &str, highest: &str| Err(SizeError::OffScale { lowest: lowest.into(), highest: highest.into() });
    for text in ["40.5", "76.5", "0", "1000"] {
        assert_eq!(scale("ring-iso").inner_diameter_mm(text), off("41", "76"), "{text}");
    }
    assert_eq!(scale("ring-us").inner_diameter_mm("16.25"), off("0", "16"));
    for text in ["Z+3½", "Z+4", "Z+99"] {
        assert_eq!(scale("ring-uk").inner_diameter_mm(text), off("A", "Z+3"), "{text}");
    }
    // Half a step beyond an end still counts to the end; more does not.
    assert_eq!(scale("ring-us").nearest(11.6332 - 0.09).unwrap().label, "0");
    assert!(scale("ring-us").nearest(11.6332 - 0.11).is_err());
    for diameter_mm in [f64::NAN, f64::INFINITY, -1.0, 0.0, 100.0] {
        assert!(scale("ring-iso").nearest(diameter_mm).is_err(), "{diameter_mm}");
    }
}

#[test]
fn between_two_sizes_names_both() {
    let between = |below: &str, above: &str| Err(SizeError::Between { below: below.into(), above: above.into() });
    assert_eq!(scale("ring-us").inner_diameter_mm("6.3"), between("6.25", "6.5"));
    assert_eq!(scale("ring-iso").inner_diameter_mm("54.2"), between("54", "54.5"));
    assert_eq!(scale("ring-uk").inner_diameter_mm("M 1/4"), between("M", "M 1/2"));
}

#[test]
fn what_is_no_size() {
    for text in ["", "M", "-6", "six", "6 1/3", "61/4", "6..5", "6.5 1/4", "NaN", "inf", "1e1", ".", ",", "6 6"] {
        let error = scale("ring-us").inner_diameter_mm(text).unwrap_err();
        assert!(matches!(error, SizeError::NotASize { .. }), "{text:?}: {error:?}");
    }
    for text in ["", "6", "AA", "M+1", "Z+", "Z+0", "Z+x", "M 1/3", "Ä", "½", "+1"] {
        let error = scale("ring-uk").inner_diameter_mm(text).unwrap_err();
        assert!(matches!(error, SizeError::NotASize { .. }), "{text:?}: {error:?}");
    }
    assert_eq!(
        scale("ring-uk").inner_diameter_mm("q!"),
        Err(SizeError::NotASize { text: "q!".into(), example: scale("ring-uk").label(15.0) }),
        "the error shows how this scale writes a size"
    );
}

proptest! {
    #[test]
    fn the_nearest_size_is_the_nearest(diameter_mm in 11.0..26.0_f64) {
        for id in ["ring-iso", "ring-us", "ring-uk"] {
            let Ok(found) = scale(id).nearest(diameter_mm) else { continue };
            let best = scale(id).sizes().map(|size| (scale(id).inner_diameter_of(size).unwrap() - diameter_mm).abs()).fold(f64::MAX, f64::min);
            prop_assert!((found.off_mm.abs() - best).abs() < 1e-9);
            prop_assert_eq!(scale(id).inner_diameter_mm(&found.label).unwrap(), found.inner_diameter_mm);
        }
    }

    #[test]
    fn no_text_brings_a_scale_down(text in "\\PC{0,12}") {
        for id in ["ring-iso", "ring-us", "ring-uk"] {
            let _ = scale(id).inner_diameter_mm(&text);
        }
    }
}
