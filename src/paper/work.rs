//! The work before a pour as a table: day and clock of every step, with a box to tick.

use super::block::{Block, Side};
use super::desk::Desk;
use crate::calc::work::{WorkFigures, step_key, why};

/// The timetable of a load; nothing where its pour or its programme is not known.
pub(super) fn work(desk: &Desk<'_>, work: &WorkFigures, pour: String) -> Vec<Block> {
    let mut table = desk.table(&[
        ("column-tick", Side::Tick),
        ("column-step", Side::Left),
        ("column-takes", Side::Right),
        ("column-start", Side::Left),
        ("column-end", Side::Left),
        ("column-waits", Side::Right),
        ("column-really", Side::Write),
    ]);
    for row in &work.rows {
        table.row([
            String::new(),
            desk.label(step_key(row.step)),
            desk.figure(row.minutes),
            desk.clock(row.begins, true),
            desk.clock(row.ends, true),
            row.waits.map(|waits| desk.figure(waits)).unwrap_or_default(),
            String::new(),
        ]);
    }
    let mut blocks = vec![desk.heading("work-title"), Block::Words(desk.say("work-says", &[("pour", pour.into())])), Block::Table(table)];
    let problems = work.rows.iter().flat_map(|row| row.row.problems.iter().map(move |problem| (step_key(row.step), why(problem))));
    let pour = work.pour_problems.iter().map(|problem| ("work-pour", why(problem)));
    blocks.extend(problems.chain(pour).map(|(step, why)| Block::Words(format!("{}: {}", desk.label(step), desk.label(why)))));
    blocks
}
