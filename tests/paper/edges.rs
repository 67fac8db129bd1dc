//! Sheets of batches that are no ordinary ones: order books, empty ones, unruly words, any part left out.

use jiff::civil::date;
use pourbook::job::{Drive, Entry, Event, FlaskId, Job, LineId, Order, PieceId, PieceStage, RecordId};
use pourbook::paper::set::{LINES, WIDTH};
use pourbook::paper::sheet;
use pourbook::quantity::Style;
use pourbook::stock::EntryId;
use proptest::prelude::*;

use crate::jobs::{Ready, order_book, quick_start, studio, three_flasks};
use crate::sheet::{flask_page, pages, sound, unwrapped};
use crate::world::said;

#[test]
fn an_order_book_is_one_page_of_open_orders() {
    let mut job = order_book();
    job.orders[1].due = Some(date(2026, 11, 28));
    job.orders[2].due = None;
    job.orders[0].lines[0].exceptions.entry(2).or_default().cancelled = true;
    let reached = |id: u32, line, numbers: &[u32]| Entry {
        id: RecordId(id),
        event: Event::Reached {
            pieces: numbers.iter().map(|number| PieceId { line: LineId(line), number: *number }).collect(),
            stage: PieceStage::Delivered,
        },
        ..Entry::default()
    };
    let withdrawn =
        Entry { id: RecordId(4), event: Event::Withdrawn { entry: RecordId(3), reason: "wrong line".into() }, ..Entry::default() };
    job.record = vec![reached(1, 2, &[1, 2, 3, 4, 5, 6]), reached(2, 1, &[1]), reached(3, 3, &[1]), withdrawn];
    let text = sheet(&Ready::new(job, studio()).input());
    assert_eq!(pages(&text).len(), 1);
    let open = text.split("For the studio only").next().unwrap();
    let rows: Vec<&str> = open.lines().filter(|line| ["KM", "ODA", "JJ"].iter().any(|client| line.contains(client))).collect();
    assert_eq!(rows.len(), 3, "the studs are delivered: {rows:?}");
    assert!(rows[0].contains("28 Nov 2026") && rows[0].contains("plain band") && rows[0].contains("18 karat"));
    assert!(rows[1].contains("limpet ring") && rows[1].contains("2 of 3"), "one cancelled, one delivered: {}", rows[1]);
    assert!(rows[2].contains("no date") && rows[2].contains("heron figure") && rows[2].contains("not known yet"));
    sound(&text);
}

#[test]
fn nothing_at_all_gives_a_sound_page_or_none() {
    let ready = Ready::new(Job::default(), Default::default());
    sound(&sheet(&ready.input()));
    let mut job = quick_start();
    job.flasks[0] = pourbook::job::Flask { id: FlaskId(1), drive: Drive::Gravity, ..Default::default() };
    let text = sheet(&Ready::new(job, Default::default()).input());
    assert!(text.contains("No tree is chosen") && text.contains("in no kiln load"));
    sound(&text);
}

#[test]
fn unruly_words_break_no_page() {
    let unruly = format!("a\nb\u{c}c\td{}", "x".repeat(250));
    let mut job = three_flasks();
    job.name = unruly.clone();
    job.orders[0].client = unruly.clone();
    job.orders[0].lines[0].design = unruly.clone();
    job.orders.push(Order { client: "«».".into(), ..Order::default() });
    job.flasks[0].scratch = unruly.clone();
    job.flasks[0].kiln_position = unruly.clone();
    job.trees[0].name = unruly.clone();
    job.trees[0].base_number = unruly.clone();
    job.burnouts[0].name = unruly.clone();
    job.melts[0].name = unruly.clone();
    let mut studio = studio();
    studio.name = unruly.clone();
    studio.money.currency = unruly;
    let plain = pages(&sheet(&Ready::new(three_flasks(), crate::jobs::studio()).input())).len();
    let text = sheet(&Ready::new(job, studio).input());
    for line in text.lines() {
        assert!(line.trim_start_matches('\u{c}').chars().count() <= WIDTH, "{line}");
    }
    assert!(pages(&text).len() <= plain * 3, "{} pages", pages(&text).len());
    assert!(pages(&text).iter().all(|page| page.lines().count() <= LINES));
}

#[test]
fn what_the_shelf_does_not_have_prints_its_id() {
    let mut job = quick_start();
    job.flasks[0].powder = EntryId::new("powder-lost");
    let text = sheet(&Ready::new(job, studio()).input());
    assert!(unwrapped(&text).contains("powder-lost is not on the shelf"));
    assert!(text.contains("Powder                 powder-lost"));
    sound(&text);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is left out of a batch, its sheet is well set, names every flask, and shows neither key nor nonsense.
    #[test]
    fn any_part_left_out_gives_a_sound_sheet(gone in proptest::collection::vec(any::<bool>(), 24), bowl in 50.0_f64..9000.0, trade in any::<bool>()) {
        let mut job = three_flasks();
        let mut gone = gone.into_iter();
        let mut drop = || gone.next().unwrap_or_default();
        for flask in &mut job.flasks {
            flask.bowl_cm3 = said(bowl);
            flask.vessel = flask.vessel.take().filter(|_| !drop());
            flask.powder = flask.powder.take().filter(|_| !drop());
            flask.tree = flask.tree.filter(|_| !drop());
            flask.burnout = flask.burnout.filter(|_| !drop());
        }
        for line in job.orders.iter_mut().flat_map(|order| &mut order.lines) {
            line.alloy = line.alloy.take().filter(|_| !drop());
            line.pattern = line.pattern.filter(|_| !drop());
        }
        job.burnouts[0].kiln = job.burnouts[0].kiln.take().filter(|_| !drop());
        job.burnouts[0].programme = job.burnouts[0].programme.take().filter(|_| !drop());
        job.burnouts[0].pour_at = job.burnouts[0].pour_at.filter(|_| !drop());
        let style = if trade { Style::TRADE } else { Style::METRIC };
        let ready = Ready { style, ..Ready::new(job, studio()) };
        let text = sheet(&ready.input());
        sound(&text);
        for flask in 1..=3 {
            prop_assert!(!flask_page(&text, flask).is_empty());
        }
        sound(&pourbook::paper::quotes(&ready.input()));
    }
}
