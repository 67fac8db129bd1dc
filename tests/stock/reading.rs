//! Texts that must be refused, with their place; and a hash that does not depend on layout.

use pourbook::stock::{
    Composition, Curve, Element, Entry, EntryHash, EntryId, Overlay, OverlayItem, Permille, Shelf, Sourced, Span, Trust,
};

const FLASK: &str = r#"[
    Flask((
        id: "flask-one",
        name: "One",
        inner_diameter_mm: 63.5,
        height_mm: 76.2,
        origin: ("own", Studio),
        wall_mm: (1.5, "own", Studio),
        wall: Solid,
    )),
]"#;

fn read(text: &str) -> Result<Vec<Entry>, (usize, String)> {
    Shelf::read_entries("own.ron", text).map_err(|error| {
        assert_eq!(error.file, "own.ron");
        assert!(error.column > 0 && error.to_string().starts_with(&format!("own.ron, line {}, column ", error.line)));
        (error.line, error.what)
    })
}

#[test]
fn what_is_refused_is_refused_in_its_line() {
    assert!(read(FLASK).is_ok());
    for (from, to, line, part) in [
        ("63.5", "NaN", 5, "finite"),
        ("63.5", "inf", 5, "finite"),
        ("63.5", "1e999", 5, "finite"),
        ("63.5", "\"63.5\"", 5, ""),
        ("height_mm", "hight_mm", 6, "hight_mm"),
        ("(1.5, ", "(-inf, ", 8, "finite"),
        ("(1.5, \"own\", Studio)", "(1.5, \"own\", Sure)", 8, "Sure"),
        ("(1.5, \"own\", Studio)", "(1.5, \"own\")", 8, ""),
        ("(1.5, \"own\", Studio)", "1.5", 8, ""),
        ("Solid", "Paper", 9, "Paper"),
        ("flask-one", "Flask One", 3, "Flask One"),
        ("Flask(", "Bucket(", 2, "Bucket"),
        ("name: \"One\"", "name: \"One\", name: \"Two\"", 4, "name"),
    ] {
        assert!(FLASK.contains(from));
        let (found, what) = read(&FLASK.replacen(from, to, 1)).unwrap_err();
        assert_eq!(found, line, "{to}: {what}");
        assert!(what.contains(part), "{to}: {what}");
    }
    let (_, what) = read(&FLASK.replacen("        wall: Solid,\n", "", 1)).unwrap_err();
    assert!(what.contains("wall"), "{what}");
}

#[test]
fn numbers_in_their_places_are_checked() {
    let part = |text: &str| pourbook::stock::ron_options().from_str::<Composition>(text);
    assert!(part("{Ag: 925, Cu: 75}").is_ok());
    assert!(part("{Ag: 999.9, Cu: 0.1}").is_ok(), "tenths are exact");
    for text in [
        "{Ag: 925, Cu: 74.999}",
        "{Ag: 925, Cu: 76}",
        "{Ag: 500, Ag: 500}",
        "{Ag: 1000, Cu: 0}",
        "{Ag: 1100, Cu: -100}",
        "{}",
        "{Ag: NaN}",
        "{Xx: 1000}",
        "{Ag: 999.9999, Cu: 0.0001}",
    ] {
        assert!(part(text).is_err(), "{text}");
    }
    let span = |text: &str| ron::from_str::<Span>(text);
    assert!(span("(1, 1, \"P\", CommonPractice)").is_ok());
    assert!(span("(2, 1, \"P\", CommonPractice)").is_err());
    assert!(span("(1, NaN, \"P\", CommonPractice)").is_err());
    let curve = |text: &str| ron::from_str::<Curve>(text);
    assert!(curve("([(1, 2), (2, 3)], \"P\", CommonPractice)").is_ok());
    assert!(curve("([], \"P\", CommonPractice)").is_err());
    assert!(curve("([(1, 2), (1, 3)], \"P\", CommonPractice)").is_err());
    assert!(curve("([(1, inf)], \"P\", CommonPractice)").is_err());
}

/// Every bare number of every shipped entry, made NaN in its turn, is refused: no field is read without the check.
#[test]
fn no_number_anywhere_may_be_nan() {
    let mut tried = 0;
    for entry in Shelf::shipped().entries() {
        let text = ron::to_string(&**entry).unwrap();
        let bytes = text.as_bytes();
        let mut at = 0;
        let mut quoted = false;
        while at < bytes.len() {
            quoted ^= bytes[at] == b'"';
            let starts = !quoted && bytes[at].is_ascii_digit() && matches!(bytes[at - 1], b':' | b',' | b'(' | b'[' | b'-');
            let end = at + bytes[at..].iter().take_while(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'e' | b'-')).count();
            if starts {
                assert!(text[at..end].parse::<f64>().is_ok(), "{}", &text[at..end]);
                let broken = format!("{}NaN{}", &text[..at], &text[end..]);
                assert!(ron::from_str::<Entry>(&broken).is_err(), "{broken}");
                tried += 1;
            }
            at = end.max(at + 1);
        }
    }
    assert!(tried > 2000, "{tried} numbers tried");
}

#[test]
fn constructors_check_as_reading_does() {
    assert!(Sourced::new(f64::NAN, "own", Trust::Studio).is_none());
    assert!(Span::new(2.0, 1.0, "own", Trust::Studio).is_none());
    assert!(Permille::new(1000.001).is_none() && Permille::new(-0.001).is_none() && Permille::new(f64::NAN).is_none());
    assert_eq!(Permille::new(916.667).unwrap().per_million(), 916_667);
    let parts = |silver: f64| vec![(Element::Cu, Permille::new(75.0).unwrap()), (Element::Ag, Permille::new(silver).unwrap())];
    let sterling = Composition::new(parts(925.0)).unwrap();
    assert_eq!(sterling.of(Element::Ag).per_million(), 925_000);
    assert_eq!(sterling.of(Element::Au).per_million(), 0);
    assert!(Composition::new(parts(924.0)).is_none());
    for text in ["", "-a", "a-", "a--b", "A", "a b", "ä", "a_b", &"a".repeat(65)] {
        assert!(EntryId::new(text).is_none(), "{text}");
    }
    assert!(
        EntryHash::parse("0123456789ABCDEF0123456789abcdef").is_none() && EntryHash::parse("+123456789abcdef0123456789abcdef").is_none()
    );
}

#[test]
fn the_hash_does_not_depend_on_layout() {
    let first = read(FLASK).unwrap().remove(0);
    let spread = FLASK.replace(": ", " :\n\n   ").replace("63.5", "6.35e1 /* two and a half inches */");
    let moved = r#"[Flask((wall:Solid,wall_mm:(1.50,"own",Studio),origin:("own",Studio),height_mm:76.20,inner_diameter_mm:63.50,name:"One",id:"flask-one",mass_g:None))]"#;
    assert_eq!(read(&spread).unwrap()[0].hash(), first.hash());
    assert_eq!(read(moved).unwrap()[0].hash(), first.hash());
    for (from, to) in [
        ("63.5", "63.6"),
        ("Solid", "Perforated"),
        ("\"One\"", "\"Two\""),
        ("(1.5, \"own\"", "(1.5, \"else\""),
        ("wall: Solid,", "wall: Solid, mass_g: (1, \"own\", Studio),"),
    ] {
        assert_ne!(read(&FLASK.replacen(from, to, 1)).unwrap()[0].hash(), first.hash(), "{to}");
    }
    let printed = first.hash().to_string();
    assert_eq!(EntryHash::parse(&printed), Some(first.hash()));
    // Frozen: jobs on disk carry such hashes. A change here means that every open job sees its entries as changed.
    assert_eq!(printed, "b5c1dc199d2da76cf7a8ac2485fa3999");
}

#[test]
fn an_overlay_survives_the_way_through_text() {
    let entry = read(FLASK).unwrap().remove(0);
    let overlay = Overlay(vec![
        OverlayItem::Add(entry.clone()),
        OverlayItem::Replace { base_hash: entry.hash(), entry },
        OverlayItem::Hide(EntryId::new("pewter").unwrap()),
    ]);
    let text = ron::ser::to_string_pretty(&overlay, ron::ser::PrettyConfig::default()).unwrap();
    assert_eq!(Overlay::parse("studio.ron", &text).unwrap(), overlay);
    let error = Overlay::parse("studio.ron", "([\n  Hide(\"pewter\"),\n  Hide(\"Not an id\"),\n])").unwrap_err();
    assert_eq!((error.line, error.file.as_str()), (3, "studio.ron"));
    assert!(Overlay::parse("studio.ron", "([Hide(\"a\"), Burn(\"b\")])").is_err());
}
