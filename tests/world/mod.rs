//! Small jobs for tests, and a recompute of them. Shared by several test programs, none of which uses all of it.
#![allow(dead_code, reason = "each test program uses a part of it")]

use jiff::civil::{Date, DateTime, date, datetime};
use jiff::tz::TimeZone;
use pourbook::calc::mould_heat::answer_all;
use pourbook::calc::{
    Book, Finding, FlaskFigures, Id, LineFigures, PatternMeasure, PatternRun, Report, Runs, Setting, Shelves, Value, recompute,
};
use pourbook::cores::AllCores;
use pourbook::job::{
    Axis, Burnout, BurnoutId, Calibration, Centrifuge, Draw, Drive, Envelope, Extents, Finished, Flask, FlaskId, Gauge, Hand, Hung, Job,
    JobId, Line, LineId, Lot, LotId, MainSprue, Melt, MeltId, Mould, Order, OrderId, Pattern, PatternFile, PatternId, PieceException,
    Placed, Price, PriceUnit, PrintId, PrintRow, PrintRun, PrintSetting, Printer, Programme, Receipt, Role, Segment, Size, SpruePoint,
    SprueRun, Studio, Tree, TreeId, WaterWeighing, WeighedPart, Weighing,
};
use pourbook::quantity::{Finite, Grams, Money};
use pourbook::stock::{EntryId, Section};

pub fn entry(id: &str) -> EntryId {
    EntryId::new(id).unwrap()
}

pub fn some(id: &str) -> Option<EntryId> {
    Some(entry(id))
}

pub fn number(number: f64) -> Finite {
    Finite::new(number).unwrap()
}

pub fn said(value: f64) -> Option<Finite> {
    Some(number(value))
}

pub fn grams(text: &str) -> Grams {
    Grams::new(text.parse().unwrap()).unwrap()
}

pub fn money(text: &str) -> Money {
    Money::new(text.parse().unwrap()).unwrap()
}

pub const TODAY: Date = date(2026, 3, 2);
pub const POUR: DateTime = datetime(2026, 3, 5, 10, 0, 0, 0);

/// A job in its studio, on a day, with what long runs gave.
#[derive(Debug, Clone)]
pub struct World {
    pub job: Job,
    pub studio: Studio,
    pub runs: Runs,
    pub setting: Setting,
}

/// The outcome of a recompute.
pub struct Outcome {
    pub book: Book,
    pub report: Report,
}

impl World {
    /// An empty job in an empty studio.
    pub fn empty() -> Self {
        let job = Job { job_id: JobId([7; 16]), ..Job::default() };
        let studio = Studio { studio_id: JobId([9; 16]), ..Studio::default() };
        Self { job, studio, runs: Runs::default(), setting: Setting { at: TODAY, zone: TimeZone::UTC } }
    }

    /// Four silver bands on one weighed tree, planned so that nothing is wrong with it.
    pub fn sound() -> Self {
        let mut world = Self::empty();
        world.studio.hands = [("MM", Role::Master), ("CC", Role::Caster), ("AA", Role::Apprentice)]
            .map(|(initials, role)| Hand { initials: initials.to_owned(), role })
            .to_vec();
        world.studio.prices = vec![price("Ag", "28.00", PriceUnit::TroyOunce)];
        world.studio.lots = vec![lot("S-1", "silver-925")];
        world.job.orders = vec![Order {
            id: OrderId(1),
            client: "A".to_owned(),
            due: Some(date(2026, 3, 20)),
            lines: vec![line(1, "band", 4, "silver-925", 1)],
            ..Order::default()
        }];
        world.job.patterns = vec![Pattern {
            id: PatternId(1),
            name: "band".to_owned(),
            material: some("wax-injection"),
            weighed: Some(Weighing::Net(grams("0.8"))),
            extents_mm: Some(extents(22.0, 22.0, 4.0)),
            section: Some(Section::Medium),
            ..Pattern::default()
        }];
        world.job.trees = vec![Tree {
            id: TreeId(1),
            name: "first".to_owned(),
            base: some("base-76"),
            pieces: vec![hung(1)],
            weighed: vec![weighed("wax-injection", "3.2"), weighed("wax-sprue", "2.4")],
            envelope: Some(Envelope { diameter_mm: said(55.0), height_mm: said(70.0) }),
            ..Tree::default()
        }];
        world.job.flasks = vec![flask(1)];
        world.job.burnouts = vec![Burnout {
            id: BurnoutId(1),
            kiln: some("kiln-studio"),
            programme: Some(Programme::Table(entry("stages-wax"))),
            hours_include_ramps: Some(false),
            pour_at: Some(POUR),
            ..Burnout::default()
        }];
        world.job.melts =
            vec![Melt { id: MeltId(1), crucible: some("crucible-graphite-small"), charge: vec![draw("S-1", "100")], ..Melt::default() }];
        world
    }

    /// A job that needs every rule: a weighed tree with a tare, a computed one, files, rings, both kinds of programme, draws and prices.
    pub fn full() -> Self {
        let mut world = Self::sound();
        world.studio.money.kwh = Some(money("0.31"));
        world.studio.prices.push(price("bronze-silicon", "12.40", PriceUnit::Kilogram));
        let part = Weighing::Gross { weight: grams("103.20"), tare: Some(grams("100")) };
        world.job.trees[0].weighed[0].weight = Some(part);
        // Its sprues are known as well, and one band hangs turned at a height of its own.
        world.job.trees[0].main_sprue = Some(MainSprue { diameter_mm: said(6.0), length_mm: said(60.0), ..MainSprue::default() });
        world.job.trees[0].sprues = vec![SprueRun { count: 4, diameter_mm: said(3.0), length_mm: said(18.0), ..SprueRun::default() }];
        world.job.trees[0].placed = [(1, 0.0), (2, 90.0)]
            .map(|(number, turn)| Placed {
                line: LineId(1),
                number,
                height_mm: said(30.0),
                around_deg: said(90.0 * f64::from(number)),
                turn_deg: said(turn),
                ..Placed::default()
            })
            .to_vec();
        world.job.orders[0].lines[0].size = Some(Size::Ring { scale: entry("ring-iso"), size: "54".to_owned() });
        world.job.orders[0].lines.push(line(2, "leaf", 3, "bronze-silicon", 2));
        world.job.patterns.push(Pattern {
            id: PatternId(2),
            name: "leaf".to_owned(),
            material: some("resin-castable"),
            weighed: Some(Weighing::Net(grams("1.12"))),
            file: Some(PatternFile { path: "leaf.stl".to_owned(), scale: said(1.0), ..PatternFile::default() }),
            ..Pattern::default()
        });
        world.job.orders[0].lines.push(line(3, "knob", 1, "bronze-silicon", 3));
        world.job.patterns.push(Pattern {
            id: PatternId(3),
            name: "knob".to_owned(),
            material: some("resin-castable"),
            file: Some(PatternFile { path: "knob.stl".to_owned(), sprue: Some(sprue_point(4.0, 0.7)), ..PatternFile::default() }),
            ..Pattern::default()
        });
        world.runs.patterns.insert(PatternId(2), PatternRun::Measured(measure(1000.0, 600.0, [30.0, 10.0, 10.0])));
        let knob = PatternMeasure { walls: Some([1.5, 4.0, 6.0]), ..measure(800.0, 500.0, [10.0, 10.0, 8.0]) };
        world.runs.patterns.insert(PatternId(3), PatternRun::Measured(knob));
        world.job.trees.push(computed_tree(2, vec![hung(2), hung(3)]));
        world.job.flasks.push(Flask { tree: Some(TreeId(2)), burnout: Some(BurnoutId(2)), melt: None, ..flask(2) });
        spun(&mut world, 1);
        world.job.burnouts.push(Burnout {
            id: BurnoutId(2),
            kiln: some("kiln-studio"),
            programme: Some(Programme::Segments(vec![
                segment(Some(150.0), Some(100.0), None, 120.0),
                segment(Some(732.0), None, Some(300.0), 180.0),
                segment(None, None, None, 60.0),
            ])),
            dewax_min: said(60.0),
            pour_at: Some(POUR),
            ..Burnout::default()
        });
        // One leaf is cast from the other pattern.
        world.job.orders[0].lines[1].exceptions.insert(3, PieceException { pattern: Some(PatternId(3)), ..PieceException::default() });
        // A wide band of comfort fit shot from a mould; a leaf of a certain length; a sample of the wax.
        world.studio.moulds = vec![mould("M-1", "0.9")];
        world.job.patterns[0].mould = "M-1".to_owned();
        let band = &mut world.job.orders[0].lines[0];
        (band.band_mm, band.comfort_fit) = (said(6.0), true);
        world.job.orders[0].lines[1].finished = Finished { x_mm: said(29.5), ..Finished::default() };
        world.studio.water_weighings = vec![in_water("wax-injection", "10.00", "19.49")];
        // The first load reads its table the other way, so that both ways are there.
        world.job.burnouts[0].hours_include_ramps = Some(true);
        printed(&mut world);
        world
    }

    pub fn recompute(&self) -> Outcome {
        let mut book = new_book();
        let shelves = Shelves::new(&self.job, &self.studio);
        let report = recompute(&self.job, &self.studio, &shelves, &self.runs, &self.setting, &mut book);
        Outcome { book, report }
    }

    /// Recomputed with the heat of its moulds, which takes longer.
    pub fn heated(&self) -> Outcome {
        let mut runs = self.runs.clone();
        answer_all(&self.recompute().report, &mut runs, &AllCores);
        Self { runs, ..self.clone() }.recompute()
    }

    /// The same after a change.
    #[must_use]
    pub fn with(mut self, change: impl FnOnce(&mut Self)) -> Self {
        change(&mut self);
        self
    }

    pub fn flask(&mut self) -> &mut Flask {
        &mut self.job.flasks[0]
    }

    pub fn tree(&mut self) -> &mut Tree {
        &mut self.job.trees[0]
    }

    pub fn pattern(&mut self) -> &mut Pattern {
        &mut self.job.patterns[0]
    }

    pub fn line(&mut self) -> &mut Line {
        &mut self.job.orders[0].lines[0]
    }

    pub fn burnout(&mut self) -> &mut Burnout {
        &mut self.job.burnouts[0]
    }

    pub fn melt(&mut self) -> &mut Melt {
        &mut self.job.melts[0]
    }

    pub fn measured(&mut self, id: u32, measure: PatternMeasure) {
        self.runs.patterns.insert(PatternId(id), PatternRun::Measured(measure));
    }
}

impl Outcome {
    pub fn number(&self, id: Id) -> f64 {
        self.book.number(id).unwrap_or_else(|| panic!("{} is missing: {:?}", self.book.figure(id).origin.key(), self.roots(id)))
    }

    pub fn value(&self, id: Id) -> Value {
        self.book.value(id)
    }

    /// The keys of what a missing figure waits for.
    pub fn roots(&self, id: Id) -> Vec<&'static str> {
        self.book.root_causes(id).iter().map(|id| self.book.figure(*id).origin.key()).collect()
    }

    pub fn flask(&self) -> &FlaskFigures {
        &self.report.flasks[0]
    }

    pub fn line(&self) -> &LineFigures {
        &self.report.lines[0]
    }

    pub fn findings(&self, key: &str) -> Vec<&Finding> {
        self.report.findings.iter().filter(|finding| finding.kind.key == key).collect()
    }

    pub fn keys(&self) -> Vec<&'static str> {
        self.report.findings.iter().map(|finding| finding.kind.key).collect()
    }

    /// The figure a rule made first.
    pub fn by_rule(&self, rule: &str) -> Id {
        let found = self.book.figures().find(|figure| figure.origin.key() == rule);
        found.unwrap_or_else(|| panic!("no figure by {rule}")).id
    }
}

/// A flask is spun on the studio's only machine, and balanced.
pub fn spun(world: &mut World, flask: usize) {
    world.studio.centrifuges = vec![centrifuge()];
    let flask = &mut world.job.flasks[flask];
    flask.drive = Drive::Centrifugal;
    flask.spin.counterweight = Some(grams("1100"));
}

pub fn centrifuge() -> Centrifuge {
    Centrifuge {
        name: "the barrel".to_owned(),
        rpm: said(300.0),
        most_rpm: said(400.0),
        metal_mm: said(120.0),
        pattern_mm: said(250.0),
        flask_mm: said(230.0),
        crucible_mm: said(110.0),
        counterweight_mm: said(200.0),
        crucible: Some(grams("180")),
        cradle: Some(grams("250")),
        most_counterweight: Some(grams("3000")),
        widest_mm: said(110.0),
        highest_mm: said(130.0),
        heaviest: Some(grams("2500")),
        ..Centrifuge::default()
    }
}

pub fn sprue_point(ball: f64, modulus: f64) -> SpruePoint {
    SpruePoint { at: Some([number(0.0); 3]), ball: said(ball), modulus: said(modulus) }
}

/// The leaf and the knob are printed together, on a printer that was calibrated.
pub fn printed(world: &mut World) {
    world.studio.printers = vec![printer()];
    world.studio.calibrations = vec![calibration()];
    world.job.prints = vec![PrintRun {
        id: PrintId(1),
        name: "leaves".to_owned(),
        printer: "by the window".to_owned(),
        material: some("resin-castable"),
        rows: vec![
            PrintRow { pattern: PatternId(2), count: 3, ..PrintRow::default() },
            PrintRow { pattern: PatternId(3), count: 1, height_mm: said(12.0), ..PrintRow::default() },
        ],
        washed_min: said(4.0),
        cured_before_rinse_min: said(6.0),
        rinsed: true,
        surface_clean: Some(true),
        ..PrintRun::default()
    }];
}

pub fn printer() -> Printer {
    let setting = PrintSetting {
        material: some("resin-castable"),
        layer_mm: said(0.05),
        base_layers: Some(6),
        base_exposure_s: said(30.0),
        exposure_s: said(2.5),
        move_s: said(6.0),
        supports_share: said(0.25),
        price_per_kg: Some(money("190")),
        ..PrintSetting::default()
    };
    Printer {
        name: "by the window".to_owned(),
        plate_x_mm: said(120.0),
        plate_y_mm: said(68.0),
        height_mm: said(150.0),
        gap_mm: said(2.0),
        settings: vec![setting],
        ..Printer::default()
    }
}

pub fn gauge(axis: Axis, nominal: f64, measured: f64) -> Gauge {
    Gauge { axis, nominal_mm: said(nominal), measured_mm: said(measured) }
}

pub fn calibration() -> Calibration {
    let along = |axis, by: f64| [5.0, 10.0, 20.0, 40.0].map(|nominal| gauge(axis, nominal, nominal * by + 0.03 + (nominal % 3.0) / 100.0));
    Calibration {
        name: "blocks".to_owned(),
        printer: "by the window".to_owned(),
        material: some("resin-castable"),
        on: Some(date(2026, 2, 20)),
        rows: [along(Axis::X, 0.996), along(Axis::Y, 0.997), along(Axis::Z, 1.001)].concat(),
        wanted_mm: said(17.2),
        accepted: true,
        recheck: Some(date(2026, 8, 20)),
        ..Calibration::default()
    }
}

pub fn line(id: u32, design: &str, quantity: u32, alloy: &str, pattern: u32) -> Line {
    Line { id: LineId(id), design: design.to_owned(), quantity, alloy: some(alloy), pattern: Some(PatternId(pattern)), ..Line::default() }
}

pub fn hung(line: u32) -> Hung {
    Hung { line: LineId(line), ..Hung::default() }
}

pub fn weighed(material: &str, net: &str) -> WeighedPart {
    WeighedPart { material: some(material), weight: Some(Weighing::Net(grams(net))), ..WeighedPart::default() }
}

pub fn flask(id: u32) -> Flask {
    Flask {
        id: FlaskId(id),
        vessel: some("flask-76x102"),
        tree: Some(TreeId(id)),
        powder: some("powder-gypsum"),
        burnout: Some(BurnoutId(id)),
        melt: Some(MeltId(id)),
        ..Flask::default()
    }
}

pub fn computed_tree(id: u32, pieces: Vec<Hung>) -> Tree {
    Tree {
        id: TreeId(id),
        name: "computed".to_owned(),
        base: some("base-76"),
        pieces,
        main_sprue: Some(MainSprue { material: some("wax-sprue"), diameter_mm: said(8.0), length_mm: said(40.0) }),
        sprues: vec![SprueRun {
            material: some("wax-sprue"),
            count: 4,
            diameter_mm: said(3.0),
            length_mm: said(6.0),
            ..SprueRun::default()
        }],
        ..Tree::default()
    }
}

/// A mould in the register, its rubber and its wax both known.
pub fn mould(number: &str, shot: &str) -> Mould {
    Mould {
        number: number.to_owned(),
        rubber_shrink: said(0.003),
        wax: some("wax-injection"),
        wax_c: said(70.0),
        pressure_kpa: said(60.0),
        shot: Some(grams(shot)),
        reject_share: said(0.1),
        ..Mould::default()
    }
}

/// A sample that weighs `dry` and, with a sinker of 20 g, `both` in water of 20 °C.
pub fn in_water(material: &str, dry: &str, both: &str) -> WaterWeighing {
    WaterWeighing {
        material: some(material),
        dry: Some(grams(dry)),
        sinker_in_water: Some(grams("20")),
        both_in_water: Some(grams(both)),
        water_c: said(20.0),
        ..WaterWeighing::default()
    }
}

pub fn segment(target: Option<f64>, ramp_k_h: Option<f64>, ramp_min: Option<f64>, hold_min: f64) -> Segment {
    Segment { target_c: target.map(number), ramp_k_h: ramp_k_h.map(number), ramp_min: ramp_min.map(number), hold_min: number(hold_min) }
}

pub fn extents(along: f64, across: f64, deep: f64) -> Extents {
    Extents { along: number(along), across: number(across), deep: number(deep) }
}

pub fn measure(fills_mm3: f64, area_mm2: f64, size: [f64; 3]) -> PatternMeasure {
    PatternMeasure {
        walls: Some([0.8, 1.2, 2.0]),
        triangles: 0,
        shells: 0,
        hash: "f00d".to_owned(),
        volume: Some(fills_mm3),
        fills: Some(fills_mm3),
        area: area_mm2,
        size,
        ..PatternMeasure::default()
    }
}

pub fn price(of: &str, amount: &str, per: PriceUnit) -> Price {
    Price { of: of.to_owned(), amount: money(amount), per, on: Some(date(2026, 3, 1)), ..Price::default() }
}

pub fn lot(id: &str, alloy: &str) -> Lot {
    let received = vec![Receipt { grams: grams("5000"), ..Receipt::default() }];
    Lot { id: LotId(id.to_owned()), alloy: some(alloy), receipts: received, ..Lot::default() }
}

pub fn draw(lot: &str, weight: &str) -> Draw {
    Draw { lot: LotId(lot.to_owned()), grams: grams(weight), ..Draw::default() }
}

/// An empty book. (`Book::default` is the making of a default term.)
pub fn new_book() -> Book {
    Default::default()
}

/// Whether a sentence is missing from the catalogue: its key stands there in «». A caster's own words may hold such marks too.
pub fn lacks_a_text(words: &str) -> bool {
    words
        .split('«')
        .skip(1)
        .filter_map(|rest| rest.split_once('»'))
        .any(|(key, _)| key.len() > 3 && key.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-'))
}
