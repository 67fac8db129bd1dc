//! Two castings side by side.

use std::path::Path;

use jiff::civil::date;
use jiff::tz::TimeZone;
use pourbook::calc::compare::{Compared, Side, Told, compare};
use pourbook::calc::{Book, Report, Runs, Setting, Shelves, recompute};
use pourbook::job::format::{read_job, read_studio};
use pourbook::job::{Entry, Event, Frozen, FrozenFigure, InvestedAs, Job, PieceException, Programme, RecordId, Segment, Studio};
use pourbook::quantity::{Finite, Grams};
use pourbook::stock::EntryId;

fn sample() -> (Job, Studio) {
    let read = |file: &str| std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs").join(file)).unwrap();
    (read_job(&read("first-pour.ron")).unwrap().document, read_studio(&read("studio.ron")).unwrap().document)
}

fn computed(job: &Job, studio: &Studio) -> (Report, Book) {
    let setting = Setting { at: date(2026, 11, 25), zone: TimeZone::UTC };
    let mut book = Book::default();
    let report = recompute(job, studio, &Shelves::new(job, studio), &Runs::default(), &setting, &mut book);
    (report, book)
}

fn beside(then: &Job, now: &Job, studio: &Studio) -> Vec<Compared> {
    let ((last, last_book), (here, here_book)) = (computed(then, studio), computed(now, studio));
    let flask = then.flasks[0].id;
    compare(Side { job: then, report: &last, book: &last_book, flask }, Side { job: now, report: &here, book: &here_book, flask })
}

fn differing(rows: &[Compared]) -> Vec<&'static str> {
    rows.iter().filter(|row| row.differs).map(|row| row.label).collect()
}

fn row<'a>(rows: &'a [Compared], label: &str) -> &'a Compared {
    rows.iter().find(|row| row.label == label).unwrap()
}

#[test]
fn the_same_batch_does_not_differ() {
    let (job, studio) = sample();
    let rows = beside(&job, &job.again(job.job_id, date(2026, 12, 1)), &studio);
    // The metal lots stayed behind: one side does not say them, which is no difference.
    assert_eq!(differing(&rows), Vec::<&str>::new());
    assert!(rows.len() >= 10, "{rows:?}");
    assert_eq!(row(&rows, "differ-metal-lots").sides[1], None);
}

#[test]
fn what_was_changed_is_what_differs() {
    let (then, studio) = sample();
    let mut now = then.clone();
    now.flasks[0].ratio = Finite::new(0.45);
    now.flasks[0].alloy = None;
    now.trees[0].pieces.pop();
    let told = differing(&beside(&then, &now, &studio));
    // Fewer pieces are less metal only where the tree was not weighed; the sample's is.
    for label in ["differ-pieces", "done-ratio", "done-water"] {
        assert!(told.contains(&label), "{label}: {told:?}");
    }
    assert!(!told.contains(&"differ-vessel") && !told.contains(&"differ-kiln"), "{told:?}");
    let mut other = then.clone();
    other.flasks[0].vessel = EntryId::new("flask-of-somebody");
    assert!(differing(&beside(&then, &other, &studio)).contains(&"differ-vessel"));
}

#[test]
fn what_was_really_done_counts_before_the_plan_and_the_frozen_plan_before_the_live_one() {
    let (now, studio) = sample();
    let (report, book) = computed(&now, &studio);
    let flask = now.flasks[0].id;
    let mix = &report.flasks.iter().find(|figures| figures.id == flask).unwrap().mix;
    let ratio = book.figure(mix.ratio);
    let frozen = FrozenFigure { rule: ratio.origin.key().to_owned(), place: ratio.place, value: Finite::new(0.37).unwrap() };
    let invested = |done: InvestedAs| {
        let event = Event::Invested { flask, plan: Frozen { figures: vec![frozen.clone()], ..Frozen::default() }, done };
        Job { record: vec![Entry { id: RecordId(1), event, ..Entry::default() }], ..now.clone() }
    };
    let plan = beside(&invested(InvestedAs::default()), &now, &studio);
    assert_eq!(row(&plan, "done-ratio").sides[0], Some(Told::Number(0.37, pourbook::quantity::Kind::Ratio)));
    let grams = |grams: f64| Grams::from_f64(grams);
    let done = InvestedAs { powder: grams(1000.0), water: grams(420.0), lot: "P-9".to_owned(), ..InvestedAs::default() };
    let really = beside(&invested(done), &now, &studio);
    assert_eq!(row(&really, "done-ratio").sides[0], Some(Told::Number(0.42, pourbook::quantity::Kind::Ratio)));
    assert_eq!(row(&really, "differ-powder-lot").sides[0], Some(Told::Words("P-9".to_owned())));
}

#[test]
fn programmes_of_our_own_differ_by_what_they_do_and_cancelled_pieces_hang_nowhere() {
    let (mut then, studio) = sample();
    let segment = |c: f64| Segment { target_c: Finite::new(c), hold_min: Finite::new(60.0).unwrap(), ..Segment::default() };
    then.burnouts[0].programme = Some(Programme::Segments(vec![segment(150.0), segment(730.0), segment(540.0)]));
    let mut now = then.clone();
    assert!(!differing(&beside(&then, &now, &studio)).contains(&"differ-programme"));
    // As many segments, and one of them hotter.
    now.burnouts[0].programme = Some(Programme::Segments(vec![segment(150.0), segment(700.0), segment(540.0)]));
    now.orders[0].lines[0].exceptions.insert(1, PieceException { cancelled: true, ..PieceException::default() });
    let rows = beside(&then, &now, &studio);
    assert!(differing(&rows).contains(&"differ-programme"), "{rows:?}");
    let [Some(Told::Count(before)), Some(Told::Count(after))] = row(&rows, "differ-pieces").sides else { panic!("{rows:?}") };
    assert_eq!(before, after + 1);
}
