//! Pages as they are set: nothing outside the paper, nothing over anything, nothing parted from its unit, in any job.

use std::collections::BTreeSet;

use jiff::civil::date;
use pourbook::calc::Runs;
use pourbook::job::{Flask, FlaskId, Hung, Job, Line, LineId, MainSprue, PatternId, Studio, Tree, TreeId, check};
use pourbook::paper::layout::face::Face;
use pourbook::paper::layout::mark::{Bounds, Content, Laid, Leaf, Mark, Tag};
use pourbook::paper::layout::{Format, MARGIN};
use pourbook::paper::{Dress, Printed, SheetInput, Sort, as_pages, papers};
use pourbook::quantity::{Finite, Style};
use pourbook::texts::{Language, Texts};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

use crate::generate;
use crate::jobs::{Ready, order_book, pattern, quick_start, studio, three_flasks};
use crate::world::{entry, lacks_a_text, line, said};

/// All words of a page, in the order they were set.
pub fn words(leaf: &Leaf) -> String {
    let of = |content: &Content| match &content.mark {
        Mark::Text { run, .. } => Some(run.words.clone()),
        _ => None,
    };
    leaf.contents.iter().filter_map(of).collect::<Vec<_>>().join(" ")
}

/// What the words of a text cover: a space at their end is not seen.
fn seen(mark: &Mark) -> Option<(Bounds, String)> {
    let Mark::Text { run, size_pt, .. } = mark else { return None };
    let spaces = run.words.len() - run.words.trim_end().len();
    let bounds = mark.bounds();
    let space: f64 = run.glyphs.iter().rev().take(spaces).map(|glyph| f64::from(glyph.advance)).sum();
    Some((Bounds { right: bounds.right - space * size_pt * 25.4 / 72.0, ..bounds }, run.words.clone()))
}

/// Checks a document's pages; gives how many words it looked at.
pub fn sound(laid: &Laid, what: &str) -> usize {
    let [wide, high] = laid.format.size_mm();
    let least = MARGIN - 2.5;
    let mut looked = 0;
    for (number, leaf) in laid.leaves.iter().enumerate() {
        let mut texts: Vec<(Bounds, String)> = Vec::new();
        let mut frames: Vec<Bounds> = Vec::new();
        for content in &leaf.contents {
            let bounds = seen(&content.mark).map_or_else(|| content.mark.bounds(), |(bounds, _)| bounds);
            let inside = bounds.left >= least && bounds.top >= least && bounds.right <= wide - least && bounds.bottom <= high - least;
            assert!(inside, "{what}, page {}: outside the paper {:?}", number + 1, content.mark);
            if let Some(text) = seen(&content.mark).filter(|(_, words)| !words.trim().is_empty()) {
                texts.push(text);
            }
            if let Mark::Frame { .. } = &content.mark {
                frames.push(bounds);
            }
        }
        texts.sort_by(|one, other| one.0.top.total_cmp(&other.0.top));
        for (index, (bounds, words)) in texts.iter().enumerate() {
            let inner = shrunk(*bounds, 0.12);
            let below = texts[index + 1..].iter().take_while(|(other, _)| other.top < bounds.bottom);
            for (other, said) in below {
                assert!(!inner.meets(&shrunk(*other, 0.12)), "{what}, page {}: “{words}” over “{said}”", number + 1);
            }
            for frame in &frames {
                let whole =
                    frame.left <= bounds.left && frame.right >= bounds.right && frame.top <= bounds.top && frame.bottom >= bounds.bottom;
                assert!(whole || !inner.meets(frame), "{what}, page {}: “{words}” runs over the edge of a box", number + 1);
            }
        }
        for (_, words) in &texts {
            assert!(!lacks_a_text(words), "{what}: {words}");
        }
        looked += texts.len();
    }
    tree_is_sound(laid, what);
    looked
}

fn shrunk(bounds: Bounds, by: f64) -> Bounds {
    Bounds { left: bounds.left + by, top: bounds.top + by, right: bounds.right - by, bottom: bounds.bottom - by }
}

/// Nodes stand after what they belong to, rows in tables, cells in rows, and every mark belongs to a node that is there.
fn tree_is_sound(laid: &Laid, what: &str) {
    for (index, branch) in laid.tree.iter().enumerate() {
        assert!(branch.parent.is_none_or(|parent| parent < index), "{what}");
        let parent = branch.parent.map(|parent| &laid.tree[parent].tag);
        match &branch.tag {
            Tag::Row => assert_eq!(parent, Some(&Tag::Table), "{what}"),
            Tag::Cell | Tag::HeadCell => assert_eq!(parent, Some(&Tag::Row), "{what}"),
            Tag::Figure(says) => assert!(!says.is_empty(), "{what}: a drawing without its sentence"),
            _ => {}
        }
    }
    let mut nodes = BTreeSet::new();
    for content in laid.leaves.iter().flat_map(|leaf| &leaf.contents) {
        if let Some(node) = content.node {
            assert!(node < laid.tree.len(), "{what}");
            nodes.insert(node);
        }
    }
    assert!(nodes.iter().any(|node| matches!(laid.tree[*node].tag, Tag::Heading(1, _))), "{what}: no title is read");
}

fn dresses() -> Vec<Dress> {
    let mut all = Vec::new();
    for format in [Format::A4, Format::Letter] {
        for language in Language::ALL {
            for trade_units in [false, true] {
                all.push(Dress { format, language, trade_units, comma: language.has_comma() });
            }
        }
    }
    all
}

/// Sets every document of a job in a dress; gives how many words were looked at.
fn every_document(ready: &Ready, dress: Dress) -> usize {
    let style = dress.style();
    let input = SheetInput { texts: dress.texts(), style: &style, ..ready.input() };
    let mut looked = 0;
    for sort in Sort::ALL {
        for printed in papers(&input, sort) {
            let laid = as_pages(&printed, dress.format, input.texts);
            assert!(!laid.leaves.is_empty());
            looked += sound(&laid, &format!("{sort:?} {} {dress:?}", printed.name));
        }
    }
    looked
}

#[test]
fn every_document_of_the_usual_jobs_is_sound_in_every_dress() {
    for job in [quick_start(), three_flasks(), order_book()] {
        let ready = Ready::new(job, studio());
        for dress in dresses() {
            assert!(every_document(&ready, dress) > 40, "{dress:?}");
        }
    }
}

#[test]
fn a_thousand_jobs_of_any_kind_are_sound_on_paper() {
    let mut runner = TestRunner::new(Config { cases: 1000, failure_persistence: None, ..Config::default() });
    let dress = (any::<bool>(), any::<bool>(), any::<bool>(), any::<bool>()).prop_map(|(letter, german, trade_units, comma)| Dress {
        format: if letter { Format::Letter } else { Format::A4 },
        language: if german { Language::German } else { Language::English },
        trade_units,
        comma,
    });
    let looked = std::cell::Cell::new(0);
    runner
        .run(&(generate::job(), generate::studio(), dress), |(job, studio, dress)| {
            let (job, _) = check::mend(&job);
            let (studio, _) = check::mend_studio(&studio);
            looked.set(looked.get() + every_document(&Ready::with_runs(job, studio, &Runs::default()), dress));
            Ok(())
        })
        .unwrap();
    assert!(looked.get() > 100_000, "{} words looked at", looked.get());
}

fn bench(job: Job, style: &Style, format: Format) -> Laid {
    let ready = Ready::new(job, studio());
    let input = SheetInput { style, ..ready.input() };
    let printed: Vec<Printed> = papers(&input, Sort::Bench);
    as_pages(&printed[0], format, input.texts)
}

#[test]
fn a_trunk_longer_than_its_flask_stays_on_the_paper() {
    let job = Job {
        trees: vec![Tree {
            id: TreeId(5),
            main_sprue: Some(MainSprue { diameter_mm: Finite::new(0.01), length_mm: Finite::new(191.88), ..MainSprue::default() }),
            ..Tree::default()
        }],
        flasks: vec![Flask { id: FlaskId(1), vessel: Some(entry("flask-89x76")), tree: Some(TreeId(5)), ..Flask::default() }],
        ..Job::default()
    };
    for dress in dresses() {
        assert!(every_document(&Ready::with_runs(job.clone(), Studio::default(), &Runs::default()), dress) > 0);
    }
}

#[test]
fn an_ordinary_flask_is_one_page_on_either_paper_in_either_language() {
    let mut ordinary = three_flasks();
    // The brass flask of this job has eight findings of its own: in German on the shorter paper it runs on.
    ordinary.flasks.retain(|flask| flask.id.0 != 2);
    // Nor has an ordinary load a turn against the heat, or steam for what does not run out by it: both are findings of their own.
    ordinary.flasks.iter_mut().for_each(|flask| flask.turn = None);
    ordinary.burnouts.iter_mut().for_each(|load| load.dewax_min = None);
    let jobs = [
        (quick_start(), dresses()),
        (ordinary, dresses()),
        (three_flasks(), dresses().into_iter().filter(|dress| dress.language == Language::English).collect()),
    ];
    let mut flasks = 0;
    for (job, dresses) in jobs {
        let ready = Ready::new(job, studio());
        for dress in dresses {
            let style = dress.style();
            let input = SheetInput { texts: dress.texts(), style: &style, ..ready.input() };
            let laid = as_pages(&papers(&input, Sort::Bench)[0], dress.format, input.texts);
            for flask in 0..ready.job.flasks.len() {
                let begins = laid.sections[flask].1;
                let ends = laid.sections.get(flask + 1).map_or(laid.leaves.len(), |next| next.1);
                assert_eq!(ends - begins, 1, "{dress:?}: {}", laid.sections[flask].0);
                flasks += 1;
            }
        }
    }
    assert!(flasks > 30, "{flasks}");
}

#[test]
fn twenty_four_pieces_run_on_with_their_head_repeated() {
    let mut job = three_flasks();
    for number in 10..34_u32 {
        let mut one: Line = line(number, &format!("leaf number {number} of the hedge, with a long name"), 1, "silver-925", 1);
        one.pattern = Some(PatternId(number));
        job.patterns.push(pattern(number, "leaf", "wax-injection", "0.4"));
        job.orders[0].lines.push(one);
        job.trees[0].pieces.push(Hung { line: LineId(number), ..Hung::default() });
    }
    let laid = bench(job, &Style::METRIC, Format::A4);
    sound(&laid, "24 pieces");
    let begins = laid.sections[0].1;
    let ends = laid.sections[1].1;
    assert!(ends - begins >= 2, "it does not go on one page");
    assert!(words(&laid.leaves[begins + 1]).contains("Flask 1") && words(&laid.leaves[begins + 1]).contains("continued"));
    let all: String = laid.leaves[begins..ends].iter().map(words).collect::<Vec<_>>().join(" ");
    for number in 10..34 {
        assert!(all.contains(&format!("leaf number {number}")), "{number}");
    }
    for (index, leaf) in laid.leaves.iter().enumerate() {
        let text = words(leaf);
        assert!(text.contains(&format!("page {} of {}", index + 1, laid.leaves.len())), "{text}");
        assert!(text.contains("Batch Late November") && text.contains("version 5f0c12ab34de") && text.contains("24 Nov 2026"));
    }
}

#[test]
fn a_table_that_runs_on_has_its_heads_again_and_they_are_read_once() {
    let mut job = order_book();
    for number in 20..140_u32 {
        job.orders[0].lines.push(line(number, &format!("stud {number}"), 2, "silver-925", 1));
    }
    let ready = Ready::new(job, studio());
    let slips = papers(&ready.input(), Sort::Slip);
    let laid = as_pages(&slips[0], Format::A4, Texts::english());
    sound(&laid, "long slip");
    assert!(laid.leaves.len() > 4);
    let heads = |leaf: &Leaf| {
        let code = |content: &&Content| matches!(&content.mark, Mark::Text { run, .. } if run.words == "Code");
        leaf.contents.iter().filter(code).map(|content| content.node.is_some()).collect::<Vec<_>>()
    };
    let all: Vec<bool> = laid.leaves.iter().flat_map(heads).collect();
    assert!(all.len() > 3 && all.iter().filter(|read| **read).count() == 1, "{all:?}");
}

#[test]
fn weights_are_large_and_bold_and_stand_beside_a_box() {
    let ready = Ready::new(quick_start(), studio());
    let laid = as_pages(&papers(&ready.input(), Sort::Bench)[0], Format::A4, Texts::english());
    let charge = pourbook::paper::words::print_figure(
        &ready.book,
        ready.report.flasks[0].metal.on_balance,
        &pourbook::paper::words::Words { texts: Texts::english(), style: &Style::METRIC, zone: &ready.setting.zone, currency: "EUR" },
    );
    let large = laid.leaves[0].contents.iter().any(|content| {
        matches!(&content.mark, Mark::Text { run, size_pt, .. } if run.words == charge && run.face == Face::Bold && *size_pt > 14.0)
    });
    assert!(large, "{charge}");
    let boxes = laid.leaves[0].contents.iter().filter(|content| matches!(content.mark, Mark::Frame { .. })).count();
    assert!(boxes >= 12, "{boxes} boxes to tick and to write in");
}

#[test]
fn decimal_marks_stand_below_each_other() {
    let ready = Ready::new(order_book(), studio());
    let quotes = papers(&ready.input(), Sort::Quote);
    let mut columns = 0;
    for printed in &quotes {
        let laid = as_pages(printed, Format::A4, Texts::english());
        let mark_of = |content: &Content| {
            let Mark::Text { at, run, size_pt, .. } = &content.mark else { return None };
            let words = run.words.trim_end();
            let money = words.ends_with("EUR") && words.starts_with(|sign: char| sign.is_ascii_digit());
            let point = words.find('.').filter(|_| money && !words.contains('/'))?;
            let before: f64 = run.glyphs.iter().filter(|glyph| glyph.of.start < point).map(|glyph| f64::from(glyph.advance)).sum();
            Some(at[0] + before * size_pt * 25.4 / 72.0)
        };
        let marks: Vec<f64> = laid.leaves[0].contents.iter().filter_map(mark_of).collect();
        if marks.len() > 1 {
            columns += 1;
            assert!(marks.iter().all(|mark| (mark - marks[0]).abs() < 0.35), "{}: {marks:?}", printed.name);
        }
    }
    assert!(columns > 0);
}

#[test]
fn what_is_not_known_yet_says_so_in_its_place() {
    let mut job = three_flasks();
    job.patterns[0].file = Some(pourbook::job::PatternFile { path: "limpet.stl".into(), ..Default::default() });
    job.patterns[0].weighed = None;
    // A file that no run tells of is still being read.
    let laid = bench(job, &Style::METRIC, Format::A4);
    assert!(words(&laid.leaves[0]).contains("not known yet"), "{}", words(&laid.leaves[0]));
    sound(&laid, "pending");
}

#[test]
fn pages_are_set_the_same_way_every_time() {
    let laid = || bench(three_flasks(), &Style::METRIC, Format::Letter);
    assert_eq!(laid(), laid());
    let mut job = three_flasks();
    job.orders[0].due = Some(date(2026, 12, 5));
    job.flasks[0].collar_mm = said(12.0);
    assert_ne!(bench(job, &Style::METRIC, Format::Letter), laid());
}
