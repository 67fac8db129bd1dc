//! Guessing what the columns of a table are.

use super::alloy::Alloys;
use super::fingerprint::FIRST_ROWS;
use super::heading_words::meaning;
use super::profile::Profile;
use super::{Fingerprint, Known, Mapping, Role};
use crate::table::{Kind, Row, Table, kind};
use std::collections::BTreeMap;

/// Says what each column of a table is: by what its heading calls it, as long as its cells do not contradict, and without known headings by
/// what its cells look like. The row of headings is the one with the most known words; a table without any is read from its first row on.
#[must_use]
pub fn guess(table: &Table, known: &Known) -> Mapping {
    let heading = known_heading(&table.rows).or(table.heading);
    let heading_row = heading.and_then(|at| table.rows.get(at));
    let rows = table.rows.get(heading.map_or(0, |at| at + 1)..).unwrap_or_default();
    let width = usual_width(rows).max(heading_row.map_or(0, |row| row.cells.len()));
    let mut mapping = Mapping::blank(heading_row.map_or_else(|| Fingerprint::of_kinds(table), Fingerprint::of_headings), width);
    let nothing_said = BTreeMap::new();
    let alloys = Alloys::new(&known.alloys, &nothing_said);
    let profiles: Vec<Profile> = (0..mapping.columns.len()).map(|column| Profile::of(rows, column, &alloys)).collect();
    let mut free = vec![true; profiles.len()];
    let named = heading_row.map_or(0, |row| by_headings(row, &profiles, &mut mapping, &mut free));
    by_cells(&profiles, known, named < 2, &mut mapping, &mut free);
    mapping
}

/// The most columns that half of the rows have: where fewer have more, a separator within a cell had no quotes around it.
fn usual_width(rows: &[Row]) -> usize {
    let mut widths: Vec<usize> = rows.iter().map(|row| row.cells.len()).collect();
    widths.sort_unstable();
    widths.get(widths.len() / 2).copied().unwrap_or(0)
}

/// The row that calls most columns by known names, at least two, and holds no numbers or dates.
fn known_heading(rows: &[Row]) -> Option<usize> {
    let names = |row: &Row| {
        let has_values = row.cells.iter().any(|cell| matches!(kind(cell), Kind::Number | Kind::Date));
        let mut roles: Vec<Role> = row.cells.iter().filter_map(|cell| meaning(cell)).map(|(role, _)| role).collect();
        roles.sort_unstable();
        roles.dedup();
        if has_values { 0 } else { roles.len() }
    };
    let counts = rows.iter().take(FIRST_ROWS).map(names).enumerate();
    // Of equal ones the first.
    counts.rev().max_by_key(|(_, count)| *count).filter(|(_, count)| *count >= 2).map(|(at, _)| at)
}

/// Gives roles by headings, the surest first; gives the number of headings that are known.
fn by_headings(row: &Row, profiles: &[Profile], mapping: &mut Mapping, free: &mut [bool]) -> usize {
    let meanings = row.cells.iter().map(|cell| meaning(cell)).enumerate();
    let mut said: Vec<(usize, Role, usize)> =
        meanings.filter_map(|(column, said)| said.map(|(role, score)| (column, role, score))).collect();
    said.sort_by_key(|&(_, _, score)| std::cmp::Reverse(score));
    for &(column, role, _) in &said {
        let Some(profile) = profiles.get(column) else { continue };
        if let Some(free) = free.get_mut(column) {
            *free = false;
        }
        if !contradicts(profile, role) && (role.is_shared() || mapping.column(role).is_none()) {
            mapping.set(column, role);
        }
    }
    said.len()
}

/// True where the cells of a column are not what its heading says.
fn contradicts(profile: &Profile, role: Role) -> bool {
    let needed = match role {
        Role::Quantity => profile.numbers,
        Role::Price => profile.numbers.max(profile.prices),
        Role::Due | Role::Taken => profile.dates,
        _ => return false,
    };
    // A column that is empty, or of which a few cells are wrong, is still what it says; the rows will tell.
    profile.filled > 0 && needed == 0 && profile.filled > 1
}

/// Gives roles that are left by what the cells look like. Beside known headings only what can hardly be anything else.
fn by_cells(profiles: &[Profile], known: &Known, all: bool, mapping: &mut Mapping, free: &mut [bool]) {
    let mut give = |role: Role, mapping: &mut Mapping, is_it: &dyn Fn(&Profile) -> bool| {
        if mapping.column(role).is_some() && !role.is_shared() {
            return;
        }
        let mut columns = profiles.iter().enumerate().filter(|(column, profile)| free.get(*column) == Some(&true) && is_it(profile));
        if let Some((column, _)) = columns.next() {
            mapping.set(column, role);
            if let Some(free) = free.get_mut(column) {
                *free = false;
            }
        }
    };
    give(Role::PatternFile, mapping, &|profile| profile.is_mostly(profile.files, 60));
    give(Role::Alloy, mapping, &|profile| profile.is_mostly(profile.alloys, 60));
    let has_taken = mapping.column(Role::Taken).is_some();
    let mut dates: Vec<_> = profiles.iter().filter(|profile| is_dates(profile)).filter_map(Profile::middle_day).collect();
    dates.sort_unstable();
    let last = dates.last().copied();
    // Of two columns of dates the later one is when it is due; a single one is that where most of it is still to come.
    let is_due = |profile: &Profile| {
        is_dates(profile) && profile.middle_day() == last && (dates.len() > 1 || has_taken || last >= Some(known.today))
    };
    give(Role::Due, mapping, &is_due);
    if !all {
        return;
    }
    give(Role::Taken, mapping, &is_dates);
    give(Role::Price, mapping, &|profile| profile.is_mostly(profile.prices, 60));
    give(Role::Size, mapping, &|profile| profile.is_mostly(profile.rings, 60) && !profile.counts_rows);
    give(Role::Quantity, mapping, &|profile| profile.is_mostly(profile.small, 90) && !profile.counts_rows);
    let is_code = |profile: &Profile| profile.is_mostly(profile.codes, 80) && !profile.counts_rows && !is_dates(profile);
    give(Role::Reference, mapping, &is_code);
    let is_name = |profile: &Profile| profile.is_words() && profile.letters <= 30 * profile.filled && 2 * profile.filled >= profile.rows;
    let names = profiles.iter().filter(|profile| is_name(profile)).count();
    // A single column of names is what was ordered.
    if mapping.client.is_none() && free_names(profiles, mapping, &is_name) > 1 && names > 1 {
        give(Role::Client, mapping, &is_name);
    }
    give(Role::Design, mapping, &is_name);
    give(Role::Notes, mapping, &Profile::is_words);
}

fn is_dates(profile: &Profile) -> bool {
    profile.is_mostly(profile.dates, 80)
}

/// The columns of names that nothing was said about yet.
fn free_names(profiles: &[Profile], mapping: &Mapping, is_name: &dyn Fn(&Profile) -> bool) -> usize {
    let ignored = |column: usize| mapping.columns.get(column) == Some(&Role::Ignored);
    profiles.iter().enumerate().filter(|(column, profile)| ignored(*column) && is_name(profile)).count()
}
