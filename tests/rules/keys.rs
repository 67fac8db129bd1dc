//! Ids, sources, and the lists of rules, inputs and defaults against the source text.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use pourbook::calc::rule::How;
use pourbook::calc::{all_givens, all_inputs, all_rules};
use pourbook::quantity::Kind;

fn well_formed(key: &str) -> bool {
    let part = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-');
    matches!(key.split_once('.'), Some((page, name)) if part(page) && part(name))
}

#[test]
fn every_rule_has_an_id_of_its_own_and_says_where_it_comes_from() {
    let mut ids = BTreeSet::new();
    for rule in all_rules() {
        assert!(well_formed(rule.id), "{}", rule.id);
        assert!(ids.insert(rule.id), "{} is given twice", rule.id);
        assert!(rule.source.trim().len() > 5, "{} has no source", rule.id);
        assert!(!rule.text().is_empty());
        let symbols: BTreeSet<&str> = rule.terms.iter().map(|term| term.symbol).collect();
        assert_eq!(symbols.len(), rule.terms.len(), "{}: a symbol stands twice", rule.id);
        assert!(!rule.terms.is_empty());
        if let How::Sum | How::Most = rule.how {
            assert_eq!(rule.terms.len(), 1, "{}", rule.id);
        }
    }
}

#[test]
fn a_key_measures_one_thing() {
    let mut kinds: BTreeMap<&str, Kind> = BTreeMap::new();
    let mut inputs = BTreeSet::new();
    for input in all_inputs() {
        assert!(well_formed(input.key), "{}", input.key);
        assert!(inputs.insert(input.key), "{} is declared twice", input.key);
        kinds.insert(input.key, input.kind);
    }
    for given in all_givens() {
        assert!(well_formed(given.key), "{}", given.key);
        assert!(given.source.trim().len() > 5, "{} has no source", given.key);
        assert!(given.value.is_finite());
        let (low, high) = given.kind.possible();
        assert!((low..=high).contains(&given.value), "{}", given.key);
        assert_eq!(*kinds.entry(given.key).or_insert(given.kind), given.kind, "{} is two kinds", given.key);
    }
    for rule in all_rules() {
        assert!(!kinds.contains_key(rule.id), "{} is a rule and an input", rule.id);
    }
}

fn sources(under: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(under).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// The keys declared in a `rules! { … }`, `inputs! { … }` or `givens! { … }` block anywhere in `src/calc`.
fn declared(block: &str) -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for path in sources(Path::new("src/calc")) {
        let mut inside = false;
        for line in std::fs::read_to_string(path).unwrap().lines() {
            if line == format!("{block}! {{") {
                inside = true;
            } else if line == "}" {
                inside = false;
            } else if inside && line.strip_prefix("    ").is_some_and(|line| line.starts_with(|first: char| first.is_ascii_uppercase())) {
                keys.extend(line.split('"').nth(1).map(str::to_owned));
            }
        }
    }
    keys
}

#[test]
fn no_page_is_left_out_of_the_lists() {
    let rules: BTreeSet<String> = all_rules().iter().map(|rule| rule.id.to_owned()).collect();
    assert_eq!(declared("rules"), rules);
    let inputs: BTreeSet<String> = all_inputs().iter().map(|input| input.key.to_owned()).collect();
    assert_eq!(declared("inputs"), inputs);
    let givens: BTreeSet<String> = all_givens().iter().map(|given| given.key.to_owned()).collect();
    assert_eq!(declared("givens"), givens);
}

/// Lines of `text` that make a derived origin, rather than look at one.
fn makes_derived(text: &str) -> Vec<&str> {
    let looks = |line: &str| {
        let after = line.split("Origin::Derived(").nth(1).unwrap_or_default();
        line.contains("matches!") || after.contains("=>") || after.contains(") = ") || line.trim_start().starts_with('|')
    };
    text.lines().filter(|line| !line.trim_start().starts_with("//") && line.contains("Origin::Derived(") && !looks(line)).collect()
}

#[test]
fn only_the_book_makes_figures() {
    assert_eq!(makes_derived("let id = self.row(Origin::Derived(rule), place, value, &terms);").len(), 1, "a planted one is seen");
    let mut in_book = 0;
    for path in sources(Path::new("src")) {
        let text = std::fs::read_to_string(&path).unwrap();
        let made = makes_derived(&text);
        if path.ends_with("calc/book.rs") {
            in_book = made.len();
        } else {
            assert!(made.is_empty(), "{}: {made:?}", path.display());
        }
        assert!(!text.contains("Origin::*"), "{}: figures are made or read under a bare name", path.display());
    }
    assert_eq!(in_book, 2, "`derive` and `derive_over`");
}
