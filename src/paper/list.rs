//! The pieces and the kiln programmes of a batch as lists to be read in a terminal: plain text.

use super::block::{Side, Table};
use super::desk::{Desk, SheetInput};
use super::load_rows::{LoadRow, Step, load_rows};
use super::piece_rows::{PieceRow, piece_rows};
use super::set;
use super::words::stage_words;
use crate::calc::Id;

/// Columns of a line at most. A terminal is wider than paper, and a row that stays on one line is quicker to find.
const WIDTH: usize = 120;

/// Every piece, a row each, cancelled ones included.
#[must_use]
pub fn pieces(input: &SheetInput<'_>) -> String {
    let desk = Desk::new(input);
    let heads = [
        ("column-piece", Side::Left),
        ("column-client", Side::Left),
        ("column-design", Side::Left),
        ("column-size", Side::Left),
        ("column-alloy", Side::Left),
        ("column-rough-each", Side::Decimal),
        ("column-due", Side::Right),
        ("list-flask", Side::Left),
        ("list-reached", Side::Left),
    ];
    list(&desk, heads, piece_rows(&desk).iter().map(|row| piece(&desk, row)), "list-no-pieces")
}

fn piece(desk: &Desk<'_>, row: &PieceRow<'_>) -> [String; 9] {
    let reached = match (row.cancelled(), row.rejected, row.stage) {
        (true, ..) => desk.label("list-cancelled"),
        (_, Some(_), _) => desk.label("list-rejected"),
        (_, _, stage) => stage.map_or_else(String::new, |stage| stage_words(stage, desk.words.texts)),
    };
    [
        row.id.to_string(),
        desk.text(&row.order.client),
        desk.text(&row.line.design),
        desk.size(row.size),
        // The shelf's names would take two lines of every row.
        row.line.alloy.as_ref().map_or_else(|| desk.entry(None), ToString::to_string),
        figure(desk, row.rough),
        desk.date(row.due),
        // A tree that stands in no flask yet is told by its name.
        match (row.hangs.flask, row.hangs.tree) {
            (Some(flask), _) => desk.scratch(flask.id),
            (None, Some(tree)) => desk.text(&tree.name),
            (None, None) => String::new(),
        },
        reached,
    ]
}

/// Every kiln load step by step, from mixing to the pour.
#[must_use]
pub fn programme(input: &SheetInput<'_>) -> String {
    let desk = Desk::new(input);
    let heads = [
        ("burnout-load", Side::Left),
        ("list-step", Side::Left),
        ("list-flasks", Side::Left),
        ("column-target", Side::Right),
        ("column-ramp", Side::Right),
        ("column-hold", Side::Right),
        ("column-start", Side::Right),
        ("column-end", Side::Right),
    ];
    let mut named = None;
    let rows = load_rows(&desk).into_iter().map(|row| {
        // The name stands where a load begins.
        let first = named.replace(row.load.id) != Some(row.load.id);
        step(&desk, &row, first)
    });
    list(&desk, heads, rows, "list-no-loads")
}

fn step(desk: &Desk<'_>, row: &LoadRow<'_>, first: bool) -> [String; 8] {
    let step = match row.step {
        Step::Mixing => desk.label("list-mixing"),
        Step::Dewaxing => desk.label("list-dewaxing"),
        Step::Stage(number) => desk.say("list-stage", &[("number", number.to_string().into())]),
        Step::Pour => desk.label("list-pour"),
    };
    [
        if first { desk.text(&row.load.name) } else { String::new() },
        step,
        row.flasks.clone(),
        figure(desk, row.target),
        figure(desk, row.ramp),
        figure(desk, row.hold),
        figure(desk, row.begins),
        figure(desk, row.ends),
    ]
}

/// What happened, entry by entry.
#[must_use]
pub fn record(input: &SheetInput<'_>) -> String {
    let desk = Desk::new(input);
    let heads = [
        ("list-entry", Side::Right),
        ("column-on", Side::Left),
        ("list-hands", Side::Left),
        ("list-event", Side::Left),
        ("list-about", Side::Left),
        ("list-what", Side::Left),
        ("list-grams", Side::Decimal),
        ("list-withdrawn", Side::Right),
        ("list-notes", Side::Left),
    ];
    let rows = super::csv::record::rows(input).into_iter().map(|[entry, at, hands, event, about, what, grams, withdrawn, _, notes]| {
        [entry, at.replace('T', " "), hands, event, about, what, grams, withdrawn, notes]
    });
    list(&desk, heads, rows, "list-no-record")
}

fn figure(desk: &Desk<'_>, id: Option<Id>) -> String {
    id.map_or_else(String::new, |id| desk.figure(id))
}

/// The rows under their heads, or that there are none.
fn list<const N: usize>(desk: &Desk<'_>, heads: [(&str, Side); N], rows: impl Iterator<Item = [String; N]>, none: &str) -> String {
    let mut table = Table::new(heads.map(|(key, side)| (desk.label(key), side)).into());
    rows.for_each(|row| table.row(row));
    if table.rows.is_empty() { format!("{}\n", desk.label(none)) } else { set::set_table(&table, WIDTH) }
}
