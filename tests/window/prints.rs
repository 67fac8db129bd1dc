//! A printer is written down, calibrated and printed on, by mouse and by keys alone.

use pourbook::app::page::Page;
use pourbook::job::Axis;
use pourbook::stock::Shelf;

use super::hands::{Hands, Way, words};
use super::{USUAL, on_sample};

fn numbered(key: &str, number: usize) -> String {
    format!("{} {number}", words(key))
}

/// A printer of the studio, set for one resin.
fn a_printer(hands: &mut Hands) {
    hands.go(Page::Settings);
    hands.unfold(&words("settings-printers"));
    hands.press(&words("printer-add"));
    hands.fill(&words("printer-name"), "Second");
    for (key, length) in [("printer-plate-x", "120"), ("printer-plate-y", "68"), ("printer-height", "150"), ("printer-gap", "2")] {
        hands.fill(&words(key), length);
    }
    hands.press(&words("printer-resin-add"));
    let resin = Shelf::shipped().entry("resin-castable").unwrap().name().to_owned();
    hands.choose(&numbered("resin-material", 1), &resin);
    hands.fill(&numbered("resin-layer", 1), "0.05");
    hands.fill(&numbered("resin-base-layers", 1), "6");
    // A bare number is seconds here; another unit is turned into them.
    hands.fill(&numbered("resin-base-exposure", 1), "0.5 min");
    hands.fill(&numbered("resin-exposure", 1), "2.5");
    hands.fill(&numbered("resin-move", 1), "6 s");
    let printer = hands.harness.state().workbook.studio.printers.last().unwrap().clone();
    let setting = &printer.settings[0];
    let seconds = [setting.base_exposure_s, setting.exposure_s, setting.move_s].map(|found| found.unwrap().get());
    assert_eq!((printer.name.as_str(), setting.base_layers, seconds), ("Second", Some(6), [30.0, 2.5, 6.0]));
}

/// Three lengths, accepted.
fn a_calibration(hands: &mut Hands) {
    hands.press(&words("calibration-add"));
    hands.choose(&words("calibration-printer"), "Second");
    for (number, (drawn, measured)) in (1..).zip([("10", "9.98"), ("20", "19.94"), ("40", "39.90")]) {
        hands.press(&words("gauge-add"));
        hands.fill(&numbered("gauge-nominal", number), drawn);
        hands.fill(&numbered("gauge-measured", number), measured);
    }
    hands.tick(&words("calibration-accept"));
    hands.fill(&words("calibration-recheck"), "2027-05-01");
    let studio = hands.harness.state().workbook.studio.clone();
    let line = pourbook::calc::accepted_line(&studio, "Second", studio.calibrations.last().unwrap().material.as_ref(), Axis::X).unwrap();
    assert_eq!(line.rows, 3);
    // In exact fractions 0.99742857142857…
    assert!((line.slope - 0.997_428_571).abs() < 1e-6, "{}", line.slope);
}

fn a_run(hands: &mut Hands) {
    hands.go(Page::Patterns);
    hands.unfold(&words("prints-runs"));
    hands.press(&words("prints-add"));
    hands.fill(&words("prints-name"), "Tuesday");
    hands.choose(&words("prints-printer"), "Second");
    hands.press(&words("prints-row-add"));
    hands.fill(&numbered("prints-row-count", 1), "3");
    hands.fill(&numbered("prints-row-height", 1), "12");
    hands.fill(&words("prints-washed"), "4");
    hands.fill(&words("prints-cured"), "2");
    hands.tick(&words("prints-rinsed"));
    hands.choose(&words("prints-surface"), &words("prints-surface-not-clean"));
    let window = hands.harness.state();
    let (book, report) = (&window.workbook.computed.book, window.report());
    let found = report.prints.last().unwrap();
    assert_eq!(book.number(found.layers), Some(240.0));
    // 6 layers of 36 s, 234 of 8.5 s.
    assert_eq!(book.number(found.time).map(|minutes| (minutes * 60.0).round()), Some(2205.0));
    let raised = |key: &str| report.findings.iter().any(|finding| finding.kind.key == key);
    assert!(raised("print-not-clean") && raised("print-cured-short") && !raised("print-no-setting"));
}

fn all(way: Way) {
    let mut hands = Hands::new(on_sample("first-pour.ron", USUAL), way);
    a_printer(&mut hands);
    a_calibration(&mut hands);
    a_run(&mut hands);
}

#[test]
fn a_print_run_is_planned_by_mouse() {
    all(Way::Mouse);
}

#[test]
fn a_print_run_is_planned_by_keys() {
    all(Way::Keys);
}
