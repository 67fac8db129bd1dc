//! Jobs made up for the tests, computed and ready to print.

use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use pourbook::calc::{Book, Report, Runs, Setting, Shelves, recompute};
use pourbook::job::{
    Burnout, BurnoutId, Draw, Drive, Extra, Flask, FlaskId, Hand, Hung, Job, Line, LineId, Lot, LotId, LotKind, Making, Melt, MeltId,
    Order, OrderId, Pattern, PatternFile, PatternId, Price, Programme, Quote, QuoteId, Role, Size, Studio, Tree, TreeId, WeighedPart,
    Weighing,
};
use pourbook::paper::{Pictures, SheetInput};
use pourbook::quantity::Style;
use pourbook::stock::EntryId;
use pourbook::texts::Texts;

use crate::world::{grams, line, money, new_book, said as finite, some as id};

pub const TODAY: Date = date(2026, 11, 24);

/// A job with its studio and everything computed.
pub struct Ready {
    pub job: Job,
    pub studio: Studio,
    pub shelves: Shelves,
    pub book: Book,
    pub report: Report,
    pub setting: Setting,
    pub style: Style,
    pub pictures: Pictures,
}

impl Ready {
    pub fn new(job: Job, studio: Studio) -> Self {
        Self::with_runs(job, studio, &Runs::default())
    }

    pub fn with_runs(job: Job, studio: Studio, runs: &Runs) -> Self {
        let shelves = Shelves::new(&job, &studio);
        let setting = Setting { at: TODAY, zone: TimeZone::get("Europe/Dublin").unwrap() };
        let mut book = new_book();
        let report = recompute(&job, &studio, &shelves, runs, &setting, &mut book);
        Self { job, studio, shelves, book, report, setting, style: Style::METRIC, pictures: Pictures::default() }
    }

    pub fn input(&self) -> SheetInput<'_> {
        SheetInput {
            job: &self.job,
            studio: &self.studio,
            shelves: &self.shelves,
            report: &self.report,
            book: &self.book,
            setting: &self.setting,
            texts: Texts::english(),
            style: &self.style,
            content_hash: "5f0c12ab34de",
            saved: true,
            studio_hash: "77aa00bb11cc",
            pictures: &self.pictures,
        }
    }
}

pub fn studio() -> Studio {
    let mut studio = Studio { name: "Tideline Castings".into(), address: vec!["2 Slip Lane".into()], ..Studio::default() };
    studio.money.currency = "EUR".into();
    studio.money.hour = Some(money("48"));
    studio.money.words = "Half on order, the rest on collection.".into();
    studio.hands = vec![Hand { initials: "RB".into(), role: Role::Master }];
    let price = |of: &str, amount: &str| Price { of: of.into(), amount: money(amount), on: Some(date(2026, 11, 23)), ..Price::default() };
    studio.prices = vec![price("Ag", "0.92"), price("Au", "74.5"), price("brass-yellow", "0.015")];
    let lot = |label: &str, what, alloy: &str| Lot { id: LotId(label.into()), what, alloy: id(alloy), ..Lot::default() };
    studio.lots = vec![lot("S-14", LotKind::NewMetal, "silver-925"), lot("S-9", LotKind::Scrap, "silver-925")];
    studio
}

/// A wax tree on the scale, and nothing else that is not asked for.
pub fn quick_start() -> Job {
    let weighed = WeighedPart { material: id("wax-injection"), weight: Some(Weighing::Net(grams("12.4"))), scale: String::new() };
    Job {
        name: "Quick".into(),
        trees: vec![Tree { id: TreeId(1), weighed: vec![weighed], ..Tree::default() }],
        flasks: vec![Flask {
            id: FlaskId(1),
            vessel: id("flask-89x102"),
            tree: Some(TreeId(1)),
            alloy: id("silver-925"),
            powder: id("powder-gypsum"),
            burnout: Some(BurnoutId(1)),
            ..Flask::default()
        }],
        burnouts: vec![load()],
        ..Job::default()
    }
}

pub fn load() -> Burnout {
    Burnout {
        id: BurnoutId(1),
        name: "Overnight".into(),
        kiln: id("kiln-studio"),
        programme: Some(Programme::Table(EntryId::new("stages-wax").unwrap())),
        pour_at: Some(date(2026, 11, 26).at(9, 0, 0, 0)),
        ..Burnout::default()
    }
}

/// A pattern of a material, weighed.
pub fn pattern(number: u32, name: &str, material: &str, weight: &str) -> Pattern {
    Pattern {
        id: PatternId(number),
        name: name.into(),
        material: id(material),
        weighed: Some(Weighing::Net(grams(weight))),
        making: Some(Making::default()),
        ..Pattern::default()
    }
}

pub fn order(number: u32, client: &str, lines: Vec<Line>) -> Order {
    Order { id: OrderId(number), client: client.into(), due: Some(date(2026, 12, 4)), lines, ..Order::default() }
}

/// Silver wax rings, brass resin figures and a platinum ring in a phosphate mould, for two clients.
pub fn three_flasks() -> Job {
    let ring = Size::Ring { scale: EntryId::new("ring-iso").unwrap(), size: "54".into() };
    let rings = Line { size: Some(ring), ..line(1, "limpet ring", 4, "silver-925", 1) };
    let orders = vec![
        order(1, "KM", vec![rings, line(2, "heron figure", 2, "brass-yellow", 2)]),
        order(2, "ODA", vec![line(3, "plain band", 1, "platinum-950-ruthenium", 3), line(4, "anchor charm", 5, "silver-925", 4)]),
    ];
    let tree = |number: u32, line: u32, material: &str, weight: &str| Tree {
        id: TreeId(number),
        name: format!("T{number}"),
        base: id("base-89"),
        base_number: number.to_string(),
        pieces: vec![Hung { line: LineId(line), ..Hung::default() }],
        weighed: vec![
            WeighedPart { material: id(material), weight: Some(Weighing::Net(grams(weight))), scale: String::new() },
            WeighedPart { material: id("wax-sprue"), weight: Some(Weighing::Net(grams("4.15"))), scale: String::new() },
        ],
        ..Tree::default()
    };
    let flask = |number: u32, powder: &str, drive| Flask {
        id: FlaskId(number),
        scratch: format!("B{number}"),
        vessel: id("flask-89x102"),
        tree: Some(TreeId(number)),
        powder: id(powder),
        burnout: Some(BurnoutId(1)),
        turn: Some(number),
        drive,
        ..Flask::default()
    };
    let mut flasks = vec![
        flask(1, "powder-gypsum", Drive::Vacuum),
        flask(2, "powder-gypsum-resin", Drive::Gravity),
        flask(3, "powder-phosphate", Drive::Centrifugal),
    ];
    flasks[0].melt = Some(MeltId(1));
    let draw = |lot: &str, weight: &str| Draw { lot: LotId(lot.into()), grams: grams(weight), notes: String::new() };
    Job {
        name: "Late November".into(),
        orders,
        patterns: vec![
            pattern(1, "limpet ring", "wax-injection", "0.62"),
            pattern(2, "heron figure", "resin-castable", "3.1"),
            pattern(3, "plain band", "wax-carving-hard", "0.55"),
            pattern(4, "anchor charm", "wax-injection", "0.3"),
        ],
        trees: vec![tree(1, 1, "wax-injection", "2.5"), tree(2, 2, "resin-castable", "6.2"), tree(3, 3, "wax-carving-hard", "0.55")],
        flasks,
        burnouts: vec![Burnout { dewax_min: finite(60.0), ..load() }],
        melts: vec![Melt {
            id: MeltId(1),
            name: "A".into(),
            crucible: id("crucible-graphite-small"),
            charge: vec![draw("S-14", "60"), draw("S-9", "35.5")],
            ..Melt::default()
        }],
        ..Job::default()
    }
}

/// Orders of three clients and no flask.
pub fn order_book() -> Job {
    let mut job = Job {
        name: "Winter orders".into(),
        orders: vec![
            order(1, "KM", vec![line(1, "limpet ring", 4, "silver-925", 1), line(2, "limpet stud", 6, "silver-925", 1)]),
            order(2, "ODA", vec![line(3, "plain band", 1, "gold-18k-yellow", 2)]),
            order(3, "JJ", vec![line(4, "heron figure", 2, "brass-yellow", 3)]),
        ],
        patterns: vec![
            pattern(1, "limpet", "wax-injection", "0.62"),
            pattern(2, "band", "wax-carving-hard", "0.55"),
            Pattern {
                file: Some(PatternFile { path: "heron.stl".into(), ..PatternFile::default() }),
                weighed: None,
                ..pattern(3, "heron", "resin-castable", "1")
            },
        ],
        ..Job::default()
    };
    job.quotes = vec![Quote {
        id: QuoteId(1),
        client: "KM".into(),
        made: Some(TODAY),
        valid_until: Some(date(2026, 12, 1)),
        margin: finite(0.25),
        tax: finite(0.23),
        deposit: Some(money("60")),
        extras: vec![
            Extra { line: Some(LineId(1)), what: "Finishing".into(), minutes: finite(100.0), amount: None },
            Extra { line: Some(LineId(2)), what: "Posts".into(), minutes: None, amount: Some(money("7.20")) },
            Extra { line: None, what: "Carriage".into(), minutes: None, amount: Some(money("9.5")) },
        ],
        ..Quote::default()
    }];
    job
}
