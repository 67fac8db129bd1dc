//! What headings call a column, in English and German.

use super::Role;
use super::letters::key;

/// Words of a heading without marks and signs, the strongest meaning of each. A heading that is one of them means it; in a longer heading
/// the longest of them counts, and the last. Common practice, no source.
const WORDS: [(Role, &str); 12] = [
    (
        Role::Client,
        "client, client name, client code, customer, customer name, customer no, customer number, customer id, buyer, account, \
         ordered by, company, kunde, kundin, kunden, kundenname, kundennr, kunden nr, kundennummer, kundenkurzel, auftraggeber, \
         besteller, bestellt von, firma, name, for",
    ),
    (
        Role::Design,
        "design, design name, design no, design number, article, article no, article number, article name, item, item name, \
         item no, item number, item code, model, model no, model name, style, style no, style number, piece, product, \
         product name, description, sku, artikel, artikelnr, artikel nr, artikelnummer, artikelname, artikelbezeichnung, \
         bezeichnung, beschreibung, modell, modellnr, modell nr, modellnummer, modellname, entwurf, produkt, produktname, \
         schmuckstuck, gegenstand, teil, muster",
    ),
    (
        Role::Quantity,
        "quantity, qty, qnty, order qty, order quantity, ordered quantity, qty ordered, pieces, pcs, pc, count, units, \
         number of pieces, no of pieces, how many, menge, bestellmenge, anzahl, stuck, stuckzahl, stk, st, mge, anz",
    ),
    (
        Role::Alloy,
        "alloy, metal, metal type, material, metal alloy, karat, carat, purity, fineness, legierung, metall, edelmetall, \
         werkstoff, feingehalt",
    ),
    (
        Role::Size,
        "size, ring size, ringsize, finger size, us size, uk size, eu size, grosse, groesse, ringgrosse, ringgroesse, ringweite, \
         ring weite, rw, rg, gr, ringmass, weite",
    ),
    (
        Role::Due,
        "due, due date, due on, date due, due by, deadline, deliver by, delivery, delivery date, ship by, ship date, \
         required by, required date, date required, need by, needed by, wanted by, ready by, promised, fallig, fallig am, \
         faellig, falligkeit, termin, liefertermin, lieferdatum, lieferung, wunschtermin, fertig bis, abgabe, abgabetermin, bis, \
         benotigt bis, frist",
    ),
    (
        Role::Taken,
        "taken, taken on, order date, ordered, ordered on, date ordered, date of order, date taken, received, date received, \
         placed, placed on, purchase date, created, created at, date, datum, bestelldatum, auftragsdatum, bestellt am, bestellt, \
         eingang, eingangsdatum, auftragseingang, angenommen, angenommen am, aufgenommen",
    ),
    (
        Role::Reference,
        "order, order no, order nr, order number, order id, order ref, order reference, order #, orders, po, po no, po number, \
         purchase order, job, job no, job number, reference, ref, ref no, your ref, your reference, customer ref, \
         customer reference, client ref, client reference, auftrag, auftragsnr, auftrags nr, auftragsnummer, auftrag nr, \
         bestellung, bestellnr, bestell nr, bestellnummer, referenz, vorgang, vorgangsnummer, zeichen, ihr zeichen, kommission, \
         beleg, belegnr, belegnummer",
    ),
    (
        Role::Price,
        "price, unit price, price each, price per piece, each, rate, preis, stuckpreis, einzelpreis, preis stuck, \
         preis pro stuck, verkaufspreis, vk, vk preis, nettopreis, price net, net price",
    ),
    (
        Role::Notes,
        "notes, note, remark, remarks, comment, comments, instructions, special instructions, engraving, finish, details, \
         message, bemerkung, bemerkungen, anmerkung, anmerkungen, notiz, notizen, kommentar, hinweis, hinweise, gravur, wunsch, \
         zusatz, info, oberflache, ausfuhrung",
    ),
    (
        Role::PatternFile,
        "file, file name, filename, pattern, pattern file, piece file, design file, model file, stl, stl file, cad, cad file, \
         datei, dateiname, modelldatei, druckdatei, stl datei, cad datei",
    ),
    (
        Role::Ignored,
        "pos, position, line, line no, row, #, no, nr, lfd nr, lfd, zeile, id, email, e mail, phone, telephone, telefon, \
         address, adresse, strasse, street, city, ort, plz, zip, country, land, status, weight, gewicht, total, total price, \
         line total, sum, summe, gesamt, gesamtpreis, betrag, vat, mwst, tax, discount, rabatt, currency, wahrung, image, \
         picture, bild, foto, photo, paid, bezahlt, invoice, rechnung",
    ),
];

/// Words that mean something only where they are the whole heading.
const ALONE: [&str; 16] = ["name", "for", "no", "nr", "st", "gr", "rg", "rw", "id", "each", "line", "row", "bis", "land", "info", "#"];

/// What a heading says its column is, and how surely, the greater the surer; `None` where it says nothing known.
pub(super) fn meaning(heading: &str) -> Option<(Role, usize)> {
    let heading = key(heading);
    if heading.is_empty() || heading.len() > 80 {
        return None;
    }
    let all = WORDS.iter().flat_map(|(role, words)| words.split(", ").map(move |word| (*role, word)));
    all.filter_map(|(role, word)| score(&heading, word).map(|score| (role, score))).max_by_key(|(_, score)| *score)
}

/// How well a word of the list names a heading: it is the whole of it, or whole words within, or a long word within a compound.
fn score(heading: &str, word: &str) -> Option<usize> {
    if heading == word {
        return Some(200);
    }
    let last = if heading.ends_with(word) { 5 } else { 0 };
    let padded = format!(" {heading} ");
    if padded.contains(&format!(" {word} ")) {
        return (!ALONE.contains(&word)).then_some(100 + word.len() + last);
    }
    (word.len() >= 5 && heading.contains(word)).then_some(50 + word.len() + last)
}
