//! Copies of shelf entries: an old job keeps its figures when the shelf changes, and says so.

use pourbook::job::{carry, check};
use pourbook::stock::{Alloy, Entry, OverlayItem, Shelf};

use super::world::World;

fn denser(density: f64) -> OverlayItem {
    let shipped = Shelf::shipped().entry("silver-925").unwrap();
    let mut entry = Entry::clone(shipped);
    let Entry::Alloy(Alloy { density_g_cm3, density_range, .. }) = &mut entry else { panic!("an alloy") };
    (density_g_cm3.value, *density_range) = (density, None);
    OverlayItem::Replace { base_hash: shipped.hash(), entry }
}

#[test]
fn a_changed_shelf_is_a_note_and_old_figures_stand() {
    let before = World::sound().recompute();
    let charge = before.number(before.flask().metal.charge);
    let changed = World::sound().with(|world| world.studio.shelf.push(denser(10.2)));
    let without = changed.recompute();
    let now = without.number(without.flask().metal.charge);
    assert!(now < charge - 0.5, "without copies the new density rules: {now}");
    assert!(without.findings("shelf-differs").is_empty());
    let with = changed.with(|world| carry::take_copies(&mut world.job, Shelf::shipped())).recompute();
    assert_eq!(with.number(with.flask().metal.charge).to_bits(), charge.to_bits());
    assert_eq!(with.findings("shelf-differs").len(), 1, "{:?}", with.keys());
}

#[test]
fn copies_are_of_what_the_job_names_and_stay_as_they_are() {
    let mut world = World::full();
    carry::take_copies(&mut world.job, Shelf::shipped());
    let ids: Vec<String> = world.job.shelf.iter().map(|copied| copied.entry.id().to_string()).collect();
    let named: Vec<String> = carry::named_entries(&world.job).iter().map(ToString::to_string).collect();
    assert_eq!(ids, named);
    assert!(ids.contains(&"ring-iso".to_owned()) && ids.contains(&"stages-wax".to_owned()) && ids.contains(&"wax-sprue".to_owned()));
    let first = world.job.shelf.clone();
    let (today, _) = Shelf::with_overlay(&pourbook::stock::Overlay(vec![denser(10.2)]));
    carry::take_copies(&mut world.job, &today);
    assert_eq!(world.job.shelf, first, "a difference is for the caster to decide");
    world.job.melts.clear();
    carry::take_copies(&mut world.job, &today);
    assert_eq!(world.job.shelf.len(), first.len() - 1, "what is no longer named is no longer carried");
    assert!(check::faults(&World::full().job).is_empty());
}

#[test]
fn figures_do_not_depend_on_copies_of_an_unchanged_shelf() {
    let plain = World::full().recompute();
    let carried = World::full().with(|world| carry::take_copies(&mut world.job, Shelf::shipped())).recompute();
    let values =
        |outcome: &super::world::Outcome| outcome.book.lines().map(|line| format!("{:?} {:?}", line.place, line.value)).collect::<Vec<_>>();
    assert_eq!(values(&plain), values(&carried));
    assert!(carried.findings("shelf-differs").is_empty());
}
