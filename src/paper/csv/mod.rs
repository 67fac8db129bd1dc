//! Tables for spreadsheets and other programs: the figures, the pieces, the kiln programmes and the record of a batch as CSV.
//!
//! All four are written by one rule (RFC 4180): a head, then rows as long as the head, commas between the cells, quotes where a cell needs
//! them, CRLF at the end of a row, UTF-8. Numbers have a point and no grouping, whatever the style, and stand in the unit their column is
//! named for; moments are ISO 8601 by the clock on the wall (`2026-12-04T14:28`), dates `2026-12-04`. What is missing is an empty cell.
//! The names of the columns do not change with the language.

mod figures;
mod pieces;
mod programme;
pub(in crate::paper) mod record;

pub use figures::figures;
pub use pieces::pieces;
pub use programme::programme;
pub use record::record;

use csv::{Terminator, WriterBuilder};
use jiff::civil::{Date, DateTime};

use super::desk::Desk;
use super::words::moment_of;
use crate::calc::{Id, Value};
use crate::quantity::Kind;

/// A table as text: the head and the rows.
///
/// # Panics
/// Never: memory takes every row, rows are as long as the head, and cells are text.
fn table<const N: usize>(head: [&str; N], rows: impl IntoIterator<Item = [String; N]>) -> String {
    // Spreadsheets that guess the separator split at a semicolon as well, unless it stands in quotes. The writer quotes a cell that holds
    // what it is told begins a comment.
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).comment(Some(b';')).from_writer(Vec::new());
    writer.write_record(head).expect("memory takes the head");
    for row in rows {
        writer.write_record(row).expect("memory takes every row");
    }
    String::from_utf8(writer.into_inner().expect("memory takes every row")).expect("cells are text")
}

/// A cell of somebody's own words, as they were written.
///
/// A spreadsheet takes what begins with one of these signs for a formula, and formulas reach into other files and out to the network. A name
/// that a client chose must not do that, so it gets an apostrophe before it, which makes it a word. Numbers are none of this: a minus before
/// a number means what it says. Where full-width signs are typed they count like the others.
fn words(text: &str) -> String {
    // Some programs drop spaces before a cell, so what stands behind them counts too.
    let first = text.trim_start().chars().next();
    let formula = matches!(first, Some('=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠')) || text.starts_with(char::is_control);
    if formula { format!("'{text}") } else { text.to_owned() }
}

fn yes_or_no(yes: bool) -> String {
    if yes { "yes" } else { "no" }.to_owned()
}

/// Whatever has one plain way to be written, such as an id.
fn plain(thing: Option<impl ToString>) -> String {
    thing.map_or_else(String::new, |thing| thing.to_string())
}

/// A number with all its digits, in the unit of stored values.
fn number(value: Value) -> String {
    match value {
        // Nothing added to a minus nothing is nothing.
        Value::Number(number) => (number + 0.0).to_string(),
        Value::Grams(grams) => grams.to_string(),
        Value::Money(money) => money.to_string(),
        Value::Missing(_) => String::new(),
    }
}

/// A figure's number.
fn figure(desk: &Desk<'_>, id: Option<Id>) -> String {
    id.map_or_else(String::new, |id| number(desk.input.book.value(id)))
}

/// A figure that is a moment, by the clock on the wall, to the minute; empty for every other kind.
fn moment(desk: &Desk<'_>, id: Option<Id>) -> String {
    let minutes = id.filter(|id| desk.input.book.kind(*id) == Kind::Moment).and_then(|id| desk.number(id));
    minutes.and_then(|minutes| moment_of(minutes, desk.words.zone)).map_or_else(String::new, to_the_minute)
}

fn to_the_minute(at: DateTime) -> String {
    words(&format!("{}T{:02}:{:02}", at.date(), at.hour(), at.minute()))
}

/// A day. One before the year 0, a slip of the keys, begins with a minus.
fn day(day: Option<Date>) -> String {
    words(&plain(day))
}

#[cfg(test)]
mod tests {
    use super::{number, table, words};
    use crate::calc::Value;

    #[test]
    fn words_never_become_formulas_and_numbers_stay_numbers() {
        for word in ["=1+1", "+353", "-5", "@sum", "\tx", "\rx", "\nx", " =1", "\u{a0}=1", "-", "＝1"] {
            assert_eq!(words(word), format!("'{word}"));
        }
        for word in ["", "limpet", "1-2", "a=b", "'=1", " a", "−5"] {
            assert_eq!(words(word), word);
        }
        assert_eq!(number(Value::Number(-5.0)), "-5");
        assert_eq!(number(Value::Number(-0.0)), "0");
        assert_eq!(number(Value::Number(1_234_567.25)), "1234567.25");
        assert_eq!(number(Value::Number(1e-7)), "0.0000001");
    }

    #[test]
    fn quotes_stand_where_they_are_needed() {
        let row = |cell: &str| table(["a", "b"], [[cell.to_owned(), "1.5".to_owned()]]);
        assert_eq!(row("x"), "a,b\r\nx,1.5\r\n");
        assert_eq!(row("x, y"), "a,b\r\n\"x, y\",1.5\r\n");
        assert_eq!(row("x \"y\""), "a,b\r\n\"x \"\"y\"\"\",1.5\r\n");
        assert_eq!(row("x\ny"), "a,b\r\n\"x\ny\",1.5\r\n");
        assert_eq!(row("x; y"), "a,b\r\n\"x; y\",1.5\r\n");
        assert_eq!(row(""), "a,b\r\n,1.5\r\n");
    }
}
