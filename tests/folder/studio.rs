//! An invented studio between the tide-pool and the hedgerow: its jobs as they are meant, and as files.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::time::{Duration, SystemTime};

use jiff::civil::{Date, DateTime, date};
use pourbook::files::disk::RealDisk;
use pourbook::folder::Index;
use pourbook::job::format::write_job;
use pourbook::job::{
    BenchStep, Burnout, BurnoutId, CameBack, Draw, Entry, Event, Flask, FlaskId, From, Frozen, Hung, InvestedAs, Job, JobId, KilnDid, Line,
    LineId, LotId, Melt, MeltId, MetalKind, Order, OrderId, PieceException, PieceId, PieceStage, Place, PouredAs, Programme, RecordId,
    SentOut, Size, Tree, TreeId,
};
use pourbook::quantity::Grams;
use pourbook::stock::EntryId;

use super::seed::Seed;

pub const THINGS: [&str; 20] = [
    "Limpet",
    "Periwinkle",
    "Barnacle",
    "Whelk",
    "Cockle",
    "Razor shell",
    "Sea slater",
    "Goby",
    "Anemone",
    "Bladder wrack",
    "Urchin",
    "Dog whelk",
    "Haw",
    "Sloe",
    "Bramble",
    "Rosehip",
    "Acorn",
    "Écume",
    "Crab apple",
    "Old man’s beard",
];
pub const KINDS: [&str; 8] = ["ring", "stud", "charm", "pendant", "drawer knob", "brooch", "button", "cufflink"];
pub const ALLOYS: [&str; 6] = ["silver-925", "gold-750-yellow", "gold-585-red", "bronze-silicon", "brass-yellow", "platinum-950"];
pub const DEFECTS: [&str; 6] = ["no-fill", "gas-porosity", "shrinkage", "flashing", "ash-inclusion", "cold-shut"];
pub const CLIENTS: [&str; 20] =
    ["A", "B", "C", "D", "E", "F", "G", "H", "J", "K", "L", "M", "N", "P", "Q", "R", "AA", "AB", "BX", "studio"];
const STAGES: [PieceStage; 12] = [
    PieceStage::Made,
    PieceStage::Cleaned,
    PieceStage::Checked,
    PieceStage::OnTree,
    PieceStage::Invested,
    PieceStage::BurntOut,
    PieceStage::Cast,
    PieceStage::CutOff,
    PieceStage::Weighed,
    PieceStage::Finished,
    PieceStage::Out,
    PieceStage::Delivered,
];

pub fn id(text: &str) -> EntryId {
    EntryId::new(text).unwrap()
}

fn day(seed: &mut Seed) -> Date {
    date(2020 + seed.below(7) as i16, 1 + seed.below(12) as i8, 1 + seed.below(28) as i8)
}

fn moment(seed: &mut Seed) -> DateTime {
    day(seed).at(seed.below(24) as i8, seed.below(60) as i8, 0, 0)
}

pub fn job_id(number: u64) -> JobId {
    let mut seed = Seed(number ^ 0x0bad_cafe);
    JobId((u128::from(seed.draw()) << 64 | u128::from(seed.draw()) | 1).to_be_bytes())
}

/// The job of a number; pieces are taken on from jobs of smaller numbers, now and then from where there are none.
pub fn make(number: u64, seed: &mut Seed) -> Job {
    let mut next = 0;
    let orders: Vec<Order> = (0..1 + seed.below(3)).map(|at| order(at as u32 + 1, &mut next, number, seed)).collect();
    let lines: Vec<Line> = orders.iter().flat_map(|order| order.lines.clone()).collect();
    let flasks = if seed.one_in(12) { 0 } else { 1 + seed.below(4) as u32 };
    let trees = (1..=flasks).map(|id| {
        let hung = lines.iter().filter(|line| line.id.0 % flasks + 1 == id);
        let numbers =
            |line: &Line, seed: &mut Seed| if seed.one_in(3) { (1..=line.quantity).step_by(2).collect() } else { BTreeSet::new() };
        let pieces = hung.map(|line| Hung { line: line.id, numbers: numbers(line, seed), ..Hung::default() }).collect();
        Tree { id: TreeId(id), name: format!("Tree {id}"), pieces, ..Tree::default() }
    });
    let trees = trees.collect();
    let record = record(flasks, &lines, seed);
    Job {
        job_id: job_id(number),
        name: format!("{} and {}", seed.of(&THINGS), seed.of(&THINGS)),
        made: Some(day(seed)),
        orders,
        trees,
        flasks: (1..=flasks).map(|id| flask(id, number, seed)).collect(),
        burnouts: if flasks > 0 { vec![load(seed)] } else { Vec::new() },
        melts: (1..=flasks).map(|id| melt(id, seed)).collect(),
        record,
        ..Job::default()
    }
}

fn flask(number: u32, job: u64, seed: &mut Seed) -> Flask {
    Flask {
        id: FlaskId(number),
        scratch: (job % 90 + u64::from(number)).to_string(),
        vessel: Some(id(seed.of(&["flask-76x102", "flask-64x76", "flask-100x150"]))),
        powder: Some(id(seed.of(&["powder-gypsum-resin", "powder-gypsum-general", "powder-phosphate"]))),
        tree: Some(TreeId(number)),
        burnout: Some(BurnoutId(1)),
        alloy: seed.one_in(2).then(|| id(seed.of(&ALLOYS))),
        ..Flask::default()
    }
}

fn load(seed: &mut Seed) -> Burnout {
    Burnout {
        id: BurnoutId(1),
        kiln: Some(id("kiln-studio")),
        programme: seed.one_in(2).then(|| Programme::Table(id("stages-resin-wax-sprues"))),
        pour_at: seed.one_in(2).then(|| moment(seed)),
        ..Burnout::default()
    }
}

fn melt(number: u32, seed: &mut Seed) -> Melt {
    let draw = |seed: &mut Seed| Draw {
        lot: LotId(format!("S-{}", 1 + seed.below(40))),
        grams: Grams::from_f64(1.0 + seed.below(200) as f64).unwrap(),
        ..Draw::default()
    };
    Melt { id: MeltId(number), charge: (0..1 + seed.below(3)).map(|_| draw(seed)).collect(), ..Melt::default() }
}

fn order(number: u32, next: &mut u32, job: u64, seed: &mut Seed) -> Order {
    let lines = (0..1 + seed.below(5)).map(|_| {
        *next += 1;
        line(*next, job, seed)
    });
    let lines = lines.collect();
    Order { id: OrderId(number), client: seed.of(&CLIENTS).to_owned(), taken: Some(day(seed)), lines, ..Order::default() }
}

fn size(seed: &mut Seed) -> Option<Size> {
    match seed.below(4) {
        0 => Some(Size::Ring { scale: id("ring-iso"), size: (44 + seed.below(30)).to_string() }),
        1 => Some(Size::Free(seed.of(&["as the last one", "6 1/2", "fits a “thumb”\\", "two\nlines"]).to_owned())),
        _ => None,
    }
}

fn line(number: u32, job: u64, seed: &mut Seed) -> Line {
    let quantity = 1 + seed.below(8) as u32;
    let mut exceptions = BTreeMap::new();
    for number in 1..=quantity {
        if seed.one_in(9) {
            let other = job_id(seed.below(job as usize + 1) as u64);
            let piece = PieceId { line: LineId(1 + seed.below(8) as u32), number: 1 + seed.below(6) as u32 };
            let from = seed.one_in(2).then_some(From { job: other, piece });
            exceptions.insert(number, PieceException { from, size: size(seed), cancelled: seed.one_in(5), ..PieceException::default() });
        }
    }
    Line {
        id: LineId(number),
        design: format!("{} {}", seed.of(&THINGS), seed.of(&KINDS)),
        quantity,
        alloy: (!seed.one_in(4)).then(|| id(seed.of(&ALLOYS))),
        size: size(seed),
        exceptions,
        ..Line::default()
    }
}

fn record(flasks: u32, lines: &[Line], seed: &mut Seed) -> Vec<Entry> {
    let mut events = Vec::new();
    let piece = |seed: &mut Seed| {
        let line = &lines[seed.below(lines.len())];
        PieceId { line: line.id, number: 1 + seed.below(line.quantity as usize) as u32 }
    };
    for _ in 0..seed.below(4) {
        let pieces = (0..1 + seed.below(5)).map(|_| piece(seed)).collect();
        events.push(Event::Reached { pieces, stage: seed.of(&STAGES) });
    }
    for number in 1..=flasks {
        let flask = FlaskId(number);
        events.push(Event::TreeWeighed { tree: TreeId(number), weight: None });
        events.push(Event::Invested {
            flask,
            plan: Frozen::default(),
            done: InvestedAs { lot: "P-7".to_owned(), ..InvestedAs::default() },
        });
        events.push(Event::Kiln { burnout: BurnoutId(1), temperature_c: None, did: KilnDid::CameOut });
        if !seed.one_in(4) {
            events.push(Event::Poured { flask, plan: Frozen::default(), done: PouredAs::default() });
        }
        if seed.one_in(2) {
            events.push(Event::Rejected { piece: piece(seed), defect: seed.of(&DEFECTS).to_owned() });
        }
        events.push(Event::Metal { melt: Some(MeltId(number)), flask: None, what: MetalKind::Sweeps, grams: Grams::default() });
        events.push(Event::PieceWeighed { piece: piece(seed), finished: false, grams: Grams::default(), after: None });
        events.push(Event::Timed { step: BenchStep::Mix, of: Place::Flask(flask), seconds: 90 });
        events.push(Event::SentOut { pieces: vec![piece(seed)], sent: SentOut::default() });
        events.push(Event::CameBack { sent: RecordId(1), pieces: vec![], back: CameBack::default() });
        if seed.one_in(5) {
            events.push(Event::Withdrawn { entry: RecordId(1 + seed.below(events.len()) as u32), reason: "the wrong ring".to_owned() });
        }
        events.push(Event::Remark);
    }
    let entry = |(id, event)| Entry { id: RecordId(id), at: (!seed.one_in(12)).then(|| moment(seed)), event, ..Entry::default() };
    (1..).zip(events).map(entry).collect()
}

pub fn file_of(number: u64) -> String {
    format!("{number:05}.ron")
}

/// So many jobs, in files and as an index of them.
pub fn studio(seed: u64, many: u64) -> (Vec<Job>, Index, tempfile::TempDir) {
    let mut seed = Seed(seed);
    let folder = tempfile::tempdir().unwrap();
    let jobs: Vec<Job> = (0..many).map(|number| make(number, &mut seed)).collect();
    for (number, job) in (0..).zip(&jobs) {
        std::fs::write(folder.path().join(file_of(number)), write_job(job).unwrap()).unwrap();
    }
    let index = build(folder.path());
    assert_eq!((index.jobs().count(), index.broken().count()), (jobs.len(), 0));
    (jobs, index, folder)
}

/// An index that was built long after the last change.
pub fn build(folder: &Path) -> Index {
    Index::build(&RealDisk, folder, SystemTime::now() + Duration::from_secs(60)).unwrap()
}
