//! What single cells say: quantities, prices, dates, sizes.

use crate::support::{guessed, known, ready, reasons, table};
use jiff::civil::date;
use pourbook::files::order_table::{CellAt, OrderRow, Preview, Question, Reason, guess, preview};
use pourbook::table::Decimal;

/// The rows of a column, beside a client, a design and, where it is another one, a quantity.
fn column(heading: &str, cells: &[&str]) -> Preview {
    let quantity = if heading == "Qty" { "" } else { "Qty\t" };
    let one = if heading == "Qty" { "" } else { "1\t" };
    let rows: String = cells.iter().enumerate().map(|(at, cell)| format!("A\tRing {at}\t{one}{cell}\n")).collect();
    guessed(&format!("Client\tDesign\t{quantity}{heading}\n{rows}")).2
}

fn only_row(heading: &str, cell: &str) -> OrderRow {
    ready(&column(heading, &[cell]))[0].clone()
}

fn only_reason(heading: &str, cell: &str) -> Reason {
    let mut found = reasons(&column(heading, &[cell]), 2);
    assert_eq!(found.len(), 1, "{found:?}");
    found.remove(0)
}

#[test]
fn quantities_as_people_write_them() {
    for (cell, quantity) in [
        ("3", 3),
        (" 12 ", 12),
        ("3 pcs", 3),
        ("3 Stk.", 3),
        ("3 Stück", 3),
        ("2x", 2),
        ("x2", 2),
        ("4 ea", 4),
        ("3.0", 3),
        ("3,00", 3),
        ("1'250", 1250),
        ("1 250", 1250),
        ("0007", 7),
        ("100000", 100_000),
        ("1.250,00", 1250),
        ("1,250.0", 1250),
    ] {
        assert_eq!(only_row("Qty", cell).quantity, quantity, "{cell}");
    }
}

#[test]
fn quantities_that_are_none() {
    let at = |cell: &str| CellAt { column: 2, text: cell.to_owned() };
    assert_eq!(only_reason("Qty", "2.5"), Reason::QuantityNotWhole(at("2.5")));
    assert_eq!(only_reason("Qty", "0"), Reason::QuantityZero(at("0")));
    assert_eq!(only_reason("Qty", "-3"), Reason::QuantityNegative(at("-3")));
    assert_eq!(only_reason("Qty", "100001"), Reason::QuantityTooLarge { cell: at("100001"), most: 100_000 });
    assert_eq!(only_reason("Qty", "99999999999999999999"), Reason::QuantityTooLarge { cell: at("99999999999999999999"), most: 100_000 });
    assert_eq!(only_reason("Qty", ""), Reason::NoQuantity { column: Some(2) });
    assert_eq!(only_reason("Qty", "#REF!"), Reason::SpreadsheetFault(at("#REF!")));
    for cell in ["three", "2 pairs", "1 Paar", "1e3", "3-4", "3/4", "2+1", "١٢"] {
        // Beside a cell that is a number, so that the column is taken for a quantity.
        let preview = column("Qty", &["1", cell]);
        assert_eq!(reasons(&preview, 3), [Reason::NotANumber(at(cell))], "{cell}");
    }
}

#[test]
fn a_comma_that_parts_thousands_or_decimals_is_refused_unless_the_column_decides() {
    let open = only_reason("Qty", "1,250");
    let cell = CellAt { column: 2, text: "1,250".to_owned() };
    assert_eq!(open, Reason::AmbiguousNumber { cell, readings: ["1250".to_owned(), "1.250".to_owned()] });
    let quantities = |cells: &[&str]| -> Vec<u32> { ready(&column("Qty", cells)).iter().map(|row| row.quantity).collect() };
    assert_eq!(quantities(&["1,250", "2.0"]), [1250, 2]);
    assert_eq!(quantities(&["1.250", "2,0"]), [1250, 2]);
    assert_eq!(reasons(&column("Qty", &["1,250", "2,0"]), 2), [Reason::QuantityNotWhole(CellAt { column: 2, text: "1,250".to_owned() })]);
    // Another column does not decide, and cells that contradict each other do not either.
    let preview = column("Qty", &["1,250", "2.0", "3,0"]);
    assert!(matches!(reasons(&preview, 2).as_slice(), [Reason::AmbiguousNumber { .. }]));
    assert_eq!(preview.questions, [Question::DecimalSign { column: 2 }]);
}

#[test]
fn a_person_decides_the_sign_the_column_leaves_open() {
    let table = table("Client;Design;Qty;Price\nA;Ring;1.250;1.250\nB;Ring;2;3.500\n");
    let mut mapping = guess(&table, &known());
    assert_eq!(preview(&table, &mapping, &known()).bad().count, 2);
    mapping.decimal = Some(Decimal::Comma);
    let decided = preview(&table, &mapping, &known());
    let rows = ready(&decided);
    assert_eq!((rows[0].quantity, rows[0].price.as_deref(), rows[1].price.as_deref()), (1250, Some("1250"), Some("3500")));
}

#[test]
fn prices_as_people_write_them() {
    for (cell, price) in [
        ("12.50", "12.50"),
        ("12,50", "12.50"),
        ("€ 12,50", "12.50"),
        ("12,50 €", "12.50"),
        ("EUR 1.250,00", "1250.00"),
        ("$1,250.00", "1250.00"),
        ("12,-", "12"),
        ("CHF 1'250.–", "1250"),
        ("0", "0"),
        ("£5", "5"),
        ("0,90", "0.90"),
        ("12345678901234567890.12", "12345678901234567890.12"),
    ] {
        assert_eq!(only_row("Price", cell).price.as_deref(), Some(price), "{cell}");
    }
    assert_eq!(only_row("Price", "–").price, None);
    let at = |cell: &str| CellAt { column: 3, text: cell.to_owned() };
    assert_eq!(only_reason("Price", "-5.00"), Reason::PriceNegative(at("-5.00")));
    let preview = column("Price", &["5.00", "on request"]);
    assert_eq!(reasons(&preview, 3), [Reason::NotANumber(at("on request"))]);
}

#[test]
fn dates_as_people_write_them() {
    let day = date(2026, 4, 3);
    for cell in [
        "2026-04-03",
        "2026/04/03",
        "03.04.2026",
        "3.4.26",
        "3. April 2026",
        "Apr 3, 2026",
        "Fri 3 Apr 2026",
        "2026-04-03 00:00:00",
        "2026-04-03T08:00:00Z",
    ] {
        assert_eq!(only_row("Due", cell).due, Some(day), "{cell}");
    }
    assert_eq!(only_row("Due", "13/04/2026").due, Some(date(2026, 4, 13)));
    assert_eq!(only_row("Due", "04/13/2026").due, Some(date(2026, 4, 13)));
    assert_eq!(only_row("Due", "05/05/2026").due, Some(date(2026, 5, 5)));
    for cell in ["31.02.2027", "soon", "12.5.", "46115", "2026-13-01", "KW 12"] {
        let preview = column("Due", &["2026-04-03", cell]);
        assert_eq!(reasons(&preview, 3), [Reason::NotADate(CellAt { column: 3, text: cell.to_owned() })], "{cell}");
    }
}

#[test]
fn one_cell_decides_the_order_of_day_and_month_for_its_column() {
    let days = |cells: &[&str]| -> Vec<_> { ready(&column("Due", cells)).iter().map(|row| row.due.unwrap()).collect() };
    assert_eq!(days(&["03/04/2026", "13/04/2026"]), [date(2026, 4, 3), date(2026, 4, 13)]);
    assert_eq!(days(&["03/04/2026", "04/13/2026"]), [date(2026, 3, 4), date(2026, 4, 13)]);
    let preview = column("Due", &["03/04/2026", "06/05/2026"]);
    let cell = CellAt { column: 3, text: "03/04/2026".to_owned() };
    assert_eq!(reasons(&preview, 2), [Reason::AmbiguousDate { cell, readings: [date(2026, 4, 3), date(2026, 3, 4)] }]);
    assert_eq!(preview.questions, [Question::DayOrder { column: 3 }]);
    // Where two cells say different things, neither decides for the others.
    let torn = column("Due", &["03/04/2026", "13/04/2026", "04/13/2026"]);
    assert_eq!((torn.bad().count, torn.ready().count()), (1, 2));
}

#[test]
fn the_order_of_day_and_month_can_be_said() {
    let table = table("Client;Design;Qty;Due\nA;Ring;1;03/04/2026\nB;Ring;2;06/05/2026\n");
    let mut mapping = guess(&table, &known());
    for (day_first, due) in [(true, date(2026, 4, 3)), (false, date(2026, 3, 4))] {
        mapping.day_first = Some(day_first);
        assert_eq!(ready(&preview(&table, &mapping, &known()))[0].due, Some(due));
    }
}

#[test]
fn sizes_as_people_write_them() {
    for cell in [
        "54",
        "54.5",
        "54,5",
        "6 1/2",
        "6½",
        "6-1/2",
        "N",
        "N½",
        "n 1/2",
        "Z+2",
        "US 7",
        "7 US",
        "UK N",
        "Gr. 54",
        "RW 54",
        "54 mm",
        "Ø 17.2 mm",
        "19 cm",
        "45x30 mm",
        "XL",
        "one size",
        "0",
        "size 7",
        "D",
        "D½",
    ] {
        assert_eq!(only_row("Ring size", cell).size.as_deref(), Some(cell), "{cell}");
    }
    // A spreadsheet has made dates of 6.5, 6/5 and 1-6.
    for cell in ["6. Mai", "06.05.2026", "5-Jun", "2026-06-01", "61/4", "-3", "54–56", "as before", "5000"] {
        assert_eq!(only_reason("Ring size", cell), Reason::SizeUnreadable(CellAt { column: 3, text: cell.to_owned() }), "{cell}");
    }
    assert_eq!(only_row("Ring size", "-").size, None);
}
