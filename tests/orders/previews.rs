//! Whole rows: what is missing, what is told, what is kept.

use crate::support::{guessed, known, ready, reasons, table};
use jiff::civil::date;
use pourbook::files::order_table::{Caution, PreviewRow, Reason, guess, preview};

#[test]
fn a_row_with_everything() {
    let text = "Auftrag;Kunde;Modell;Menge;Legierung;Ringgröße;Liefertermin;Bestelldatum;Preis;Bemerkung;Gravur;Datei\r\n\
        17; Otter   & Sohn ;\"Napf-\nschnecke\";3;925;6 1/2;13.04.2026;01.02.2026;1.250,50 €;\"matt\nhell\";A+B;napf.stl\r\n";
    let (_, _, preview) = guessed(text);
    let row = ready(&preview)[0].clone();
    assert_eq!((row.line, row.client.as_str(), row.reference.as_deref()), (2, "Otter & Sohn", Some("17")));
    assert_eq!((row.design.as_str(), row.quantity, row.alloy.as_deref()), ("Napf- schnecke", 3, Some("silver-925")));
    assert_eq!((row.size.as_deref(), row.due, row.taken), (Some("6 1/2"), Some(date(2026, 4, 13)), Some(date(2026, 2, 1))));
    assert_eq!((row.price.as_deref(), row.notes.as_str()), (Some("1250.50"), "matt\nhell\nA+B"));
    assert_eq!((row.pattern_file.as_deref(), row.cautions.as_slice()), (Some("napf.stl"), [].as_slice()));
}

#[test]
fn everything_wrong_is_told_at_once() {
    let (_, _, preview) = guessed("Client,Design,Qty,Due,Taken\nA,Ring,1,2026-05-01,2026-02-01\n,,0,2026-01-01,2026-02-01\nTotal,,1,,\n");
    let found = reasons(&preview, 3);
    assert!(
        matches!(
            found.as_slice(),
            [
                Reason::NoClient { column: Some(0) },
                Reason::NoDesign { column: Some(1) },
                Reason::QuantityZero(_),
                Reason::DateBeforeTaken { .. }
            ]
        ),
        "{found:?}"
    );
    assert_eq!(reasons(&preview, 4), [Reason::NoDesign { column: Some(1) }]);
    assert_eq!(preview.bad().to_string(), "lines 3–4");
    assert_eq!(preview.rows.len(), 3);
}

#[test]
fn a_decimal_comma_that_parts_cells_is_noticed() {
    let (_, _, preview) = guessed("Client,Design,Qty,Price\nA,Ring,1,12.50\nB,Ring,2,12,50\nC,Ring,3,8.00\nD,Ring,3,8.00\n");
    assert_eq!(reasons(&preview, 3), [Reason::TooManyCells { cells: 5, columns: 4 }]);
    assert_eq!(preview.ready().count(), 3);
}

#[test]
fn what_no_column_tells_can_be_said_for_all_rows() {
    let table = table("Design;Alloy\nRing;925\nBrooch;pewter\n");
    let mut mapping = guess(&table, &known());
    let PreviewRow::Bad { reasons, .. } = &preview(&table, &mapping, &known()).rows[0] else { panic!("ready") };
    assert_eq!(reasons.as_slice(), [Reason::NoClient { column: None }, Reason::NoQuantity { column: None }]);
    (mapping.client, mapping.quantity) = (Some("A".to_owned()), Some(1));
    let said = preview(&table, &mapping, &known());
    assert_eq!(ready(&said).iter().map(|row| (row.client.as_str(), row.quantity)).collect::<Vec<_>>(), [("A", 1), ("A", 1)]);
}

#[test]
fn repeats_and_odd_days_are_told_and_stay_ready() {
    let (_, _, preview) = guessed(
        "Client,Design,Qty,Due,Taken\nA,Ring,1,2026-05-01,2026-02-01\nA,Ring,2,2026-05-01,2026-02-01\nA, Ring ,1,2026-05-01,2026-02-01\n\
        A,Ring,1,2026-05-01,2026-02-01\nB,Ring,1,2026-02-28,2026-02-01\nB,Ring,1,2036-02-28,2026-03-02\n",
    );
    let cautions: Vec<_> = ready(&preview).iter().map(|row| row.cautions.clone()).collect();
    assert_eq!(
        cautions,
        [
            vec![],
            vec![],
            vec![Caution::Repeat { of_line: 2 }],
            vec![Caution::Repeat { of_line: 2 }],
            vec![Caution::DuePast],
            vec![Caution::DueFarOff, Caution::TakenInFuture]
        ]
    );
}

#[test]
fn a_cell_without_end_is_no_name() {
    let long = "x".repeat(5001);
    let (_, _, preview) = guessed(&format!("Client,Design,Qty,Notes\nA,{long},1,\nA,Ring,1,{long}\n"));
    assert!(matches!(reasons(&preview, 2).as_slice(), [Reason::TooLong { most: 300, cell }] if cell.text.len() == 80));
    assert!(matches!(reasons(&preview, 3).as_slice(), [Reason::TooLong { most: 5000, .. }]));
}
