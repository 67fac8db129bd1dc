//! The pieces of a batch as CSV.

use super::{day, figure, plain, table, words, yes_or_no};
use crate::paper::desk::{Desk, SheetInput};
use crate::paper::piece_rows::{PieceRow, piece_rows};
use crate::paper::words::stage_words;

const HEAD: [&str; 33] = [
    "order_id",
    "client",
    "line_id",
    "number",
    "piece",
    "design",
    "set",
    "alloy_id",
    "alloy",
    "size",
    "bore_mm",
    "pattern_id",
    "pattern",
    "rough_g",
    "due",
    "tree_id",
    "tree",
    "flask_id",
    "scratch",
    "load_id",
    "load",
    "melt_id",
    "melt",
    "stage",
    "rejected",
    "cancelled",
    "irreplaceable",
    "from_job",
    "from_piece",
    "remake_of",
    "notes",
    "line_notes",
    "order_notes",
];

/// Every piece of every line, a row each, cancelled ones included, in the order of the job: as many rows as the sum of all quantities.
///
/// Columns that end in `_id` hold the job's own ids, and `alloy_id` that of the shelf. `piece` is the code of the piece; a spreadsheet that
/// takes `3.10` for a number shows `3.1`, so `line_id` and `number` hold its parts. `size`, `bore_mm`, `pattern` and `rough_g` are those of
/// the piece where it has its own. `scratch` is what is scratched into the flask. `stage` is how far the piece is by the standing entries of
/// the record, `rejected` the defect it was rejected for. `from_job` and `from_piece` say where it was taken on from, `remake_of` which piece
/// it replaces. A cancelled piece has no weight, tree, flask, load or melt, so that the sum of `rough_g` is what will be cast.
#[must_use]
pub fn pieces(input: &SheetInput<'_>) -> String {
    let desk = Desk::new(input);
    table(HEAD, piece_rows(&desk).iter().map(|row| cells(&desk, row)))
}

fn cells(desk: &Desk<'_>, row: &PieceRow<'_>) -> [String; 33] {
    let (line, hangs) = (row.line, &row.hangs);
    let from = row.exception.and_then(|exception| exception.from);
    let name = |name: Option<&String>| name.map_or_else(String::new, |name| words(name));
    [
        row.order.id.to_string(),
        words(&row.order.client),
        line.id.to_string(),
        row.id.number.to_string(),
        row.id.to_string(),
        words(&line.design),
        words(&line.set),
        plain(line.alloy.as_ref()),
        line.alloy.as_ref().map_or_else(String::new, |alloy| words(&desk.entry(Some(alloy)))),
        words(&desk.size(row.size)),
        figure(desk, row.bore),
        plain(row.pattern.map(|pattern| pattern.id)),
        name(row.pattern.map(|pattern| &pattern.name)),
        figure(desk, row.rough),
        day(row.due),
        plain(hangs.tree.map(|tree| tree.id)),
        name(hangs.tree.map(|tree| &tree.name)),
        plain(hangs.flask.map(|flask| flask.id)),
        hangs.flask.map_or_else(String::new, |flask| words(&desk.scratch(flask.id))),
        plain(hangs.load.map(|load| load.id)),
        name(hangs.load.map(|load| &load.name)),
        plain(hangs.melt.map(|melt| melt.id)),
        name(hangs.melt.map(|melt| &melt.name)),
        row.stage.map_or_else(String::new, |stage| words(&stage_words(stage, desk.words.texts))),
        row.rejected.map_or_else(String::new, words),
        yes_or_no(row.cancelled()),
        yes_or_no(row.irreplaceable()),
        plain(from.map(|from| from.job)),
        plain(from.map(|from| from.piece)),
        plain(row.exception.and_then(|exception| exception.remake_of)),
        name(row.exception.map(|exception| &exception.notes)),
        words(&line.notes),
        words(&row.order.notes),
    ]
}
