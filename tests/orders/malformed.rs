//! Bytes that are no table never end in a panic, and what is wrong with them is told in a sentence.

use crate::support::{Random, known, time_at_work};
use pourbook::files::order_table::{Known, group, guess, preview};
use pourbook::table::{Limits, OutCell, Style, read, write};

const LIMITS: Limits = Limits { max_bytes: 1 << 16, max_rows: 200, max_columns: 40, max_breaks: 5 };

const SOUND: &str = "\u{feff}Kunde;Auftrag;Modell;Menge;Legierung;Größe;Liefertermin;Bestelldatum;Preis;Bemerkung;Datei\r\n\
    A;17;Limpet;3;925;6 1/2;13.04.2026;01.03.2026;1.250,50 €;\"glatt; \"\"hell\"\"\r\npoliert\";limpet.stl\r\n\
    B;18;Whelk;1.250;14k;N½;03/04/2026;02/03/2026;12,-;=1+1;\r\n";

/// Pieces that mean something to a table.
const PIECES: [&str; 28] = [
    ";",
    ",",
    "\t",
    "|",
    "\"",
    "\"\"",
    "\n",
    "\r",
    "\r\n",
    "'",
    "=",
    "1,250",
    "03/04/2026",
    "14k",
    "6-Jan",
    "\u{feff}",
    "\0",
    "½",
    "Qty",
    "Kunde",
    "sep=;",
    "#REF!",
    "-",
    "1e9",
    "9999999999999",
    "𝕬",
    "Due",
    " ",
];

/// Reads bytes to the end, and checks what must hold whatever they are.
fn check(bytes: &[u8], known: &Known, seen: &mut [usize; 3]) {
    let table = match read(bytes, &LIMITS) {
        Ok(table) => table,
        Err(error) => {
            seen[0] += 1;
            assert!(error.to_string().len() < 200, "{error}");
            return;
        }
    };
    assert!(!table.rows.is_empty() && table.rows.len() <= LIMITS.max_rows && table.width() <= LIMITS.max_columns);
    assert!(table.rows.windows(2).all(|pair| pair[0].line < pair[1].line), "lines rise");
    assert!(table.rows.iter().all(|row| !row.cells.last().is_none_or(|cell| cell.trim().is_empty())), "no empty cell last");
    let mapping = guess(&table, known);
    assert!(mapping.fits(&table), "a mapping fits the table it was made for: {table:?} {mapping:?}");
    let preview = preview(&table, &mapping, known);
    assert_eq!(preview.rows.len() + preview.above.count, table.rows.len(), "no row is left out");
    seen[1] += preview.ready().count();
    seen[2] += preview.bad().count;
    let orders = group(preview.ready().cloned());
    assert_eq!(orders.iter().map(|order| order.lines.len()).sum::<usize>(), preview.ready().count());
    let again = write(table.rows.iter().map(|row| row.cells.iter().map(|cell| OutCell::words(cell.as_str()))), &Style::default());
    // Signs that stand in no text are written as blanks.
    let plain = |cell: &String| !cell.contains(|c: char| c.is_ascii_control());
    if let Ok(again) = read(&again, &Limits { max_breaks: 1000, ..LIMITS })
        && table.rows.iter().all(|row| row.cells.iter().all(plain))
    {
        let cells = |rows: &[pourbook::table::Row]| rows.iter().map(|row| row.cells.clone()).collect::<Vec<_>>();
        assert_eq!(cells(&again.rows), cells(&table.rows));
    }
}

#[test]
fn mutated_and_random_bytes_never_panic() {
    let mut random = Random(20260301);
    let mut seen = [0; 3];
    let mut known = known();
    known.alloys.truncate(14);
    for case in 0..20_000 {
        let mut bytes = match case % 4 {
            0 => (0..random.below(60)).map(|_| random.next() as u8).collect(),
            1 => (0..random.below(30)).map(|_| random.of(&PIECES)).collect::<String>().into_bytes(),
            2 => SOUND.as_bytes().to_vec(),
            _ => SOUND.encode_utf16().flat_map(u16::to_le_bytes).collect(),
        };
        if case % 4 > 1 {
            for _ in 0..1 + random.below(4) {
                let at = random.below(bytes.len());
                match random.below(4) {
                    0 => bytes[at] = random.next() as u8,
                    1 => bytes.truncate(at.max(1)),
                    2 => drop(bytes.splice(at..at, random.of(&PIECES).bytes())),
                    _ => drop(bytes.remove(at)),
                }
                if bytes.is_empty() {
                    break;
                }
            }
        }
        check(&bytes, &known, &mut seen);
    }
    assert!(seen.iter().all(|&count| count > 1_000), "refused, ready and bad all happen: {seen:?}");
}

#[test]
fn many_open_quotes_take_time_in_proportion() {
    let limits = Limits { max_bytes: 1 << 24, max_rows: 1 << 20, max_columns: 1 << 22, max_breaks: 200 };
    let time = |piece: &str, count: usize| {
        let text = piece.repeat(count);
        let once = || time_at_work(|| drop(read(text.as_bytes(), &limits))).as_secs_f64();
        (0..3).map(|_| once()).fold(f64::INFINITY, f64::min)
    };
    // Eight times as many would take sixty-four times as long if each looked at all the others.
    for piece in ["\"a;", "\"\"\"a;", "\"\"a;", "\"\n", "\" ", ";\"", "\"a\"b,"] {
        let (short, long) = (time(piece, 100_000), time(piece, 800_000));
        assert!(long < 32.0 * short, "{piece:?} takes {short} and {long} s");
    }
}
