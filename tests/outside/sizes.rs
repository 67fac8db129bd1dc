//! Ring sizes, and the bore that gives them.

use pourbook::calc::all_rules;
use pourbook::calc::rule::How;
use pourbook::job::Size;
use pourbook::stock::{Alloy, Entry, OverlayItem, PatternMaterial, Shelf};

use super::table::{Csv, Table, Within};
use super::world::{Outcome, World, entry};

fn ring(scale: &str, size: &str) -> Outcome {
    World::sound().with(|world| world.line().size = Some(Size::Ring { scale: entry(scale), size: size.to_owned() })).recompute()
}

fn bore(scale: &str, size: &str) -> f64 {
    let outcome = ring(scale, size);
    outcome.number(outcome.line().bore.unwrap_or_else(|| panic!("{scale} {size}: {:?}", outcome.findings("size-off-scale"))))
}

#[test]
fn every_size_of_every_scale() {
    let mut table = Table::default();
    for row in Csv::read("ringsize/iso_sizes.csv").rows() {
        let size = row.text("iso_size");
        table.row(
            format!("ISO {size}, mm"),
            "ISO 8653 (ringsize/)",
            row.number("inside_diameter_mm"),
            bore("ring-iso", size),
            Within::Printed(6),
        );
    }
    for row in Csv::read("ringsize/us_sizes.csv").rows() {
        let size = row.text("us_size");
        table.row(
            format!("US {size}, mm"),
            "0.458 in + 0.032 in a size (ringsize/)",
            row.number("inside_diameter_mm"),
            bore("ring-us", size),
            Within::Printed(4),
        );
    }
    for row in Csv::read("ringsize/uk_sizes.csv").rows() {
        let size = row.text("uk_letter");
        table.row(
            format!("UK {size}, mm"),
            "1.25 mm of circumference a letter (ringsize/)",
            row.number("inside_diameter_mm"),
            bore("ring-uk", size),
            Within::Printed(6),
        );
    }
    table.judge(20);
}

#[test]
fn what_jewellers_know_by_heart() {
    let mut table = Table::default();
    table.row("ISO 54, mm", "ISO 8653", 17.19, bore("ring-iso", "54"), Within::Printed(2));
    table.row("US 6, mm", "chart of a public encyclopedia", 16.51, bore("ring-us", "6"), Within::Printed(2));
    let outcome = ring("ring-us", "6");
    table.row("US 6, circumference mm", "π × 16.51", 51.87, outcome.number(outcome.by_rule("size.circumference")), Within::Printed(2));
    for size in ["40.5", "76.5", "77"] {
        assert_eq!(ring("ring-iso", size).findings("size-off-scale").len(), 1, "{size}");
    }
    table.judge(1);
}

#[test]
fn the_measured_ring_of_a_symposium_paper() {
    // Inner diameter: model 19.95, wax 19.88, cast 19.63, finished 19.82 mm (symposium paper, told on a casters' forum):
    // the wax shrinks 0.351 %, the metal 1.258 %, finishing opens 0.968 % or 0.19 mm.
    let (model, wax, cast, finished) = (19.95, 19.88, 19.63, 19.82);
    let (pattern_shrink, metal_shrink): (f64, f64) = (1.0 - wax / model, 1.0 - cast / wax);
    let mut table = Table::default();
    table.row("wax shrinks %", "the paper", 0.351, 100.0 * pattern_shrink, Within::Printed(3));
    table.row("metal shrinks %", "the paper", 1.258, 100.0 * metal_shrink, Within::Printed(3));
    table.row("finishing opens %", "the paper", 0.968, 100.0 * (finished / cast - 1.0), Within::Printed(3));
    let rule = all_rules().into_iter().find(|rule| rule.id == "size.pattern-bore").unwrap();
    let How::Formula { call, .. } = rule.how else { panic!("a formula") };
    table.row(
        "bore of the model, mm",
        "the paper, backwards",
        model,
        call(&[finished, 0.19, pattern_shrink, metal_shrink]),
        Within::Share(1e-12),
    );
    // The same through a job: ISO 62 with these shrinkages, and nothing opened by finishing, which a job cannot say yet.
    let mut world = World::sound();
    for (id, shrink) in [("wax-injection", pattern_shrink), ("silver-925", metal_shrink)] {
        let shipped = Shelf::shipped().entry(id).unwrap();
        let mut entry = Entry::clone(shipped);
        match &mut entry {
            Entry::PatternMaterial(PatternMaterial { linear_shrink, .. }) | Entry::Alloy(Alloy { linear_shrink, .. }) => {
                linear_shrink.value = shrink
            }
            other => panic!("{}", other.name()),
        }
        world.studio.shelf.push(OverlayItem::Replace { base_hash: shipped.hash(), entry });
    }
    world.line().size = Some(Size::Ring { scale: entry("ring-iso"), size: "62".to_owned() });
    let outcome = world.recompute();
    let by_hand = 62.0 / std::f64::consts::PI * model / cast;
    table.row(
        "bore of a model for ISO 62, mm",
        "the paper's shrinkages, by hand",
        by_hand,
        outcome.number(outcome.line().pattern_bore.unwrap()),
        Within::Share(1e-12),
    );
    table.judge(1);
}
