//! The same job said in another way gives the same figures; twice as much gives twice as much.

use pourbook::calc::{PatternMeasure, PatternRun};
use pourbook::job::{FileUnit, PatternFile, PatternId};

use super::world::{Outcome, World, said};

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-12 * one.abs().max(other.abs())
}

/// A job whose one tree is computed from a file that measures so, in a unit, at a scale.
fn drawn(volume: f64, area: f64, size: [f64; 3], unit: FileUnit, scale: Option<f64>, pieces: u32) -> World {
    World::sound().with(|world| {
        world.pattern().weighed = None;
        world.pattern().extents_mm = None;
        world.pattern().file =
            Some(PatternFile { path: "ring.stl".to_owned(), unit, scale: scale.and_then(said), ..PatternFile::default() });
        world.line().quantity = pieces;
        let tree = super::world::computed_tree(1, world.tree().pieces.clone());
        *world.tree() = tree;
        let measure = PatternMeasure { volume: Some(volume), fills: Some(volume), area, size, ..PatternMeasure::default() };
        world.runs.patterns.insert(PatternId(1), PatternRun::Measured(measure));
    })
}

/// Every figure that is derived, by rule and place, in order.
fn figures(outcome: &Outcome) -> Vec<(&'static str, String, f64)> {
    let all =
        outcome.book.figures().map(|figure| (figure.origin.key(), figure.place.to_string(), figure.value.number().unwrap_or(f64::MAX)));
    let mut all: Vec<_> = all.collect();
    all.sort_by(|a, b| (a.0, &a.1).cmp(&(b.0, &b.1)).then(a.2.total_cmp(&b.2)));
    all
}

fn same(one: &Outcome, other: &Outcome) {
    let (one, other) = (figures(one), figures(other));
    assert_eq!(one.len(), other.len());
    for (one, other) in one.iter().zip(&other) {
        assert_eq!((one.0, &one.1), (other.0, &other.1));
        assert!(close(one.2, other.2), "{} at {}: {} and {}", one.0, one.1, one.2, other.2);
    }
}

#[test]
fn a_file_in_inches_is_the_same_ring() {
    let mm = drawn(500.0, 700.0, [20.0, 20.0, 5.0], FileUnit::Millimetre, None, 4).recompute();
    let inch = drawn(500.0 / 25.4_f64.powi(3), 700.0 / 25.4_f64.powi(2), [20.0 / 25.4, 20.0 / 25.4, 5.0 / 25.4], FileUnit::Inch, None, 4);
    same(&mm, &inch.recompute());
    let cm = drawn(0.5, 7.0, [2.0, 2.0, 0.5], FileUnit::Centimetre, None, 4);
    same(&mm, &cm.recompute());
    // A file in inches taken for millimetres is 16 387 times too small.
    let scaled = drawn(500.0 / 25.4_f64.powi(3), 700.0, [1.0, 1.0, 1.0], FileUnit::Millimetre, Some(25.4), 4).recompute();
    let volume = |outcome: &Outcome| outcome.number(outcome.report.patterns[0].charge_volume);
    assert!(close(volume(&mm), volume(&scaled)));
}

#[test]
fn scale_gives_its_cube_in_metal_its_square_in_area_and_itself_in_length() {
    for scale in [0.5, 1.02, 2.0] {
        let one = drawn(500.0, 700.0, [20.0, 20.0, 5.0], FileUnit::Millimetre, None, 4).recompute();
        let scaled = drawn(500.0, 700.0, [20.0, 20.0, 5.0], FileUnit::Millimetre, Some(scale), 4).recompute();
        let (a, b) = (&one.report.patterns[0], &scaled.report.patterns[0]);
        assert!(close(one.number(a.charge_volume) * scale.powi(3), scaled.number(b.charge_volume)));
        assert!(close(one.number(a.area.unwrap()) * scale.powi(2), scaled.number(b.area.unwrap())));
        assert!(close(one.number(a.modulus.unwrap()) * scale, scaled.number(b.modulus.unwrap())));
        assert!(close(one.number(a.extents.unwrap()[0]) * scale, scaled.number(b.extents.unwrap()[0])));
        assert!(close(one.number(one.line().metal) * scale.powi(3), scaled.number(scaled.line().metal)));
        assert!(close(one.number(one.line().rough) * scale.powi(3), scaled.number(scaled.line().rough)));
    }
}

#[test]
fn twice_the_pieces_are_twice_the_metal() {
    let [one, two] = [3, 6].map(|pieces| drawn(500.0, 700.0, [20.0, 20.0, 5.0], FileUnit::Millimetre, None, pieces).recompute());
    let pieces = |outcome: &Outcome| outcome.number(outcome.by_rule("tree.pieces-volume"));
    assert!(close(2.0 * pieces(&one), pieces(&two)));
    assert!(close(2.0 * one.number(one.line().rough_all), two.number(two.line().rough_all)));
    // The sprues stay: the tree grows by the pieces and their welds alone.
    let tree = |outcome: &Outcome| outcome.number(outcome.report.trees[0].volume);
    assert!(close(tree(&two) - tree(&one), pieces(&one) * 1.05));
    // And the button is one a flask, not one a piece.
    assert!(close(one.number(one.flask().metal.button), two.number(two.flask().metal.button)));
}

#[test]
fn the_order_of_writing_changes_nothing() {
    let forwards = World::full();
    let backwards = forwards.clone().with(|world| {
        world.job.orders[0].lines.reverse();
        world.job.patterns.reverse();
        world.job.trees.reverse();
        world.job.flasks.reverse();
        world.job.burnouts.reverse();
        world.studio.prices.reverse();
    });
    same(&forwards.recompute(), &backwards.recompute());
    let keys = |world: &World| {
        let mut keys: Vec<_> = world.recompute().report.findings.iter().map(|finding| (finding.kind.key, finding.place)).collect();
        keys.sort_unstable();
        keys
    };
    assert_eq!(keys(&forwards), keys(&backwards));
}

#[test]
fn a_gross_weight_less_its_tare_is_the_net_weight() {
    use pourbook::job::Weighing;
    let net = World::sound().recompute();
    let gross = World::sound()
        .with(|world| {
            world.tree().weighed[0].weight =
                Some(Weighing::Gross { weight: super::world::grams("104.45"), tare: Some(super::world::grams("101.25")) });
        })
        .recompute();
    assert_eq!(net.value(net.flask().metal.on_balance), gross.value(gross.flask().metal.on_balance));
}
