//! The plan of a whole job: sixty pieces in several alloys, sets and pairs, a small shelf, flasks that stand; into the job and computed anew.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use pourbook::calc::batch::{Ask, GroupOf, Kept, Options, Outcome, Places, Row, Unknown, WhyLeft, ask, build, open_pieces, settle};
use pourbook::calc::plan::{STEPS, check};
use pourbook::calc::{Shelves, Weight};
use pourbook::job::format::{read_job, read_studio};
use pourbook::job::{FlaskStock, Hung, Line, LineId, Order, OrderId, Pair, Pattern, PatternId, PieceId, Weighing};
use pourbook::paper::batch::PlanWords;
use pourbook::paper::words::Words;
use pourbook::quantity::Style;
use pourbook::stock::{Alloy, Crucible, EntryId, Section};
use pourbook::texts::{Language, Texts};

use crate::world::{World, computed_tree, extents, flask, grams, lacks_a_text, line, said, some};

/// A wish with its plan and what that means.
struct Planned {
    ask: Ask,
    outcome: Outcome,
}

fn planned(world: &World, options: &Options) -> Planned {
    let shelves = Shelves::new(&world.job, &world.studio);
    let mut ask = ask(&world.job, &world.studio, &shelves, &world.runs, &world.setting, options);
    let found = settle(&ask.question(), STEPS, &|_| true);
    check(&found.wish, &found.plan).unwrap();
    let outcome = ask.read(&found, &shelves.job);
    every_piece_once(world, &ask, &outcome);
    Planned { ask, outcome }
}

/// Every open piece is in one flask, or left with one reason.
fn every_piece_once(world: &World, ask: &Ask, outcome: &Outcome) {
    let open: BTreeSet<PieceId> =
        open_pieces(&world.job).iter().map(|(_, line, number)| PieceId { line: line.id, number: *number }).collect();
    let placed = outcome.rows.iter().flat_map(|row| &row.pieces).chain(outcome.left.iter().flat_map(|left| &left.pieces));
    let placed: Vec<PieceId> = placed.copied().collect();
    assert_eq!(placed.len(), open.len());
    assert_eq!(placed.into_iter().collect::<BTreeSet<_>>(), open);
    assert_eq!(ask.pieces.len() + ask.unknown.len(), open.len());
}

/// The fair of the sample studio.
fn fair() -> World {
    let read = |name: &str| std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs").join(name)).unwrap();
    let mut world = World::empty();
    world.job = read_job(&read("fair.ron")).unwrap().document;
    world.studio = read_studio(&read("studio.ron")).unwrap().document;
    world
}

fn row_of(outcome: &Outcome, line: u32, number: u32) -> Option<&Row> {
    let piece = PieceId { line: LineId(line), number };
    outcome.rows.iter().find(|row| row.pieces.contains(&piece))
}

/// All pieces of these lines stand in one flask.
fn stand_together(outcome: &Outcome, world: &World, lines: &[u32]) -> bool {
    let of = |line: &&Line| lines.contains(&line.id.0);
    let pieces = world.job.lines().map(|(_, line)| line).filter(of).flat_map(|line| (1..=line.quantity).map(|number| (line.id.0, number)));
    let rows: Vec<Option<Vec<PieceId>>> =
        pieces.map(|(line, number)| row_of(outcome, line, number).map(|row| row.pieces.clone())).collect();
    rows[0].is_some() && rows.iter().all(|row| *row == rows[0])
}

/// How the shelf of a small studio looks.
fn small_shelf(world: &mut World) {
    world.studio.flasks = [("flask-64x76", 2), ("flask-76x102", 3), ("flask-89x102", 3), ("flask-102x152", 3)]
        .map(|(id, count)| FlaskStock { entry: some(id), count: Some(count), ..FlaskStock::default() })
        .into();
}

#[test]
fn sixty_pieces_are_planned_on_a_small_shelf() {
    let mut world = fair();
    small_shelf(&mut world);
    let Planned { ask, outcome } = planned(&world, &Options::default());
    assert_eq!((ask.pieces.len(), ask.alloys.len()), (60, 3));
    assert!(outcome.left.is_empty(), "{:?}", outcome.left);
    assert!(outcome.proven, "{} flasks, at least {}", outcome.rows.len(), outcome.least_flasks);
    let mut used: BTreeMap<&EntryId, u32> = BTreeMap::new();
    outcome.rows.iter().for_each(|row| *used.entry(&row.vessel).or_default() += 1);
    for stock in &world.studio.flasks {
        assert!(used.get(stock.entry.as_ref().unwrap()).copied().unwrap_or(0) <= stock.count.unwrap());
    }
    // The tide set, the haws, the cuffs, the string of sloes.
    for set in [vec![2, 3, 4], vec![6], vec![13], vec![14], vec![11]] {
        assert!(stand_together(&outcome, &world, &set), "{set:?}");
    }
    // A left leaf hangs with a right one.
    for number in 1..=4 {
        assert_eq!(row_of(&outcome, 8, number).unwrap().pieces, row_of(&outcome, 9, number).unwrap().pieces, "pair {number}");
    }
    let alloy_of: BTreeMap<LineId, EntryId> = world.job.lines().map(|(_, line)| (line.id, line.alloy.clone().unwrap())).collect();
    for row in &outcome.rows {
        assert!(row.pieces.iter().all(|piece| alloy_of[&piece.line] == row.alloy));
        assert!(!row.mould_c.is_empty() && row.fill.unwrap() <= 1.0);
    }
}

#[test]
fn a_plan_goes_into_the_job_and_nothing_else_changes() {
    let mut world = fair();
    small_shelf(&mut world);
    let Planned { ask, outcome } = planned(&world, &Options::default());
    let before = world.job.clone();
    let shelves = Shelves::new(&world.job, &world.studio);
    build(&mut world.job, &outcome.rows, &ask.template(&before, &shelves.job));
    let mut without = world.job.clone();
    without.trees.clear();
    without.flasks.clear();
    assert_eq!(without, before);
    assert_eq!((world.job.trees.len(), world.job.flasks.len()), (outcome.rows.len(), outcome.rows.len()));
    assert!(pourbook::job::check::faults(&world.job).is_empty());
    assert!(open_pieces(&world.job).is_empty());
    let computed = world.recompute();
    let raised: Vec<&str> =
        computed.report.findings.iter().filter(|found| found.kind.weight != Weight::Note).map(|found| found.kind.key).collect();
    // Nothing is too wide, too high or too heavy; what a plan cannot know stays to be said.
    let known = ["irreplaceable", "several-mixes", "mix-outruns"];
    assert!(raised.iter().all(|key| known.contains(key)), "{raised:?}");
    let shelf = &shelves.job;
    for (row, figures) in outcome.rows.iter().zip(&computed.report.flasks) {
        let number = |id| computed.book.number(id).unwrap();
        let room = figures.room;
        assert!(number(room.wall.unwrap()) >= number(room.wall_needed.unwrap()), "{row:?}");
        assert!(number(room.top.unwrap()) >= number(room.top_needed.unwrap()), "{row:?}");
        // The plan's metal is what hangs, and at most the main sprue's shortening more.
        let tree = number(figures.metal.tree);
        assert!(tree <= row.metal_g + 1e-6 && tree > 0.75 * row.metal_g, "{tree} of {}", row.metal_g);
        let crucible = shelf.get::<Crucible>(row.crucible.as_ref().unwrap().as_str()).unwrap();
        let alloy = shelf.get::<Alloy>(row.alloy.as_str()).unwrap();
        let liquid = alloy.thermal.as_ref().unwrap().liquid_density_g_cm3.value;
        assert!(number(figures.metal.on_balance) / liquid <= crucible.usable_cm3.value);
        let mould = number(figures.pour.mould);
        assert!((f64::from(*row.mould_c.start())..=f64::from(*row.mould_c.end())).contains(&mould), "{mould} of {:?}", row.mould_c);
    }
    let scratches: BTreeSet<&str> = world.job.flasks.iter().map(|flask| flask.scratch.as_str()).collect();
    assert_eq!(scratches.len(), world.job.flasks.len());
    assert!(world.job.flasks.iter().all(|flask| flask.burnout == ask.load && flask.burnout.is_some() && flask.powder.is_some()));
    // Asked again, nothing is open.
    let again = planned(&world, &Options::default());
    assert!(again.outcome.rows.is_empty() && again.outcome.left.is_empty());
}

#[test]
fn a_search_that_is_stopped_keeps_the_best() {
    let world = fair();
    let shelves = Shelves::new(&world.job, &world.studio);
    let mut ask = ask(&world.job, &world.studio, &shelves, &world.runs, &world.setting, &Options::default());
    let found = settle(&ask.question(), STEPS, &|_| false);
    check(&found.wish, &found.plan).unwrap();
    let outcome = ask.read(&found, &shelves.job);
    assert!(outcome.stopped && !outcome.rows.is_empty());
    every_piece_once(&world, &ask, &outcome);
}

#[test]
fn the_heaviest_tree_by_hand() {
    let mut world = fair();
    world.studio.balance_step = None;
    let crucible = EntryId::new("crucible-graphite-small").unwrap();
    let Planned { ask, .. } = planned(&world, &Options { crucible: Some(crucible.clone()), ..Options::default() });
    let shelves = Shelves::new(&world.job, &world.studio);
    let silver = shelves.job.get::<Alloy>("silver-925").unwrap();
    let usable = shelves.job.get::<Crucible>(crucible.as_str()).unwrap().usable_cm3.value;
    // A tenth of the tree is more than half a troy ounce here; 0.1 g of the balance may be rounded up.
    let charge = usable * silver.thermal.as_ref().unwrap().liquid_density_g_cm3.value - 0.1;
    let tree = charge * (1.0 - silver.melt_loss.value) / 1.1;
    let of = ask.alloys.iter().find(|alloy| alloy.id.as_str() == "silver-925").unwrap();
    assert!((of.heaviest_g.unwrap() - tree).abs() < 1e-9, "{of:?}");
    // Bronze stays out of a crucible for precious metal only where it says so; this one takes copper too.
    assert!(ask.alloys.iter().all(|alloy| alloy.crucible == Some(crucible.clone())));
    // A limpet ring: 0.46 g of wax at its density, a feed of 3 × 8 mm, welds of a twentieth.
    let wax = shelves.job.get::<pourbook::stock::PatternMaterial>("wax-injection").unwrap().density_g_cm3.value;
    let volume = 0.46 / wax + std::f64::consts::FRAC_PI_4 * 9.0 * 8.0 / 1000.0;
    let metal = (1000.0 * volume * 1.05 * silver.density_g_cm3.value).ceil();
    assert_eq!(ask.pieces[0].metal_mg, metal as u64);
}

/// Bands of one wax pattern, nothing hung.
fn bands(quantity: u32) -> World {
    World::sound().with(|w| {
        w.job.trees.clear();
        w.job.flasks.clear();
        w.job.melts.clear();
        w.job.orders[0].lines[0].quantity = quantity;
    })
}

fn words_of(world: &World, outcome: &Outcome, language: Language) -> Vec<String> {
    let shelves = Shelves::new(&world.job, &world.studio);
    let words = Words { texts: Texts::of(language), style: &Style::METRIC, zone: &world.setting.zone, currency: "" };
    let words = PlanWords { job: &world.job, shelf: &shelves.job, words };
    outcome.left.iter().map(|left| words.left(left)).collect()
}

/// The one reason a plan gives, in words.
fn one_reason(world: &World, options: &Options, wants: fn(&WhyLeft) -> bool, says: &[&str]) {
    let Planned { outcome, .. } = planned(world, options);
    let found: Vec<_> = outcome.left.iter().filter(|left| wants(&left.why)).collect();
    assert!(!found.is_empty(), "{:?}", outcome.left);
    for language in Language::ALL {
        let words = words_of(world, &outcome, language);
        assert!(words.iter().all(|words| !lacks_a_text(words)), "{words:?}");
    }
    let words = words_of(world, &outcome, Language::English).join("\n");
    says.iter().for_each(|part| assert!(words.contains(part), "“{part}” in: {words}"));
}

#[test]
fn what_is_not_known_of_a_piece_is_said() {
    let usual = Options::default();
    let unknown = |why: Unknown| move |left: &WhyLeft| *left == WhyLeft::Unknown(why.clone());
    let of = |change: fn(&mut World)| bands(4).with(change);
    let cases: [(World, Unknown); 5] = [
        (of(|w| w.line().alloy = None), Unknown::NoAlloy),
        (of(|w| w.line().alloy = some("unobtainium")), Unknown::AlloyNotOnShelf(EntryId::new("unobtainium").unwrap())),
        (of(|w| w.line().pattern = None), Unknown::NoPattern),
        (of(|w| w.pattern().weighed = None), Unknown::NoVolume),
        (of(|w| w.pattern().extents_mm = None), Unknown::NoSize),
    ];
    for (world, why) in cases {
        let Planned { outcome, .. } = planned(&world, &usual);
        assert_eq!(outcome.left.len(), 4);
        assert!(outcome.left.iter().all(|left| unknown(why.clone())(&left.why)), "{:?}", outcome.left);
        for language in Language::ALL {
            assert!(words_of(&world, &outcome, language).iter().all(|words| words.contains("band") && !lacks_a_text(words)));
        }
    }
    let wrong = Options { crucible: some("crucible-zirconia-spin"), ..usual };
    one_reason(&bands(1), &wrong, |why| matches!(why, WhyLeft::Unknown(Unknown::CrucibleWrong { .. })), &["Zirconia", "Sterling"]);
}

#[test]
fn impossible_wishes_are_told_with_their_figures() {
    let usual = Options::default();
    // A plate of 160 mm reaches to (8 + 160)·sin 45° + 5·cos 45° + 4 and 6 mm more: far over six inches.
    let large = bands(1).with(|w| w.pattern().extents_mm = Some(extents(160.0, 10.0, 10.0)));
    one_reason(&large, &usual, |why| matches!(why, WhyLeft::TooLarge { .. }), &["Ø 264.9", "152×203"]);
    // Four kilograms of wax to the crucible of three kilograms of bronze.
    let heavy = bands(1).with(|w| w.pattern().weighed = Some(Weighing::Net(grams("400"))));
    one_reason(&heavy, &usual, |why| matches!(why, WhyLeft::TooMuchMetal { .. }), &["Clay-graphite", "g of metal"]);
    let crowd = bands(400).with(|w| w.line().set = "one necklace".to_owned());
    one_reason(&crowd, &usual, |why| matches!(why, WhyLeft::TooMany { share, .. } if *share > 1.0), &["these 400", "%", "×203"]);
    let apart = bands(2).with(|w| {
        w.line().set = "ring and lace".to_owned();
        w.job.patterns.push(Pattern { id: PatternId(2), section: Some(Section::Filigree), ..w.job.patterns[0].clone() });
        w.job.patterns[0].section = Some(Section::Heavy);
        w.job.orders[0].lines.push(Line { set: "ring and lace".to_owned(), ..line(2, "lace", 1, "silver-925", 2) });
    });
    // Filigree from 621 °C, heavy pieces up to 482 °C.
    one_reason(&apart, &usual, |why| matches!(why, WhyLeft::MouldsApart { .. }), &["621", "482"]);
    let none =
        bands(1).with(|w| w.studio.flasks = vec![FlaskStock { entry: some("flask-89x102"), count: Some(0), ..FlaskStock::default() }]);
    one_reason(&none, &usual, |why| *why == WhyLeft::NoneFree, &["in use"]);
    let few =
        bands(60).with(|w| w.studio.flasks = vec![FlaskStock { entry: some("flask-89x102"), count: Some(1), ..FlaskStock::default() }]);
    one_reason(&few, &usual, |why| matches!(why, WhyLeft::NoRoom { flasks: 1, .. }), &["beside the one flask"]);
}

#[test]
fn a_full_kiln_leaves_what_is_due_last() {
    let mut world = bands(3);
    let later = Order {
        id: OrderId(2),
        client: "B".to_owned(),
        due: Some(jiff::civil::date(2026, 3, 9)),
        lines: vec![line(2, "other alloy", 2, "gold-14k-yellow", 1)],
        ..Order::default()
    };
    world.job.orders.push(later);
    let bench = Options { kiln: Places::Of(EntryId::new("kiln-bench").unwrap()), ..Options::default() };
    assert!(planned(&world, &bench).outcome.left.is_empty(), "two places, two alloys");
    world.job.orders[0].lines.push(line(3, "third alloy", 1, "bronze-silicon", 1));
    // The gold is due on the ninth, silver and bronze on the twentieth; silver comes before bronze in the job.
    let Planned { outcome, .. } = planned(&world, &bench);
    assert_eq!(outcome.left.len(), 1);
    assert_eq!(outcome.left[0].pieces, [PieceId { line: LineId(3), number: 1 }]);
    one_reason(&world, &bench, |why| matches!(why, WhyLeft::NoRoom { kiln: Some(2), .. }), &["2 places"]);
    assert!(planned(&world, &Options { kiln: Places::NoMatter, ..bench }).outcome.left.is_empty());
}

/// A flask that stands, with two bands on a tree nobody weighed, and more of them open.
fn half_hung(more: u32) -> World {
    World::sound().with(|w| {
        w.job.orders[0].lines[0].quantity = 2 + more;
        let two = Hung { numbers: [1, 2].into(), ..crate::world::hung(1) };
        w.job.trees = vec![computed_tree(1, vec![two])];
        w.job.flasks = vec![flask(1)];
    })
}

#[test]
fn a_flask_that_stands_takes_more_where_it_may() {
    let world = half_hung(3);
    let apart = planned(&world, &Options::default());
    assert_eq!((apart.outcome.rows.len(), apart.outcome.rows[0].flask), (1, None));
    let add = Options { add_to_flasks: true, ..Options::default() };
    let Planned { ask, outcome } = planned(&world, &add);
    assert!(ask.groups.iter().any(|group| matches!(group, GroupOf::Hung(_))));
    assert_eq!(outcome.rows.len(), 1);
    assert_eq!((outcome.rows[0].flask, outcome.rows[0].pieces.len()), (Some(pourbook::job::FlaskId(1)), 3));
    let mut job = world.job.clone();
    let shelves = Shelves::new(&world.job, &world.studio);
    build(&mut job, &outcome.rows, &ask.template(&world.job, &shelves.job));
    assert_eq!((job.trees.len(), job.flasks.len()), (1, 1));
    assert_eq!(job.trees[0].pieces[1].numbers, [3, 4, 5].into());
    assert_eq!(job.trees[0].sprues[0].count, 4 + 3);
    assert!(open_pieces(&job).is_empty());
    // A tree on the scale is finished, and so is one in investment.
    let weighed = world.clone().with(|w| w.tree().weighed = vec![crate::world::weighed("wax-injection", "2.0")]);
    assert_eq!(planned(&weighed, &add).outcome.rows[0].flask, None);
    let invested = world.clone().with(|w| {
        let event = pourbook::job::Event::Invested { flask: pourbook::job::FlaskId(1), plan: Default::default(), done: Default::default() };
        w.job.record.push(pourbook::job::Entry { id: pourbook::job::RecordId(1), event, ..Default::default() });
    });
    assert_eq!(planned(&invested, &add).outcome.rows[0].flask, None);
    // What cannot be made again does not join an experiment.
    let trial = world.with(|w| w.flask().trial = true);
    assert_eq!(planned(&trial, &add).outcome.rows[0].flask, Some(pourbook::job::FlaskId(1)));
    let once = trial.with(|w| w.pattern().irreplaceable = true);
    let found = planned(&once, &add).outcome;
    assert!(found.rows.iter().any(|row| row.flask.is_none() && row.pieces.len() == 3), "{found:?}");
}

#[test]
fn flasks_in_use_are_not_planned_twice() {
    let world = half_hung(2).with(|w| {
        w.studio.flasks = vec![FlaskStock { entry: some("flask-76x102"), count: Some(1), ..FlaskStock::default() }];
    });
    assert!(planned(&world, &Options::default()).outcome.left.iter().all(|left| left.why == WhyLeft::NoneFree));
    let add = Options { add_to_flasks: true, ..Options::default() };
    assert!(planned(&world, &add).outcome.left.is_empty());
    // Its place in the kiln is taken too.
    let bench = world.with(|w| {
        w.studio.flasks.clear();
        w.job.burnouts[0].kiln = some("kiln-bench");
    });
    assert_eq!(planned(&bench, &Options::default()).ask.wish.most_flasks, Some(1));
}

#[test]
fn a_kept_flask_stays_as_it_is() {
    let mut world = fair();
    small_shelf(&mut world);
    let first = planned(&world, &Options::default()).outcome;
    // Two rings by themselves in a flask far too large: nobody would plan that.
    let pieces: Vec<PieceId> = (1..=2).map(|number| PieceId { line: LineId(1), number }).collect();
    let kept = Kept { vessel: EntryId::new("flask-102x152").unwrap(), pieces: pieces.clone() };
    let Planned { outcome, .. } = planned(&world, &Options { kept: vec![kept], ..Options::default() });
    let row = outcome.rows.iter().find(|row| row.kept).unwrap();
    assert_eq!(row.vessel.as_str(), "flask-102x152");
    assert!(pieces.iter().all(|piece| row.pieces.contains(piece)));
    assert!(outcome.rows.len() >= first.rows.len());
    // A whole flask of the plan kept changes nothing.
    let all = first.rows.iter().map(|row| Kept { vessel: row.vessel.clone(), pieces: row.pieces.clone() }).collect();
    let again = planned(&world, &Options { kept: all, ..Options::default() }).outcome;
    let sets = |outcome: &Outcome| outcome.rows.iter().map(|row| row.pieces.clone()).collect::<BTreeSet<_>>();
    assert_eq!(sets(&again), sets(&first));
    // One that does not hold them any more says so.
    let vain =
        Kept { vessel: EntryId::new("flask-64x76").unwrap(), pieces: (1..=8).map(|number| PieceId { line: LineId(1), number }).collect() };
    let found = planned(&world, &Options { kept: vec![vain], ..Options::default() }).outcome;
    assert!(found.left.iter().any(|left| left.why == WhyLeft::KeptInVain), "{:?}", found.left);
}

#[test]
fn what_belongs_together_stands_together() {
    let mut world = bands(3);
    world.line().set = "three".to_owned();
    world.job.orders[0].lines.push(Line { set: "three".to_owned(), ..line(2, "fourth", 1, "silver-925", 1) });
    // Another client's set of the same name is another set, and a set of two alloys is parted by them.
    let other = Line { set: "three".to_owned(), ..line(3, "theirs", 2, "silver-925", 1) };
    world.job.orders.push(Order { id: OrderId(2), lines: vec![other], ..Order::default() });
    world.job.orders[0].lines.push(Line { set: "three".to_owned(), ..line(4, "gold", 1, "gold-14k-yellow", 1) });
    let groups = |world: &World| -> Vec<usize> {
        let asked = planned(world, &Options::default()).ask;
        let size = |group: &GroupOf| if let GroupOf::Open(places) = group { places.len() } else { 0 };
        asked.groups.iter().map(size).collect()
    };
    assert_eq!(groups(&world), [4, 1, 2]);
    let mut pairs = bands(3);
    pairs.job.patterns.push(Pattern { id: PatternId(2), ..pairs.job.patterns[0].clone() });
    pairs.job.patterns[1].pair = Some(Pair { with: PatternId(1), ..Pair::default() });
    pairs.job.orders[0].lines.push(line(2, "right", 2, "silver-925", 2));
    assert_eq!(groups(&pairs), [2, 2, 1]);
}

#[test]
fn the_usual_tree_is_the_studios_or_that_of_the_last_one() {
    let world = half_hung(1);
    let tree = planned(&world, &Options::default()).ask.tree;
    assert_eq!((tree.main_mm, tree.feed_mm, tree.feed_diameter_mm, tree.angle_deg, tree.gap_mm), (8.0, 6.0, 3.0, 45.0, 3.0));
    let own = world.with(|w| {
        w.studio.usual_tree.feed_length_mm = said(12.0);
        w.studio.usual_tree.gap_mm = said(5.0);
    });
    let tree = planned(&own, &Options::default()).ask.tree;
    assert_eq!((tree.main_mm, tree.feed_mm, tree.gap_mm), (8.0, 12.0, 5.0));
}

#[test]
fn a_plan_answers_its_own_wish_alone() {
    let world = fair();
    let first = planned(&world, &Options::default()).ask;
    let asked = first.asked();
    assert!(first.is_like(&asked));
    assert!(planned(&world, &Options::default()).ask.is_like(&asked));
    let other = world.clone().with(|w| w.line().quantity += 1);
    assert!(!planned(&other, &Options::default()).ask.is_like(&asked));
    let heavier = world.with(|w| w.pattern().weighed = Some(Weighing::Net(grams("0.47"))));
    assert!(!planned(&heavier, &Options::default()).ask.is_like(&asked));
}
