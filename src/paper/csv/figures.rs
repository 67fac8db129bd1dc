//! The figures of a batch as CSV.

use super::{moment, number, table, words};
use crate::calc::{Figure, Value};
use crate::paper::desk::{Desk, SheetInput};
use crate::paper::origin::Provenance;
use crate::paper::words::{figure_title, print_figure};

const HEAD: [&str; 11] = ["place", "key", "title", "value", "unit", "local_time", "state", "rule", "origin", "source", "trust"];

/// Every line of the book, a row each, by place and within a place in the order of making: derived figures and the terms they rest on.
///
/// Columns: `place` (`flask/2`), `key` of the rule or input, `title` in words; `value`, a number with all its digits in the `unit` of its
/// kind (empty for ratios and counts); `local_time` for moments, whose value is minutes; `state`, empty where the value is known and else why
/// it is missing; `rule`, the formula of a derived figure; `origin` in a word (`figure`, `entered`, `studio`, `measured`, `shelf`, `default`,
/// `constant`, `missing`), `source` and `trust`. A key may stand more than once at a place.
#[must_use]
pub fn figures(input: &SheetInput<'_>) -> String {
    let desk = Desk::new(input);
    let mut lines: Vec<Figure<'_>> = input.book.lines().collect();
    lines.sort_by_key(|line| (line.place, line.id));
    table(HEAD, lines.iter().map(|line| row(&desk, line)))
}

fn row(desk: &Desk<'_>, line: &Figure<'_>) -> [String; 11] {
    let (book, origin) = (desk.input.book, Provenance::of(line.origin, desk.input.book));
    let missing = matches!(line.value, Value::Missing(_));
    [
        line.place.to_string(),
        line.origin.key().to_owned(),
        words(&figure_title(line, desk.words.texts)),
        number(line.value),
        line.origin.kind().unit().to_owned(),
        moment(desk, Some(line.id)),
        if missing { words(&print_figure(book, line.id, &desk.words)) } else { String::new() },
        line.rule().map_or_else(String::new, |rule| words(&rule.text())),
        origin.word.to_owned(),
        words(&origin.source),
        origin.trust.to_owned(),
    ]
}
