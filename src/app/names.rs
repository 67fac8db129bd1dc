//! What things of a job are called on the screen.

use super::cx::Cx;
use crate::job::{FlaskId, LineId, PatternId, TreeId};
use crate::stock::EntryId;

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
