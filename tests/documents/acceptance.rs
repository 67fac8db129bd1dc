//! Who may answer for a finding, and until when.

use pourbook::calc::finding::KINDS;
use pourbook::calc::{Finding, Weight};
use pourbook::job::{Accepted, Place};

use super::world::{World, grams, number, said, some};

/// The finding of a kind in a world, after accepting it as it stands there by `hands` for `reason`.
fn accepted(world: &World, key: &str, hands: &str, reason: &str) -> (World, Finding) {
    let found = world.recompute().findings(key)[0].clone();
    let accepted = Accepted {
        finding: key.to_owned(),
        place: found.place,
        value: found.value.map(number),
        hands: hands.to_owned(),
        reason: reason.to_owned(),
        at: None,
    };
    let world = world.clone().with(|world| world.job.accepted.push(accepted));
    let found = world.recompute().findings(key)[0].clone();
    (world, found)
}

fn wide(diameter: f64) -> World {
    World::sound().with(|world| world.tree().envelope.as_mut().unwrap().diameter_mm = said(diameter))
}

fn full(reserve: &str) -> World {
    World::sound().with(|world| world.flask().reserve = Some(grams(reserve)))
}

#[test]
fn a_caution_is_for_casters_and_masters() {
    for (hands, holds) in [("AA", false), ("CC", true), ("MM", true), ("ZZ", false), ("", false)] {
        let (_, found) = accepted(&wide(66.0), "wall-clearance", hands, "thin wax, cast so for years");
        assert_eq!(found.accepted.is_some(), holds, "{hands}");
    }
    let (_, found) = accepted(&wide(66.0), "wall-clearance", "MM", "  ");
    assert!(found.accepted.is_none(), "nobody signs without a reason");
}

#[test]
fn a_stop_is_for_masters_alone() {
    for (hands, holds) in [("AA", false), ("CC", false), ("MM", true), ("ZZ", false)] {
        let (_, found) = accepted(&full("440"), "crucible-full", hands, "the crucible was measured and holds it");
        assert_eq!(found.kind.weight, Weight::Stop);
        assert_eq!(found.accepted.is_some(), holds, "{hands}");
        assert_eq!(found.stands(), !holds);
    }
}

#[test]
fn some_findings_nobody_signs_for() {
    let platinum = World::sound().with(|world| world.line().alloy = some("platinum-950-ruthenium"));
    let (_, found) = accepted(&platinum, "mould-refuses", "MM", "it will hold");
    assert!(found.accepted.is_none() && found.stands());
    let stones = World::sound().with(|world| {
        world.pattern().stones = true;
        world.flask().powder = some("powder-gypsum-resin");
    });
    let (_, found) = accepted(&stones, "stones-powder", "MM", "only small stones");
    assert!(found.stands());
    let never: Vec<&str> = KINDS.iter().filter(|kind| !kind.may_be_signed).map(|kind| kind.key).collect();
    assert_eq!(
        never,
        [
            "tree-over-flask",
            "stones-too-hot",
            "stones-powder",
            "mould-refuses",
            "mould-wet",
            "two-alloys",
            "melt-two-alloys",
            "under-mark",
            "lot-fineness-unknown",
            "mark-over-alloy",
            "cradle-size",
            "spin-too-fast"
        ]
    );
    assert!(KINDS.iter().filter(|kind| !kind.may_be_signed).all(|kind| kind.weight == Weight::Stop));
}

#[test]
fn worse_than_accepted_raises_it_again() {
    // Room to the wall: less is worse.
    let (world, found) = accepted(&wide(66.0), "wall-clearance", "CC", "cast so for years");
    assert!(found.accepted.is_some());
    for (diameter, holds) in [(65.0, true), (66.0, true), (66.000_000_1, true), (66.2, false), (70.0, false)] {
        let now = world.clone().with(|world| world.tree().envelope.as_mut().unwrap().diameter_mm = said(diameter));
        assert_eq!(now.recompute().findings("wall-clearance")[0].accepted.is_some(), holds, "Ø {diameter}");
    }
    // A crucible's fill: more is worse.
    let (world, _) = accepted(&full("440"), "crucible-full", "MM", "measured");
    for (reserve, holds) in [("430", true), ("440", true), ("441", false)] {
        let now = world.clone().with(|world| world.flask().reserve = Some(grams(reserve)));
        assert_eq!(now.recompute().findings("crucible-full")[0].accepted.is_some(), holds, "{reserve} g");
    }
    // Accepted without a value, it covers no value at all.
    let mut world = accepted(&full("440"), "crucible-full", "MM", "measured").0;
    world.job.accepted[0].value = None;
    assert!(world.recompute().findings("crucible-full")[0].accepted.is_none());
}

#[test]
fn an_acceptance_stands_for_its_place_and_kind_alone() {
    let (mut world, _) = accepted(&wide(66.0), "wall-clearance", "CC", "cast so for years");
    world.job.accepted[0].place = Place::Job;
    assert!(world.recompute().findings("wall-clearance")[0].accepted.is_none());
    let (mut world, _) = accepted(&wide(66.0), "wall-clearance", "CC", "cast so for years");
    world.job.accepted[0].finding = "top-clearance".to_owned();
    assert!(world.recompute().findings("wall-clearance")[0].accepted.is_none());
}

#[test]
fn a_later_acceptance_by_better_hands_counts() {
    let (world, found) = accepted(&full("440"), "crucible-full", "AA", "I think so");
    assert!(found.accepted.is_none());
    let (world, found) = accepted(&world, "crucible-full", "MM", "measured");
    assert_eq!(found.accepted, Some(1));
    // Whoever was a master then and is none now no longer answers for it.
    let lowered = world.with(|world| world.studio.hands[0].role = pourbook::job::Role::Caster);
    assert!(lowered.recompute().findings("crucible-full")[0].accepted.is_none());
}
