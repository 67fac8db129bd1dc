//! Ring sizes, and the way from the finished measure back to the slicer.

use pourbook::calc::{PrinterLine, size};
use pourbook::job::{FileUnit, Finished, LineId, PatternFile, PieceException, PieceId, Place, Size};
use pourbook::stock::{Alloy, Entry, OverlayItem, PatternMaterial, RingRule, Shelf};

use super::table::{Csv, Table, Within};
use super::world::{Outcome, World, entry, measure, mould, said, some};

fn ring(scale: &str, size: &str) -> Outcome {
    World::sound().with(|world| world.line().size = Some(Size::Ring { scale: entry(scale), size: size.to_owned() })).recompute()
}

fn bore(scale: &str, size: &str) -> f64 {
    let outcome = ring(scale, size);
    outcome.number(outcome.line().bore().unwrap_or_else(|| panic!("{scale} {size}: {:?}", outcome.findings("size-off-scale"))))
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

/// The shelf with another linear shrinkage of these entries.
fn shrinking(world: &mut World, entries: [(&str, f64); 2]) {
    for (id, shrink) in entries {
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
}

/// Wax in a mould without rubber of its own shrinkage, and the ring of a line with what finishing opens.
fn chained(scale: &str, size: &str, shrinks: [f64; 2], opens: f64) -> Outcome {
    let mut world = World::sound();
    shrinking(&mut world, [("wax-injection", shrinks[0]), ("silver-925", shrinks[1])]);
    world.line().size = Some(Size::Ring { scale: entry(scale), size: size.to_owned() });
    world.line().finishing_opens_mm = said(opens);
    world.recompute()
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
    // No scale has the size 19.82 mm: a scale of the studio's own, on which size 0 is just that.
    let mut world = World::sound();
    shrinking(&mut world, [("wax-injection", pattern_shrink), ("silver-925", metal_shrink)]);
    let mut scale = Entry::clone(Shelf::shipped().entry("ring-us").unwrap());
    let Entry::RingScale(inner) = &mut scale else { panic!("a scale") };
    inner.id = entry("ring-paper");
    inner.rule = RingRule::Diameter { zero_mm: finished, step_mm: 1.0 };
    world.studio.shelf.push(OverlayItem::Add(scale));
    world.line().size = Some(Size::Ring { scale: entry("ring-paper"), size: "0".to_owned() });
    world.line().finishing_opens_mm = said(finished - cast);
    let outcome = world.recompute();
    let ring = outcome.line().ring.unwrap();
    let back = ring.back.unwrap();
    for (step, paper, id) in [
        ("finished", finished, ring.finished),
        ("cast", cast, back.cast),
        ("wax", wax, back.on_pattern),
        ("model", model, back.on_print),
        ("typed, the printer printing true", model, ring.typed.unwrap()[0].measure),
    ] {
        table.row(format!("{step}, mm"), "the paper, backwards", paper, outcome.number(id), Within::Share(1e-12));
    }
    // And forwards, by the shares the paper gives: what was typed comes out finished.
    let forwards = outcome.number(back.on_print) * (1.0 - pattern_shrink) * (1.0 - metal_shrink) + (finished - cast);
    table.row("model to finished ring, mm", "the paper, forwards", finished, forwards, Within::Share(1e-12));
    table.judge(1);
}

#[test]
fn a_us_7_by_hand_to_the_slicer() {
    // US 7 is 0.458 + 7 × 0.032 = 0.682 in = 17.3228 mm inside.
    // A band of 6 mm is wide: 0.5 mm of circumference more, 0.5/π = 0.1592 mm: 17.4820 mm.
    // A comfort fit, 3/8 of a size of 0.8128 mm smaller, 0.3048 mm: 17.1772 mm.
    // Finishing opens 0.19 mm: 16.9872 mm as cast.
    // Silver shrinks 1.5 %: 16.9872/0.985 = 17.2459 mm on the pattern. The print shrinks 0.5 %: 17.2459/0.995 = 17.3325 mm on the print.
    // A made calibration, measured = 1.004 × nominal − 0.06 mm: (17.3325 + 0.06)/1.004 = 17.3232 mm to type.
    // The file is drawn 17.00 mm: 17.3232/17 = 101.90 %.
    let mut world = World::sound();
    shrinking(&mut world, [("resin-castable", 0.005), ("silver-925", 0.015)]);
    world.pattern().material = some("resin-castable");
    world.pattern().file = Some(PatternFile { path: "ring.stl".to_owned(), bore_mm: said(17.0), ..PatternFile::default() });
    let line = world.line();
    line.size = Some(Size::Ring { scale: entry("ring-us"), size: "7".to_owned() });
    (line.band_mm, line.comfort_fit, line.finishing_opens_mm) = (said(6.0), true, said(0.19));
    let mut outcome = world.recompute();
    let ring = outcome.line().ring.unwrap();
    let back = ring.back.unwrap();
    let mut table = Table::default();
    for (step, by_hand, id) in [
        ("bore of the size", 17.3228, ring.bore),
        ("wide band", 17.4820, outcome.by_rule("size.wide-bore")),
        ("comfort fit", 17.1772, ring.finished),
        ("as cast", 16.9872, back.cast),
        ("on the pattern", 17.2459, back.on_pattern),
        ("on the print", 17.3325, back.on_print),
        ("typed, the printer printing true", 17.3325, ring.typed.unwrap()[2].measure),
    ] {
        table.row(format!("US 7, {step}, mm"), "by hand", by_hand, outcome.number(id), Within::Amount(1.0e-4));
    }
    // ± 0.1 mm of the charts, through the chain: 0.1/(0.985 × 0.995) = 0.10203; 0.1/0.8128 = 12.3 % of a size.
    let typed_within = ring.typed.unwrap()[0].within.unwrap();
    table.row("US 7, ± to type, mm", "by hand", 0.10203, outcome.number(typed_within), Within::Printed(5));
    table.row("US 7, ± in sizes", "by hand", 0.1230, outcome.number(ring.within_sizes), Within::Printed(4));
    let scale = ring.typed.unwrap()[0].scale.unwrap();
    table.row("US 7, scale of the file, no calibration", "17.3325/17", 1.019_56, outcome.number(scale), Within::Printed(4));
    let line = PrinterLine { slope: 1.004, offset_mm: -0.06 };
    let (measure, _) = size::typed(&mut outcome.book, Place::Job, back.on_print, Some(line));
    table.row("US 7, to type with the calibration, mm", "by hand", 17.3232, outcome.number(measure), Within::Amount(1.0e-4));
    // The size that prints stays the one that was ordered.
    table.row("US 7, size on papers, mm", "0.682 in", 17.3228, outcome.number(outcome.line().bore().unwrap()), Within::Printed(4));
    table.judge(1);
}

#[test]
fn letters_are_no_surer_than_their_charts() {
    // The shelf's ± 0.16 mm of diameter over 1.25/π mm a letter: charts of UK letters differ by 0.5 mm of circumference, 0.4 of a letter.
    let outcome = ring("ring-uk", "M 1/2");
    let ring = outcome.line().ring.unwrap();
    let mut table = Table::default();
    table.row("UK M½, ± in letters", "0.5 mm over 1.25 mm", 0.4, outcome.number(ring.within_sizes), Within::Amount(0.005));
    table.judge(1);
}

#[test]
fn bands_are_corrected_only_where_it_is_said() {
    let told = |band: Option<f64>, comfort: bool, own: Option<f64>| {
        let mut world = World::sound();
        let line = world.line();
        line.size = Some(Size::Ring { scale: entry("ring-iso"), size: "54.5".to_owned() });
        (line.band_mm, line.comfort_fit, line.comfort_mm) = (band.and_then(said), comfort, own.and_then(said));
        let outcome = world.recompute();
        outcome.number(outcome.line().ring.unwrap().finished) * std::f64::consts::PI
    };
    let mut table = Table::default();
    let supply_house = "a supply house: + 0.5 mm where wider than 4 mm";
    table.row("ISO 54.5, nothing said, mm round", "ISO 8653", 54.5, told(None, false, None), Within::Share(1e-12));
    table.row("ISO 54.5, 4 mm wide", supply_house, 54.5, told(Some(4.0), false, None), Within::Share(1e-12));
    table.row("ISO 54.5, 4.1 mm wide", supply_house, 55.0, told(Some(4.1), false, None), Within::Share(1e-12));
    // ¼ to ½ of a US size is 0.638 to 1.277 mm round.
    let comfort = 54.5 - told(None, true, None);
    table.row("comfort fit, mm round", "a glossary: ¼ to ½ of a US size", 0.957, comfort, Within::Amount(0.32));
    table.row("comfort fit of 0.2 mm, own", "0.2 π", 54.5 - 0.2 * std::f64::consts::PI, told(None, true, Some(0.2)), Within::Share(1e-12));
    table.judge(1);
}

#[test]
fn every_size_comes_back_whole() {
    // Backwards by the program, forwards by hand through shrinkages and a printer's line: each size of each scale, halves and quarters too.
    let (shrinks, opens) = ([0.004, 0.0135], 0.17);
    let line = PrinterLine { slope: 0.9965, offset_mm: 0.043 };
    for (scale, sizes, column) in
        [("ring-iso", "iso_sizes", "iso_size"), ("ring-us", "us_sizes", "us_size"), ("ring-uk", "uk_sizes", "uk_letter")]
    {
        for row in Csv::read(&format!("ringsize/{sizes}.csv")).rows() {
            let mut outcome = chained(scale, row.text(column), shrinks, opens);
            let back = outcome.line().ring.unwrap().back.unwrap();
            let (measure, _) = size::typed(&mut outcome.book, Place::Job, back.on_print, Some(line));
            let printed = line.slope * outcome.number(measure) + line.offset_mm;
            let finished = printed * (1.0 - shrinks[0]) * (1.0 - shrinks[1]) + opens;
            let wanted = row.number("inside_diameter_mm");
            assert!((finished - wanted).abs() < 1e-4, "{scale} {}: {wanted} comes back as {finished}", row.text(column));
        }
    }
}

#[test]
fn outer_sizes_go_the_same_way_and_lose_where_bores_gain() {
    // The symposium paper's ring: its width 4.00 in wax, 4.12 cast (wider than its wax: never mind), 3.82 finished: finishing took 0.30 mm.
    // A tile of 20 × 10 × 3.82 mm, silver 1.5 %, the print true to its file of 20 × 10 × 4 mm.
    let mut world = World::sound();
    shrinking(&mut world, [("resin-castable", 0.005), ("silver-925", 0.015)]);
    world.pattern().material = some("resin-castable");
    world.pattern().file = Some(PatternFile { path: "tile.stl".to_owned(), unit: FileUnit::Centimetre, ..PatternFile::default() });
    world.measured(1, measure(0.8, 5.0, [2.0, 1.0, 0.4]));
    world.line().finished = Finished { x_mm: said(20.0), y_mm: None, z_mm: said(3.82) };
    world.line().finishing_takes_mm = said(0.30);
    let outcome = world.recompute();
    let [x, y, z] = outcome.line().sides;
    assert!(y.is_none());
    let by_hand = |finished: f64| (finished + 0.30) / (0.985 * 0.995);
    let mut table = Table::default();
    for (name, side, finished, file) in [("x", x.unwrap(), 20.0, 20.0), ("z", z.unwrap(), 3.82, 4.0)] {
        let (typed, scale) = (outcome.number(side.typed.measure), outcome.number(side.typed.scale.unwrap()));
        table.row(format!("{name}, cast, mm"), "by hand", finished + 0.30, outcome.number(side.back.cast), Within::Share(1e-12));
        table.row(format!("{name}, to type, mm"), "by hand", by_hand(finished), typed, Within::Share(1e-12));
        table.row(format!("{name}, scale"), "by hand", by_hand(finished) / file, scale, Within::Share(1e-12));
    }
    table.judge(1);
}

#[test]
fn a_mould_shrinks_by_its_rubber_and_its_wax() {
    // Trade figures: rubber 0–1 %, injected wax 2.5 %; shares multiply: 1 − 0.997 × 0.975 = 2.7925 %.
    let mut world = World::sound();
    world.studio.moulds = vec![mould("M-1", "0.9")];
    world.pattern().mould = "M-1".to_owned();
    world.line().size = Some(Size::Ring { scale: entry("ring-iso"), size: "54".to_owned() });
    // Four wanted, one of them no longer, one a remake: it counts like any other. Three of ten are thrown back.
    world.line().quantity = 8;
    world.line().exceptions.insert(2, PieceException { cancelled: true, ..PieceException::default() });
    let remake_of = Some(PieceId { line: LineId(1), number: 1 });
    world.line().exceptions.insert(8, PieceException { remake_of, ..PieceException::default() });
    world.studio.moulds[0].reject_share = said(0.3);
    let outcome = world.recompute();
    let pattern = &outcome.report.patterns[0];
    let figures = pattern.mould.unwrap();
    let mut table = Table::default();
    table.row("mould, shrinkage", "by hand", 0.027_925, outcome.number(pattern.shrink), Within::Share(1e-12));
    table.row("pieces wanted", "8 less one", 7.0, outcome.number(figures.pieces), Within::Amount(0.0));
    // 7/0.7 is ten, and binary numbers would make eleven of it or not as they please.
    table.row("shots", "7/0.7", 10.0, outcome.number(figures.shots), Within::Amount(0.0));
    table.row("wax, g", "10 × 0.9 g", 9.0, outcome.number(figures.wax.unwrap()), Within::Amount(0.0));
    let back = outcome.line().ring.unwrap().back.unwrap();
    let master = 54.0 / std::f64::consts::PI / (1.0 - SILVER_SHRINK) / (0.997 * 0.975);
    table.row("bore of the master, mm", "by hand", master, outcome.number(back.on_print), Within::Share(1e-12));
    table.judge(1);
    let mut wanted = World::sound();
    wanted.studio.moulds = vec![mould("M-1", "0.9")];
    wanted.pattern().mould = "M-1".to_owned();
    let outcome = wanted.recompute();
    assert_eq!(outcome.number(outcome.report.patterns[0].mould.unwrap().shots), 5.0, "4/0.9 is 4.4: a whole fifth shot");
}

/// The shelf's linear shrinkage of sterling.
const SILVER_SHRINK: f64 = 0.01;
