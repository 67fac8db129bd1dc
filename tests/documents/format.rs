//! Format 1: the golden files, the first line, and errors that say where.

use pourbook::job::format::{FORMAT, ReadError, header, read_job, read_studio, write_job, write_studio};

use super::world::World;

fn golden(name: &str) -> String {
    std::fs::read_to_string(format!("tests/golden/{name}")).unwrap()
}

#[test]
fn the_golden_files_of_format_1_read_and_write_to_the_byte() {
    let job = golden("job_format_1.ron");
    let opened = read_job(job.as_bytes()).unwrap();
    assert_eq!((opened.format, opened.read_only), (1, false));
    let studio = golden("studio_format_1.ron");
    let read = read_studio(studio.as_bytes()).unwrap();
    // When a later format is written, the old golden files stay, and only their reading is demanded.
    if FORMAT == 1 {
        assert_eq!(write_job(&opened.document).unwrap(), job);
        assert_eq!(write_studio(&read.document).unwrap(), studio);
    }
    // A golden file that says little proves little.
    for field in
        ["orders", "exceptions", "patterns", "trees", "sprues", "flasks", "burnouts", "melts", "quotes", "record", "accepted", "shelf"]
    {
        assert!(job.contains(&format!("{field}:")), "{field}");
    }
    for field in ["hands", "money", "lots", "stocktakes", "prices", "moulds", "materials", "equipment", "learned", "shelf", "receipts"] {
        assert!(studio.contains(&format!("{field}:")), "{field}");
    }
    assert!(pourbook::job::check::faults(&opened.document).is_empty());
}

#[test]
fn the_golden_files_of_format_2_read_and_write_to_the_byte() {
    if std::env::var_os("RETAKE_GOLDEN").is_some() {
        make_golden_files_of_format_2();
    }
    let (job, studio) = (golden("job_format_2.ron"), golden("studio_format_2.ron"));
    let (opened, read) = (read_job(job.as_bytes()).unwrap(), read_studio(studio.as_bytes()).unwrap());
    assert_eq!((opened.format, opened.read_only), (2, false));
    assert_eq!(write_job(&opened.document).unwrap(), job);
    assert_eq!(write_studio(&read.document).unwrap(), studio);
    // What format 2 added.
    for field in [
        "prints",
        "kept",
        "no_go",
        "sprue",
        "inner",
        "pair",
        "bore_mm",
        "band_mm",
        "comfort_fit",
        "finished",
        "trial",
        "spin",
        "placed",
        "set",
        "before_dewax",
        "after_dewax",
        "floor_mm",
        "sheet",
        "pins",
        "step_minutes",
        "starts_itself",
        "log",
        "did",
        "what_for",
        "carrier",
        "promised",
        "failed",
        "lot",
        "scale",
        "room_c",
        "seconds",
    ] {
        assert!(job.contains(&format!("{field}:")), "{field}");
    }
    for field in [
        "printers",
        "calibrations",
        "water_weighings",
        "least_wall_mm",
        "master",
        "flasks",
        "usual_tree",
        "centrifuges",
        "hours",
        "days_off",
    ] {
        assert!(studio.contains(&format!("{field}:")), "{field}");
    }
    // Those of format 1 are read as they were, and say nothing of it.
    let old = read_job(golden("job_format_1.ron").as_bytes()).unwrap().document;
    assert!(old.prints.is_empty() && old.patterns.iter().filter_map(|pattern| pattern.file.as_ref()).all(|file| file.kept.is_none()));
}

/// Makes the golden files of format 2 anew; never to be done once a program that writes them was let out.
fn make_golden_files_of_format_2() {
    let mut world = World::full();
    let file = world.job.patterns[1].file.as_mut().unwrap();
    let number = |value: f64| pourbook::quantity::Finite::new(value).unwrap();
    file.hash = Some("0f".repeat(32));
    file.bore_mm = Some(number(17.35));
    file.kept = Some(
        pourbook::calc::PatternMeasure { walls: Some([0.5, 1.0, 2.0]), ..super::world::measure(842.0, 900.0, [22.0, 22.0, 4.0]) }.kept(),
    );
    file.no_go =
        vec![pourbook::job::NoGo { at: Some([1.0, 2.0, 3.5].map(number)), radius: Some(number(1.5)), what: pourbook::job::NoGoKind::Seat }];
    file.sprue =
        Some(pourbook::job::SpruePoint { at: Some([0.0, 0.0, 4.0].map(number)), ball: Some(number(2.5)), modulus: Some(number(0.6)) });
    file.inner = pourbook::job::InnerSolids::Hollow;
    let pair = pourbook::job::Pair { with: pourbook::job::PatternId(3), like: pourbook::job::PairKind::Alike };
    world.job.patterns[1].pair = Some(pair);
    world.job.orders[0].lines[0].set = "tide set".to_owned();
    world.job.trees[0].tiers = vec![pourbook::job::Tier { height_mm: Some(number(12.5)) }];
    world.job.trees[0].pieces[0].sprue = Some(1);
    world.job.flasks[0].trial = true;
    world.job.flasks[0].vacuum_kpa = Some(number(86.0));
    let grams = |text: &str| Some(pourbook::quantity::Grams::new(text.parse().unwrap()).unwrap());
    (world.job.flasks[0].before_dewax, world.job.flasks[0].after_dewax) = (grams("1873.5"), grams("1861"));
    world.job.flasks[0].floor_mm = Some([number(80.0), number(120.5)]);
    let load = &mut world.job.burnouts[0];
    load.sheet = vec![pourbook::job::SheetHours { from_c: number(140.0), to_c: number(200.0), minutes: number(120.0) }];
    load.pins = [(pourbook::job::WorkStep::Investing, jiff::civil::date(2026, 11, 24).at(14, 30, 0, 0))].into();
    load.step_minutes = [(pourbook::job::WorkStep::Tree, number(45.0))].into();
    load.starts_itself = true;
    let points = vec![(number(0.0), number(21.5)), (number(60.0), number(149.0))];
    let start = Some(jiff::civil::date(2026, 11, 24).at(19, 0, 0, 0));
    load.log = Some(pourbook::job::KilnReadings { file: "night.csv".to_owned(), start, points, notes: "a new probe".to_owned() });
    record_of_format_2(&mut world.job);
    let at = |hour| Some(jiff::civil::time(hour, 0, 0, 0));
    world.studio.hours = vec![pourbook::job::WorkingHours { day: pourbook::job::Day::Tuesday, from: at(9), to: at(18) }];
    world.studio.days_off = vec![jiff::civil::date(2026, 12, 25)];
    world.studio.least_wall_mm = Some(number(0.6));
    let of = |id: &str| pourbook::stock::EntryId::new(id);
    world.studio.flasks = vec![pourbook::job::FlaskStock { entry: of("flask-89x102"), count: Some(4), notes: "two are dented".to_owned() }];
    world.studio.usual_tree.feed_length_mm = Some(number(6.5));
    world.studio.moulds[0].master = "brass".to_owned();
    std::fs::write("tests/golden/job_format_2.ron", write_job(&world.job).unwrap()).unwrap();
    std::fs::write("tests/golden/studio_format_2.ron", write_studio(&world.studio).unwrap()).unwrap();
}

fn record_of_format_2(job: &mut pourbook::job::Job) {
    use pourbook::job::{
        BenchStep, BurnoutId, CameBack, Entry, Event, FlaskId, InvestedAs, KilnDid, LineId, OutFor, PieceId, Place, RecordId, SentOut,
    };
    let piece = |number| PieceId { line: LineId(1), number };
    let grams = |text: &str| Some(pourbook::quantity::Grams::new(text.parse().unwrap()).unwrap());
    let done = InvestedAs {
        lot: "P-7".to_owned(),
        scale: "bench scale".to_owned(),
        room_c: pourbook::quantity::Finite::new(19.5),
        powder: grams("812"),
        ..InvestedAs::default()
    };
    let sent = SentOut {
        what_for: OutFor::Setting,
        to: "F".to_owned(),
        carrier: "by hand".to_owned(),
        promised: Some(jiff::civil::date(2026, 12, 1)),
        weight: grams("7.42"),
    };
    let first = job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1;
    let events = [
        Event::Invested { flask: FlaskId(1), plan: Default::default(), done },
        Event::Kiln { burnout: BurnoutId(1), temperature_c: None, did: KilnDid::WentIn },
        Event::Timed { step: BenchStep::Mix, of: Place::Flask(FlaskId(1)), seconds: 245 },
        Event::SentOut { pieces: vec![piece(1), piece(2)], sent },
        Event::CameBack {
            sent: RecordId(first + 3),
            pieces: vec![piece(1), piece(2)],
            back: CameBack { weight: grams("7.4"), failed: vec![piece(2)] },
        },
    ];
    job.record.extend((first..).zip(events).map(|(id, event)| Entry { id: RecordId(id), event, ..Entry::default() }));
}

#[test]
fn the_first_line_says_the_format() {
    let job = write_job(&World::sound().job).unwrap();
    assert_eq!(job.lines().next(), Some(format!("(format: {FORMAT}, readable_since: 1,").as_str()));
    let studio = write_studio(&World::sound().studio).unwrap();
    assert_eq!(studio.lines().next(), Some(format!("(format: {FORMAT}, readable_since: 1,").as_str()));
    assert!(job.ends_with(")\n") && !job.contains('\r'));
}

#[test]
fn the_header_is_read_by_its_own_scanner() {
    let read = |text: &str| header(text).map(|header| (header.format, header.readable_since));
    assert_eq!(read("(format: 4, readable_since: 3,\n whatever ( \""), Some((4, 3)));
    assert_eq!(read("(format:4,readable_since:3)"), Some((4, 3)));
    assert_eq!(read("\u{feff}\r\n ( format : 4 ,\r\n readable_since : 3 ,"), Some((4, 3)));
    for text in [
        "",
        "(",
        "(readable_since: 3, format: 4,",
        "(format: 4)",
        "(format: -1, readable_since: 1,",
        "(format: 1.0, readable_since: 1,",
        "(format: 99999999999, readable_since: 1,",
        "(format: 1, readable_since: 1",
        "format: 1, readable_since: 1,",
        "(format: , readable_since: 1,",
    ] {
        assert_eq!(read(text), None, "{text}");
    }
}

fn fails(text: &str) -> String {
    read_job(text.as_bytes()).map(|_| ()).unwrap_err().to_string()
}

#[test]
fn an_unknown_field_of_the_same_format_is_an_error_with_its_place() {
    let text = "(format: 1, readable_since: 1,\n  name: \"x\",\n  flasks: [\n    (id: 1, colour: \"red\"),\n  ],\n)\n";
    let error = read_job(text.as_bytes()).unwrap_err();
    let ReadError::Syntax { line, column, says } = &error else { panic!("{error}") };
    assert_eq!(*line, 4);
    assert!((13..=19).contains(column), "column {column} of `    (id: 1, colour: \"red\"),`");
    assert!(says.contains("colour") && says.contains("scratch"), "{says}");
    // The first line counts, although its header was taken off.
    let error = fails("(format: 1, readable_since: 1, nmae: \"x\")");
    assert!(error.starts_with("line 1, column 3") && error.contains("nmae"), "{error}");
}

#[test]
fn errors_say_line_and_column_in_plain_words() {
    for (body, part) in [
        ("flasks: [(id: 1, ratio: NaN)]", "finite"),
        ("flasks: [(id: 1, ratio: inf)]", "finite"),
        ("flasks: [(id: 1, ratio: -inf)]", "finite"),
        ("flasks: [(id: 1, ratio: 1e999)]", "finite"),
        ("flasks: [(id: 1, ratio: \"0.40\")]", "number"),
        ("flasks: [(id: 1, ratio: true)]", ""),
        ("flasks: [(id: -1)]", ""),
        ("flasks: [(id: 4294967296)]", ""),
        ("flasks: [(id: 1.5)]", ""),
        ("flasks: [(id: 1, id: 2)]", "twice"),
        ("flasks: {}", "a list in [ ]"),
        ("flasks: 5", "a list in [ ]"),
        ("flasks: [5]", "“(”"),
        ("flasks: [(id: 1) (id: 2)]", "“,”"),
        ("name: 5", "a text in quotes"),
        ("name: text", "a text in quotes"),
        ("flasks: [(id: 1, drive: Sideways)]", "Sideways"),
        ("flasks: [(id: 1, vessel: \"Not A Slug\")]", "slug"),
        ("flasks: [(id: 1, reserve: 0.0000001)]", "decimals"),
        ("flasks: [(id: 1, reserve: 1e9)]", ""),
        ("flasks: [(id: 1, reserve: NaN)]", ""),
        ("made: \"2026-02-30\"", "calendar"),
        ("made: 2026", ""),
        ("burnouts: [(id: 1, pour_at: \"tomorrow\")]", "calendar"),
        ("accepted: [(place: \"flask\")]", "place"),
        ("job_id: \"5f0c\"", "32"),
        ("name: \"x\" flasks: []", ""),
        ("name: \"x\",) (", "behind"),
        ("name: \"no end", "cut off"),
    ] {
        let error = fails(&format!("(format: 1, readable_since: 1,\n{body}\n)\n"));
        assert!(error.starts_with("line "), "{body}: {error}");
        let wanted = if part == "slug" { "small letters" } else { part };
        assert!(error.contains(wanted), "{body}: {error}");
        assert!(!error.contains("Expected") && !error.contains('`') && !error.contains("parse"), "a caster's words: {error}");
    }
    let _ = World::sound();
}

#[test]
fn what_is_no_document_at_all_is_said_plainly() {
    assert_eq!(read_job(b"").unwrap_err(), ReadError::Empty);
    assert_eq!(read_job(b" \n\n").unwrap_err(), ReadError::Empty);
    assert_eq!(read_job(b"solid band\n facet").unwrap_err(), ReadError::NoHeader);
    assert_eq!(read_job(b"(name: \"x\")").unwrap_err(), ReadError::NoHeader);
    assert_eq!(read_job(b"(format: 1, readable_since: 1,\n name: \"\xff\")").unwrap_err(), ReadError::NotText { line: 2 });
    assert_eq!(read_job(b"(format: 0, readable_since: 1,)").unwrap_err(), ReadError::Unknown { file: 0 });
    assert_eq!(read_job(b"(format: 1, readable_since: 0,)").unwrap_err(), ReadError::Unknown { file: 1 });
    // A studio is no job, though both have a header.
    let studio = write_studio(&World::sound().studio).unwrap();
    assert!(matches!(read_job(studio.as_bytes()), Err(ReadError::Syntax { .. })));
}

#[test]
fn a_file_that_was_cut_off_says_so() {
    let whole = pourbook::job::format::write_job(&World::full().job).unwrap();
    let end = whole.trim_end().len();
    let mut told = 0;
    for cut in (200..end).step_by(7).filter(|cut| whole.is_char_boundary(*cut)) {
        let error = read_job(&whole.as_bytes()[..cut]).unwrap_err().to_string();
        told += usize::from(error.contains("cut off"));
        assert!(error.contains("cut off") || error.contains("expected") || error.contains("missing"), "cut at {cut}: {error}");
    }
    // A cut in the middle of a number or word may leave another number or word, and the next thing is missed first.
    let cuts = (end - 200) / 7;
    assert!(told * 10 > cuts * 9, "{told} of {cuts}");
}
