//! The catalogue: every key the program asks for is there with just its arguments, and nothing else is.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use pourbook::calc::{all_givens, all_inputs, all_rules, finding::KINDS};
use pourbook::stock::Shelf;
use pourbook::texts::{ENGLISH, GERMAN, Language, Texts};

/// Families whose keys are put together by the program, each with all its keys.
fn families() -> BTreeMap<String, BTreeSet<&'static str>> {
    let dashed = |id: &str| id.replace('.', "-");
    let none = BTreeSet::new;
    let mut keys = BTreeMap::new();
    for kind in KINDS {
        keys.insert(format!("finding-{}", kind.key), kind.args.iter().copied().collect());
    }
    for rule in all_rules() {
        keys.insert(format!("rule-{}-title", dashed(rule.id)), none());
        keys.insert(format!("rule-{}-why", dashed(rule.id)), none());
    }
    for key in all_inputs().iter().map(|input| input.key).chain(all_givens().iter().map(|given| given.key)) {
        keys.insert(format!("input-{}", dashed(key)), none());
    }
    for given in all_givens() {
        keys.insert(format!("page-{}", given.key.split('.').next().unwrap()), none());
    }
    for day in 1..=7 {
        keys.insert(format!("day-{day}"), none());
    }
    for month in 1..=12 {
        keys.insert(format!("month-{month}"), none());
    }
    for metal in ["au", "ag", "pt", "pd"] {
        keys.insert(format!("metal-{metal}"), none());
    }
    keys
}

/// The keys of the catalogue with the arguments their texts use.
fn catalogue() -> BTreeMap<String, BTreeSet<String>> {
    keys_of(&ENGLISH)
}

fn keys_of(parts: &[&'static str]) -> BTreeMap<String, BTreeSet<String>> {
    let parts = parts.iter().map(|part| fluent_syntax::parser::parse(*part).unwrap_or_else(|(_, errors)| panic!("{errors:?}")));
    let mut keys = BTreeMap::new();
    for entry in parts.flat_map(|part| part.body) {
        match entry {
            Entry::Message(message) => {
                let mut used = BTreeSet::new();
                arguments(message.value.as_ref().unwrap(), &mut used);
                assert!(message.attributes.is_empty(), "{}", message.id.name);
                assert!(keys.insert(message.id.name.to_owned(), used).is_none(), "{} stands twice", message.id.name);
            }
            Entry::Term(_) | Entry::Junk { .. } => panic!("neither terms nor stray lines: {entry:?}"),
            _ => {}
        }
    }
    keys
}

fn arguments(pattern: &Pattern<&str>, used: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        let inline = match expression {
            Expression::Inline(inline) => inline,
            Expression::Select { selector, variants } => {
                variants.iter().for_each(|variant| arguments(&variant.value, used));
                selector
            }
        };
        match inline {
            InlineExpression::VariableReference { id } => {
                used.insert(id.name.to_owned());
            }
            InlineExpression::StringLiteral { .. } => {}
            other => panic!("only arguments and literals: {other:?}"),
        }
    }
}

#[test]
fn every_finding_rule_and_input_has_its_texts_with_just_its_arguments() {
    let catalogue = catalogue();
    for (key, args) in families() {
        let used = catalogue.get(&key).unwrap_or_else(|| panic!("{key} is not in the catalogue"));
        assert_eq!(used.iter().map(String::as_str).collect::<BTreeSet<_>>(), args, "arguments of {key}");
    }
}

#[test]
fn no_key_stands_for_nothing() {
    let families = families();
    let source = source_of(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src")));
    for key in catalogue().keys() {
        assert!(families.contains_key(key) || source.contains(&format!("\"{key}\"")), "{key} is used nowhere");
    }
}

fn source_of(folder: &Path) -> String {
    let mut text = String::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            text.push_str(&source_of(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            text.push_str(&std::fs::read_to_string(path).unwrap());
        }
    }
    text
}

#[test]
fn keys_of_rules_and_inputs_stay_apart_without_points() {
    let ids: BTreeSet<&str> = all_rules().iter().map(|rule| rule.id).collect();
    assert_eq!(ids.iter().map(|id| id.replace('.', "-")).collect::<BTreeSet<_>>().len(), ids.len());
    let keys: BTreeSet<&str> = all_inputs().iter().map(|input| input.key).chain(all_givens().iter().map(|given| given.key)).collect();
    assert_eq!(keys.iter().map(|key| key.replace('.', "-")).collect::<BTreeSet<_>>().len(), keys.len());
}

#[test]
fn a_missing_key_or_argument_shows_the_key() {
    let texts = Texts::english();
    assert_eq!(texts.say("no-such-key", &[]), "«no-such-key»");
    assert_eq!(texts.say("finding-not-on-shelf", &[]), "«finding-not-on-shelf»");
    assert_eq!(texts.label("cause-pending"), "not known yet");
}

#[test]
fn texts_choose_their_wording_by_number() {
    let say = |pieces: u64| {
        Texts::english()
            .say("finding-pieces-on-no-tree", &[("pieces", pieces.into()), ("design", "limpet ring".into()), ("client", "KM".into())])
    };
    assert!(say(1).starts_with("One piece of limpet ring for KM hangs on no tree"), "{}", say(1));
    assert!(say(3).starts_with("3 pieces of limpet ring for KM hang on no tree"), "{}", say(3));
}

#[test]
fn texts_are_short_and_clean() {
    for line in ENGLISH.iter().flat_map(|part| part.lines()).filter(|line| !line.starts_with('#')) {
        assert!(line.chars().count() < 330, "too long: {line}");
        let words = line.trim_start();
        assert!(!words.contains("  ") && !words.contains(" ,") && !line.ends_with(' '), "spaces: {line}");
        assert!(!words.contains("...") && !words.contains('!'), "neither dots for … nor shouting: {line}");
    }
}

/// Keys that no paper prints: why a rule is as it is, the lists of the terminal, how far a source is to be trusted.
fn on_paper(key: &str) -> bool {
    !(key.ends_with("-why") && key.starts_with("rule-") || key.starts_with("list-") || key.starts_with("trust-"))
}

#[test]
fn every_key_that_prints_is_said_in_every_language_with_its_arguments() {
    // The first four parts of the English catalogue are what prints; the others are the window's.
    let english = keys_of(&ENGLISH[..4]);
    let german = keys_of(&GERMAN);
    let shelf: BTreeSet<String> = Shelf::shipped().entries().map(|entry| format!("shelf-{}", entry.id())).collect();
    for (key, args) in english.iter().filter(|(key, _)| on_paper(key)) {
        assert_eq!(german.get(key), Some(args), "{key}");
    }
    for key in german.keys() {
        assert!(english.contains_key(key) || shelf.contains(key), "{key} stands for nothing");
    }
    for key in &shelf {
        assert!(german.contains_key(key), "{key} has no German name");
    }
    let texts = Texts::of(Language::German);
    assert_eq!(texts.label("day-2"), "Di");
    assert_eq!(pourbook::paper::words::shelf_name("Sterling silver 925", texts), "Sterlingsilber 925");
    assert_eq!(pourbook::paper::words::shelf_name("Our own silver", texts), "Our own silver");
    assert_eq!(texts.label("stage-orders"), Texts::english().label("stage-orders"), "what is lacking is said in English");
}
