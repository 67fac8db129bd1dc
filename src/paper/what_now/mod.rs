//! The cards for when something goes wrong at the bench: what is done first, in which order, what is left alone, and when help is called. The
//! window shows them and paper prints them, a page a card; what the batch knows stands on them with its figures.

mod facts;
mod wording;

use super::block::{Block, Field, Marked, Page, Sign, WriteIn};
use super::desk::{Desk, SheetInput};
use crate::quantity::{Kind, print};
use wording::Wording;

/// Where cristobalite begins to turn back as a mould cools, and where it is done, °C. From memory, on the wide side of what is told.
const TURNS_BACK_C: [f64; 2] = [270.0, 250.0];

/// What goes wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Trouble {
    /// The kiln lost its power.
    KilnOff,
    /// The kiln ran hotter than it was told to.
    KilnOver,
    /// No vacuum, and the metal is liquid.
    PumpDead,
    /// Metal or slurry runs out of a flask.
    FlaskLeak,
    /// The crucible is cracked.
    Crucible,
    /// Liquid metal lies where it should not.
    Spill,
    /// The centrifuge threw its metal, or stopped.
    Spin,
    /// An alarm for fume or carbon monoxide.
    Fume,
    /// Somebody is burnt.
    Burn,
}

impl Trouble {
    /// All, in the order of the work; the last hurt most.
    pub const ALL: [Self; 9] =
        [Self::KilnOff, Self::KilnOver, Self::PumpDead, Self::FlaskLeak, Self::Crucible, Self::Spill, Self::Spin, Self::Fume, Self::Burn];

    /// The key of its name.
    #[must_use]
    pub fn key(self) -> &'static str {
        Wording::of(self).title
    }
}

/// A card in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// What goes wrong.
    pub title: String,
    /// What comes before everything else.
    pub first: String,
    /// What is done, in this order.
    pub steps: Vec<String>,
    /// What is not done.
    pub never: Vec<String>,
    /// When help is called.
    pub help: String,
    /// What this batch knows of it.
    pub facts: Vec<Field>,
    /// Where the card has it from.
    pub source: String,
}

/// The card for a trouble, with what the batch knows.
#[must_use]
pub fn card(input: &SheetInput<'_>, trouble: Trouble) -> Card {
    card_on(&Desk::new(input), trouble)
}

fn card_on(desk: &Desk<'_>, trouble: Trouble) -> Card {
    let wording = Wording::of(trouble);
    let [from, to] = TURNS_BACK_C.map(|c| print(c, Kind::Temperature, desk.words.style).to_string());
    let args = [("from", from.into()), ("to", to.into())];
    let say = |key: &&str| desk.say(key, &args);
    Card {
        title: desk.label(wording.title),
        first: desk.say("card-first", &[("first", desk.label(wording.first).into())]),
        steps: wording.steps.iter().map(say).collect(),
        never: wording.never.iter().map(say).collect(),
        help: desk.label(wording.help),
        facts: facts::facts(desk, trouble),
        source: desk.label(wording.source),
    }
}

/// All cards, a page each, in type that is read where it hangs.
pub(super) fn card_pages(desk: &Desk<'_>) -> Vec<Page> {
    Trouble::ALL.into_iter().map(|trouble| page(desk, card_on(desk, trouble))).collect()
}

fn page(desk: &Desk<'_>, card: Card) -> Page {
    let line = |sign, text| Marked { sign, mark: String::new(), text };
    let mut blocks = vec![desk.heading("card-do"), Block::Steps(card.steps)];
    if !card.facts.is_empty() {
        blocks.extend([desk.heading("card-facts"), Block::Fields(card.facts)]);
    }
    blocks.extend([desk.heading("card-never"), Block::Marked(card.never.into_iter().map(|words| line(Sign::Stop, words)).collect())]);
    blocks.extend([desk.heading("card-help"), Block::Words(card.help)]);
    // What is asked for on the telephone, written in once by hand.
    blocks.push(Block::WriteIn(["card-number", "card-address"].map(|key| WriteIn { label: desk.label(key), unit: "" }).into()));
    blocks.push(Block::Marked(vec![line(Sign::None, card.source)]));
    Page { title: card.title, under: card.first, blocks, large: true, ..Page::default() }
}
