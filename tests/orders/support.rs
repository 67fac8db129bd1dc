//! What the tests share.

use jiff::civil::date;
use pourbook::files::order_table::{Known, Mapping, OrderRow, Preview, PreviewRow, Reason, guess, preview};
use pourbook::table::{Limits, Table, read};
use std::time::{Duration, Instant};

/// Alloys as a studio's shelf has them.
pub fn known() -> Known {
    let alloys = [
        ("silver-fine", "Fine silver 999"),
        ("silver-958", "Silver 958"),
        ("silver-925", "Sterling silver 925"),
        ("silver-925-germanium", "Sterling silver 925, tarnish-resistant (germanium)"),
        ("silver-925-deoxidised", "Sterling silver 925, deoxidised (zinc, silicon)"),
        ("silver-835", "Silver 835"),
        ("gold-fine", "Fine gold 999"),
        ("gold-18k-yellow", "18 karat yellow gold 750 (3N)"),
        ("gold-18k-pale-yellow", "18 karat pale yellow gold 750 (2N)"),
        ("gold-18k-rose", "18 karat rose gold 750 (5N)"),
        ("gold-18k-white-nickel", "18 karat white gold 750 (nickel)"),
        ("gold-18k-white-palladium", "18 karat white gold 750 (palladium)"),
        ("gold-14k-yellow", "14 karat yellow gold 585"),
        ("gold-14k-rose", "14 karat rose gold 585"),
        ("gold-14k-white-nickel", "14 karat white gold 585 (nickel)"),
        ("platinum-950-ruthenium", "Platinum 950 (ruthenium)"),
        ("platinum-950-cobalt", "Platinum 950 (cobalt)"),
        ("bronze-silicon", "Silicon bronze (4 % silicon)"),
        ("bronze-silicon-zinc", "Silicon brass (14 % zinc, 4 % silicon)"),
        ("bronze-tin", "Tin bronze (10 % tin, 2 % zinc)"),
        ("brass-yellow", "Yellow brass (leaded casting brass)"),
        ("brass-red", "Red brass (15 % zinc)"),
        ("nickel-silver", "Nickel silver (18 % nickel)"),
        ("pewter", "Pewter, free of lead"),
    ];
    Known { alloys: alloys.map(|(id, name)| (id.to_owned(), name.to_owned())).to_vec(), today: date(2026, 3, 1) }
}

pub fn table(text: &str) -> Table {
    read(text.as_bytes(), &Limits::default()).expect("a table")
}

pub fn cells_of(table: &Table) -> Vec<Vec<&str>> {
    table.rows.iter().map(|row| row.cells.iter().map(String::as_str).collect()).collect()
}

pub fn guessed(text: &str) -> (Table, Mapping, Preview) {
    let table = table(text);
    let mapping = guess(&table, &known());
    let preview = preview(&table, &mapping, &known());
    (table, mapping, preview)
}

/// The only row, which must be ready.
pub fn ready(preview: &Preview) -> Vec<&OrderRow> {
    preview
        .rows
        .iter()
        .map(|row| match row {
            PreviewRow::Ready(row) => row,
            PreviewRow::Bad { line, reasons } => panic!("line {line}: {reasons:?}"),
        })
        .collect()
}

/// What is wrong with the row of a line.
pub fn reasons(preview: &Preview, line: u32) -> Vec<Reason> {
    match preview.rows.iter().find(|row| row.line() == line) {
        Some(PreviewRow::Bad { reasons, .. }) => reasons.clone(),
        other => panic!("line {line} is {other:?}"),
    }
}

/// The time this thread was at work, which other work on the machine does not lengthen; the time passed where the system does not tell (the
/// first number of schedstat is nanoseconds on the processor: Linux, Documentation/scheduler/sched-stats).
pub fn time_at_work(work: impl FnOnce()) -> Duration {
    let told = || std::fs::read_to_string("/proc/thread-self/schedstat").ok()?.split(' ').next()?.parse().ok().map(Duration::from_nanos);
    let (start, before) = (Instant::now(), told());
    work();
    match (before, told()) {
        (Some(before), Some(after)) if after > before => after - before,
        _ => start.elapsed(),
    }
}

/// A random sequence that can be repeated (splitmix64, from memory).
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Below `end`, which is above 0.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    pub fn of<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())]
    }
}
