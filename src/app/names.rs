//! What things of a job are called on the screen.

use super::cx::Cx;
use crate::job::{BurnoutId, FlaskId, LineId, MeltId, PatternId, Place, PrintId, Size, TreeId};
use crate::paper::words::one_line;
use crate::stock::EntryId;

/// A size as it was said.
#[must_use]
pub fn size(size: &Size) -> String {
    let (Size::Ring { size, .. } | Size::Free(size)) = size;
    one_line(size)
}

/// A flask by the number on its face.
#[must_use]
pub fn flask(cx: &Cx<'_>, id: FlaskId) -> String {
    let scratch = cx.job.flasks.iter().find(|flask| flask.id == id).map(|flask| flask.scratch.trim().to_owned()).unwrap_or_default();
    let name = if scratch.is_empty() { id.to_string() } else { scratch };
    cx.say("name-flask", &[("name", name.into())])
}

/// A tree by its name.
#[must_use]
pub fn tree(cx: &Cx<'_>, id: TreeId) -> String {
    let name = cx.job.trees.iter().find(|tree| tree.id == id).map(|tree| tree.name.trim().to_owned()).unwrap_or_default();
    if name.is_empty() { cx.say("name-tree", &[("name", id.to_string().into())]) } else { name }
}

/// A pattern by its name.
#[must_use]
pub fn pattern(cx: &Cx<'_>, id: PatternId) -> String {
    let name = cx.job.patterns.iter().find(|pattern| pattern.id == id).map(|pattern| pattern.name.trim().to_owned()).unwrap_or_default();
    if name.is_empty() { cx.say("name-pattern", &[("name", id.to_string().into())]) } else { name }
}

/// A line by design and client.
#[must_use]
pub fn line(cx: &Cx<'_>, id: LineId) -> String {
    let found = cx.job.lines().find(|(_, line)| line.id == id);
    found.map_or_else(|| id.to_string(), |(order, line)| format!("{}, {}", line.design, order.client))
}

/// A shelf entry by its name.
#[must_use]
pub fn entry(cx: &Cx<'_>, id: &EntryId) -> String {
    cx.computed.shelves.job.entry(id.as_str()).map_or_else(|| id.to_string(), |entry| entry.name().to_owned())
}

/// Where something stands, as a caster would say it.
#[must_use]
pub fn place(cx: &Cx<'_>, place: Place) -> String {
    let job = cx.job;
    let of = |key: &str, name: String, number: u32| cx.say(key, &[("name", name.into()), ("number", u64::from(number).into())]);
    match place {
        Place::Job => cx.label("place-job"),
        Place::Studio => cx.label("place-studio"),
        Place::Order(id) => {
            let client = job.orders.iter().find(|order| order.id == id).map(|order| order.client.clone());
            of("place-order", client.unwrap_or_default(), id.0)
        }
        Place::Line(id) => line(cx, id),
        Place::Piece(piece) => of("place-piece", line(cx, piece.line), piece.number),
        Place::Pattern(id) => pattern(cx, id),
        Place::Print(id) => print_run(cx, id),
        Place::Tree(id) => tree(cx, id),
        Place::TreeRow(id, row) => of("place-row", tree(cx, id), row),
        Place::Flask(id) => flask(cx, id),
        Place::Mix(id, mix) => of("place-mix", flask(cx, id), mix),
        Place::Burnout(id) => load(cx, id),
        Place::Stage(id, stage) => of("place-stage", load(cx, id), stage),
        Place::Melt(id) => melt(cx, id),
        Place::Quote(id) => of("place-quote", String::new(), id.0),
        Place::Record(id) => of("place-record", String::new(), id.0),
    }
}

/// A kiln load by its name.
#[must_use]
pub fn load(cx: &Cx<'_>, id: BurnoutId) -> String {
    let name = cx.job.burnouts.iter().find(|load| load.id == id).map(|load| load.name.trim().to_owned()).unwrap_or_default();
    if name.is_empty() { cx.say("heat-load", &[("name", id.to_string().into())]) } else { name }
}

/// A print run by its name.
#[must_use]
pub fn print_run(cx: &Cx<'_>, id: PrintId) -> String {
    let name = cx.job.prints.iter().find(|run| run.id == id).map(|run| run.name.trim().to_owned()).unwrap_or_default();
    if name.is_empty() { cx.say("prints-name-of", &[("name", id.to_string().into())]) } else { name }
}

/// A melt by its name.
#[must_use]
pub fn melt(cx: &Cx<'_>, id: MeltId) -> String {
    let name = cx.job.melts.iter().find(|melt| melt.id == id).map(|melt| melt.name.trim().to_owned()).unwrap_or_default();
    if name.is_empty() { cx.say("melt-name-of", &[("name", id.to_string().into())]) } else { name }
}
