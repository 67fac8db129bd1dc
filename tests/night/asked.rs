//! What is asked of the search for a load as it stands in the document, and that the answer keeps what was asked.

use pourbook::calc::heat::HeatError;
use pourbook::calc::labour::Labour;
use pourbook::calc::night::{Night, NightFound, answer, night};
use pourbook::calc::shortest::{Bind, Kept, Outcome, total_min};
use pourbook::job::{Equipment, SheetHours};

use crate::world::{World, entry, number, said, segment, some};

fn asked(world: &World) -> Option<Night> {
    let outcome = world.heated();
    let shelves = pourbook::calc::Shelves::new(&world.job, &world.studio);
    night(&world.job, &world.studio, &shelves.job, &outcome.report, &outcome.book, world.job.burnouts[0].id)
}

fn found(night: Night) -> Result<NightFound, HeatError> {
    answer(night, &Labour::ALONE)
}

fn least(world: &World) -> Vec<([f64; 2], f64)> {
    asked(world).unwrap().limits.least.iter().map(|least| (least.within_c, least.minutes)).collect()
}

fn offset(world: &mut World, by_k: f64) {
    world.studio.equipment.push(Equipment { entry: some("kiln-studio"), offset_k: said(by_k), ..Equipment::default() });
}

/// A day of nothing but segments, which no table answers for.
fn segments(world: &mut World) {
    let segments =
        vec![segment(Some(150.0), None, None, 120.0), segment(Some(730.0), None, Some(300.0), 240.0), segment(None, None, None, 90.0)];
    world.burnout().programme = Some(pourbook::job::Programme::Segments(segments));
}

#[test]
fn the_programme_as_it_stands_is_asked_with_every_minute() {
    let world = World::sound().with(segments);
    let outcome = world.heated();
    let night = asked(&world).unwrap();
    let total = outcome.number(outcome.report.burnouts[0].total);
    assert!((total_min(&night.now) - total).abs() < 1e-6, "{} beside {total}", total_min(&night.now));
    let targets: Vec<f64> = night.now.iter().map(|segment| segment.target_c).collect();
    assert_eq!(targets[..2], [150.0, 730.0]);
    assert!((night.limits.soak.mould_c - targets[2]).abs() < 1e-9, "it ends at the mould's temperature of the pour");
    assert!(
        (night.limits.soak.least_min - 60.0).abs() < 1e-9,
        "an hour of the ninety minutes, for flasks that are poured one after another"
    );
    assert_eq!((night.moulds.moulds.len(), night.moulds.kept), (1, Kept::WholeBand));
    assert_eq!(night.limits.most_segments, Some(16), "the studio kiln's controller");
}

#[test]
fn two_flasks_alike_are_one_mould_and_a_wider_one_is_another() {
    let two = |vessel: &'static str| {
        World::sound().with(move |world| {
            let mut second = world.job.flasks[0].clone();
            second.id = pourbook::job::FlaskId(2);
            second.vessel = some(vessel);
            world.job.flasks.push(second);
        })
    };
    assert_eq!(asked(&two("flask-76x102")).unwrap().moulds.moulds.len(), 1);
    assert_eq!(asked(&two("flask-102x152")).unwrap().moulds.moulds.len(), 2);
}

#[test]
fn the_sheet_rules_and_where_it_is_silent_what_is_usual() {
    let wax = World::sound();
    assert_eq!(least(&wax), [([120.0, 320.0], 90.0)], "wax runs out: common practice, no source");
    let resin = World::sound().with(|world| {
        world.pattern().material = some("resin-castable");
        world.tree().weighed[0].material = some("resin-castable");
    });
    assert_eq!(least(&resin), [([120.0, 320.0], 180.0)], "resin softens and swells there for longer: common practice, no source");
    let sheet = World::sound().with(|world| {
        let hours = |from: f64, to: f64, minutes: f64| SheetHours { from_c: number(from), to_c: number(to), minutes: number(minutes) };
        // The second is the wrong way round and says nothing.
        world.burnout().sheet = vec![hours(300.0, 400.0, 240.0), hours(500.0, 400.0, 60.0)];
    });
    assert_eq!(least(&sheet), [([300.0, 400.0], 240.0)]);
    assert!(!asked(&sheet).unwrap().no_sheet && asked(&wax).unwrap().no_sheet);
    let hot = World::sound().with(segments).with(|world| world.burnout().start_c = said(600.0));
    assert!(least(&hot).is_empty(), "a kiln that is loaded hot never stands there");
}

/// The carbon limit is that of the material that needs longest, and none with stones in the mould.
#[test]
fn carbon_is_asked_by_material_and_not_of_stones() {
    let needs = |world: &World| asked(world).unwrap().moulds.moulds[0].needs.above_min;
    let shelf = pourbook::stock::Shelf::shipped();
    let hours = |id: &str| shelf.get::<pourbook::stock::PatternMaterial>(id).unwrap().burnout.above_700_h.low * 60.0;
    let wax = World::sound();
    assert!((needs(&wax) - hours("wax-injection")).abs() < 1e-9, "{}", needs(&wax));
    let resin = World::sound().with(|world| world.pattern().material = some("resin-castable"));
    assert!(hours("resin-castable") > hours("wax-injection"));
    assert!((needs(&resin) - hours("resin-castable")).abs() < 1e-9, "{}", needs(&resin));
    let stones = World::sound().with(|world| world.pattern().stones = true);
    assert!(needs(&stones).abs() < 1e-9);
}

/// Ceilings of the shelf: 750 °C planned and 788 °C never for gypsum, 454 °C with stones in it; the studio kiln's hottest place is 10 K over
/// its probe.
#[test]
fn the_ceiling_is_the_lowest_of_powder_stones_and_kiln_less_what_the_display_does_not_show() {
    let ceiling = |world: &World| asked(world).unwrap().limits.ceiling_c;
    assert!((ceiling(&World::sound()) - 750.0).abs() < 1e-9, "planned");
    let off = World::sound().with(|world| offset(world, 40.0));
    assert!((ceiling(&off) - (788.0 - 40.0 - 10.0)).abs() < 1e-9, "a kiln 40 K hotter than it shows: {}", ceiling(&off));
    assert!((asked(&off).unwrap().limits.offset_k - 40.0).abs() < 1e-9);
    let stones = World::sound().with(|world| world.pattern().stones = true);
    assert!((ceiling(&stones) - (454.0 - 10.0)).abs() < 1e-9, "{}", ceiling(&stones));
}

#[test]
fn nothing_is_asked_while_kiln_programme_or_mould_is_not_known() {
    assert_eq!(asked(&World::sound().with(|world| world.burnout().kiln = None)), None);
    assert_eq!(asked(&World::sound().with(|world| world.burnout().programme = None)), None);
    assert_eq!(asked(&World::sound().with(|world| world.flask().powder = None)), None);
    let ids = |world: &mut World| world.burnout().kiln = Some(entry("kiln-nowhere"));
    assert_eq!(asked(&World::sound().with(ids)), None);
}

/// The whole way: a table's night of one flask, shorter by heat, and every limit kept by a finer run than the one that sought it.
#[test]
fn the_answer_is_shorter_than_the_table_and_keeps_what_was_asked() {
    let night = asked(&World::sound()).unwrap();
    let asked_least = night.limits.least.clone();
    let found = found(night).unwrap();
    let Outcome::Found(programme) = &found.outcome else { panic!("{:?}", found.outcome) };
    let checked = found.checked.as_ref().unwrap();
    println!("{:.0} min beside {:.0} of the table", checked.total_min, found.now.total_min);
    assert!(checked.sound(), "{:?}", checked.breaches);
    assert!(checked.total_min < 0.9 * found.now.total_min);
    assert!((total_min(&programme.segments) - checked.total_min).abs() < 1e-6);
    assert_eq!(found.night.limits.least, asked_least, "the sheet's hours are never loosened");
    // No ramp is steeper than the table's own: what it does not break binds.
    assert!(!found.now.breaches.iter().any(|breach| matches!(breach.limit, Bind::RampCap { .. })), "{:?}", found.now.breaches);
    let last = programme.segments.last().unwrap();
    assert!(last.hold_min >= found.night.limits.soak.least_min - 1e-6);
    assert!(programme.segments.iter().all(|segment| segment.target_c <= found.night.limits.ceiling_c + 1e-6));
}

#[test]
fn a_search_that_is_told_to_stop_stops() {
    let night = asked(&World::sound().with(segments)).unwrap();
    let found = answer(night, &Labour { go_on: &|_| false, ..Labour::ALONE }).unwrap();
    assert_eq!(found.outcome, Outcome::Stopped);
    assert_eq!(found.checked, None);
}
