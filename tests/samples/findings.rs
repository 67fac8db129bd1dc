//! Each sample raises just the findings it is meant to.

use pourbook::calc::finding::KINDS;
use pourbook::calc::{Arg, Weight};

use crate::support::{JOBS, computed, open};

/// The findings of a sample: weight, place, kind, and whether somebody answers for it.
fn raised(file: &str) -> Vec<String> {
    let batch = open(file);
    let (report, _) = computed(&batch, &batch.sound);
    let signed = |accepted: Option<usize>| if accepted.is_some() { ", signed" } else { "" };
    let findings = report.findings.iter();
    findings.map(|found| format!("{:?} {} {}{}", found.kind.weight, found.place, found.kind.key, signed(found.accepted))).collect()
}

#[test]
fn the_first_pour_is_clean() {
    assert_eq!(raised("first-pour.ron"), ["Note job defaults", "Note job defaults", "Note job defaults"]);
}

#[test]
fn the_mixed_kiln_has_cautions_that_are_answered_for() {
    assert_eq!(
        raised("mixed-kiln.ron"),
        [
            "Caution tree/1/row/2 feed-thin, signed",
            "Caution tree/3/row/1 feed-thin, signed",
            "Caution tree/3/row/2 feed-thin, signed",
            "Caution flask/3 several-mixes, signed",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
            "Note flask/3 solidus-uncertain",
            "Note burnout/1 mould-ranges-apart",
        ]
    );
}

#[test]
fn the_order_book_waits_for_one_drawing() {
    assert_eq!(
        raised("order-book.ron"),
        ["Caution line/8 line-without-pattern", "Note job defaults", "Note job defaults", "Note pattern/7 drained-void"]
    );
}

#[test]
fn the_fair_waits_to_be_planned() {
    assert_eq!(raised("fair.ron"), ["Note job defaults", "Note burnout/1 load-empty"]);
}

#[test]
fn the_power_cut_left_a_core_too_cold_and_a_fast_schedule_is_told() {
    assert_eq!(
        raised("power-cut.ron"),
        [
            "Caution flask/1 core-not-held",
            "Caution burnout/2 fast-burnout",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
            "Note flask/2 solidus-uncertain",
            "Note burnout/1 mould-ranges-apart",
        ]
    );
}

#[test]
fn solder_in_a_band_of_the_clients_own_gold_is_told() {
    assert_eq!(
        raised("own-gold.ron"),
        [
            "Caution line/1/piece/3 rework-under-mark",
            "Caution melt/1 returns-over, signed",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
        ]
    );
}

#[test]
fn the_three_trees_have_room() {
    assert_eq!(
        raised("three-trees.ron"),
        [
            "Caution tree/2/row/1 feed-thin, signed",
            "Caution tree/3/row/1 feed-thin, signed",
            "Caution tree/3/row/2 feed-thin, signed",
            "Caution tree/3/row/3 feed-thin, signed",
            "Caution tree/3/row/4 feed-thin, signed",
            "Caution flask/1 several-mixes, signed",
            "Caution flask/2 several-mixes, signed",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
            "Note job defaults",
            "Note pattern/4 shells-united",
            "Note flask/2 solidus-uncertain",
        ]
    );
}

/// What the class is to find.
const CLASS: &[&str] = &[
    "Stop flask/1 over-ceiling",
    "Stop flask/1 tree-too-high",
    "Stop flask/1 tree-too-wide",
    "Stop flask/1 two-alloys",
    "Stop flask/2 over-ceiling",
    "Stop flask/2 stones-too-hot",
    "Stop flask/3 mould-refuses",
    "Stop flask/3 over-ceiling",
    "Stop burnout/2 kiln-ceiling",
    "Stop melt/1 under-mark",
    "Stop melt/2 charge-short",
    "Stop melt/2 crucible-full",
    "Stop melt/2 lot-fineness-unknown",
    "Stop melt/2 melt-two-alloys",
    "Stop melt/3 crucible-wrong",
    "Stop melt/4 client-metal",
    "Stop melt/4 under-mark",
    "Caution studio price-stale",
    "Caution line/1 late",
    "Caution line/1 piece-twice",
    "Caution line/2 late",
    "Caution line/3 late",
    "Caution line/3 size-off-scale",
    "Caution line/8 pieces-on-no-tree",
    "Caution line/9 line-without-pattern",
    "Caution line/9 pieces-on-no-tree",
    "Caution pattern/1 sealed-void",
    "Caution pattern/3 file-changed",
    "Caution pattern/3 weight-against-file",
    "Caution pattern/4 gross-without-tare",
    "Caution pattern/5 shot-light",
    "Caution pattern/6 file-unit",
    "Caution pattern/8 file-open",
    "Caution pattern/10 pattern-unknown",
    "Caution pattern/11 file-missing",
    "Caution pattern/12 file-unreadable",
    "Caution pattern/12 not-on-shelf",
    "Caution pattern/13 pair-same-side",
    "Caution pattern/13 pair-weights",
    "Caution pattern/14 weight-against-file",
    "Caution print/1 print-cured-short",
    "Caution print/1 print-not-clean",
    "Caution print/1 print-too-tall",
    "Caution tree/5 part-not-weighed",
    "Caution tree/6 tree-in-no-flask",
    "Caution tree/7 part-not-weighed",
    "Caution flask/1 base-does-not-fit",
    "Caution flask/2 mix-outruns",
    "Caution flask/2 powder-old",
    "Caution flask/2 ratio-outside",
    "Caution flask/2 several-mixes, signed",
    "Caution flask/2 stones-no-quench",
    "Caution flask/2 top-clearance",
    "Caution flask/2 wall-clearance",
    "Caution flask/3 button-over-funnel",
    "Caution flask/3 irreplaceable, signed",
    "Caution flask/3 irreplaceable-beside-trial",
    "Caution flask/4 metal-outside",
    "Caution flask/4 mould-outside",
    "Caution flask/4 over-planned",
    "Caution flask/4 steam-not-meant",
    "Caution flask/6 core-not-held",
    "Caution burnout/1 carbon-left",
    "Caution burnout/1 kiln-full",
    "Caution burnout/1 kiln-segments",
    "Caution burnout/3 ramps-unsaid",
    "Caution burnout/3 table-not-meant",
    "Caution burnout/3 table-too-small",
    "Caution burnout/4 carbon-left",
    "Caution burnout/4 table-not-meant",
    "Caution burnout/1/stage/7 kiln-cannot-follow",
    "Caution burnout/4/stage/4 stage-too-short",
    "Caution melt/1 crucible-low",
    "Caution melt/1 lot-other-metal",
    "Caution melt/2 lot-other-metal",
    "Caution melt/2 lot-unknown",
    "Caution melt/4 lot-other-metal",
    "Note job defaults",
    "Note job defaults",
    "Note job defaults",
    "Note job defaults",
    "Note pattern/2 shells-united",
    "Note pattern/9 mould-unknown",
    "Note print/2 printer-unknown",
    "Note flask/5 core-not-held-perhaps",
    "Note burnout/1 mould-ranges-apart",
];

#[test]
fn the_workshop_class_has_every_mistake_it_is_meant_to_have() {
    assert_eq!(raised("workshop-class.ron"), CLASS);
}

#[test]
fn no_sample_that_is_to_be_poured_has_a_stop() {
    for file in ["first-pour.ron", "mixed-kiln.ron", "order-book.ron", "fair.ron"] {
        let batch = open(file);
        let (report, _) = computed(&batch, &batch.sound);
        assert!(report.findings.iter().all(|found| found.kind.weight != Weight::Stop), "{file}");
    }
}

#[test]
fn an_apprentice_signs_for_nothing_and_some_things_nobody_signs_for() {
    let batch = open("workshop-class.ron");
    let (report, _) = computed(&batch, &batch.sound);
    let stands = |key: &str, place: &str| {
        report.findings.iter().any(|found| found.kind.key == key && found.place.to_string() == place && found.stands())
    };
    assert!(stands("over-ceiling", "flask/1"));
    assert!(stands("mould-refuses", "flask/3"));
    // The same in the master's hand, and for a Stop that may be signed for.
    let mut job = batch.sound.clone();
    job.accepted[2].hands = "MW".to_owned();
    let (report, _) = computed(&batch, &job);
    let signed = |key: &str, place: &str| {
        report.findings.iter().any(|found| found.kind.key == key && found.place.to_string() == place && !found.stands())
    };
    assert!(signed("over-ceiling", "flask/1"));
    assert!(!signed("mould-refuses", "flask/3"));
}

#[test]
fn every_argument_of_a_finding_is_there() {
    for file in JOBS {
        let batch = open(file);
        let (report, book) = computed(&batch, &batch.sound);
        for found in &report.findings {
            assert!(KINDS.contains(&found.kind), "{}", found.kind.key);
            for arg in &found.args {
                match arg {
                    Arg::Figure(id) => assert!(book.number(*id).is_some(), "{file}: {} of {}", found.kind.key, found.place),
                    Arg::Text(words) => assert!(!words.is_empty(), "{file}: {} of {}", found.kind.key, found.place),
                    Arg::Words(keys) => assert!(!keys.is_empty(), "{file}: {} of {}", found.kind.key, found.place),
                    Arg::Givens(givens) => assert!(!givens.is_empty(), "{file}: {} of {}", found.kind.key, found.place),
                    // None of a file's measures were kept.
                    Arg::Count(0) if found.kind.key.starts_with("file-") => {}
                    Arg::Count(count) => assert!(*count > 0, "{file}: {} of {}", found.kind.key, found.place),
                }
            }
        }
    }
}
