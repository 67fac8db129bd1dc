//! What cannot be in a job: each fault with its place and field, and everything else still computed.

use pourbook::job::check::{Wrong, faults, mend};
use pourbook::job::{
    BurnoutId, FlaskId, Hung, KeptMeasures, KilnReadings, Line, LineId, MeltId, NoGo, OrderId, Pair, PatternFile, PatternId, Place, Placed,
    SheetHours, SpruePoint, Tier, TreeId, Weighing, WorkStep,
};

use super::world::{World, draw, extents, grams, line, said};

struct Row {
    place: Place,
    field: &'static str,
    breaks: fn(&mut World),
}

const FLASK: Place = Place::Flask(FlaskId(1));
const TREE: Place = Place::Tree(TreeId(1));
const PATTERN: Place = Place::Pattern(PatternId(1));
const LINE: Place = Place::Line(LineId(1));
const MELT: Place = Place::Melt(MeltId(1));

const fn row(place: Place, field: &'static str, breaks: fn(&mut World)) -> Row {
    Row { place, field, breaks }
}

fn number(value: f64) -> pourbook::quantity::Finite {
    said(value).unwrap()
}

fn sheet(from_c: f64, to_c: f64, minutes: f64) -> SheetHours {
    SheetHours { from_c: number(from_c), to_c: number(to_c), minutes: number(minutes) }
}

fn log(points: &[(f64, f64)]) -> KilnReadings {
    KilnReadings { points: points.iter().map(|(minutes, c)| (number(*minutes), number(*c))).collect(), ..KilnReadings::default() }
}

fn noted(world: &mut World, note: impl FnOnce(&mut PatternFile)) {
    let mut file = PatternFile::default();
    note(&mut file);
    world.pattern().file = Some(file);
}

fn kept(world: &mut World, change: impl FnOnce(&mut KeptMeasures)) {
    let mut kept = KeptMeasures::default();
    change(&mut kept);
    noted(world, |file| file.kept = Some(kept));
}

fn no_go(world: &mut World, at: [f64; 3], radius: f64) {
    let place = NoGo { at: Some(at.map(|part| said(part).unwrap())), radius: said(radius), ..NoGo::default() };
    noted(world, |file| file.no_go.push(place));
}

fn placed(world: &mut World, placed: Placed) {
    world.tree().placed = vec![Placed { line: LineId(1), number: 1, ..placed }];
}

fn sprue(world: &mut World, point: SpruePoint) {
    noted(world, |file| file.sprue = Some(point));
}

const ROWS: &[Row] = &[
    row(PATTERN, "weighed", |w| w.pattern().weighed = Some(Weighing::Net(grams("-0.8")))),
    row(PATTERN, "weighed", |w| w.pattern().weighed = Some(Weighing::Net(grams("0")))),
    row(PATTERN, "weighed", |w| w.pattern().weighed = Some(Weighing::Net(grams("99999999")))),
    row(TREE, "weighed", |w| w.tree().weighed[1].weight = Some(Weighing::Net(grams("-2.4")))),
    row(TREE, "weighed", |w| w.tree().weighed[1].weight = Some(Weighing::Gross { weight: grams("5"), tare: Some(grams("6")) })),
    row(TREE, "weighed", |w| w.tree().weighed[1].weight = Some(Weighing::Gross { weight: grams("5"), tare: Some(grams("-6")) })),
    row(MELT, "charge.grams", |w| w.melt().charge.push(draw("S-1", "-50"))),
    row(MELT, "target_permille", |w| w.melt().target_permille = said(1001.0)),
    row(FLASK, "reserve", |w| w.flask().reserve = Some(grams("-1"))),
    row(FLASK, "button.least", |w| w.flask().button.least = Some(grams("-1"))),
    row(FLASK, "button.share", |w| w.flask().button.share = said(11.0)),
    row(FLASK, "vacuum_kpa", |w| w.flask().vacuum_kpa = said(-85.0)),
    row(FLASK, "spin.rpm", |w| w.flask().spin.rpm = said(0.0)),
    row(FLASK, "spin.metal_mm", |w| w.flask().spin.metal_mm = said(-120.0)),
    row(FLASK, "spin.pattern_mm", |w| w.flask().spin.pattern_mm = said(1e6)),
    row(FLASK, "spin.loaded", |w| w.flask().spin.loaded = Some(grams("0"))),
    row(FLASK, "spin.counterweight", |w| w.flask().spin.counterweight = Some(grams("-1"))),
    row(FLASK, "ratio", |w| w.flask().ratio = said(40.0)),
    row(FLASK, "melt_loss", |w| w.flask().melt_loss = said(1.0)),
    row(FLASK, "spill_share", |w| w.flask().spill_share = said(-0.1)),
    row(FLASK, "collar_mm", |w| w.flask().collar_mm = said(-20.0)),
    row(FLASK, "bowl_cm3", |w| w.flask().bowl_cm3 = said(0.0)),
    row(FLASK, "water_c", |w| w.flask().water_c = said(-5.0)),
    row(FLASK, "metal_c", |w| w.flask().metal_c = said(9650.0)),
    row(FLASK, "mould_c", |w| w.flask().mould_c = said(-300.0)),
    row(FLASK, "tree", |w| w.flask().tree = Some(TreeId(9))),
    row(FLASK, "burnout", |w| w.flask().burnout = Some(BurnoutId(9))),
    row(FLASK, "melt", |w| w.flask().melt = Some(MeltId(9))),
    row(LINE, "pattern", |w| w.line().pattern = Some(PatternId(9))),
    row(LINE, "mark_permille", |w| w.line().mark_permille = said(9250.0)),
    row(LINE, "band_mm", |w| w.line().band_mm = said(0.0)),
    row(LINE, "comfort_mm", |w| w.line().comfort_mm = said(-0.3)),
    row(LINE, "finishing_opens_mm", |w| w.line().finishing_opens_mm = said(19.0)),
    row(LINE, "finishing_takes_mm", |w| w.line().finishing_takes_mm = said(-0.1)),
    row(LINE, "finished.x_mm", |w| w.line().finished.x_mm = said(0.0)),
    row(LINE, "finished.y_mm", |w| w.line().finished.y_mm = said(-4.0)),
    row(LINE, "finished.z_mm", |w| w.line().finished.z_mm = said(1e6)),
    row(PATTERN, "file.bore_mm", |w| w.pattern().file = Some(PatternFile { bore_mm: said(0.1), ..PatternFile::default() })),
    row(PATTERN, "file.kept.size", |w| kept(w, |kept| kept.size = Some([said(1.0), said(-1.0), said(1.0)].map(Option::unwrap)))),
    row(PATTERN, "file.kept.area", |w| kept(w, |kept| kept.area = said(1e15))),
    row(PATTERN, "file.kept.volume", |w| kept(w, |kept| kept.volume = said(-1.0))),
    row(PATTERN, "file.kept.fills", |w| kept(w, |kept| kept.fills = said(-1.0))),
    row(PATTERN, "file.kept.void", |w| kept(w, |kept| kept.void = said(-1.0))),
    row(PATTERN, "file.kept.inner", |w| kept(w, |kept| kept.inner = said(-1.0))),
    row(PATTERN, "file.kept.walls", |w| kept(w, |kept| kept.walls = Some([said(1e8); 3].map(Option::unwrap)))),
    row(PATTERN, "file.no_go.at", |w| no_go(w, [1e9, 0.0, 0.0], 1.0)),
    row(PATTERN, "file.no_go.radius", |w| no_go(w, [0.0; 3], -1.0)),
    row(PATTERN, "file.sprue.ball", |w| sprue(w, SpruePoint { ball: said(-1.0), ..SpruePoint::default() })),
    row(PATTERN, "file.sprue.modulus", |w| sprue(w, SpruePoint { modulus: said(1e9), ..SpruePoint::default() })),
    row(PATTERN, "file.sprue.at", |w| sprue(w, SpruePoint { at: Some([said(-1e9); 3].map(Option::unwrap)), ..SpruePoint::default() })),
    row(PATTERN, "pair.with", |w| w.pattern().pair = Some(Pair { with: PatternId(9), ..Pair::default() })),
    row(PATTERN, "pair.with", |w| w.pattern().pair = Some(Pair { with: PatternId(1), ..Pair::default() })),
    row(LINE, "quantity", |w| w.line().quantity = 0),
    row(LINE, "quantity", |w| w.line().quantity = u32::MAX),
    row(LINE, "exceptions", |w| {
        w.line().exceptions.insert(5, Default::default());
    }),
    row(TREE, "pieces", |w| w.tree().pieces.push(Hung { line: LineId(9), ..Hung::default() })),
    row(TREE, "pieces.numbers", |w| w.tree().pieces[0].numbers = [4, 5].into()),
    row(TREE, "pieces.sprue", |w| w.tree().pieces[0].sprue = Some(0)),
    row(TREE, "placed", |w| w.tree().placed.push(Placed { line: LineId(9), number: 1, ..Placed::default() })),
    row(TREE, "placed", |w| w.tree().placed.push(Placed { line: LineId(1), number: 4000, ..Placed::default() })),
    row(TREE, "placed", |w| w.tree().placed = vec![Placed { line: LineId(1), number: 1, ..Placed::default() }; 2]),
    row(TREE, "placed.tier", |w| placed(w, Placed { tier: Some(0), ..Placed::default() })),
    row(TREE, "placed.sprue", |w| placed(w, Placed { sprue: Some(0), ..Placed::default() })),
    row(TREE, "placed.height_mm", |w| placed(w, Placed { height_mm: said(-1.0), ..Placed::default() })),
    row(TREE, "placed.around_deg", |w| placed(w, Placed { around_deg: said(999.0), ..Placed::default() })),
    row(TREE, "placed.turn_deg", |w| placed(w, Placed { turn_deg: said(-999.0), ..Placed::default() })),
    row(TREE, "tiers", |w| w.tree().tiers = vec![Tier::default(); 1001]),
    row(TREE, "tiers.height_mm", |w| w.tree().tiers = vec![Tier { height_mm: said(1e9) }]),
    row(TREE, "envelope.height_mm", |w| w.tree().envelope.as_mut().unwrap().height_mm = said(-70.0)),
    row(PATTERN, "across", |w| w.pattern().extents_mm = Some(extents(10.0, -1.0, 4.0))),
    row(PATTERN, "thinnest_mm", |w| w.pattern().thinnest_mm = said(1e9)),
    row(Place::Burnout(BurnoutId(1)), "start_c", |w| w.burnout().start_c = said(1e300)),
    row(Place::Burnout(BurnoutId(1)), "dewax_min", |w| w.burnout().dewax_min = said(-60.0)),
    row(Place::Burnout(BurnoutId(1)), "sheet.from_c", |w| w.burnout().sheet = vec![sheet(-300.0, 700.0, 60.0)]),
    row(Place::Burnout(BurnoutId(1)), "sheet.to_c", |w| w.burnout().sheet = vec![sheet(700.0, 7000.0, 60.0)]),
    row(Place::Burnout(BurnoutId(1)), "sheet.minutes", |w| w.burnout().sheet = vec![sheet(700.0, 1000.0, -60.0)]),
    row(Place::Burnout(BurnoutId(1)), "step_minutes", |w| {
        w.burnout().step_minutes.insert(WorkStep::Tree, number(-1.0));
    }),
    row(Place::Burnout(BurnoutId(1)), "log.points", |w| w.burnout().log = Some(log(&[(0.0, 20.0), (10.0, 40.0), (5.0, 60.0)]))),
    row(Place::Burnout(BurnoutId(1)), "log.points", |w| w.burnout().log = Some(log(&[(0.0, 20.0), (10.0, 4000.0)]))),
    row(FLASK, "before_dewax", |w| w.flask().before_dewax = Some(grams("-2"))),
    row(FLASK, "after_dewax", |w| w.flask().after_dewax = Some(grams("0"))),
    row(FLASK, "floor_mm", |w| w.flask().floor_mm = Some([number(10.0), number(-1.0)])),
    row(Place::Job, "site.barometer_kpa", |w| w.job.site.barometer_kpa = said(29.9)),
    row(Place::Job, "site.altitude_m", |w| w.job.site.altitude_m = said(1e6)),
    // Given twice, or not at all.
    row(LINE, "id", |w| w.job.orders[0].lines.push(line(1, "again", 1, "silver-925", 1))),
    row(Place::Line(LineId(0)), "id", |w| w.job.orders[0].lines.push(Line { quantity: 1, ..Line::default() })),
    row(FLASK, "id", |w| {
        let again = w.job.flasks[0].clone();
        w.job.flasks.push(again);
    }),
    row(TREE, "id", |w| {
        let again = w.job.trees[0].clone();
        w.job.trees.push(again);
    }),
    row(PATTERN, "id", |w| {
        let again = w.job.patterns[0].clone();
        w.job.patterns.push(again);
    }),
    row(Place::Order(OrderId(0)), "id", |w| w.job.orders.push(Default::default())),
];

#[test]
fn each_fault_is_named_with_place_and_field() {
    for (index, Row { place, field, breaks }) in ROWS.iter().enumerate() {
        let broken = World::sound().with(breaks);
        let found = faults(&broken.job);
        assert!(found.iter().any(|fault| fault.place == *place && fault.field == *field), "row {index}, {field}: {found:?}");
        assert!(found.iter().all(|fault| !fault.to_string().is_empty()));
        let (mended, _) = mend(&broken.job);
        assert!(faults(&mended).is_empty(), "row {index}, {field}: {:?}", faults(&mended));
    }
}

#[test]
fn everything_else_still_computes() {
    for (index, Row { field, breaks, .. }) in ROWS.iter().enumerate() {
        let broken = World::sound().with(breaks);
        let mended = World { job: mend(&broken.job).0, ..broken };
        let outcome = mended.recompute();
        // Powder rests on flask and tree; it must stand wherever the fault was elsewhere.
        let mix = outcome.flask().mix;
        let elsewhere = !matches!(*field, "tree" | "weighed" | "pieces");
        if elsewhere {
            assert!(outcome.book.number(mix.powder).is_some(), "row {index}, {field}: {:?}", outcome.roots(mix.powder));
        }
        assert!(outcome.book.number(mix.flask_volume).is_some());
    }
}

#[test]
fn a_sound_job_has_no_faults_and_is_left_alone() {
    for world in [World::empty(), World::sound(), World::full()] {
        let (mended, found) = mend(&world.job);
        assert_eq!(found, Vec::new());
        assert_eq!(mended, world.job);
    }
}

#[test]
fn nought_is_an_answer_where_it_means_none() {
    let world = World::sound().with(|w| {
        w.flask().reserve = Some(grams("0"));
        w.flask().button.least = Some(grams("0"));
        w.flask().collar_mm = said(0.0);
        w.flask().melt_loss = said(0.0);
        w.tree().weighed[0].weight = Some(Weighing::Gross { weight: grams("3.2"), tare: Some(grams("0")) });
    });
    assert_eq!(faults(&world.job), Vec::new());
}

#[test]
fn a_piece_that_is_not_there_never_becomes_all_pieces() {
    let (mended, found) = mend(&World::sound().with(|w| w.tree().pieces[0].numbers = [9].into()).job);
    assert_eq!(found[0].what, Wrong::NoSuchPiece(9));
    assert!(mended.trees[0].pieces.is_empty(), "{:?}", mended.trees[0].pieces);
}

#[test]
fn the_first_of_two_stays() {
    let (mended, found) = mend(
        &World::sound()
            .with(|w| {
                let again = pourbook::job::Flask { scratch: "second".to_owned(), ..w.job.flasks[0].clone() };
                w.job.flasks.push(again);
            })
            .job,
    );
    assert_eq!(found[0].what, Wrong::Twice(1));
    assert_eq!(mended.flasks.len(), 1);
    assert!(mended.flasks[0].scratch.is_empty());
}

/// A clock that ran for a quote which is left out goes with it, in one go.
#[test]
fn a_step_timed_for_a_quote_that_goes_is_told_with_it() {
    use pourbook::job::{BenchStep, Entry, Event, Quote, QuoteId, RecordId};
    let mut job = World::sound().job;
    job.quotes.push(Quote { id: QuoteId(5), orders: vec![OrderId(99)], ..Quote::default() });
    let of = Place::Quote(QuoteId(5));
    let id = RecordId(job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1);
    job.record.push(Entry { id, event: Event::Timed { step: BenchStep::Weigh, of, seconds: 60 }, ..Entry::default() });
    let (mended, found) = mend(&job);
    assert!(found.iter().any(|fault| fault.place == Place::Record(id) && fault.what == Wrong::Dangling(of)), "{found:?}");
    assert_eq!(faults(&mended), []);
}
