//! The tables for spreadsheets, of jobs made up and of any job at all.

use csv::{ReaderBuilder, StringRecord};
use jiff::civil::date;
use pourbook::job::check::mend;
use pourbook::job::{Entry, Event, FlaskId, Hung, JobId, LineId, PatternId, PieceException, PieceId, PieceStage, RecordId, Size, TreeId};
use pourbook::paper::csv as tables;
use pourbook::paper::{SheetInput, list};
use pourbook::quantity::Style;
use pourbook::stock::EntryId;
use proptest::prelude::*;

use crate::generate;
use crate::jobs::{Ready, studio, three_flasks};
use crate::world::lacks_a_text;

fn read(text: &str) -> Vec<StringRecord> {
    let mut reader = ReaderBuilder::new().has_headers(false).flexible(false).from_reader(text.as_bytes());
    reader.records().map(|row| row.unwrap_or_else(|error| panic!("{error}\n{text}"))).collect()
}

/// The cells of a column, in the order of the rows.
fn column(rows: &[StringRecord], name: &str) -> Vec<String> {
    let at = rows[0].iter().position(|head| head == name).unwrap_or_else(|| panic!("no column {name}"));
    rows[1..].iter().map(|row| row[at].to_owned()).collect()
}

/// As numbers; what is missing is none.
fn numbers(rows: &[StringRecord], name: &str) -> Vec<Option<f64>> {
    let number = |cell: &String| (!cell.is_empty()).then(|| cell.parse().unwrap_or_else(|_| panic!("{name}: {cell}")));
    column(rows, name).iter().map(number).collect()
}

fn pieces(ready: &Ready) -> Vec<StringRecord> {
    read(&tables::pieces(&ready.input()))
}

#[test]
fn what_is_different_about_a_piece_is_told_of_that_piece() {
    let mut job = three_flasks();
    let ring = |size: &str| Size::Ring { scale: EntryId::new("ring-iso").unwrap(), size: size.into() };
    let own = &mut job.orders[0].lines[0].exceptions;
    own.insert(2, PieceException { size: Some(ring("60")), pattern: Some(PatternId(4)), notes: "=wider".into(), ..Default::default() });
    own.insert(3, PieceException { cancelled: true, pattern: Some(PatternId(4)), ..Default::default() });
    let from = pourbook::job::From { job: JobId([7; 16]), piece: PieceId { line: LineId(9), number: 12 } };
    own.insert(4, PieceException { from: Some(from), irreplaceable: true, size: Some(ring("999")), ..Default::default() });
    job.orders[1].lines[0].due = Some(date(2026, 12, 1));
    let rows = pieces(&Ready::new(job, studio()));
    assert_eq!(column(&rows, "piece"), ["1.1", "1.2", "1.3", "1.4", "2.1", "2.2", "3.1", "4.1", "4.2", "4.3", "4.4", "4.5"]);
    let bores = numbers(&rows, "bore_mm");
    let around = |at: usize| bores[at].map(|bore| (bore * std::f64::consts::PI * 1e6).round() / 1e6);
    assert_eq!([around(0), around(1), around(2), around(3), around(4)], [Some(54.0), Some(60.0), Some(54.0), None, None]);
    assert_eq!(column(&rows, "pattern_id")[..4], ["1", "4", "4", "1"]);
    let rough = numbers(&rows, "rough_g");
    assert!(rough[0].is_some() && rough[0] == rough[3] && rough[1] < rough[0], "{rough:?}");
    assert_eq!(rough[2], None, "a cancelled piece weighs nothing");
    assert_eq!(rough[1], rough[8], "the charms are of that pattern");
    assert_eq!(column(&rows, "cancelled")[..4], ["no", "no", "yes", "no"]);
    assert_eq!(column(&rows, "irreplaceable")[..4], ["no", "no", "no", "yes"]);
    assert_eq!(column(&rows, "flask_id")[..4], ["1", "1", "", "1"]);
    assert_eq!((&*column(&rows, "from_job")[3], &*column(&rows, "from_piece")[3]), ("07".repeat(16).as_str(), "9.12"));
    assert_eq!(column(&rows, "notes")[1], "'=wider");
    assert_eq!(column(&rows, "due")[5..7], ["2026-12-04", "2026-12-01"]);
    assert_eq!(column(&rows, "melt")[..6], ["A", "A", "", "A", "", ""]);
}

#[test]
fn a_line_over_two_trees_tells_where_each_piece_hangs() {
    let mut job = three_flasks();
    job.trees[0].pieces[0].numbers = [1, 2].into();
    job.trees[1].pieces.push(Hung { line: LineId(1), numbers: [4].into(), ..Hung::default() });
    let rows = pieces(&Ready::new(job, studio()));
    assert_eq!(column(&rows, "tree")[..4], ["T1", "T1", "", "T2"]);
    assert_eq!(column(&rows, "scratch")[..4], ["B1", "B1", "", "B2"]);
}

#[test]
fn the_stage_is_what_standing_entries_say() {
    let mut job = three_flasks();
    let entry = |id, event| Entry { id: RecordId(id), event, ..Entry::default() };
    let piece = |line, number| PieceId { line: LineId(line), number };
    job.record = vec![
        entry(1, Event::Poured { flask: FlaskId(1), plan: Default::default(), done: Default::default() }),
        entry(2, Event::Reached { pieces: vec![piece(1, 2), piece(4, 1)], stage: PieceStage::Delivered }),
        entry(3, Event::Reached { pieces: vec![piece(2, 1)], stage: PieceStage::Made }),
        entry(4, Event::Withdrawn { entry: RecordId(3), reason: "not yet".into() }),
        entry(5, Event::Rejected { piece: piece(1, 4), defect: "no-fill".into() }),
        entry(6, Event::TreeWeighed { tree: TreeId(3), weight: None }),
    ];
    let rows = pieces(&Ready::new(job, studio()));
    assert_eq!(column(&rows, "stage")[..8], ["cast", "with the client", "cast", "cast", "", "", "on the tree", "with the client"]);
    assert_eq!(column(&rows, "rejected")[2..4], ["", "no-fill"]);
}

#[test]
fn a_programme_has_mixings_steam_stages_and_the_pour() {
    let ready = Ready::new(three_flasks(), studio());
    let rows = read(&tables::programme(&ready.input()));
    let steps = column(&rows, "step");
    assert_eq!(steps[..4], ["mixing", "mixing", "mixing", "dewaxing"]);
    assert_eq!(steps.iter().filter(|step| *step == "stage").count(), ready.report.burnouts[0].stages.len());
    assert_eq!(steps.last().unwrap(), "pour");
    assert_eq!(column(&rows, "flasks")[2..4], ["B3", "B1, B2, B3"]);
    let (begins, ends) = (column(&rows, "begins"), column(&rows, "ends"));
    assert_eq!(begins.last().unwrap(), "2026-11-26T09:00");
    assert_eq!(ends[3], begins[4], "straight from the steam into the kiln");
    assert!(ends[0] < begins[3] && begins[0] < ends[0], "mixed, set, then heated: {begins:?}");
    let mut job = three_flasks();
    job.burnouts[0].pour_at = None;
    let rows = read(&tables::programme(&Ready::new(job, studio()).input()));
    assert!(column(&rows, "begins").iter().all(String::is_empty), "no time was said");
    assert!(numbers(&rows, "target_c").iter().flatten().count() > 3, "the programme is still there");
}

#[test]
fn a_table_is_the_same_in_any_units() {
    let ready = Ready::new(three_flasks(), studio());
    let trade = Ready { style: Style { comma: true, ..Style::TRADE }, ..Ready::new(three_flasks(), studio()) };
    for table in [tables::figures, tables::pieces, tables::programme] {
        assert_eq!(table(&ready.input()), table(&trade.input()));
    }
    assert_ne!(list::programme(&ready.input()), list::programme(&trade.input()), "a list is in the units of who reads it");
}

#[test]
fn figures_name_their_origin_and_why_they_are_missing() {
    let mut job = three_flasks();
    job.flasks[0].powder = None;
    let ready = Ready::new(job, studio());
    let rows = read(&tables::figures(&ready.input()));
    assert_eq!(rows.len(), ready.book.len() + 1, "a row a line of the book");
    let (values, states, origins) = (column(&rows, "value"), column(&rows, "state"), column(&rows, "origin"));
    for ((value, state), origin) in values.iter().zip(&states).zip(&origins) {
        assert_eq!(value.is_empty(), !state.is_empty());
        assert!(origin != "missing" || value.is_empty());
    }
    for origin in ["figure", "entered", "shelf", "default", "studio", "missing"] {
        assert!(origins.iter().any(|found| found == origin), "nothing is {origin}");
    }
    let (keys, places) = (column(&rows, "key"), column(&rows, "place"));
    let powder = keys.iter().zip(&places).position(|(key, place)| key == "mix.powder" && place == "flask/1").unwrap();
    assert_eq!(states[powder], "not chosen yet");
    let start = keys.iter().position(|key| key == "burnout.kiln-start").unwrap();
    assert!(values[start].parse::<f64>().unwrap() > 2.9e7 && column(&rows, "local_time")[start].starts_with("2026-11-2"));
}

/// No cell may be a formula, and cells of numbers are plain numbers.
fn sound(rows: &[StringRecord], numeric: &[&str]) -> Result<(), TestCaseError> {
    for name in rows[0].iter() {
        for cell in column(rows, name) {
            let number = numeric.contains(&name);
            prop_assert!(number || !cell.trim_start().starts_with(['=', '+', '-', '@']), "{name}: {cell:?}");
            prop_assert!(!number || cell.is_empty() || cell.parse::<f64>().is_ok_and(f64::is_finite), "{name}: {cell:?}");
            prop_assert!(!number || !cell.contains(['e', 'E', ',', ' ']), "{name}: {cell:?}");
        }
    }
    Ok(())
}

fn checked(input: &SheetInput<'_>) -> Result<(), TestCaseError> {
    let texts = [tables::figures(input), tables::pieces(input), tables::programme(input)];
    prop_assert!(texts.iter().all(|text| text.ends_with("\r\n")));
    let [figures, pieces, programme] = texts.map(|text| read(&text));
    sound(&figures, &["value"])?;
    sound(&pieces, &["order_id", "line_id", "number", "piece", "bore_mm", "rough_g", "tree_id", "flask_id", "load_id", "melt_id"])?;
    sound(&programme, &["load_id", "stage", "target_c", "ramp_min", "hold_min"])?;
    prop_assert_eq!(figures.len(), input.book.len() + 1);
    let quantity: usize = input.job.lines().map(|(_, line)| line.quantity as usize).sum();
    prop_assert_eq!(pieces.len(), quantity + 1);
    let designs = input.job.lines().flat_map(|(_, line)| std::iter::repeat_n(&line.design, line.quantity as usize));
    for (cell, design) in column(&pieces, "design").iter().zip(designs) {
        prop_assert!(cell == design || cell.strip_prefix('\'') == Some(design), "{:?} became {:?}", design, cell);
    }
    let stages: usize = input.report.burnouts.iter().map(|load| load.stages.len()).sum();
    prop_assert_eq!(column(&programme, "step").iter().filter(|step| *step == "stage").count(), stages);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_job_gives_sound_tables(job in generate::job(), studio in generate::studio()) {
        let (job, _) = mend(&job);
        let ready = Ready::new(job, studio);
        checked(&ready.input())?;
        let pieces = list::pieces(&ready.input());
        prop_assert!(!lacks_a_text(&pieces), "{}", pieces);
        prop_assert!(!list::programme(&ready.input()).is_empty());
    }
}
