//! What a job says of its trees, and how far they reach then, each worked by hand.

use std::sync::Arc;

use pourbook::calc::{PatternMeasure, PatternRun, PatternShape};
use pourbook::job::{LineId, MainSprue, PatternFile, PatternId, Placed, SpruePoint, SprueRun, Tier};

use pourbook::stock::{Base, Shelf};

use super::world::{Outcome, World, measure, number, said};

/// Four bands, 22 mm along their sprue, 22 across and 4 deep, on a trunk of 8 × 40 and straight sprues of 6 mm.
fn straight() -> World {
    let mut world = World::sound();
    let tree = world.tree();
    tree.envelope = None;
    tree.main_sprue = Some(MainSprue { diameter_mm: said(8.0), length_mm: said(40.0), ..MainSprue::default() });
    tree.sprues = vec![SprueRun { count: 4, diameter_mm: said(3.0), length_mm: said(6.0), angle_deg: said(90.0), ..SprueRun::default() }];
    world
}

fn dome() -> f64 {
    Shelf::shipped().get::<Base>("base-76").unwrap().dome_height_mm.value
}

fn sizes(outcome: &Outcome) -> [f64; 2] {
    let outline = &outcome.report.trees[0].outline;
    [outline.diameter, outline.height].map(|figure| outcome.number(figure.unwrap()))
}

fn near(is: f64, wanted: f64) {
    assert!((is - wanted).abs() < 1e-9, "{is} for {wanted}");
}

#[test]
fn a_tier_says_how_high_a_piece_is_joined() {
    // Where nobody said a tier, the highest piece is joined at the main sprue's end.
    let outcome = straight().recompute();
    let [diameter, height] = sizes(&outcome);
    near(diameter, 2.0 * (4.0_f64 + 6.0 + 22.0).hypot(2.0));
    near(height, dome() + 40.0 + 11.0);
    // On the first of two tiers that are spread evenly it is joined half way up.
    let outcome = straight().with(|w| (w.tree().pieces[0].tier, w.tree().tiers) = (Some(1), vec![Tier::default(); 2])).recompute();
    near(sizes(&outcome)[1], dome() + 40.0);
    // Its own height counts before that; the trunk still stands as high as it is.
    let tiers = vec![Tier { height_mm: said(30.5) }];
    let outcome = straight().with(|w| (w.tree().pieces[0].tier, w.tree().tiers) = (Some(1), tiers)).recompute();
    near(sizes(&outcome)[1], dome() + 30.5 + 11.0);
}

#[test]
fn a_run_that_was_said_rules_alone() {
    let long = |w: &mut World| {
        let run = SprueRun { length_mm: said(20.0), ..w.tree().sprues[0].clone() };
        w.tree().sprues.push(run);
    };
    near(sizes(&straight().with(long).recompute())[0], 2.0 * (4.0_f64 + 20.0 + 22.0).hypot(2.0));
    let said_short = straight().with(long).with(|w| w.tree().pieces[0].sprue = Some(1)).recompute();
    near(sizes(&said_short)[0], 2.0 * (4.0_f64 + 6.0 + 22.0).hypot(2.0));
}

#[test]
fn a_turned_piece_reaches_as_it_is_turned() {
    // A quarter turn puts the 22 mm around the trunk and the 4 mm upright.
    let turned = |w: &mut World| {
        let placed = |number| Placed { line: LineId(1), number, turn_deg: said(90.0), ..Placed::default() };
        w.tree().placed = (1..=4).map(placed).collect();
    };
    let outcome = straight().with(turned).recompute();
    near(sizes(&outcome)[0], 2.0 * (4.0_f64 + 6.0 + 22.0).hypot(11.0));
    near(sizes(&outcome)[1], dome() + 40.0 + 2.0);
}

/// A cone of six sides in a file: its foot, 8 mm wide, lies in z = 0, its tip at 18; x, y and z are kept from its own corners.
fn cone() -> PatternMeasure {
    let rim = |n: u8| {
        let (sin, cos) = (f64::from(n) * std::f64::consts::FRAC_PI_3).sin_cos();
        [4.0 * cos, 4.0 * sin, 0.0]
    };
    let around = (0..6).map(rim).chain([[0.0, 0.0, 18.0]]).collect();
    let shape = PatternShape { around, triangles: Vec::new() };
    PatternMeasure { shape: Some(Arc::new(shape)), ..measure(842.0, 900.0, [8.0, 6.928, 18.0]) }
}

#[test]
fn a_file_reaches_as_its_own_shape_where_the_sprue_is_known() {
    let with_file = |sprue: Option<[f64; 3]>| {
        straight().with(|w| {
            w.pattern().extents_mm = None;
            let at = sprue.map(|at| at.map(number));
            let sprue = at.map(|at| SpruePoint { at: Some(at), ..SpruePoint::default() });
            w.pattern().file =
                Some(PatternFile { path: "cone.stl".to_owned(), hash: Some("f00d".to_owned()), sprue, ..PatternFile::default() });
            w.runs.patterns.insert(PatternId(1), PatternRun::Measured(cone()));
        })
    };
    // Sprued at the middle of its foot it points away: its tip is what reaches farthest.
    near(sizes(&with_file(Some([0.0, 0.0, 0.0])).recompute())[0], 2.0 * (4.0 + 6.0 + 18.0));
    // Sprued at its tip its rim stands out, its longer way upright: two corners of it reach farthest to the side.
    let aside = 4.0 * std::f64::consts::FRAC_PI_3.sin();
    near(sizes(&with_file(Some([0.0, 0.0, 18.0])).recompute())[0], 2.0 * (4.0_f64 + 6.0 + 18.0).hypot(aside));
    // Nobody said where: the longest side of its box is taken along the sprue, and its corner reaches farthest; straight sprues may hold it
    // the other way.
    near(sizes(&with_file(None).recompute())[0], 2.0 * (4.0_f64 + 6.0 + 18.0).hypot(6.928 / 2.0));
}

#[test]
fn only_pieces_that_were_said_to_hang_there_are_told_to_be_too_near() {
    // Spread over two tiers of six, 20 mm apart and staggered, plates 22 mm upright come within 2 (10 sin 15° − 2 cos 15°) of each other;
    // nobody said that they hang so.
    let outcome = straight().with(|w| w.line().quantity = 12).recompute();
    let [sin, cos] = [15.0_f64.to_radians().sin(), 15.0_f64.to_radians().cos()];
    near(outcome.report.trees[0].outline.near[0].apart.at_least_mm, 2.0 * (10.0 * sin - 2.0 * cos));
    assert!(outcome.findings("parts-touch").is_empty() && outcome.findings("parts-near").is_empty());
    let placed =
        |number: u32| Placed { line: LineId(1), number, tier: Some(1), around_deg: said(10.0 * f64::from(number)), ..Placed::default() };
    let outcome = straight().with(|w| w.tree().placed = (1..=4).map(placed).collect()).recompute();
    assert_eq!(outcome.findings("parts-touch").len(), 1, "one finding a tree, however many touch");
}
