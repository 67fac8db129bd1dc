//! Figures and findings as JSON.

use std::collections::BTreeMap;

use jiff::Timestamp;
use serde_json::{Map, Value as Json, json};

use super::open::Computed;
use crate::calc::{Arg, Figure, Finding, Id, Value, Weight};
use crate::paper::origin::{Provenance, trust_key};
use crate::paper::words::{Words, cause_words, finding_sentence};
use crate::quantity::Kind;

/// The whole job: what it is, its figures, its findings.
pub(super) fn job(computed: &Computed, words: &Words<'_>) -> Json {
    let batch = &computed.batch;
    let names = names(computed);
    let figures: Vec<Json> = computed.book.figures().map(|figure| figure_json(computed, &figure, &names, words)).collect();
    let faults: Vec<Json> = batch
        .faults
        .iter()
        .map(|fault| json!({ "place": fault.place.to_string(), "field": fault.field, "says": fault.what.to_string() }))
        .collect();
    json!({
        "job": {
            "file": batch.path.display().to_string(),
            "job_id": batch.job.job_id.to_string(),
            "name": batch.job.name,
            "hash": batch.hash_text,
            "at": computed.setting.at.to_string(),
        },
        "faults": faults,
        "figures": figures,
        "findings": findings(computed, words),
    })
}

/// The findings alone.
pub(super) fn findings(computed: &Computed, words: &Words<'_>) -> Json {
    Json::Array(computed.report.findings.iter().map(|finding| finding_json(computed, finding, words)).collect())
}

/// A name for every figure: its place and rule, and a number where a rule is used more than once there.
fn names(computed: &Computed) -> BTreeMap<Id, String> {
    let mut seen: BTreeMap<String, u32> = BTreeMap::new();
    let mut names = BTreeMap::new();
    for figure in computed.book.figures() {
        let name = format!("{}/{}", figure.place, figure.origin.key());
        let times = seen.entry(name.clone()).or_default();
        *times += 1;
        names.insert(figure.id, if *times == 1 { name } else { format!("{name}#{times}") });
    }
    names
}

fn figure_json(computed: &Computed, figure: &Figure<'_>, names: &BTreeMap<Id, String>, words: &Words<'_>) -> Json {
    let Some(rule) = figure.rule() else { return Json::Null };
    let symbol = |index: usize| rule.terms.get(index).or(rule.terms.first()).map_or("x", |term| term.symbol);
    let terms: Vec<Json> =
        figure.terms.iter().enumerate().map(|(index, id)| term_json(computed, symbol(index), computed.book.figure(*id), names)).collect();
    let mut entry = json!({
        "id": names.get(&figure.id),
        "place": figure.place.to_string(),
        "value": number(figure.value),
        "unit": rule.result.unit(),
        "rule": rule.id,
        "formula": rule.text(),
        "terms": terms,
        "source": rule.source,
        "trust": trust_key(rule.trust),
    });
    if let Some(object) = entry.as_object_mut() {
        add_moment(object, rule.result, figure.value);
        if let Some(cause) = figure.value.cause() {
            object.insert("missing".to_owned(), cause_words(cause, words.texts).into());
            let roots = computed.book.root_causes(figure.id);
            let roots: Vec<Json> = roots.into_iter().map(|id| root_json(computed, id, words)).collect();
            object.insert("because".to_owned(), roots.into());
        }
    }
    entry
}

/// A missing value at which a figure fails first.
fn root_json(computed: &Computed, id: Id, words: &Words<'_>) -> Json {
    let line = computed.book.figure(id);
    let says = line.value.cause().map(|cause| cause_words(cause, words.texts));
    json!({ "key": line.origin.key(), "place": line.place.to_string(), "says": says })
}

fn term_json(computed: &Computed, symbol: &str, term: Figure<'_>, names: &BTreeMap<Id, String>) -> Json {
    let origin = Provenance::of(term.origin, &computed.book);
    let kind = term.origin.kind();
    let mut entry = json!({
        "symbol": symbol,
        "id": names.get(&term.id),
        "key": term.origin.key(),
        "place": term.place.to_string(),
        "value": number(term.value),
        "unit": kind.unit(),
        "origin": origin.word,
        "source": origin.source,
        "trust": origin.trust,
    });
    if let Some(object) = entry.as_object_mut() {
        add_moment(object, kind, term.value);
    }
    entry
}

/// Moments also stand as a time that a person can read.
fn add_moment(object: &mut Map<String, Json>, kind: Kind, value: Value) {
    if kind == Kind::Moment
        && let Some(minutes) = value.number()
    {
        // Minutes since 1970 stay far below 2⁵³ seconds.
        #[allow(clippy::cast_possible_truncation)]
        let seconds = (minutes * 60.0).round() as i64;
        if let Ok(at) = Timestamp::from_second(seconds) {
            object.insert("utc".to_owned(), at.to_string().into());
        }
    }
}

fn number(value: Value) -> Json {
    value.number().map_or(Json::Null, Json::from)
}

fn finding_json(computed: &Computed, finding: &Finding, words: &Words<'_>) -> Json {
    let book = &computed.book;
    let args: Map<String, Json> = finding
        .kind
        .args
        .iter()
        .zip(&finding.args)
        .map(|(name, arg)| {
            let value = match arg {
                Arg::Figure(id) => number(book.value(*id)),
                Arg::Count(count) => (*count).into(),
                Arg::Text(text) => text.clone().into(),
                Arg::Words(keys) => keys.clone().into(),
                Arg::Givens(givens) => givens.iter().map(|given| given.key).collect(),
            };
            ((*name).to_owned(), value)
        })
        .collect();
    let accepted = finding.accepted.and_then(|index| computed.batch.sound.accepted.get(index));
    json!({
        "kind": finding.kind.key,
        "weight": weight_key(finding.kind.weight),
        "place": finding.place.to_string(),
        "says": finding_sentence(finding, book, words),
        "args": args,
        "value": finding.value,
        "accepted": accepted.map(|accepted| json!({ "hands": accepted.hands, "reason": accepted.reason })),
    })
}

pub(super) fn weight_key(weight: Weight) -> &'static str {
    match weight {
        Weight::Stop => "stop",
        Weight::Caution => "caution",
        Weight::Note => "note",
    }
}
