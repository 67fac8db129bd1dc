//! Words of the trade for alloys, each as a person of the trade understands it.

use crate::support::{guessed, known, ready, reasons, table};
use pourbook::files::order_table::{Known, Question, Reason, guess, preview};

/// The ids that a word can mean: one, several, or none.
fn fitting(word: &str, known: &Known) -> Vec<String> {
    let table = table(&format!("Client;Design;Qty;Alloy\nA;Ring;1;\"{word}\"\n"));
    let mapping = guess(&table, known);
    let preview = preview(&table, &mapping, known);
    if let Some(row) = preview.ready().next() {
        return row.alloy.iter().cloned().collect();
    }
    match reasons(&preview, 2).as_slice() {
        [Reason::SeveralAlloys { fitting, .. }] => fitting.clone(),
        [Reason::UnknownAlloy { .. }] => Vec::new(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn words_that_mean_one_alloy() {
    let meant = [
        ("silver-925", "silver-925"),
        ("Sterling silver 925", "silver-925"),
        ("925", "silver-925"),
        ("Ag925", "silver-925"),
        ("Ag 925", "silver-925"),
        ("925er Silber", "silver-925"),
        ("Silber 925/000", "silver-925"),
        ("sterling", "silver-925"),
        ("STG SILVER", "silver-925"),
        ("Sterlingsilber", "silver-925"),
        ("sterling germanium", "silver-925-germanium"),
        ("Silber 835", "silver-835"),
        ("Feinsilber", "silver-fine"),
        ("fine silver", "silver-fine"),
        ("14k yellow", "gold-14k-yellow"),
        ("14KY", "gold-14k-yellow"),
        ("14 kt YG", "gold-14k-yellow"),
        ("585 Gelbgold", "gold-14k-yellow"),
        ("Gelbgold 585er", "gold-14k-yellow"),
        ("14ct rose gold", "gold-14k-rose"),
        ("Rotgold 585", "gold-14k-rose"),
        ("14k white", "gold-14k-white-nickel"),
        ("18kt yellow", "gold-18k-yellow"),
        ("18K Rosé", "gold-18k-rose"),
        ("750 pale yellow", "gold-18k-pale-yellow"),
        ("18k palladium white", "gold-18k-white-palladium"),
        ("Pt950/Ru", "platinum-950-ruthenium"),
        ("platinum cobalt", "platinum-950-cobalt"),
        ("silicon bronze", "bronze-silicon"),
        ("Zinnbronze", "bronze-tin"),
        ("silicon brass", "bronze-silicon-zinc"),
        ("yellow brass", "brass-yellow"),
        ("Neusilber", "nickel-silver"),
        ("24k", "gold-fine"),
        ("Zinn", "pewter"),
    ];
    for (word, id) in meant {
        assert_eq!(fitting(word, &known()), [id], "{word}");
    }
}

#[test]
fn words_that_mean_several_are_asked() {
    for (word, count) in
        [("14k", 3), ("585", 3), ("18k white gold", 2), ("Weißgold 750", 2), ("Pt 950", 2), ("bronze", 3), ("999", 2), ("silver", 6)]
    {
        assert_eq!(fitting(word, &known()).len(), count, "{word}: {:?}", fitting(word, &known()));
    }
    assert_eq!(fitting("brass", &known()), ["bronze-silicon-zinc", "brass-yellow", "brass-red"]);
}

#[test]
fn only_given_alloys_count() {
    let known = Known { alloys: vec![("bronze-tin".to_owned(), "Tin bronze".to_owned())], ..known() };
    assert_eq!(fitting("bronze", &known), ["bronze-tin"]);
    for word in ["925", "silicon bronze", "bronze?", "14k"] {
        assert!(fitting(word, &known).is_empty(), "{word}");
    }
}

#[test]
fn words_that_mean_none_are_told_with_what_comes_near() {
    for word in ["8k yellow", "333", "gold filled 14k", "22k", "copper", "9ct rose", "?"] {
        assert!(fitting(word, &known()).is_empty(), "{word}");
    }
    let nearest = |word: &str| {
        let (_, _, preview) = guessed(&format!("Client;Design;Qty;Alloy\nA;Ring;1;{word}\n"));
        match reasons(&preview, 2).remove(0) {
            Reason::UnknownAlloy { nearest, .. } => nearest,
            other => panic!("{other:?}"),
        }
    };
    assert!(nearest("sterlng silvr 925").contains(&"silver-925".to_owned()), "{:?}", nearest("sterlng silvr 925"));
    assert_eq!(nearest("pewtre"), ["pewter"]);
    assert!(nearest("xyzzy").is_empty());
}

#[test]
fn an_answer_holds_for_the_same_word() {
    let (table, mut mapping, asked) = guessed("Client;Design;Qty;Alloy\nA;Ring;1;14k\nB;Ring;2;14 K\nC;Ring;2;925\n");
    let [Question::Alloy { text, among }] = asked.questions.as_slice() else { panic!("{:?}", asked.questions) };
    assert_eq!((text.as_str(), among.len()), ("14k", 3));
    mapping.name_alloy(text, "gold-14k-rose");
    let answered = preview(&table, &mapping, &known());
    let alloys: Vec<_> = ready(&answered).iter().map(|row| row.alloy.clone().unwrap()).collect();
    assert_eq!(alloys, ["gold-14k-rose", "gold-14k-rose", "silver-925"]);
}
