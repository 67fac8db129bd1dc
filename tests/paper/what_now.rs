//! The cards for when something goes wrong: whole in both languages, large, a page each, with what the batch knows.

use std::collections::BTreeSet;

use pourbook::job::{Job, Studio};
use pourbook::paper::layout::face::Face;
use pourbook::paper::layout::mark::{Content, Laid, Leaf, Mark};
use pourbook::paper::layout::{Format, MARGIN};
use pourbook::paper::what_now::{Card, Trouble, card};
use pourbook::paper::{SheetInput, Sort, as_pages, as_pdf, as_text, papers};
use pourbook::quantity::Style;
use pourbook::texts::{Language, Texts};

use crate::jobs::{Ready, quick_start, studio, three_flasks};
use crate::pages::{sound, words};

fn cards(ready: &Ready, language: Language) -> Vec<Card> {
    let input = SheetInput { texts: Texts::of(language), ..ready.input() };
    Trouble::ALL.into_iter().map(|trouble| card(&input, trouble)).collect()
}

fn sentences(card: &Card) -> Vec<&String> {
    [&card.title, &card.first, &card.help, &card.source].into_iter().chain(&card.steps).chain(&card.never).collect()
}

#[test]
fn every_card_is_whole_in_every_language() {
    let ready = Ready::new(three_flasks(), studio());
    let [english, german] = Language::ALL.map(|language| cards(&ready, language));
    assert_eq!((english.len(), german.len()), (9, 9));
    for (one, other) in english.iter().zip(&german) {
        assert_eq!((one.steps.len(), one.never.len()), (other.steps.len(), other.never.len()), "{}", one.title);
        assert!((4..=7).contains(&one.steps.len()) && one.never.len() >= 2, "{}", one.title);
        for (said, german) in sentences(one).into_iter().zip(sentences(other)) {
            for words in [said, german] {
                assert!(words.chars().count() > 5 && !words.contains('«') && !words.contains('{'), "{words}");
            }
            assert_ne!(said, german, "said in German");
        }
        // What is to be done is said shortly.
        for step in one.steps.iter().chain(&other.steps) {
            assert!(step.chars().count() < 150 && step.ends_with('.'), "{step}");
        }
    }
    let titles: BTreeSet<&String> = english.iter().chain(&german).map(|card| &card.title).collect();
    assert_eq!(titles.len(), 18, "every card has a name of its own");
}

#[test]
fn people_come_before_metal_and_help_is_never_far() {
    let ready = Ready::new(Job::default(), Studio::default());
    for card in cards(&ready, Language::English) {
        let first = card.first.to_lowercase();
        assert!(["everybody", "nobody", "somebody", "leave", "away"].iter().any(|word| first.contains(word)), "{first}");
        assert!(card.help.contains("emergency number") || card.help.contains("Always"), "{}", card.help);
        assert!(card.facts.is_empty(), "an empty batch knows nothing: {:?}", card.facts);
    }
    // First aid: how long, with what, and what never (North Bristol NHS Trust, First aid for burns: 10 to 30 minutes, no ice, no cream).
    let burn = card(&ready.input(), Trouble::Burn);
    let all = sentences(&burn).into_iter().cloned().collect::<Vec<_>>().join(" ");
    for words in ["running water", "20 minutes", "Rings", "No ice, no cream", "Do not pull off what sticks", "emergency number"] {
        assert!(all.contains(words), "{words} is not in {all}");
    }
    // Carbon monoxide: out, call, and nobody back before it was measured (NC Poison Control, Carbon monoxide).
    let fume = card(&ready.input(), Trouble::Fume);
    let all = sentences(&fume).into_iter().cloned().collect::<Vec<_>>().join(" ");
    for words in ["open air", "Headache", "carbon monoxide", "Nobody goes back until the air was measured"] {
        assert!(all.contains(words), "{words} is not in {all}");
    }
}

/// Sizes of the words set in a face on a leaf, in points, without its head and foot.
fn sizes(leaf: &Leaf, face: Face) -> Vec<f64> {
    let of = |content: &Content| match &content.mark {
        Mark::Text { run, size_pt, .. } if run.face == face && *size_pt > 8.0 => Some(*size_pt),
        _ => None,
    };
    leaf.contents.iter().filter_map(of).collect()
}

fn laid(ready: &Ready, format: Format, language: Language, style: &Style) -> Laid {
    let input = SheetInput { texts: Texts::of(language), style, ..ready.input() };
    let printed = papers(&input, Sort::WhatNow);
    assert_eq!(printed.len(), 1, "all cards in one document");
    as_pages(&printed[0], format, input.texts)
}

#[test]
fn every_card_is_one_large_page() {
    for job in [Job::default(), quick_start(), three_flasks()] {
        let ready = Ready::new(job, studio());
        for format in [Format::A4, Format::Letter] {
            for (language, style) in [(Language::English, Style::METRIC), (Language::German, Style::TRADE)] {
                let laid = laid(&ready, format, language, &style);
                sound(&laid, &format!("{format:?} {language:?}"));
                assert_eq!(laid.leaves.len(), 9, "{format:?} {language:?} {:?}", laid.sections);
                for (place, (leaf, (title, begins))) in laid.leaves.iter().zip(&laid.sections).enumerate() {
                    assert_eq!(*begins, place, "{title}");
                    let large = sizes(leaf, Face::Bold).into_iter().fold(0.0, f64::max);
                    let least = sizes(leaf, Face::Plain).into_iter().fold(f64::INFINITY, f64::min);
                    assert!(large >= 28.0 && least >= 11.0, "{title}: title {large} pt, smallest words {least} pt");
                    // It fills what it hangs on.
                    let low = leaf
                        .contents
                        .iter()
                        .map(|content| content.mark.bounds().bottom)
                        .filter(|y| *y < format.size_mm()[1] - MARGIN - 9.0);
                    let low = low.fold(0.0, f64::max);
                    assert!(low > 0.75 * format.size_mm()[1], "{title} ends at {low} mm");
                    let said = words(leaf);
                    assert!(said.contains(&Texts::of(language).label("sheet-foot")[..20]), "{said}");
                }
            }
        }
    }
}

#[test]
fn a_pdf_and_a_text_have_nine_pages_with_numbered_steps() {
    let ready = Ready::new(three_flasks(), studio());
    let input = ready.input();
    let printed = papers(&input, Sort::WhatNow);
    let bytes = as_pdf(&printed[0], Format::A4, &input).unwrap();
    assert!(bytes.starts_with(b"%PDF-1.7") && bytes.windows(8).any(|word| word == b"/Count 9"));
    let text = as_text(&printed, Sort::WhatNow, input.texts);
    let pages: Vec<&str> = text.split('\u{c}').collect();
    assert_eq!(pages.len(), 9, "{text}");
    for page in pages {
        for number in 1..=7 {
            assert!(page.lines().any(|line| line.starts_with(&format!(" {number}. "))), "{number} in\n{page}");
        }
        assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
    }
}

fn fact(ready: &Ready, style: &Style, trouble: Trouble) -> Vec<(String, String)> {
    let facts = card(&SheetInput { style, ..ready.input() }, trouble).facts;
    facts.into_iter().map(|field| (field.label, field.value.replace('\u{202F}', " "))).collect()
}

#[test]
fn cards_show_what_the_batch_knows() {
    let ready = Ready::new(three_flasks(), studio());
    let off = fact(&ready, &Style::METRIC, Trouble::KilnOff);
    assert_eq!(off.len(), 1);
    assert!(off[0].1.contains("Overnight") && off[0].1.contains("B1, B2, B3"), "{off:?}");
    // The shelf's ceilings, in the order of the flasks.
    let over = fact(&ready, &Style::METRIC, Trouble::KilnOver);
    let stops: Vec<bool> = over.iter().zip(["788 °C", "788 °C", "1 100 °C"]).map(|((_, value), stop)| value.starts_with(stop)).collect();
    assert_eq!(stops, [true; 3], "{over:?}");
    let over = fact(&ready, &Style::TRADE, Trouble::KilnOver);
    // 788 °C × 1.8 + 32.
    assert!(over[0].1.starts_with("1 450 °F"), "{over:?}");
    let dead = fact(&ready, &Style::METRIC, Trouble::PumpDead);
    assert_eq!(dead[0].1, "B2", "the one flask that fills by weight comes first: {dead:?}");
    assert!(dead.iter().skip(1).any(|(label, value)| label.starts_with("Sterling silver 925") && value.contains("°C")), "{dead:?}");
    for trouble in [Trouble::Burn, Trouble::Fume, Trouble::Spill] {
        assert!(fact(&ready, &Style::METRIC, trouble).is_empty(), "{trouble:?}");
    }
}

#[test]
fn stones_lower_the_ceiling_that_is_shown() {
    let mut job = three_flasks();
    job.patterns[0].stones = true;
    let ready = Ready::new(job, studio());
    let over = fact(&ready, &Style::METRIC, Trouble::KilnOver);
    assert!(over[0].0.contains("stones") && over[0].1.starts_with("454 °C"), "{over:?}");
    assert!(over[1].1.starts_with("788 °C"), "{over:?}");
}

#[test]
fn a_long_batch_stays_on_its_pages() {
    let mut job = three_flasks();
    for number in 0..30_u32 {
        let mut flask = job.flasks[(number % 3) as usize].clone();
        flask.id.0 = 100 + number;
        flask.scratch = format!("N{number}");
        job.flasks.push(flask);
        let mut load = job.burnouts[0].clone();
        load.id.0 = 100 + number;
        load.name = format!("Load {number}");
        job.burnouts.push(load);
    }
    let ready = Ready::new(job, studio());
    let off = fact(&ready, &Style::METRIC, Trouble::KilnOff);
    assert_eq!(off.len(), 5, "four loads, and how many more: {off:?}");
    assert!(off[0].1.contains("and 25 more") && off[4].1.contains("27 more"), "{off:?}");
    assert_eq!(laid(&ready, Format::Letter, Language::German, &Style::TRADE).leaves.len(), 9);
}
