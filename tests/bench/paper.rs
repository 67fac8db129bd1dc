//! How long a bench sheet of a full kiln takes, from figures to the bytes of its PDF: forty flasks with twelve pieces each.
//!
//! `cargo bench --bench paper`
#![allow(clippy::unwrap_used, missing_docs)]

#[path = "../world/mod.rs"]
mod world;

use std::sync::Arc;

use criterion::{Criterion, criterion_group, criterion_main};
use jiff::civil::date;
use jiff::tz::TimeZone;
use pourbook::calc::{Book, Report, Runs, Setting, Shelves, recompute};
use pourbook::job::{
    Burnout, BurnoutId, Flask, FlaskId, Hung, Job, Line, LineId, Order, OrderId, Pattern, PatternId, Programme, Studio, Tree, TreeId,
    WeighedPart, Weighing,
};
use pourbook::paper::block::Raster;
use pourbook::paper::layout::Format;
use pourbook::paper::{Pictures, SheetInput, Sort, as_pages, as_pdf, papers};
use pourbook::quantity::Style;
use pourbook::stock::EntryId;
use pourbook::texts::Texts;
use world::{grams, line, some};

const FLASKS: u32 = 40;
const PIECES: u32 = 12;

fn job() -> Job {
    let mut job = Job { name: "Forty flasks".into(), ..Job::default() };
    for flask in 1..=FLASKS {
        let pattern = Pattern {
            id: PatternId(flask),
            name: format!("pattern {flask}"),
            material: some("wax-injection"),
            weighed: Some(Weighing::Net(grams("0.61"))),
            ..Pattern::default()
        };
        job.patterns.push(pattern);
        let lines = (0..PIECES / 3).map(|nth| Line { ..line(flask * 10 + nth, "limpet ring", 3, "silver-925", flask) });
        let lines: Vec<Line> = lines.collect();
        let pieces = lines.iter().map(|line| Hung { line: LineId(line.id.0), ..Hung::default() }).collect();
        job.orders.push(Order { id: OrderId(flask), client: format!("C{flask}"), lines, ..Order::default() });
        let weighed =
            vec![WeighedPart { material: some("wax-injection"), weight: Some(Weighing::Net(grams("14.2"))), scale: String::new() }];
        job.trees.push(Tree { id: TreeId(flask), base: some("base-89"), pieces, weighed, ..Tree::default() });
        job.flasks.push(Flask {
            id: FlaskId(flask),
            vessel: some("flask-89x102"),
            tree: Some(TreeId(flask)),
            powder: some("powder-gypsum"),
            burnout: Some(BurnoutId(1)),
            ..Flask::default()
        });
    }
    job.burnouts.push(Burnout {
        id: BurnoutId(1),
        kiln: some("kiln-studio"),
        programme: Some(Programme::Table(EntryId::new("stages-wax").unwrap())),
        pour_at: Some(date(2026, 11, 26).at(9, 0, 0, 0)),
        ..Burnout::default()
    });
    job
}

struct Ready {
    job: Job,
    studio: Studio,
    shelves: Shelves,
    book: Book,
    report: Report,
    setting: Setting,
    pictures: Pictures,
}

fn ready() -> Ready {
    let (job, studio) = (job(), Studio { name: "Bench".into(), ..Studio::default() });
    let shelves = Shelves::new(&job, &studio);
    let setting = Setting { at: date(2026, 11, 24), zone: TimeZone::UTC };
    let mut book = Book::default();
    let report = recompute(&job, &studio, &shelves, &Runs::default(), &setting, &mut book);
    let mut pictures = Pictures::default();
    for pattern in 1..=FLASKS {
        let grey = u8::try_from(pattern * 5 % 256).unwrap();
        let rgba = (0..192 * 192).flat_map(|pixel: u32| [grey, u8::try_from(pixel % 251).unwrap(), grey, 255]).collect();
        pictures.patterns.insert(PatternId(pattern), Arc::new(Raster { width: 192, height: 192, rgba }));
    }
    Ready { job, studio, shelves, book, report, setting, pictures }
}

fn paper(criterion: &mut Criterion) {
    let ready = ready();
    let input = SheetInput {
        job: &ready.job,
        studio: &ready.studio,
        shelves: &ready.shelves,
        report: &ready.report,
        book: &ready.book,
        setting: &ready.setting,
        texts: Texts::english(),
        style: &Style::METRIC,
        content_hash: "5f0c12ab34de",
        saved: true,
        studio_hash: "",
        pictures: &ready.pictures,
    };
    let printed = papers(&input, Sort::Bench).remove(0);
    let pages = as_pages(&printed, Format::A4, input.texts).leaves.len();
    assert!(pages >= 40, "{pages}");
    let mut group = criterion.benchmark_group("paper");
    group.sample_size(10);
    group.bench_function("40 flasks in words", |bencher| bencher.iter(|| papers(&input, Sort::Bench)));
    group.bench_function("40 flasks on pages", |bencher| bencher.iter(|| as_pages(&printed, Format::A4, input.texts)));
    group.bench_function("40 flasks as a PDF, all of it", |bencher| {
        bencher.iter(|| as_pdf(&papers(&input, Sort::Bench)[0], Format::A4, &input).unwrap());
    });
    group.finish();
}

criterion_group!(benches, paper);
criterion_main!(benches);
