//! Which column is what.

use crate::support::{guessed, known, ready, table};
use pourbook::files::order_table::Role::{
    Alloy, Client, Design, Due, Ignored, Notes, PatternFile, Price, Quantity, Reference, Size, Taken,
};
use pourbook::files::order_table::{Mapping, Role, guess, preview};

fn roles(text: &str) -> Vec<Role> {
    guess(&table(text), &known()).columns
}

#[test]
fn english_headings() {
    let text = "Pos,Order No.,Order date,Customer,Article,Qty,Metal,Ring size,Unit price,Total,Due date,Remarks,STL file\n\
        1,17,2026-02-01,A,Limpet,3,925,54,12.50,37.50,2026-04-01,satin,limpet.stl\n";
    assert_eq!(roles(text), [Ignored, Reference, Taken, Client, Design, Quantity, Alloy, Size, Price, Ignored, Due, Notes, PatternFile]);
    let other = "Client ref,Client name,Style #,Pieces,Alloy,Finger size (US),Needed by,Special instructions\n\
        x1,A,L,3,925,7,2026-04-01,none\n";
    assert_eq!(roles(other), [Reference, Client, Design, Quantity, Alloy, Size, Due, Notes]);
}

#[test]
fn german_headings() {
    let text = "Auftragsnr.;Bestelldatum;Kundenname;Artikelbezeichnung;Stückzahl;Legierung;Ringgröße;Liefertermin;Stückpreis (€);\
        Gesamtpreis;Bemerkungen;Datei\n\
        17;01.02.2026;A;Napfschnecke;3;925;54;01.04.2026;12,50;37,50;matt;napf.stl\n";
    assert_eq!(roles(text), [Reference, Taken, Client, Design, Quantity, Alloy, Size, Due, Price, Ignored, Notes, PatternFile]);
    let other = "Lfd. Nr.;Auftraggeber;Modell;Menge;Metall;RW;Fällig am;Gravur;Anmerkung\n1;A;N;3;925;54;01.04.2026;XY;matt\n";
    assert_eq!(roles(other), [Ignored, Client, Design, Quantity, Alloy, Size, Due, Notes, Notes]);
}

#[test]
fn cells_speak_where_no_heading_does() {
    let text = "A-17;Otter & Sohn;Limpet;3;925;54;2026-02-01;2026-04-01;12,50;limpet.stl\n\
        A-17;Otter & Sohn;Whelk;1;14k yellow;56,5;2026-02-01;2026-04-02;112,50;whelk.stl\n\
        A-18;Heron;Limpet;2;925;52;2026-02-03;2026-04-09;12,50;limpet.stl\n";
    assert_eq!(roles(text), [Reference, Client, Design, Quantity, Alloy, Size, Taken, Due, Price, PatternFile]);
}

#[test]
fn headings_nobody_knows_are_still_no_row() {
    let (_, mapping, preview) = guessed("Asiakas;Malli;Määrä;Seos\nOtter;Limpet;3;925\nHeron;Whelk;1;925\n");
    assert_eq!(mapping.columns, [Client, Design, Quantity, Alloy]);
    assert_eq!((preview.rows.len(), preview.above.count), (2, 1));
}

#[test]
fn a_heading_is_not_believed_against_its_cells() {
    let text = "Client,Design,Count,Due\nA,Ring,many,soon\nB,Ring,few,later\n";
    assert_eq!(roles(text), [Client, Design, Ignored, Ignored]);
}

#[test]
fn headings_of_words_alone_are_found_by_their_names() {
    let (table, mapping, preview) = guessed("Orders of spring\nClient;Design;Alloy\nA;Ring;sterling\nB;Brooch;pewter\n");
    assert_eq!(table.heading, None);
    assert_eq!(mapping.columns, [Client, Design, Alloy]);
    assert_eq!(preview.above.to_string(), "lines 1–2");
}

#[test]
fn a_mapping_is_known_again_by_the_headings() {
    let first = table("Kunde;Modell;Menge\nA;Ring;3\n");
    let mut mapping = guess(&first, &known());
    mapping.set(2, Ignored);
    mapping.set(1, Quantity);
    mapping.set(0, Quantity);
    assert_eq!(mapping.columns, [Quantity, Ignored, Ignored]);
    for (text, fits) in [
        ("KUNDE ;Modell:;Menge\nB;Kette;1\n", true),
        ("Liste\n\nKunde;Modell;Menge\nB;Kette;1\n", true),
        ("Kunde;Menge;Modell\nB;1;Kette\n", false),
        ("Kunde;Modell;Menge;Preis\nB;Kette;1;2\n", false),
        ("B;Kette;1\n", false),
    ] {
        assert_eq!(mapping.fits(&table(text)), fits, "{text}");
    }
    let below = preview(&table("Liste\n\nKunde;Modell;Menge\nB;Kette;1\n"), &mapping, &known());
    assert_eq!((below.rows.len(), below.rows[0].line()), (1, 4));
}

#[test]
fn a_mapping_without_headings_is_known_by_what_the_columns_hold() {
    let mapping = guess(&table("A;Ring;3;2026-04-01\nB;Ring;1;2026-04-02\n"), &known());
    assert!(mapping.fits(&table("C;Kette;2;2026-05-01\n")));
    assert!(mapping.fits(&table("C;Kette;2\n")));
    assert!(!mapping.fits(&table("C;2;Kette;2026-05-01\n")));
    assert!(!mapping.fits(&table("C;Kette;2;2026-05-01;x\n")));
}

#[test]
fn a_column_behind_the_headings_is_one_where_half_of_the_rows_have_it_or_a_person_says_so() {
    let usual = table("Client,Design,Qty\nA,Ring,1,satin\nB,Ring,2,\nC,Ring,2,matt\n");
    assert_eq!(guess(&usual, &known()).columns.len(), 4);
    let rare = table("Client,Design,Qty\nA,Ring,1\nB,Ring,2\nC,Ring,2,matt\n");
    let mut mapping = guess(&rare, &known());
    assert_eq!((mapping.columns.len(), preview(&rare, &mapping, &known()).bad().count), (3, 1));
    mapping.set(3, Notes);
    let said = preview(&rare, &mapping, &known());
    assert_eq!(ready(&said)[2].notes, "matt");
}

#[test]
fn a_mapping_is_plain_data() {
    fn is_plain<T: serde::Serialize + serde::de::DeserializeOwned>(_: &T) {}
    let mapping: Mapping = guess(&table("Kunde;Modell;Menge\nA;Ring;3\n"), &known());
    is_plain(&mapping);
}
