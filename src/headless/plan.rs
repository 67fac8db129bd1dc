//! `pourbook plan`: every open piece in as few flasks as will do, what cannot be placed, and what is proven of it. Writes nothing.

use super::args::{Planning, Tongue};
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::calc::batch::{Options, Places, ask, settle};
use crate::calc::plan::STEPS;
use crate::paper::batch::PlanWords;
use crate::paper::words::Words;
use crate::quantity::Style;
use crate::stock::{Crucible, EntryId, Kiln, Shelf, Shelved};
use crate::texts::{Language, Texts};

pub(super) fn print(how: &Planning, out: &mut Out) -> u8 {
    let Some(computed) = Computed::open(&how.job, &how.day, out) else { return BAD_INPUT };
    let shelf = &computed.shelves.job;
    let mut faulty = computed.faulty;
    let mut named = |id: Option<EntryId>| {
        faulty |= id.is_none();
        id
    };
    let crucible = how.crucible.as_ref().and_then(|id| named(on_shelf::<Crucible>(shelf, id, out)));
    let kiln = how.kiln.as_ref().and_then(|id| named(on_shelf::<Kiln>(shelf, id, out)));
    let kiln = match kiln {
        _ if how.any_kiln => Places::NoMatter,
        Some(id) => Places::Of(id),
        None => Places::OfLoad,
    };
    let options = Options { crucible, kiln, add_to_flasks: how.add, kept: Vec::new() };
    let (job, studio) = (&computed.batch.sound, &computed.batch.sound_studio);
    let mut ask = ask(job, studio, &computed.shelves, &computed.runs, &computed.setting, &options);
    let found = settle(&ask.question(), STEPS, &|_| true);
    let outcome = ask.read(&found, shelf);
    let language = match how.language {
        Tongue::En => Language::English,
        Tongue::De => Language::German,
    };
    let style = Style { comma: language.has_comma(), ..Style::METRIC };
    let words = Words { texts: Texts::of(language), style: &style, ..computed.words(&Style::METRIC) };
    let words = PlanWords { job, shelf, words };
    out.data(&words.text(&ask, &outcome, !studio.flasks.is_empty()));
    if faulty { BAD_INPUT } else { FINE }
}

/// An entry of the shelf by its id, which is told where there is none.
fn on_shelf<T: Shelved>(shelf: &Shelf, id: &str, out: &mut Out) -> Option<EntryId> {
    let found = shelf.get::<T>(id).and(EntryId::new(id));
    if found.is_none() {
        out.tell(&format!("the shelf has no such thing as “{id}” for this; the plan goes on as if it had not been named"));
    }
    found
}
