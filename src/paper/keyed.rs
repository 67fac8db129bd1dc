//! What is keyed into a kiln's controller, in words.

use super::block::{Block, Side};
use super::desk::Desk;
use crate::calc::BurnoutFigures;
use crate::calc::controller::{Note, Ramp, Row, Table};
use crate::calc::floor::keyed;
use crate::calc::kiln_floor::{Column, Row as Deep};
use crate::job::Burnout;
use crate::quantity::{Kind, Style, print};
use crate::stock::Kiln;
use crate::texts::Texts;

/// What a table is put into words with.
#[derive(Debug, Clone, Copy)]
pub struct KeyedWords<'a> {
    /// The catalogue.
    pub texts: &'a Texts,
    /// Units.
    pub style: &'a Style,
    /// The kiln.
    pub kiln: &'a Kiln,
}

impl KeyedWords<'_> {
    fn fahrenheit(&self) -> bool {
        self.kiln.controller.as_ref().is_some_and(|controller| controller.fahrenheit)
    }

    /// Set point, ramp and hold as they are keyed in; true temperatures at the probe, the hottest and the coldest place.
    #[must_use]
    pub fn row(&self, row: &Row) -> [String; 6] {
        let degrees = if self.fahrenheit() { "°F" } else { "°C" };
        let ramp = match row.ramp {
            Ramp::Full => self.texts.label("keyed-full"),
            Ramp::Rate(rate) => format!("{rate}\u{202f}{degrees}/h"),
            Ramp::Minutes(minutes) => self.hold(minutes),
        };
        let c = |c: f64| print(c, Kind::Temperature, self.style).to_string();
        [
            format!("{}\u{202f}{degrees}", row.set_point),
            ramp,
            self.hold(row.hold_min),
            c(row.true_c),
            c(row.true_c + self.kiln.hot_zone_k.value),
            c(row.true_c - self.kiln.cold_zone_k.value),
        ]
    }

    /// Hours and minutes, as controllers take them.
    fn hold(&self, minutes: u32) -> String {
        self.texts.say("keyed-hours", &[("hours", (minutes / 60).to_string().into()), ("minutes", format!("{:02}", minutes % 60).into())])
    }
}

/// What had to be decided, a sentence each.
#[must_use]
pub fn notes(table: &Table, words: &KeyedWords<'_>) -> Vec<String> {
    let say = |key: &str, segment: usize| words.texts.say(key, &[("stage", (segment + 1).to_string().into())]);
    let mut all: Vec<String> = Vec::new();
    for note in &table.notes {
        all.push(match note {
            Note::Lowered { segment, .. } => say("keyed-lowered", *segment),
            Note::NoFullSpeed { segment } => say("keyed-no-full", *segment),
            Note::TooFast { segment, .. } => say("keyed-too-fast", *segment),
            Note::TooSlow { segment, .. } => say("keyed-too-slow", *segment),
            Note::Same { segments: [first, _] } => say("keyed-same", *first),
            Note::LongHold { segment, .. } => say("keyed-long-hold", *segment),
        });
    }
    if let Some(many) = &table.too_many {
        all.push(words.texts.say("keyed-too-many", &[("by", many.by.into())]));
        for merge in &many.merges {
            let off = print(merge.off.most_k(), Kind::TemperatureDifference, words.style).to_string();
            let args =
                [("first", (merge.first + 1).to_string().into()), ("second", (merge.first + 2).to_string().into()), ("off", off.into())];
            all.push(words.texts.say("keyed-merge", &args));
        }
    }
    all
}

/// The table of a load on its sheet; nothing where its kiln has no controller that is known.
pub(super) fn keyed_in(desk: &Desk<'_>, load: &Burnout, figures: &BurnoutFigures) -> Vec<Block> {
    let input = desk.input;
    let shelf = &input.shelves.job;
    let kiln = load.kiln.as_ref().and_then(|id| shelf.get::<Kiln>(id.as_str()));
    let table = keyed(load, figures, input.studio, shelf, input.book);
    let Some((kiln, found)) = kiln.zip(table) else { return Vec::new() };
    let words = KeyedWords { texts: desk.words.texts, style: desk.words.style, kiln };
    let mut table = desk.table(&[
        ("column-stage", Side::Right),
        ("keyed-set", Side::Right),
        ("keyed-ramp", Side::Right),
        ("keyed-hold", Side::Right),
        ("keyed-true", Side::Right),
        ("keyed-hottest", Side::Right),
        ("keyed-coldest", Side::Right),
    ]);
    for (number, row) in (1_usize..).zip(&found.rows) {
        let [set, ramp, hold, probe, hottest, coldest] = words.row(row);
        table.row([number.to_string(), set, ramp, hold, probe, hottest, coldest]);
    }
    let mut blocks = vec![desk.heading("keyed-title"), Block::Table(table)];
    blocks.extend(notes(&found, &words).into_iter().map(Block::Words));
    blocks
}

/// The catalogue's key of a third of a kiln's floor.
#[must_use]
pub const fn third_key(row: Deep, column: Column) -> &'static str {
    match (row, column) {
        (Deep::Front, Column::Left) => "third-front-left",
        (Deep::Front, Column::Middle) => "third-front-middle",
        (Deep::Front, Column::Right) => "third-front-right",
        (Deep::Middle, Column::Left) => "third-middle-left",
        (Deep::Middle, Column::Middle) => "third-middle",
        (Deep::Middle, Column::Right) => "third-middle-right",
        (Deep::Back, Column::Left) => "third-back-left",
        (Deep::Back, Column::Middle) => "third-back-middle",
        (Deep::Back, Column::Right) => "third-back-right",
    }
}
