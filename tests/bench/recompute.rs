//! How long a recompute takes: a batch of 200 pieces in 12 flasks, and an order book of 20 000 pieces on as many lines.
//!
//! `cargo bench --bench recompute` measures; `cargo bench --bench recompute -- --test` only runs each once.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use jiff::civil::date;
use jiff::tz::TimeZone;
use pourbook::calc::{Book, Runs, Setting, Shelves, recompute};
use pourbook::job::{
    Burnout, BurnoutId, Envelope, Flask, FlaskId, Hung, Job, Line, LineId, Order, OrderId, Pattern, PatternId, Price, PriceUnit, Programme,
    Studio, Tree, TreeId, WeighedPart, Weighing,
};
use pourbook::quantity::{Finite, Grams, Money};
use pourbook::stock::EntryId;
use rust_decimal::Decimal;

fn id(slug: &str) -> Option<EntryId> {
    Some(EntryId::new(slug).expect("a slug"))
}

fn net(grams: f64) -> Option<Weighing> {
    Grams::from_f64(grams).map(Weighing::Net)
}

const ALLOYS: [&str; 3] = ["silver-925", "gold-14k-yellow", "bronze-silicon"];

fn pattern(n: u32) -> Pattern {
    Pattern {
        id: PatternId(n),
        name: format!("shell {n}"),
        material: id(if n.is_multiple_of(2) { "wax-injection" } else { "resin-castable" }),
        weighed: net(0.4 + f64::from(n % 17) * 0.05),
        ..Pattern::default()
    }
}

fn line(n: u32, each: u32, flasks: u32) -> Line {
    Line {
        id: LineId(n),
        design: format!("shell {}", n.div_ceil(10)),
        quantity: each,
        alloy: id(ALLOYS[(n % flasks.max(1) % 3) as usize]),
        pattern: Some(PatternId(n.div_ceil(10))),
        ..Line::default()
    }
}

fn tree(n: u32, lines: u32, flasks: u32) -> Tree {
    let part = |material, grams| WeighedPart { material: id(material), weight: net(grams), scale: String::new() };
    Tree {
        id: TreeId(n + 1),
        name: format!("tree {n}"),
        base: id("base-89"),
        pieces: (1..=lines).filter(|line| line % flasks == n).map(|line| Hung { line: LineId(line), ..Hung::default() }).collect(),
        weighed: vec![part("resin-castable", 9.4), part("wax-sprue", 6.15)],
        envelope: Some(Envelope { diameter_mm: Finite::new(62.0), height_mm: Finite::new(80.0) }),
        ..Tree::default()
    }
}

/// `lines` lines of `each` pieces, a pattern for every tenth line, `flasks` flasks with a tree of their share of the lines.
fn job(lines: u32, each: u32, flasks: u32) -> Job {
    let order = |n: u32| Order {
        id: OrderId(n + 1),
        client: format!("K{n}"),
        due: Some(date(2026, 12, 20)),
        lines: (1..=lines).filter(|number| number % 40 == n).map(|number| line(number, each, flasks)).collect(),
        ..Order::default()
    };
    let flask = |n: u32| Flask {
        id: FlaskId(n + 1),
        vessel: id("flask-89x102"),
        tree: Some(TreeId(n + 1)),
        powder: id("powder-gypsum"),
        burnout: Some(BurnoutId(1 + n / 6)),
        ..Flask::default()
    };
    let burnout = |n: u32| Burnout {
        id: BurnoutId(n),
        kiln: id("kiln-studio"),
        programme: id("stages-wax").map(Programme::Table),
        pour_at: Some(date(2026, 12, 3).at(9, 30, 0, 0)),
        ..Burnout::default()
    };
    Job {
        name: "bench".to_owned(),
        patterns: (1..=lines.div_ceil(10)).map(pattern).collect(),
        orders: (0..40).map(order).collect(),
        trees: (0..flasks).map(|n| tree(n, lines, flasks)).collect(),
        flasks: (0..flasks).map(flask).collect(),
        burnouts: (1..=flasks.div_ceil(6)).map(burnout).collect(),
        ..Job::default()
    }
}

fn studio() -> Studio {
    let price = |of: &str, cents: i64| Price {
        of: of.to_owned(),
        amount: Money::new(Decimal::new(cents, 2)).expect("a price"),
        per: PriceUnit::TroyOunce,
        on: Some(date(2026, 11, 24)),
        note: String::new(),
    };
    Studio { prices: vec![price("Ag", 4100), price("Au", 340_000), price("bronze-silicon", 60)], ..Studio::default() }
}

#[allow(clippy::print_stderr, reason = "a bench speaks to the person at the terminal")]
fn bench(criterion: &mut Criterion) {
    let setting = Setting { at: date(2026, 11, 25), zone: TimeZone::UTC };
    let (studio, runs) = (studio(), Runs::default());
    let sizes = [("200 pieces, 12 flasks", 50, 4, 12), ("20 000 pieces", 20_000, 1, 0), ("20 000 pieces, 12 flasks", 20_000, 1, 12)];
    for (name, lines, each, flasks) in sizes {
        let job = job(lines, each, flasks);
        let shelves = Shelves::new(&job, &studio);
        let mut book = Book::default();
        recompute(&job, &studio, &shelves, &runs, &setting, &mut book);
        eprintln!("{name}: {} lines in the book, {} of them figures", book.len(), book.figures().count());
        criterion.bench_function(name, |bencher| {
            bencher.iter(|| black_box(recompute(black_box(&job), &studio, &shelves, &runs, &setting, &mut book)));
        });
    }
}

criterion_group!(benches, bench);
criterion_main!(benches);
