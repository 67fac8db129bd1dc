//! Files as spreadsheets write them. What the program families write is told from memory.

use crate::support::{cells_of, table};
use pourbook::table::{Encoding, Limits, Separator, TableError, read};

const ROWS: [[&str; 4]; 3] = [["Kunde", "Größe", "Preis €", "Stück"], ["Jörg – Söhne", "6½", "1250,50", "3"], ["Ærø", "N", "8,00", "12"]];

/// The rows with a sign between, quoted where a cell holds it.
fn written(sign: char, end: &str) -> String {
    let quoted = |cell: &str| if cell.contains(sign) { format!("\"{cell}\"") } else { cell.to_owned() };
    ROWS.iter().map(|row| row.map(quoted).join(&sign.to_string()) + end).collect()
}

fn utf16(text: &str, bytes_of: fn(u16) -> [u8; 2]) -> Vec<u8> {
    text.encode_utf16().flat_map(bytes_of).collect()
}

/// Windows-1252 by the table of the Unicode consortium (CP1252.TXT), for the signs that stand in `ROWS`.
fn windows_1252(text: &str) -> Vec<u8> {
    let byte = |c: char| match c {
        '€' => 0x80,
        '–' => 0x96,
        c => u8::try_from(u32::from(c)).expect("a sign of Latin-1"),
    };
    text.chars().map(byte).collect()
}

#[test]
fn every_encoding_with_every_separator_and_line_end() {
    for (sign, separator) in [(',', Separator::Comma), (';', Separator::Semicolon), ('\t', Separator::Tab), ('|', Separator::Bar)] {
        for end in ["\n", "\r", "\r\n"] {
            let text = written(sign, end);
            let marked = format!("\u{feff}{text}");
            let files = [
                (text.clone().into_bytes(), Encoding::Utf8),
                (marked.clone().into_bytes(), Encoding::Utf8),
                (utf16(&marked, u16::to_le_bytes), Encoding::Utf16Le),
                (utf16(&marked, u16::to_be_bytes), Encoding::Utf16Be),
                (utf16(&text, u16::to_le_bytes), Encoding::Utf16Le),
                (utf16(&text, u16::to_be_bytes), Encoding::Utf16Be),
                (windows_1252(&text), Encoding::Windows1252),
            ];
            for (bytes, encoding) in files {
                let table = read(&bytes, &Limits::default()).unwrap();
                assert_eq!((table.encoding, table.separator), (encoding, separator), "{sign:?} {end:?}");
                assert_eq!(cells_of(&table), ROWS, "{sign:?} {end:?} {encoding:?}");
                assert_eq!(table.heading, Some(0));
                assert_eq!(table.rows.iter().map(|row| row.line).collect::<Vec<_>>(), [1, 2, 3]);
            }
        }
    }
}

#[test]
fn the_unicode_text_of_an_office_spreadsheet() {
    // "Unicode text" of the office family: UTF-16 with mark, tabs, CRLF, quotes where a cell holds a comma or a quote.
    let bytes = utf16("\u{feff}Design\tPrice\r\n\"Limpet, large\"\t\"1,250.00\"\r\n", u16::to_le_bytes);
    let table = read(&bytes, &Limits::default()).unwrap();
    assert_eq!(cells_of(&table), [["Design", "Price"], ["Limpet, large", "1,250.00"]]);
}

#[test]
fn a_first_line_that_names_the_separator() {
    for first in ["sep=;", "SEP=;", "\"sep=;\"", "sep=;;;"] {
        let table = table(&format!("{first}\r\na,x;b,y\r\n1,5;2,5\r\n"));
        assert_eq!(table.separator, Separator::Semicolon);
        assert_eq!(cells_of(&table), [["a,x", "b,y"], ["1,5", "2,5"]], "{first}");
        assert_eq!(table.rows[0].line, 2);
    }
    assert_eq!(table("sep=|\na;b|c\n").separator, Separator::Bar);
}

#[test]
fn decimal_commas_do_not_part_cells() {
    let table = table("Artikel;Preis;Gewicht\nRing;12,50;3,2\nKette;8,00;4,1\nBrosche;7,25;9,9\n");
    assert_eq!((table.separator, table.width()), (Separator::Semicolon, 3));
}

#[test]
fn semicolons_in_remarks_do_not_part_cells() {
    let text = "Client,Design,Qty,Due,Notes\nA,Ring,1,2026-05-01,polish; engrave\nB,Ring,2,2026-05-01,satin; no stamp\n";
    assert_eq!((table(text).separator, table(text).width()), (Separator::Comma, 5));
    let quoted = "a,b\n\"x;y;z\",1\n\"u;v;w\",2\n";
    assert_eq!(table(quoted).separator, Separator::Comma);
}

#[test]
fn empty_columns_and_rows_at_the_ends_are_dropped_and_lines_still_count() {
    let table = table("\r\n;;;;\r\nDesign;Qty;;;\r\n\r\nLimpet;3;;;\r\n;;;;\r\n  ; ;;;\r\nWhelk;;2;;\r\n;;;;\r\n\r\n");
    assert_eq!(cells_of(&table), [vec!["Design", "Qty"], vec!["Limpet", "3"], vec!["Whelk", "", "2"]]);
    assert_eq!(table.rows.iter().map(|row| row.line).collect::<Vec<_>>(), [3, 5, 8]);
}

#[test]
fn commas_of_a_sentence_part_no_cells() {
    let one_column = table("Design\nLimpet\nWhelk, large\nCowrie\n");
    assert_eq!(cells_of(&one_column), [["Design"], ["Limpet"], ["Whelk, large"], ["Cowrie"]]);
}

#[test]
fn titles_may_stand_above_the_headings() {
    let table = table("Orders of March\n\nDesign,Metal,Qty\nLimpet,925,3\nWhelk,925,1\n");
    assert_eq!(table.heading, Some(1));
    assert_eq!(table.rows[1].line, 3);
}

#[test]
fn a_table_without_headings_has_none() {
    assert_eq!(crate::support::table("Limpet,925,3\nWhelk,925,1\n").heading, None);
    assert_eq!(crate::support::table("Limpet\nWhelk\n").heading, None);
}

#[test]
fn nonsense_is_refused_with_its_line() {
    let limits = Limits { max_bytes: 1000, max_rows: 3, max_columns: 4, max_breaks: 2 };
    let error = |bytes: &[u8]| read(bytes, &limits).unwrap_err();
    assert_eq!(error(b""), TableError::Empty);
    assert_eq!(error(b" \r\n;;;\n"), TableError::Empty);
    assert_eq!(error(b"sep=;\n"), TableError::Empty);
    assert_eq!(error(&[b'a'; 1001]), TableError::TooLarge { bytes: 1001, most: 1000 });
    assert_eq!(error(b"a\n\nb\nc\nd\n"), TableError::TooManyRows { line: 5, most: 3 });
    assert_eq!(error(b"a,b\n1,2,3,4,5\n"), TableError::TooManyColumns { line: 2, most: 4 });
    assert!(read(b"a,b\n1,2,,,,,,,,,\n", &limits).is_ok());
    assert_eq!(error(b"PK\x03\x04abc"), TableError::SpreadsheetFile);
    assert_eq!(error(b"a,b\nc\0d,\xff"), TableError::NotText { line: 2 });
    assert_eq!(error(b"a,b\n\x01\x02\x03\x04\x05"), TableError::NotText { line: 2 });
    assert_eq!(error(b"\n<!DOCTYPE html><table>"), TableError::Markup { line: 2 });
    assert_eq!(error(b"\xef\xbb\xbfa,b\r\nc,\xe9d\r\n"), TableError::BrokenText { line: 2 });
    assert_eq!(error(b"\xff\xfea\0,\0\n\0\0\xd8b\0"), TableError::BrokenText { line: 2 });
    let in_one_line = Limits { max_breaks: 0, ..limits };
    assert_eq!(read(b"a,b\n\"1\n2\",5\n", &in_one_line), Err(TableError::QuoteNotClosed { line: 2 }));
    for error in [error(b""), error(b"a,b\nc\0d,\xff"), error(b"a,\"b")] {
        assert!(!error.to_string().is_empty() && !error.to_string().ends_with('.'), "{error}");
    }
}
