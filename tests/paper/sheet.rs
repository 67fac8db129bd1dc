//! The bench sheet.

use jiff::civil::date;
use pourbook::calc::{Book, Id};
use pourbook::job::{Accepted, FlaskId, Place};
use pourbook::paper::set::{LINES, WIDTH};
use pourbook::paper::sheet;
use pourbook::quantity::{Style, print};

use crate::jobs::{Ready, order_book, quick_start, studio, three_flasks};
use crate::world::said;

/// The sheets of paper of a text.
pub fn pages(text: &str) -> Vec<&str> {
    text.split('\u{c}').collect()
}

/// All that a flask's page says, however many sheets of paper it takes.
pub fn flask_page(text: &str, flask: u32) -> String {
    let title = format!("\nFlask {flask},");
    pages(text).into_iter().filter(|page| page.contains(&title)).collect()
}

/// A text without its line breaks, so that wrapped sentences can be found.
pub fn unwrapped(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What must hold for every sheet and quote.
pub fn sound(text: &str) {
    for line in text.lines() {
        assert!(line.trim_start_matches('\u{c}').chars().count() <= WIDTH, "{} columns: {line}", line.chars().count());
    }
    for bad in ["NaN", " inf", "«", "»", "\u{202F}", "\t", "\r"] {
        assert!(!text.contains(bad), "{bad:?} in\n{text}");
    }
    for page in pages(text) {
        assert!(page.lines().count() <= LINES, "{} lines on a page", page.lines().count());
    }
}

/// A printed figure as it stands on paper: the sheet has plain spaces.
pub fn printed(book: &Book, id: Id, style: &Style) -> String {
    let value = book.number(id).unwrap_or_else(|| panic!("{} has no value", book.figure(id).origin.key()));
    unwrapped(&print(value, book.kind(id), style).to_string())
}

#[test]
fn every_weight_of_a_flask_is_on_its_page() {
    for job in [quick_start(), three_flasks()] {
        let ready = Ready::new(job, studio());
        let text = sheet(&ready.input());
        let mut seen = 0;
        for flask in &ready.report.flasks {
            let page = unwrapped(&flask_page(&text, flask.id.0));
            let (metal, mix) = (&flask.metal, &flask.mix);
            let tree = ready.report.trees.iter().find(|tree| Some(tree.id) == flask.tree).unwrap();
            let parts = tree.parts.iter().filter_map(|part| part.weight);
            let hung = ready.job.trees.iter().find(|tree| Some(tree.id) == flask.tree).unwrap().pieces.iter();
            let rough = hung.filter_map(|hung| ready.report.lines.iter().find(|line| line.line == hung.line)).map(|line| line.rough);
            let weights = [metal.tree, metal.button, metal.reserve, metal.charge, metal.on_balance];
            for id in weights.into_iter().chain(parts).chain(rough) {
                assert!(page.contains(&printed(&ready.book, id, &Style::METRIC)), "{}", ready.book.figure(id).origin.key());
                seen += 1;
            }
            for id in [mix.powder, mix.water] {
                assert!(page.contains(&printed(&ready.book, id, &Style::METRIC.for_powder())), "{}", ready.book.figure(id).origin.key());
                seen += 1;
            }
        }
        for melt in &ready.report.melts {
            assert!(unwrapped(&text).contains(&printed(&ready.book, melt.charge, &Style::METRIC)));
        }
        for line in &ready.report.lines {
            assert!(unwrapped(&text).contains(&printed(&ready.book, line.rough_all, &Style::METRIC)));
        }
        assert!(seen >= 8, "{seen} weights looked at");
        sound(&text);
    }
}

#[test]
fn temperatures_times_and_gauge_are_on_the_page() {
    let ready = Ready::new(quick_start(), studio());
    let page = unwrapped(&flask_page(&sheet(&ready.input()), 1));
    let flask = &ready.report.flasks[0];
    let [low, high] = flask.pour.metal_range.unwrap();
    let of = |id| printed(&ready.book, id, &Style::METRIC);
    let metal = page.split("Metal").nth(1).unwrap_or_default();
    assert!(page.contains(&format!("within {} to {}", of(low), of(high))) && page.contains(&of(flask.pour.metal)), "{metal}");
    assert!(page.contains(&format!("Over the liquidus {}", of(flask.pour.superheat))));
    // 101.325 kPa less 2.487 kPa, the pressure of water vapour at 21 °C; an inch of mercury is 3.386389 kPa.
    assert!(page.contains("Gauge that boils it 98.8 kPa or 29.2 inHg"), "{page}");
    // Dublin is on UTC in November; the pour is the load's, the rest counts backwards from it.
    assert!(page.contains("Pour Thu 26 Nov 09:00"));
    let stage = &ready.report.burnouts[0].stages[0];
    for id in [stage.target, stage.hold, stage.ramp] {
        assert!(page.contains(&of(id)));
    }
    assert!(page.contains("If they do, the programme takes 9 h 29 min; if not, 12 h 51 min."));
    // Mix 4, bowl 1½, pour 1, flask 1½ minutes, added up on the clock.
    for (step, clock) in
        [("Mix", "4 min 4 min"), ("Bowl under vacuum", "1 min 30 s 5 min 30 s"), ("Flask under vacuum", "1 min 30 s 8 min")]
    {
        assert!(page.contains(&format!("{step} {clock}")), "{step}");
    }
    assert!(page.contains("Flask at rest by 9 min"));
}

#[test]
fn clock_times_are_the_wall_s_in_summer_too() {
    let mut job = quick_start();
    job.burnouts[0].pour_at = Some(date(2026, 7, 2).at(9, 0, 0, 0));
    let ready = Ready::new(job, studio());
    assert!(unwrapped(&sheet(&ready.input())).contains("Pour Thu 2 Jul 09:00"));
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let text = || sheet(&Ready::new(three_flasks(), studio()).input());
    assert_eq!(text(), text());
}

#[test]
fn pages_are_numbered_and_carry_batch_version_and_day() {
    let ready = Ready::new(three_flasks(), studio());
    let text = sheet(&ready.input());
    let pages = pages(&text);
    for (index, page) in pages.iter().enumerate() {
        assert!(page.contains(&format!("page {} of {}", index + 1, pages.len())));
        assert!(page.contains("Batch Late November") && page.contains("version 5f0c12ab34de") && page.contains("24 Nov 2026"));
        assert!(unwrapped(page).contains("local codes and licensed trades come first"));
    }
    for flask in 1..=3 {
        assert!(flask_page(&text, flask).contains(&format!("Scratch B{flask} into the face")));
    }
}

#[test]
fn stops_stand_first_and_who_answers_is_named() {
    let mut job = three_flasks();
    let first = Ready::new(job.clone(), studio());
    let stop = first.report.findings.iter().find(|finding| finding.kind.key == "over-ceiling").unwrap();
    job.accepted = vec![Accepted {
        finding: "over-ceiling".into(),
        place: Place::Flask(FlaskId(1)),
        value: said(stop.value.unwrap()),
        hands: "RB".into(),
        reason: "Trial of a new powder.".into(),
        at: Some(date(2026, 11, 24).at(8, 0, 0, 0)),
    }];
    let ready = Ready::new(job, studio());
    let text = sheet(&ready.input());
    let page = unwrapped(&flask_page(&text, 1));
    let at = |words: &str| page.find(words).unwrap_or_else(|| panic!("{words} is not on the page"));
    assert!(at("STOP") < at("CAUTION") && at("CAUTION") < at("NOTE") && at("NOTE") < at("POWDER"));
    assert!(page.contains("RB answers for this, 24 Nov 2026. Trial of a new powder."));
    assert!(!flask_page(&text, 2).contains("RB answers"), "it was accepted for one flask");
    let last = unwrapped(pages(&text).last().unwrap());
    assert!(last.contains("5 pieces of anchor charm for ODA hang on no tree"), "{last}");
    assert!(!page.contains("anchor charm"), "what belongs to no flask is on no flask's page");
}

#[test]
fn every_finding_stands_somewhere() {
    for job in [quick_start(), three_flasks(), order_book()] {
        let ready = Ready::new(job, studio());
        let text = unwrapped(&sheet(&ready.input()));
        let input = ready.input();
        let words = pourbook::paper::words::Words { texts: input.texts, style: input.style, zone: &ready.setting.zone, currency: "EUR" };
        assert!(!ready.report.findings.is_empty());
        for finding in &ready.report.findings {
            let sentence = pourbook::paper::words::finding_sentence(finding, &ready.book, &words);
            assert!(text.contains(&unwrapped(&sentence)), "{sentence}");
        }
    }
}

#[test]
fn a_file_that_is_still_read_says_not_known_yet() {
    let mut job = three_flasks();
    for pattern in &mut job.patterns {
        pattern.weighed = None;
        pattern.file = Some(pourbook::job::PatternFile { path: "a.stl".into(), ..Default::default() });
    }
    job.trees[0].weighed.clear();
    let text = sheet(&Ready::new(job, studio()).input());
    let page = flask_page(&text, 1);
    let charge = page.lines().find(|line| line.contains("CHARGE ON THE BALANCE")).unwrap();
    assert!(charge.contains("not known yet"), "{charge}");
    let powder = page.lines().find(|line| line.contains("POWDER")).unwrap();
    assert!(powder.contains("not known yet"), "{powder}");
    assert!(unwrapped(&page).contains("Rough each"));
    sound(&text);
}

#[test]
fn a_small_bowl_takes_several_mixes() {
    let mut job = quick_start();
    job.flasks[0].bowl_cm3 = said(1000.0);
    let ready = Ready::new(job, studio());
    let page = unwrapped(&sheet(&ready.input()));
    let mix = &ready.report.flasks[0].mix;
    let mixes = ready.book.number(mix.mixes).unwrap();
    assert!(mixes > 1.0);
    for number in 1..=mixes as u32 {
        assert!(page.contains(&format!(
            "POWDER, mix {number} of {mixes} {}",
            printed(&ready.book, mix.powder_of_mix, &Style::METRIC.for_powder())
        )));
        assert!(
            page.contains(&format!(
                "WATER, mix {number} of {mixes} {}",
                printed(&ready.book, mix.water_of_mix, &Style::METRIC.for_powder())
            ))
        );
    }
}

#[test]
fn the_trade_s_units_are_used_where_asked_for() {
    let ready = Ready { style: Style::TRADE, ..Ready::new(three_flasks(), studio()) };
    let text = sheet(&ready.input());
    let page = unwrapped(&flask_page(&text, 1));
    assert!(page.contains("Flask 1, Ø3.50×4.00 in"), "{page}");
    // 966 °C is 1770 °F, 90.5 g are 58.19 dwt; powder stays in grams.
    assert!(page.contains("Metal 1 770 °F") && page.contains("58.19 dwt") && page.contains("POWDER 837 g"), "{page}");
    assert!(page.contains("98.8 kPa or 29.2 inHg"));
    sound(&text);
}

#[test]
fn prices_stand_on_the_last_page_alone() {
    let ready = Ready::new(three_flasks(), studio());
    let text = sheet(&ready.input());
    let pages = pages(&text);
    let (last, flasks) = pages.split_last().unwrap();
    assert!(flasks.iter().all(|page| !page.contains("EUR")));
    assert!(
        last.contains("For the studio only") && last.contains("22.33 EUR") && last.contains("23 Nov 2026") && last.contains("fine silver")
    );
}
