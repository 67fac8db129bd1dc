//! `pourbook figures`: every figure with its working.

use std::fmt::Write as _;

use super::args::Listing;
use super::open::Computed;
use super::out::Out;
use super::sheets::plain_input;
use super::tables::give;
use super::{BAD_INPUT, FINE, json};
use crate::calc::Figure;
use crate::job::Place;
use crate::paper;
use crate::paper::origin::Provenance;
use crate::paper::words::{Words, cause_words, figure_title, print_value};
use crate::quantity::Style;

pub(super) fn print(how: &Listing, as_json: bool, out: &mut Out) -> u8 {
    let Some(computed) = Computed::open(&how.job, &how.day, out) else { return BAD_INPUT };
    let words = computed.words(&Style::METRIC);
    let printed = if how.csv {
        paper::csv::figures(&plain_input(&computed))
    } else if as_json {
        format!("{:#}", json::job(&computed, &words))
    } else {
        text(&computed, &words)
    };
    let given = give(printed, how, out);
    if computed.faulty || !given { BAD_INPUT } else { FINE }
}

fn text(computed: &Computed, words: &Words<'_>) -> String {
    let mut text = String::new();
    let mut place: Option<Place> = None;
    let mut figures: Vec<Figure<'_>> = computed.book.figures().collect();
    figures.sort_by_key(|figure| (figure.place, figure.id));
    for figure in figures {
        if place != Some(figure.place) {
            let _ = writeln!(text, "{}{}", if place.is_some() { "\n" } else { "" }, figure.place);
            place = Some(figure.place);
        }
        let _ = writeln!(text, "  {:<42} {}", figure_title(&figure, words.texts), print_value(figure.value, figure.origin.kind(), words));
        let _ = writeln!(text, "      {}", working(computed, &figure, words));
    }
    text
}

/// The formula, and each term with its value and where it comes from.
fn working(computed: &Computed, figure: &Figure<'_>, words: &Words<'_>) -> String {
    let Some(rule) = figure.rule() else { return String::new() };
    let mut text = format!("{} = {}", rule.id, rule.text());
    for (index, id) in figure.terms.iter().enumerate() {
        let term = computed.book.figure(*id);
        let symbol = rule.terms.get(index).or(rule.terms.first()).map_or("x", |term| term.symbol);
        let origin = Provenance::of(term.origin, &computed.book).word;
        let value = match term.value.cause() {
            Some(cause) => cause_words(cause, words.texts),
            None => print_value(term.value, term.origin.kind(), words),
        };
        let _ = write!(text, "{} {symbol} {value} ({origin})", if index == 0 { " ;" } else { "," });
    }
    text
}
