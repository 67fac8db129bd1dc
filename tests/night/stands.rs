//! The floor and the controller of a load's kiln, read off shelf and document.

use pourbook::calc::controller::Ramp;
use pourbook::calc::floor::{flasks_of, floor_of, keyed};
use pourbook::calc::kiln_floor::{Hottest, Shape, arrange};
use pourbook::calc::{Book, Report, Shelves};
use pourbook::job::{Equipment, FlaskId, Programme};
use pourbook::stock::{Entry, HotSide, Kiln, OverlayItem, Shelf};

use crate::world::{World, said, segment, some};

fn with_kiln(world: &mut World, change: impl FnOnce(&mut Kiln)) {
    let stands = Shelf::shipped().entry("kiln-studio").unwrap();
    let Entry::Kiln(mut kiln) = Entry::clone(stands) else { panic!("a kiln") };
    change(&mut kiln);
    world.studio.shelf.push(OverlayItem::Replace { base_hash: stands.hash(), entry: Entry::Kiln(kiln) });
}

fn known(world: &World) -> (Shelves, Report, Book) {
    let outcome = world.recompute();
    (Shelves::new(&world.job, &world.studio), outcome.report, outcome.book)
}

#[test]
fn the_floor_is_the_shelfs_and_zones_come_with_it() {
    let floor_with = |change: fn(&mut Kiln)| {
        let world = World::sound().with(|world| with_kiln(world, change));
        let (shelves, ..) = known(&world);
        floor_of(&world.job.burnouts[0], &shelves.job)
    };
    let floor = floor_with(|_| {}).unwrap();
    assert_eq!(floor.shape, Shape::Rectangle { width_mm: 340.0, depth_mm: 460.0 });
    assert_eq!((floor.zones.hottest, floor.zones.hot_k, floor.zones.cold_k), (Hottest::Back, 10.0, 25.0));
    let round = floor_with(|kiln| kiln.chamber.as_mut().unwrap().round = true).unwrap();
    assert_eq!(round.shape, Shape::Round { diameter_mm: 340.0 }, "its width is its diameter");
    let sides = [
        (HotSide::Front, Hottest::Front),
        (HotSide::Left, Hottest::Left),
        (HotSide::Right, Hottest::Right),
        (HotSide::Middle, Hottest::Middle),
        (HotSide::Even, Hottest::Even),
    ];
    for (side, expected) in sides {
        let world = World::sound().with(|world| with_kiln(world, |kiln| kiln.chamber.as_mut().unwrap().hottest = side));
        assert_eq!(floor_of(&world.job.burnouts[0], &known(&world).0.job).unwrap().zones.hottest, expected);
    }
    assert!(floor_with(|kiln| kiln.chamber = None).is_none());
}

/// Two flasks of one load, the second of heavy sections: it is wanted where it is cold, and both stand with their steel counted.
#[test]
fn flasks_stand_with_their_walls_and_thin_ones_where_it_is_hot() {
    let mut world = World::full();
    world.job.flasks[1].burnout = world.job.flasks[0].burnout;
    world.job.patterns[0].section = Some(pourbook::stock::Section::Thin);
    for pattern in &mut world.job.patterns[1..] {
        pattern.section = Some(pourbook::stock::Section::Heavy);
    }
    let (shelves, report, _) = known(&world);
    let (load, figures) = (&world.job.burnouts[0], &report.burnouts[0]);
    let flasks = flasks_of(load, figures, &world.job, &report, &shelves.job);
    let shown: Vec<(u32, i32)> = flasks.iter().map(|flask| (flask.key, flask.warmth)).collect();
    assert_eq!(shown, [(1, 1), (2, -2)]);
    let vessel = shelves.job.get::<pourbook::stock::Flask>("flask-76x102").unwrap();
    let wide = vessel.inner_diameter_mm + 2.0 * vessel.wall_mm.value;
    assert!((flasks[0].diameter_mm - wide).abs() < 1e-9 && (flasks[0].height_mm - vessel.height_mm).abs() < 1e-9);
    let floor = floor_of(load, &shelves.job).unwrap();
    let stand = arrange(&floor, &flasks).unwrap().standing;
    let deep = |key: u32| stand.iter().find(|one| one.key == key).unwrap().at_mm[1];
    assert!(deep(1) > deep(2), "the thin one stands at the back, where it is hot: {stand:?}");
    // Of another load nothing stands here, and what was put by hand is kept.
    world.job.flasks[1].burnout = None;
    world.job.flasks[0].floor_mm = Some([said(90.0).unwrap(), said(100.0).unwrap()]);
    let (shelves, report, _) = known(&world);
    let flasks = flasks_of(&world.job.burnouts[0], &report.burnouts[0], &world.job, &report, &shelves.job);
    assert_eq!(flasks.iter().map(|flask| (flask.key, flask.held_mm)).collect::<Vec<_>>(), [(1, Some([90.0, 100.0]))]);
    assert_eq!(FlaskId(flasks[0].key), world.job.flasks[0].id);
}

fn own(world: &mut World) {
    let stages = vec![
        segment(Some(150.0), Some(100.0), None, 90.0),
        segment(Some(730.0), None, None, 180.0),
        segment(None, None, Some(200.0), 60.0),
    ];
    world.burnout().programme = Some(Programme::Segments(stages));
}

/// By hand: 150 °C is 302 °F, 730 °C is 1346 °F; 100 K/h is 180 °F/h.
#[test]
fn a_controller_in_fahrenheit_is_keyed_in_fahrenheit() {
    let world = World::sound().with(own).with(|world| with_kiln(world, |kiln| kiln.controller.as_mut().unwrap().fahrenheit = true));
    let (shelves, report, book) = known(&world);
    let table = keyed(&world.job.burnouts[0], &report.burnouts[0], &world.studio, &shelves.job, &book).unwrap();
    let rows: Vec<(i32, Ramp, u32)> = table.rows.iter().map(|row| (row.set_point, row.ramp, row.hold_min)).collect();
    assert_eq!(rows[0], (302, Ramp::Rate(180), 90));
    assert_eq!(rows[1], (1346, Ramp::Full, 180));
    assert_eq!(rows.len(), 3);
}

#[test]
fn what_is_keyed_is_what_the_display_shows_and_nothing_is_without_a_controller() {
    // A kiln 12 K hotter than it shows: what was planned on its display is keyed as planned.
    let world = World::sound().with(own).with(|world| {
        world.studio.equipment.push(Equipment { entry: some("kiln-studio"), offset_k: said(12.0), ..Equipment::default() });
    });
    let (shelves, report, book) = known(&world);
    let table = keyed(&world.job.burnouts[0], &report.burnouts[0], &world.studio, &shelves.job, &book).unwrap();
    assert_eq!(table.rows[0].set_point, 150);
    assert!((table.rows[0].true_c - 162.0).abs() < 1e-9, "{:?}", table.rows[0]);
    let none = World::sound().with(own).with(|world| with_kiln(world, |kiln| kiln.controller = None));
    let (shelves, report, book) = known(&none);
    assert!(keyed(&none.job.burnouts[0], &report.burnouts[0], &none.studio, &shelves.job, &book).is_none());
}

/// Segments that a controller of three does not take are told, and a ramp by minutes is keyed in minutes.
#[test]
fn too_many_segments_are_told_with_what_to_merge() {
    let world = World::sound().with(own).with(|world| {
        with_kiln(world, |kiln| {
            kiln.segments = Some(2);
            let controller = kiln.controller.as_mut().unwrap();
            (controller.ramps_in_minutes, controller.full_speed) = (true, false);
        });
    });
    let (shelves, report, book) = known(&world);
    let table = keyed(&world.job.burnouts[0], &report.burnouts[0], &world.studio, &shelves.job, &book).unwrap();
    assert!(table.too_many.is_some() && table.rows.len() == 3);
    assert!(table.rows.iter().all(|row| matches!(row.ramp, Ramp::Minutes(_))), "{:?}", table.rows);
    assert_eq!(table.rows[2].ramp, Ramp::Minutes(200), "as asked for");
}
