//! A plan holds on the bench: what it puts into a flask was arranged there, or it says what was not.

use pourbook::calc::Shelves;
use pourbook::calc::batch::{Ask, Kept, Left, Options, Outcome, Settled, Stands, WhyLeft, ask, settle};
use pourbook::calc::plan::{STEPS, check};
use pourbook::job::{FlaskStock, Hung, LineId, PieceId};
use pourbook::paper::batch::PlanWords;
use pourbook::paper::words::Words;
use pourbook::quantity::Style;
use pourbook::stock::EntryId;
use pourbook::texts::{Language, Texts};

use crate::world::{World, computed_tree, extents, flask, hung, lacks_a_text, some};

fn settled(world: &World, options: &Options, go_on: &dyn Fn(f64) -> bool) -> (Ask, Settled, Outcome) {
    let shelves = Shelves::new(&world.job, &world.studio);
    let mut ask = ask(&world.job, &world.studio, &shelves, &world.runs, &world.setting, options);
    let found = settle(&ask.question(), STEPS, go_on);
    check(&found.wish, &found.plan).unwrap();
    let outcome = ask.read(&found, &shelves.job);
    (ask, found, outcome)
}

/// Pieces of one size, nothing hung.
fn pieces(quantity: u32, [along, across, deep]: [f64; 3]) -> World {
    World::sound().with(|w| {
        w.job.trees.clear();
        w.job.flasks.clear();
        w.job.melts.clear();
        w.job.orders[0].lines[0].quantity = quantity;
        w.pattern().extents_mm = Some(extents(along, across, deep));
    })
}

fn only(world: &mut World, vessel: &str, count: u32) {
    world.studio.flasks = vec![FlaskStock { entry: some(vessel), count: Some(count), ..FlaskStock::default() }];
}

/// How many of them hang in the fullest flask.
fn fullest(outcome: &Outcome) -> usize {
    outcome.rows.iter().map(|row| row.pieces.len()).max().unwrap_or(0)
}

fn in_words(world: &World, say: impl Fn(&PlanWords<'_>) -> Option<String>) -> Vec<String> {
    let shelves = Shelves::new(&world.job, &world.studio);
    let of = |language| {
        let words = Words { texts: Texts::of(language), style: &Style::METRIC, zone: &world.setting.zone, currency: "" };
        say(&PlanWords { job: &world.job, shelf: &shelves.job, words })
    };
    let said: Vec<String> = Language::ALL.into_iter().filter_map(of).collect();
    assert!(said.iter().all(|words| !lacks_a_text(words)), "{said:?}");
    said
}

#[test]
fn large_pieces_get_as_many_flasks_as_they_need() {
    // By shares of a mantle six of these would go on one tree; their corners run into the main sprue at half a right angle.
    let mut world = pieces(6, [26.0, 24.0, 14.0]);
    only(&mut world, "flask-102x152", 6);
    let (ask, found, outcome) = settled(&world, &Options::default(), &|_| true);
    assert!(outcome.left.is_empty(), "{:?}", outcome.left);
    assert!(outcome.rows.iter().all(|row| matches!(&row.stands, Stands::All(tree) if tree.hangs.len() == row.pieces.len())));
    let counted = |wish: &pourbook::calc::plan::Wish| wish.sizes[0].places / wish.groups[0].places[0];
    assert!(fullest(&outcome) <= counted(&found.wish) as usize);
    assert_ne!(counted(&found.wish), counted(&ask.wish), "what was counted on trees is not what was estimated");
    assert!(in_words(&world, |words| words.arranged(&outcome)).len() == 2);
    // Small ones hang many to a flask, so that it is not the flask that parts them.
    let mut small = pieces(6, [8.0, 6.0, 4.0]);
    only(&mut small, "flask-102x152", 6);
    assert_eq!(fullest(&settled(&small, &Options::default(), &|_| true).2), 6);
}

#[test]
fn sprues_stand_straighter_or_over_the_main_sprue_where_nothing_hangs_as_usual() {
    // 40 mm across at 45°: the corner comes to the main sprue's surface. Straight out it keeps 8 mm away.
    let mut straight = pieces(2, [14.0, 40.0, 14.0]);
    only(&mut straight, "flask-102x152", 2);
    let (_, _, outcome) = settled(&straight, &Options::default(), &|_| true);
    let angles = |outcome: &Outcome| match &outcome.rows[0].stands {
        Stands::All(tree) => tree.hangs.iter().map(|(_, hang)| hang.angle_deg).collect::<Vec<_>>(),
        other => panic!("{other:?}"),
    };
    assert!(angles(&outcome).iter().all(|angle| *angle > 45.0), "{:?}", angles(&outcome));
    // As wide as the flask: it goes over the end of a short main sprue.
    let mut high = pieces(1, [52.0, 40.0, 38.0]);
    only(&mut high, "flask-102x152", 1);
    let (_, _, outcome) = settled(&high, &Options::default(), &|_| true);
    assert!(outcome.left.is_empty(), "{:?}", outcome.left);
    assert!(outcome.rows[0].main_mm < 60.0, "{}", outcome.rows[0].main_mm);
}

#[test]
fn what_was_not_found_is_said() {
    let mut world = pieces(6, [26.0, 24.0, 14.0]);
    only(&mut world, "flask-102x152", 6);
    // Stopped before anything was looked at.
    let (_, _, outcome) = settled(&world, &Options::default(), &|_| false);
    assert!(outcome.stopped && outcome.rows.iter().all(|row| row.stands == Stands::NotSeen));
    assert!(in_words(&world, |words| words.arranged(&outcome)).is_empty());
    assert_eq!(in_words(&world, |words| words.stands(&outcome.rows[0])).len(), 2);
    let world = world.with(|w| w.job.orders[0].lines[0].quantity = 24);
    // Too many kept together by hand: they are let go with a reason, or the row says how many hang.
    let kept = Kept {
        vessel: EntryId::new("flask-102x152").unwrap(),
        pieces: (1..=24).map(|number| PieceId { line: LineId(1), number }).collect(),
    };
    let (_, _, outcome) = settled(&world, &Options { kept: vec![kept], ..Options::default() }, &|_| true);
    let short = outcome.rows.iter().any(|row| matches!(row.stands, Stands::Short { most, of } if most < of));
    assert!(short || outcome.left.iter().any(|left| left.why == WhyLeft::KeptInVain), "{outcome:?}");
    let left = Left { pieces: vec![PieceId { line: LineId(1), number: 1 }], why: WhyLeft::NoPlace { largest: "89×102".to_owned() } };
    assert!(in_words(&world, |words| Some(words.left(&left))).iter().all(|said| said.contains("89×102") && said.contains("band")));
}

#[test]
fn a_tree_that_stands_is_not_said_to_be_arranged() {
    let world = World::sound().with(|w| {
        w.job.orders[0].lines[0].quantity = 4;
        w.job.trees = vec![computed_tree(1, vec![Hung { numbers: [1, 2].into(), ..hung(1) }])];
        w.job.flasks = vec![flask(1)];
    });
    let (_, _, outcome) = settled(&world, &Options { add_to_flasks: true, ..Options::default() }, &|_| true);
    assert!(outcome.rows[0].flask.is_some() && outcome.rows[0].pieces.len() == 2, "{outcome:?}");
    assert!(outcome.rows[0].stands == Stands::NotSeen && in_words(&world, |words| words.arranged(&outcome)).is_empty());
}

#[test]
fn the_same_question_has_the_same_answer_and_progress_never_falls() {
    let mut world = pieces(30, [22.0, 20.0, 6.0]);
    only(&mut world, "flask-76x102", 9);
    let far = std::cell::RefCell::new(Vec::new());
    let (ask, found, _) = settled(&world, &Options::default(), &|share| {
        far.borrow_mut().push(share);
        true
    });
    assert_eq!(settle(&ask.question(), STEPS, &|_| true), found);
    let far = far.into_inner();
    assert!(far.windows(2).all(|two| two[0] <= two[1]) && far.iter().all(|share| (0.0..=1.0).contains(share)));
    assert!(far.last().is_some_and(|share| *share > 0.4), "arranging is told too");
}
