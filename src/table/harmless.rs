//! Cells that a spreadsheet would take for more than words, made harmless.
//!
//! A spreadsheet takes what begins with one of `= + - @` for a formula, and formulas reach into other files and out to the network. A name
//! that a client chose must not do that, so an apostrophe is put before it, which makes it a word. Blanks before the sign do not help,
//! since some programs drop them; full-width signs count where they are typed; and a tab or a line break at the beginning hides what
//! follows. `sep=;` by itself would change how the file is cut. One more apostrophe stands before a cell that has one already, so that
//! taking off one gives the cell back.

use std::borrow::Cow;

/// A cell of somebody's own words, harmless.
pub(super) fn harmless(cell: &str) -> Cow<'_, str> {
    if is_harmful(behind_apostrophes(cell)) { Cow::Owned(format!("'{cell}")) } else { Cow::Borrowed(cell) }
}

/// The words as they were before [`harmless`]; any other cell as it is.
pub(super) fn bare(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|_| is_harmful(behind_apostrophes(cell))).unwrap_or(cell)
}

fn behind_apostrophes(cell: &str) -> &str {
    cell.trim_start_matches('\'')
}

fn is_harmful(cell: &str) -> bool {
    let first = cell.trim_start().chars().next();
    matches!(first, Some('=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠'))
        || cell.starts_with(char::is_control)
        || super::sniff::sign_said(cell).is_some()
}
