//! The first pour's figures against `tests/tools/figures_first_pour.py`, which works them out from published rules without the program.

use std::collections::BTreeMap;

use pourbook::calc::{Book, Value};
use pourbook::job::format::{read_job, write_job};
use rust_decimal::Decimal;
use serde_json::Value as Json;

use crate::support::{computed, open};

/// How far a binary number may be off, as a share: both sides add up the same terms in another order.
const TOLERANCE: f64 = 1e-9;

/// Values by place and rule, in the order of making.
type Figures<T> = BTreeMap<(String, String), Vec<T>>;

fn expected() -> Figures<Json> {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/tools/first_pour_expected.json")).expect("it is there");
    let json: Json = serde_json::from_str(&text).expect("it is JSON");
    let mut figures = Figures::new();
    for figure in json["figures"].as_array().expect("a list") {
        let word = |key: &str| figure[key].as_str().expect("a word").to_owned();
        figures.entry((word("place"), word("rule"))).or_default().push(figure["value"].clone());
    }
    figures
}

fn made(book: &Book) -> Figures<Value> {
    let mut figures = Figures::new();
    // The studio's calibrations stand in every job's book; their lines are held against certified ones in tests/outside/lines.rs.
    for figure in book.figures().filter(|figure| !figure.origin.key().starts_with("calibrate.")) {
        figures.entry((figure.place.to_string(), figure.origin.key().to_owned())).or_default().push(figure.value);
    }
    figures
}

/// Decimals must be equal, numbers nearly so.
fn agree(expected: &Json, made: Value) -> bool {
    match (expected, made) {
        (Json::String(decimal), Value::Grams(_) | Value::Money(_)) => decimal.parse::<Decimal>().ok() == made.decimal(),
        (Json::Number(number), Value::Number(made)) => {
            let number = number.as_f64().expect("a number");
            (made - number).abs() <= TOLERANCE * number.abs()
        }
        _ => false,
    }
}

#[test]
fn every_figure_is_what_the_script_works_out() {
    let batch = open("first-pour.ron");
    let made = made(&computed(&batch, &batch.sound).1);
    let expected = expected();
    assert!(expected.len() >= 35, "{}", expected.len());
    let mut wrong = Vec::new();
    for (key, expected) in &expected {
        let made = made.get(key).map(Vec::as_slice).unwrap_or_default();
        // What the program shows twice (a stage by both readings) must be the same both times.
        let repeated = expected.len() == 1 && made.len() > 1;
        let count_agrees = repeated || made.len() == expected.len();
        let pairs = made.iter().enumerate().map(|(at, made)| (&expected[if repeated { 0 } else { at.min(expected.len() - 1) }], made));
        if !count_agrees || !pairs.clone().all(|(expected, made)| agree(expected, *made)) {
            wrong.push(format!("{key:?}: script {expected:?}, program {made:?}"));
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
    // Walls are measured by rays: tests/meshes holds them against walls that are known. What a mould feels is held against series and an
    // independent solver by tests/heat, and against what casters know by tests/outside; the work before the pour by tests/night,
    // and what the kiln takes by hand in tests/outside.
    const ENERGY: [&str; 5] = ["burnout.stage-lost", "burnout.lost", "burnout.lining", "burnout.energy", "burnout.cost"];
    let elsewhere = |key: &&(String, String)| {
        key.1 == "pattern.wall" || key.1.starts_with("heat.") || key.1.starts_with("work.") || ENERGY.contains(&key.1.as_str())
    };
    let unchecked: Vec<_> = made.keys().filter(|key| !expected.contains_key(*key) && !elsewhere(key)).collect();
    assert_eq!(unchecked, Vec::<&(String, String)>::new(), "figures the script does not know");
}

#[test]
fn saving_changes_no_figure() {
    let batch = open("first-pour.ron");
    let text = write_job(&batch.job).expect("it can be written");
    let again = read_job(text.as_bytes()).expect("it can be read").document;
    assert_eq!(made(&computed(&batch, &batch.sound).1), made(&computed(&batch, &again).1));
}

#[test]
fn a_changed_weight_would_be_noticed() {
    let batch = open("first-pour.ron");
    let mut job = batch.sound.clone();
    let heavier = pourbook::quantity::Grams::from_f64(3.47).expect("a weight");
    job.trees[0].weighed[0].weight = Some(pourbook::job::Weighing::Net(heavier));
    let made = made(&computed(&batch, &job).1);
    let key = ("flask/1".to_owned(), "flask.charge-on-balance".to_owned());
    assert!(!agree(&expected()[&key][0], made[&key][0]));
}
