//! What the parts of an entry can mean: every choice there is, how to write it so that it is the only one, and how to say it.

use std::ops::Range;

use num_rational::BigRational;

use super::Kind;
use super::entry_error::{EntryError, EntryErrorKind};
use super::evaluate::{Choice, bare_terms, mark};
use super::node::{Node, What};
use super::parse::Habits;
use super::unit::{Meaning, Unit};
use super::unit_table::KARAT;

/// One thing left open by an entry, with the places where it shows.
#[derive(Debug, Clone, PartialEq)]
enum Doubt {
    /// Places of the numbers, and of the separator in each.
    Separator(Vec<(Range<usize>, usize)>),
    /// A word for two units, where it stands.
    Word([&'static Unit; 2], Vec<Range<usize>>),
    /// The dashes of `1-1/2`.
    Dash(Vec<Range<usize>>),
    /// `14 k`: the places of number and word, and the mark.
    Karat(Vec<(Range<usize>, Range<usize>, Option<i64>)>),
    /// Terms without a unit, and the units they can have.
    Bare(Vec<Range<usize>>, Vec<Meaning>),
}

/// Everything left open, and every choice of what is meant.
#[derive(Debug)]
pub(super) struct Meanings {
    doubts: Vec<Doubt>,
    /// All choices; the first is the likeliest.
    pub(super) choices: Vec<Choice>,
    /// For each choice, which way each doubt is resolved.
    ways: Vec<Vec<usize>>,
}

/// What `node`, an entry in a field of `kind`, leaves open.
pub(super) fn meanings(node: &Node, kind: Kind, habits: &Habits) -> Meanings {
    let field = Meaning::of_field(kind, habits);
    let doubts = doubts(node, kind, field);
    let mut ways: Vec<Vec<usize>> = vec![Vec::new()];
    for doubt in &doubts {
        let count = if let Doubt::Bare(_, units) = doubt { units.len() } else { 2 };
        ways = ways.iter().flat_map(|way| (0..count).map(|index| [way.as_slice(), &[index]].concat())).collect();
    }
    let choices = ways.iter().map(|way| choice(&doubts, way, field)).collect();
    Meanings { doubts, choices, ways }
}

fn choice(doubts: &[Doubt], way: &[usize], field: Meaning) -> Choice {
    let mut choice = Choice { grouped: false, words: Vec::new(), mixed: false, mark: false, bare: field };
    for (doubt, index) in doubts.iter().zip(way) {
        match doubt {
            Doubt::Separator(_) => choice.grouped = *index == 0,
            Doubt::Word(pair, _) => choice.words.push((*pair, *index)),
            Doubt::Dash(_) => choice.mixed = *index == 0,
            Doubt::Karat(_) => choice.mark = *index == 1,
            Doubt::Bare(_, units) => choice.bare = units[*index],
        }
    }
    choice
}

/// Collects what `node` leaves open, in the order in which it is told.
fn doubts(node: &Node, kind: Kind, field: Meaning) -> Vec<Doubt> {
    let mut separators = Vec::new();
    let mut words: Vec<([&'static Unit; 2], Vec<Range<usize>>)> = Vec::new();
    let mut dashes = Vec::new();
    let mut karats = Vec::new();
    node.visit(&mut |part| match &part.what {
        What::Number(literal) => separators.extend(literal.grouped.as_ref().map(|(_, place)| (literal.at.clone(), *place))),
        What::Dashed(_, _, dash) => dashes.push(dash.clone()),
        What::Amount(_, Meaning::Either(pair), word) => match words.iter_mut().find(|(known, _)| known == pair) {
            Some((_, places)) => places.push(word.clone()),
            None => words.push((*pair, vec![word.clone()])),
        },
        What::Amount(number, Meaning::Unit(unit), word) if kind == Kind::Fineness && **unit == kind.units()[KARAT] => {
            // A sum of karats may come to a number with a mark all the same; it is read both ways but not rewritten.
            let plain = if let What::Number(literal) = &number.what { mark(&literal.value) } else { None };
            karats.push((number.at.clone(), word.clone(), plain));
        }
        _ => {}
    });
    let mut found = Vec::new();
    if !separators.is_empty() {
        found.push(Doubt::Separator(separators));
    }
    found.extend(words.into_iter().map(|(pair, places)| Doubt::Word(pair, places)));
    if !dashes.is_empty() {
        found.push(Doubt::Dash(dashes));
    }
    if !karats.is_empty() {
        found.push(Doubt::Karat(karats));
    }
    found.extend(bare(node, kind, field));
    found
}

/// The units that numbers without one can have: those named in the entry, and the field's own unless a unit comes after them.
fn bare(node: &Node, kind: Kind, field: Meaning) -> Option<Doubt> {
    let terms = bare_terms(node);
    let last = terms.last()?.start;
    let mut units: Vec<Meaning> = Vec::new();
    let mut last_unit = 0;
    node.visit(&mut |part| {
        if let What::Amount(_, meaning, _) = &part.what {
            last_unit = last_unit.max(part.at.start);
            if !units.contains(meaning) {
                units.push(*meaning);
            }
        }
    });
    // `450 + 20 K`: kelvins behind bare numbers may be a step on temperatures in the field's own unit.
    let steps = kind == Kind::Temperature && units.iter().all(|unit| matches!(unit, Meaning::Unit(unit) if unit.symbol == "K"));
    if (last > last_unit || steps) && !units.contains(&field) {
        units.insert(0, field);
    }
    Some(Doubt::Bare(terms, units))
}

impl Meanings {
    /// The doubt to tell of: the first that changes the outcome; and where it shows.
    pub(super) fn doubt(&self, text: &str, outcomes: &[Result<BigRational, EntryError>]) -> (EntryErrorKind, Range<usize>) {
        let changes = |index: usize, both: bool| {
            self.ways.iter().enumerate().any(|(left, way)| {
                self.ways.iter().enumerate().skip(left + 1).any(|(right, other)| {
                    let only_this = way.iter().zip(other).enumerate().all(|(place, (one, two))| (one == two) != (place == index));
                    only_this
                        && match (&outcomes[left], &outcomes[right]) {
                            (Ok(one), Ok(two)) => one != two,
                            (Err(_), Err(_)) => false,
                            _ => !both,
                        }
                })
            })
        };
        let all = 0..self.doubts.len();
        let index =
            all.clone().find(|index| changes(*index, true)).or_else(|| all.clone().find(|index| changes(*index, false))).unwrap_or(0);
        match &self.doubts[index] {
            Doubt::Separator(places) => {
                let (at, place) = &places[0];
                (EntryErrorKind::AmbiguousSeparator(char::from(text.as_bytes()[*place])), at.clone())
            }
            Doubt::Word(_, places) => (EntryErrorKind::AmbiguousUnit(text[places[0].clone()].to_owned()), places[0].clone()),
            Doubt::Dash(places) => (EntryErrorKind::AmbiguousFraction, places[0].clone()),
            Doubt::Karat(places) => (EntryErrorKind::AmbiguousKarat, places[0].0.start..places[0].1.end),
            Doubt::Bare(terms, _) => (EntryErrorKind::AmbiguousBare, terms[0].clone()),
        }
    }

    /// Whether nothing but separators is left open.
    pub(super) fn only_separators(&self) -> bool {
        matches!(self.doubts.as_slice(), [Doubt::Separator(_)])
    }

    /// `text` written so that it means choice `index` alone; the caller tries whether it does.
    pub(super) fn rewrite(&self, text: &str, index: usize) -> String {
        let mut edits: Vec<(Range<usize>, String)> = Vec::new();
        for (doubt, way) in self.doubts.iter().zip(&self.ways[index]) {
            match doubt {
                Doubt::Separator(places) => {
                    edits.extend(places.iter().map(|(at, place)| (at.clone(), settled(&text[at.clone()], place - at.start, *way == 0))));
                }
                Doubt::Word(pair, places) => {
                    let before = |at: &Range<usize>| if text[..at.start].ends_with(|sign: char| sign.is_ascii_digit()) { " " } else { "" };
                    edits.extend(places.iter().map(|at| (at.clone(), format!("{}{}", before(at), pair[*way].symbol))));
                }
                Doubt::Dash(places) => edits.extend(places.iter().map(|at| (at.clone(), if *way == 0 { " " } else { " - " }.to_owned()))),
                Doubt::Karat(places) => edits.extend(places.iter().filter_map(|(number, word, mark)| {
                    let entry = if *way == 1 { format!("{} ‰", (*mark)?) } else { format!("{}/24 fine", &text[number.clone()]) };
                    Some((number.start..word.end, entry))
                })),
                Doubt::Bare(terms, units) => {
                    if let Some(unit) = self.choices[index].unit(units[*way]) {
                        edits.extend(terms.iter().map(|at| (at.end..at.end, format!(" {}", unit.symbol))));
                    }
                }
            }
        }
        // From the end, so that earlier places stay where they are; a unit set behind a number comes before the number's own edit.
        edits.sort_by_key(|(at, _)| std::cmp::Reverse((at.end, at.start)));
        let mut entry = text.trim_end().to_owned();
        for (at, with) in edits {
            if at.end <= entry.len() && entry.is_char_boundary(at.start) && entry.is_char_boundary(at.end) {
                entry.replace_range(at, &with);
            }
        }
        entry
    }

    /// What choice `index` takes each doubt for.
    pub(super) fn explain(&self, index: usize) -> Vec<String> {
        let say = |(doubt, way): (&Doubt, &usize)| match doubt {
            Doubt::Separator(_) if *way == 0 => Some("the separator parts the thousands".to_owned()),
            Doubt::Separator(_) => Some("the separator is the decimal mark".to_owned()),
            Doubt::Word(pair, _) => Some(name(pair[*way]).to_owned()),
            Doubt::Dash(_) if *way == 0 => Some("a whole number and a fraction".to_owned()),
            Doubt::Dash(_) => Some("the fraction taken away".to_owned()),
            Doubt::Karat(_) if *way == 1 => Some("the mark of that name".to_owned()),
            Doubt::Karat(_) => Some("karats, parts of 24".to_owned()),
            Doubt::Bare(_, units) if units.len() > 1 => {
                let unit = self.choices[index].unit(units[*way])?;
                Some(format!("the number without a unit in {}", unit.symbol))
            }
            Doubt::Bare(..) => None,
        };
        self.doubts.iter().zip(&self.ways[index]).filter_map(say).collect()
    }
}

/// `number` with its separator at byte `place` settled: left out, or with a number of decimals that cannot be a group.
fn settled(number: &str, place: usize, grouped: bool) -> String {
    let (whole, decimals) = (&number[..place], &number[place + 1..]);
    if grouped {
        return format!("{whole}{decimals}");
    }
    match decimals.trim_end_matches('0') {
        "" => whole.to_owned(),
        short if short.len() == 3 => format!("{whole}.{short}0"),
        short => format!("{whole}.{short}"),
    }
}

/// Units that share a word, by the name that tells them apart.
fn name(unit: &Unit) -> &'static str {
    match unit.symbol {
        "ozt" => "troy ounces of 31.10 g, as metal is weighed",
        "oz av" => "avoirdupois ounces of 28.35 g, as kitchen and post scales weigh",
        "grain" => "grains of 0.0648 g",
        "g" => "grams",
        "US fl oz" => "US fluid ounces of 29.57 mL",
        "imp fl oz" => "imperial fluid ounces of 28.41 mL",
        "/ozt" => "for a troy ounce of 31.10 g",
        "/oz av" => "for an avoirdupois ounce of 28.35 g",
        "°C" | "°C/h" | "°C/min" => "Celsius",
        "°F" | "°F/h" | "°F/min" => "Fahrenheit",
        symbol => symbol,
    }
}
