//! What is written is read back, whatever the cells say.

use crate::support::{Random, cells_of};
use pourbook::table::{Limits, OutCell, Separator, Style, read, write};

const LIMITS: Limits = Limits { max_bytes: 1 << 24, max_rows: 1000, max_columns: 100, max_breaks: 1000 };

/// What could go wrong in a cell, and letters of all lengths.
const PIECES: [&str; 32] = [
    "\"", "\"\"", "'", "=", "+", "-", "@", ",", ";", "\t", "|", "\r", "\n", "\r\n", " ", "\u{a0}", "\u{feff}", "sep=;", "sep=,", "＝", "a",
    "ö", "€", "1", "1,5", "#", "<b>", "\u{2028}", "\u{85}", "\u{fffd}", "𝕬", "limpet",
];

fn style(random: &mut Random) -> Style {
    let separator = random.of(&[Separator::Comma, Separator::Semicolon, Separator::Tab, Separator::Bar]);
    let [decimal_comma, bom, crlf] = [0; 3].map(|_| random.below(2) == 1);
    Style { separator, decimal_comma, bom, crlf }
}

fn cell(random: &mut Random) -> String {
    let count = random.below(7);
    match random.below(3) {
        0 => (0..count).map(|_| random.of(&PIECES)).collect(),
        // Any character of the first planes, but for the signs that stand in no text.
        1 => (0..count).filter_map(|_| char::from_u32(random.below(0x1_1000) as u32)).filter(|c| !c.is_ascii_control()).collect(),
        _ => (0..count).map(|_| random.of(&["x", "y", " "])).collect(),
    }
}

fn number(random: &mut Random) -> String {
    let sign = random.of(&["", "-"]);
    let whole = random.below(10_000_000);
    if random.below(2) == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{:03}", random.below(1000)) }
}

fn rows(random: &mut Random, cell: fn(&mut Random) -> String) -> Vec<Vec<String>> {
    let (rows, most) = (1 + random.below(7), 1 + random.below(5));
    (0..rows).map(|_| (0..1 + random.below(most)).map(|_| cell(random)).collect()).collect()
}

/// Empty cells at the ends of rows and rows of blanks alone are not kept.
fn kept(rows: &[Vec<String>]) -> Vec<Vec<&str>> {
    let is_blank = |cell: &&str| cell.trim().is_empty();
    let rows = rows.iter().map(|row| {
        let mut row: Vec<&str> = row.iter().map(String::as_str).map(|cell| if is_blank(&cell) { "" } else { cell }).collect();
        while row.last().is_some_and(is_blank) {
            row.pop();
        }
        row
    });
    rows.filter(|row| !row.is_empty()).collect()
}

#[test]
fn cells_are_read_back() {
    let mut random = Random(4180);
    for _ in 0..20_000 {
        let (rows, style) = (rows(&mut random, cell), style(&mut random));
        let bytes = write(rows.iter().map(|row| row.iter().map(|cell| OutCell::words(cell.as_str()))), &style);
        let kept = kept(&rows);
        let text = String::from_utf8_lossy(&bytes);
        match read(&bytes, &LIMITS) {
            Ok(table) => {
                assert_eq!(cells_of(&table), kept, "{text:?}");
                assert!(table.separator == style.separator || table.width() == 1, "{text:?}");
            }
            Err(error) => assert!(kept.is_empty(), "{error} {text:?}"),
        }
    }
}

#[test]
fn numbers_are_read_back() {
    let mut random = Random(8259);
    for _ in 0..10_000 {
        let (rows, style) = (rows(&mut random, number), style(&mut random));
        let bytes = write(rows.iter().map(|row| row.iter().map(|cell| OutCell::number(cell.as_str()))), &style);
        let table = read(&bytes, &LIMITS).unwrap();
        let sign = if style.decimal_comma { "," } else { "." };
        let wanted: Vec<Vec<String>> = rows.iter().map(|row| row.iter().map(|cell| cell.replace('.', sign)).collect()).collect();
        assert_eq!(cells_of(&table), wanted, "{:?}", String::from_utf8_lossy(&bytes));
    }
}

#[test]
fn nothing_written_begins_a_formula() {
    let words = ["=1+1", "+353", "-5", "@sum", "\tx", "\rx", " =1", "\u{a0}=1", "-", "＝1", "'=1", "sep=;"];
    let style = Style { separator: Separator::Semicolon, ..Style::default() };
    let text = String::from_utf8(write([words.map(OutCell::words)], &style)).unwrap();
    for cell in pourbook::table::cells(text.trim_end(), b';') {
        assert!(cell.plain().starts_with('\''), "{cell:?}");
    }
    for word in ["", "limpet", "1-2", "a=b", " a", "−5", "'tis"] {
        let text = String::from_utf8(write([[OutCell::words(word), OutCell::words("x")]], &style)).unwrap();
        assert!(text.trim_start_matches('"').starts_with(word), "{text}");
    }
    let number = |text| String::from_utf8(write([[OutCell::number(text), OutCell::words("x")]], &style)).unwrap();
    assert_eq!(number("-5"), "-5;x\r\n");
    assert_eq!(number("-5+cmd"), "'-5+cmd;x\r\n");
}

#[test]
fn the_style_is_kept() {
    let rows = || [vec![OutCell::words("Größe"), OutCell::number("1250.5")], vec![OutCell::words("a;b")]];
    let as_text = |style: &Style| String::from_utf8(write(rows(), style)).unwrap();
    assert_eq!(as_text(&Style::default()), "Größe,1250.5\r\n\"a;b\",\r\n");
    let german = Style { separator: Separator::Semicolon, decimal_comma: true, bom: true, crlf: false };
    assert_eq!(as_text(&german), "\u{feff}Größe;1250,5\n\"a;b\";\n");
    let both = Style { decimal_comma: true, ..Style::default() };
    assert_eq!(as_text(&both), "Größe,\"1250,5\"\r\n\"a;b\",\r\n");
}
