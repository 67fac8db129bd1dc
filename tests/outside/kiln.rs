//! Burnout, pouring and the times around them.

use pourbook::calc::Origin;
use pourbook::job::Programme;
use pourbook::stock::{Entry, Kiln, OverlayItem, Shelf};

use super::table::{Table, Within};
use super::world::{Outcome, World, entry, said, some};

/// A kiln that rises and falls at once.
fn at_once() -> OverlayItem {
    let shipped = Shelf::shipped().entry("kiln-studio").unwrap();
    let mut entry = Entry::clone(shipped);
    let Entry::Kiln(Kiln { bands, .. }) = &mut entry else { panic!("a kiln") };
    bands.iter_mut().for_each(|band| (band.rise_k_h, band.fall_k_h) = (1e12, 1e12));
    OverlayItem::Replace { base_hash: shipped.hash(), entry }
}

fn waxed(vessel: &str, includes: bool, change: impl FnOnce(&mut World)) -> Outcome {
    let mut world = World::sound();
    world.flask().vessel = some(vessel);
    world.burnout().programme = Some(Programme::Table(entry("stages-wax")));
    world.burnout().hours_include_ramps = Some(includes);
    change(&mut world);
    world.recompute()
}

#[test]
fn totals_of_the_published_wax_cycles() {
    const SOURCE: &str = "a powder maker's three cycles, as told by a caster";
    let mut table = Table::default();
    for (vessel, hours) in [("flask-64x64", 6.0), ("flask-89x102", 8.0), ("flask-102x203", 12.0)] {
        // On a kiln without ramps both readings of the table come to its own total.
        for includes in [true, false] {
            let outcome = waxed(vessel, includes, |world| world.studio.shelf.push(at_once()));
            let total = outcome.number(outcome.report.burnouts[0].total) / 60.0;
            table.row(
                format!("{vessel}, hours, ramps {}", if includes { "included" } else { "besides" }),
                SOURCE,
                hours,
                total,
                Within::Amount(1e-6),
            );
        }
        // On a real one the table's hours are the least; the ramps besides come on top, by the kiln's own rates.
        let real = waxed(vessel, false, |_| {});
        let [including, besides] = real.report.burnouts[0].both.unwrap().map(|id| real.number(id) / 60.0);
        assert!(including >= hours - 1e-9 && besides > including, "{vessel}: {including} and {besides} h");
        let ramps: f64 = real.report.burnouts[0].stages.iter().map(|stage| real.number(stage.ramp) / 60.0).sum();
        table.row(
            format!("{vessel}, hours with its ramps"),
            "the table and the kiln's ramps, added",
            hours + ramps,
            besides,
            Within::Amount(1e-9),
        );
    }
    table.judge(1);
}

#[test]
fn ramps_of_the_studio_kiln_by_hand() {
    // 21 → 149 at 400 K/h; 149 → 371: 151 K at 400 and 71 at 300; 371 → 732: 229 K at 300 and 132 at 200;
    // 732 → 498: 132 K at 150 and 102 at 90 on the way down.
    let by_hand = [128.0 / 400.0, 151.0 / 400.0 + 71.0 / 300.0, 229.0 / 300.0 + 132.0 / 200.0, 132.0 / 150.0 + 102.0 / 90.0];
    let outcome = waxed("flask-89x102", false, |world| world.flask().mould_c = said(498.0));
    let mut table = Table::default();
    for (stage, hours) in outcome.report.burnouts[0].stages.iter().zip(by_hand) {
        table.row(
            format!("ramp to {} °C, h", outcome.number(stage.target)),
            "hand-worked from the kiln's bands",
            hours,
            outcome.number(stage.ramp) / 60.0,
            Within::Amount(1e-9),
        );
    }
    table.judge(1);
}

#[test]
fn setting_two_to_six_hours() {
    // Common practice, no source: no flask is heated under two hours after investing, and six is enough.
    let outcome = World::sound().recompute();
    let start = outcome.number(outcome.report.burnouts[0].kiln_start);
    let invested = outcome.number(outcome.flask().invested_by.unwrap());
    let mut table = Table::default();
    table.row(
        "hours from investing to the kiln",
        "common practice, no source: 2–6 h, the least planned",
        2.0,
        (start - invested) / 60.0,
        Within::Amount(1e-9),
    );
    let span = &Shelf::shipped().get::<pourbook::stock::Powder>("powder-gypsum").unwrap().set_h;
    table.row("hours at most", "common practice, no source", 6.0, span.high, Within::Amount(1e-9));
    // Steam comes between: then the two hours are before the steam.
    let steamed = World::sound().with(|world| world.burnout().dewax_min = said(60.0)).recompute();
    let steam = steamed.number(steamed.report.burnouts[0].dewax_start.unwrap());
    table.row(
        "hours from investing to the steam",
        "the same",
        2.0,
        (steam - steamed.number(steamed.flask().invested_by.unwrap())) / 60.0,
        Within::Amount(1e-9),
    );
    table.judge(1);
}

#[test]
fn backwards_from_the_pour() {
    // Poured at 10:00 on 5 March 2026 UTC: minute 29 545 080 of the epoch (20 517 days and 10 hours).
    let outcome = waxed("flask-89x102", true, |world| world.studio.shelf.push(at_once()));
    let load = &outcome.report.burnouts[0];
    let pour = (20_517.0 * 24.0 + 10.0) * 60.0;
    let mut table = Table::default();
    table.row("the pour, min", "calendar, by hand", pour, outcome.number(load.pour), Within::Amount(1e-9));
    table.row("the kiln is lit, h before", "eight hours", 8.0, (pour - outcome.number(load.kiln_start)) / 60.0, Within::Amount(1e-6));
    let last = load.stages.last().unwrap();
    table.row("the last stage ends at the pour", "by construction of a timetable", pour, outcome.number(last.end), Within::Amount(1e-6));
    table.judge(1);
}

#[test]
fn a_night_when_clocks_change_is_as_long_as_it_is() {
    // Europe/Dublin sets its clocks forward at 01:00 UTC on 29 March 2026: 10:00 there is 09:00 UTC, and a kiln of eight hours is lit at
    // 01:00 UTC, which the wall clock then calls 02:00.
    let mut world = World::sound();
    world.studio.shelf.push(at_once());
    world.flask().vessel = some("flask-89x102");
    world.burnout().hours_include_ramps = Some(true);
    world.burnout().pour_at = Some(jiff::civil::datetime(2026, 3, 29, 10, 0, 0, 0));
    world.setting.zone = jiff::tz::TimeZone::get("Europe/Dublin").unwrap();
    let outcome = world.recompute();
    let utc = |day: f64, hour: f64| (day * 24.0 + hour) * 60.0;
    let mut table = Table::default();
    table.row(
        "the pour, min",
        "29 March 2026 is day 20 541",
        utc(20_541.0, 9.0),
        outcome.number(outcome.report.burnouts[0].pour),
        Within::Amount(1e-9),
    );
    table.row(
        "the kiln is lit, min",
        "eight real hours before",
        utc(20_541.0, 1.0),
        outcome.number(outcome.report.burnouts[0].kiln_start),
        Within::Amount(1e-6),
    );
    table.judge(1);
}

#[test]
fn sterling_goes_into_a_mould_at_430_to_480() {
    // Common practice, no source; a second opinion of casters says 450.
    for mould in [430.0, 450.0, 480.0] {
        let outcome = World::sound().with(|world| world.flask().mould_c = said(mould)).recompute();
        assert!(outcome.findings("mould-outside").is_empty(), "{mould}");
    }
    // Where nobody says more, the mould is planned within it.
    let planned = World::sound().recompute();
    let mould_c = planned.number(planned.flask().pour.mould);
    assert!((430.0..=480.0).contains(&mould_c), "{mould_c}");
    // A published rule of thumb, 200 K under the melting point, puts sterling at 693 °C: wrong for nearly all work.
    let outcome = World::sound().with(|world| world.flask().mould_c = said(693.0)).recompute();
    assert_eq!(outcome.findings("mould-outside").len(), 1);
}

#[test]
fn superheat_of_sterling() {
    // Source: liquidus 893 °C (1640 °F), poured at 949 to 982 °C (1740–1800 °F): the middle is 72.5 K over the liquidus.
    let outcome = World::sound().recompute();
    let mut table = Table::default();
    table.row("metal, °C", "casters' forum: 1740–1800 °F", 965.5, outcome.number(outcome.flask().pour.metal), Within::Amount(1e-9));
    table.row("superheat, K", "less the liquidus of 893 °C", 72.5, outcome.number(outcome.flask().pour.superheat), Within::Amount(1e-9));
    table.judge(1);
}

#[test]
fn sprues_at_45_degrees() {
    // Common practice, no source.
    let outcome = World::full().recompute();
    let angle = outcome.book.lines().find(|line| line.origin.key() == "tree.sprue-angle").unwrap();
    assert!(matches!(angle.origin, Origin::Default(_)));
    let mut table = Table::default();
    table.row("sprue angle, degrees", "common practice, no source", 45.0, angle.value.number().unwrap(), Within::Amount(1e-12));
    // A piece of 30 × 10 × 10 mm on a 6 mm feed, main sprue 8 mm: the far corner at (4 + (6 + 30)·√½ + 5·√½, 5).
    let half = 0.5_f64.sqrt();
    let reach = ((4.0 + 36.0 * half + 5.0 * half).powi(2) + 25.0).sqrt();
    table.row("reach of a piece, mm", "hand-worked", reach, outcome.number(outcome.by_rule("tree.reach")), Within::Share(1e-12));
    table.row(
        "rise of a piece, mm",
        "hand-worked",
        36.0 * half + 5.0 * half,
        outcome.number(outcome.by_rule("tree.rise")),
        Within::Share(1e-12),
    );
    table.judge(1);
}

#[test]
fn five_to_fifteen_minutes_before_the_quench() {
    // Common practice, no source, for yellow golds; sterling is told 12 to 20 minutes for large flasks.
    let outcome = World::sound().with(|world| world.line().alloy = some("gold-14k-yellow")).recompute();
    let [from, until] = outcome.flask().pour.quench.unwrap().map(|id| outcome.number(id));
    let mut table = Table::default();
    table.row("quench from, min", "common practice, no source", 5.0, from, Within::Amount(1e-12));
    table.row("quench until, min", "common practice, no source", 15.0, until, Within::Amount(1e-12));
    table.judge(1);
    for stones in [true, false] {
        let outcome = World::sound().with(|world| world.pattern().stones = stones).recompute();
        assert_eq!(outcome.flask().pour.never_quench, stones);
        assert_eq!(outcome.flask().pour.quench.is_none(), stones);
    }
}

#[test]
fn energy_of_a_held_kiln_by_hand() {
    // A kiln that loses 1.35 kWh in an hour at 730 °C and whose lining takes 5.5 kWh up to there, the room at 21 °C: an hour's rise from 21
    // to 721 °C at 700 K/h loses half of 1.35·700/709 kWh, two hours' hold twice all of it, the lining takes 5.5·700/709.
    let mut world = World::sound();
    let segment = |target: f64, ramp: f64, hold: f64| pourbook::job::Segment {
        target_c: said(target),
        ramp_min: said(ramp),
        hold_min: pourbook::quantity::Finite::new(hold).unwrap(),
        ..Default::default()
    };
    world.studio.shelf.push(at_once());
    world.burnout().programme = Some(Programme::Segments(vec![segment(721.0, 60.0, 120.0)]));
    world.burnout().start_c = said(21.0);
    world.studio.money.kwh = Some(pourbook::quantity::Money::new("0.32".parse().unwrap()).unwrap());
    let outcome = world.heated();
    let energy = outcome.report.energy[0].1;
    let share = 700.0 / 709.0;
    let mut table = Table::default();
    let lost = 1.35 * share * (0.5 + 2.0);
    table.row("lost, kWh", "hand-worked", lost, outcome.number(energy.lost), Within::Amount(1e-9));
    table.row("lining, kWh", "hand-worked", 5.5 * share, outcome.number(energy.lining), Within::Amount(1e-9));
    let moulds = outcome.number(energy.moulds);
    let all = lost + 5.5 * share + moulds;
    table.row("all, kWh", "added", all, outcome.number(energy.energy), Within::Amount(1e-9));
    table.row("cost", "0.32 a kWh", (all * 32.0).round() / 100.0, outcome.number(energy.cost.unwrap()), Within::Amount(1e-9));
    table.judge(1);
    // A sterling flask of 89 × 102 mm holds about 0.9 kg of powder: some tenths of a kilowatt-hour, most of it for its water.
    assert!((0.2..1.5).contains(&moulds), "{moulds} kWh in the moulds");
}

#[test]
fn a_hot_kiln_is_lit_before_and_the_mix_is_thick() {
    let mut world = World::sound();
    world.burnout().programme = Some(Programme::Table(entry("stages-fast")));
    world.flask().ratio = None;
    let outcome = world.recompute();
    let load = &outcome.report.burnouts[0];
    let [lit, hot] = load.lit.unwrap().map(|id| outcome.number(id));
    let mut table = Table::default();
    table.row("hot kiln, °C", "common practice, no source", 730.0, hot, Within::Amount(1e-9));
    // 21 → 300 at 400 K/h, 300 at 300 K/h, 130 at 200 K/h.
    let hours = 279.0 / 400.0 + 1.0 + 130.0 / 200.0;
    table.row(
        "h from the match to the load",
        "the kiln's bands",
        hours,
        (outcome.number(load.kiln_start) - lit) / 60.0,
        Within::Amount(1e-6),
    );
    table.row("mix", "36 per 100 for a fast burnout", 0.36, outcome.number(outcome.flask().mix.ratio), Within::Amount(1e-12));
    table.judge(1);
}

#[test]
fn later_rounds_wait_for_the_kiln_and_the_core() {
    // Two flasks of one load, the second wanted cooler: its pour is the first's, and the kiln's fall, and the hold of the last stage.
    let mut world = World::sound();
    let mut second = world.job.flasks[0].clone();
    second.id = pourbook::job::FlaskId(2);
    (second.tree, second.alloy, second.section) = (None, some("bronze-silicon"), Some(pourbook::stock::Section::Heavy));
    world.flask().section = Some(pourbook::stock::Section::Filigree);
    world.job.flasks.push(second);
    let outcome = world.recompute();
    let rounds = &outcome.report.burnouts[0].rounds;
    assert_eq!(rounds.iter().map(|round| round.flasks.len()).collect::<Vec<_>>(), [1, 1]);
    let [ramp, hold] = rounds[1].wait.unwrap().map(|id| outcome.number(id));
    let (from, to) = (outcome.number(rounds[0].target), outcome.number(rounds[1].target));
    assert!(from > to, "{from} then {to} °C");
    // The studio kiln falls at 150 K/h above 600 °C and at 90 K/h below.
    let by_hand = 60.0 * ((from - 600.0).max(0.0) / 150.0 + (from.min(600.0) - to) / 90.0);
    let mut table = Table::default();
    table.row("fall, min", "the kiln's bands", by_hand, ramp, Within::Amount(1e-6));
    let apart = outcome.number(rounds[1].at) - outcome.number(rounds[0].at);
    table.row("between the pours, min", "fall and hold", by_hand + hold, apart, Within::Amount(1e-6));
    table.judge(1);
    // What is asked of the second mould goes on to its own pour.
    let ends: Vec<f64> = outcome.report.heat.iter().map(|one| one.ask.pour_min()).collect();
    assert!((ends[1] - ends[0] - apart).abs() < 1e-6, "{ends:?}");
}
