//! The examples of RFC 4180, section 2, in their order, and what the text there says of them.

use crate::support::{cells_of, table};
use pourbook::table::{Limits, TableError, read};

#[test]
fn rows_end_with_a_line_break_and_the_last_may_not() {
    let rows = [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]];
    assert_eq!(cells_of(&table("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")), rows);
    assert_eq!(cells_of(&table("aaa,bbb,ccc\r\nzzz,yyy,xxx")), rows);
}

#[test]
fn a_header_may_stand_first() {
    let with = table("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n");
    assert_eq!(cells_of(&with)[0], ["field_name"; 3]);
    assert_eq!(with.rows.iter().map(|row| row.line).collect::<Vec<_>>(), [1, 2, 3]);
}

#[test]
fn quotes_may_stand_around_cells() {
    let rows = [vec!["aaa", "bbb", "ccc"], vec!["zzz", "yyy", "xxx"]];
    assert_eq!(cells_of(&table("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx")), rows);
}

#[test]
fn quoted_cells_hold_line_breaks() {
    let broken = table("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx");
    assert_eq!(cells_of(&broken), [["aaa", "b\r\nbb", "ccc"], ["zzz", "yyy", "xxx"]]);
    assert_eq!(broken.rows[1].line, 3);
}

#[test]
fn two_quotes_stand_for_one() {
    assert_eq!(cells_of(&table("\"aaa\",\"b\"\"bb\",\"ccc\"")), [["aaa", "b\"bb", "ccc"]]);
}

#[test]
fn blanks_are_part_of_a_cell() {
    assert_eq!(cells_of(&table("aaa , bbb,ccc\r\n")), [["aaa ", " bbb", "ccc"]]);
}

#[test]
fn a_quote_at_the_end_of_broken_lines_is_still_found() {
    assert_eq!(cells_of(&table("\"a\"\"\n\",1\n\"\"\"b\",2\n")), [["a\"\n", "1"], ["\"b", "2"]]);
}

#[test]
fn words_behind_quotes_are_kept_and_an_open_quote_is_told() {
    assert_eq!(cells_of(&table("\"Luna\" ring,3\n5\" chain,1\n")), [["\"Luna\" ring", "3"], ["5\" chain", "1"]]);
    let open = read(b"a,b\n\n1,2\n\"never,3\n4,5\n", &Limits::default());
    assert_eq!(open, Err(TableError::QuoteNotClosed { line: 4 }));
}
