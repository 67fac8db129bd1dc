//! Figures and findings in words: what is printed on paper, said by the terminal and read in the window.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use jiff::civil::{Date, DateTime};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};

use crate::calc::rule::Given;
use crate::calc::{Arg, Book, Cause, Figure, Finding, Id, Origin, Value, Weight};
use crate::job::{OutFor, PieceStage};
use crate::quantity::{Kind, Style, THIN, print};
use crate::stock::{Shelf, Trust};
use crate::texts::{Language, Texts, Word};

/// How figures become words: the catalogue, the units, the clock on the wall and the currency.
#[derive(Debug, Clone, Copy)]
pub struct Words<'a> {
    /// The catalogue.
    pub texts: &'a Texts,
    /// Units and digits.
    pub style: &'a Style,
    /// The zone of clock times.
    pub zone: &'a TimeZone,
    /// Currency code such as EUR; nothing is printed where it is empty.
    pub currency: &'a str,
}

/// The sentence of a finding, its figures printed with their units.
#[must_use]
pub fn finding_sentence(finding: &Finding, book: &Book, words: &Words<'_>) -> String {
    let key = format!("finding-{}", finding.kind.key);
    let named = finding.kind.args.iter().zip(&finding.args);
    let args: Vec<(&str, Word<'_>)> = named.map(|(name, arg)| (*name, argument(finding, name, arg, book, words))).collect();
    words.texts.say(&key, &args)
}

fn argument<'w>(finding: &Finding, name: &str, arg: &Arg, book: &Book, words: &Words<'_>) -> Word<'w> {
    let texts = words.texts;
    match arg {
        Arg::Figure(id) if book.value(*id).cause().is_some() => texts.label("figure-unknown").into(),
        // A shortage of a thousandth of a gram must not read "925, under 925", and a wall that does not fill is hundredths of a millimetre.
        Arg::Figure(id) if matches!(finding.kind.key, "under-mark" | "mark-over-alloy" | "detail-fine" | "freezes-first") => {
            let finer = words.style.finer();
            print_figure(book, *id, &Words { style: &finer, ..*words }).into()
        }
        Arg::Figure(id) => print_figure(book, *id, words).into(),
        Arg::Count(count) => (*count).into(),
        Arg::Words(keys) => list(keys.iter().map(|key| texts.label(key))).into(),
        Arg::Givens(givens) => {
            let given = |given: &&Given| {
                let value = print_value(Value::Number(given.value), given.kind, words);
                format!("{} {value}", texts.input_title(given.key))
            };
            list(givens.iter().map(given)).into()
        }
        Arg::Text(text) => match (finding.kind.key, name) {
            (_, "due" | "on" | "until") => {
                text.parse::<Date>().map_or_else(|_| texts.label("undated"), |date| date_words(date, texts)).into()
            }
            ("price-stale" | "price-missing", "metal") => metal_name(text, texts).into(),
            _ => clean(&shelf_name(text, texts), texts).into(),
        },
    }
}

/// Words one after the other, with commas.
fn list(words: impl Iterator<Item = String>) -> String {
    words.collect::<Vec<_>>().join(", ")
}

/// The name of a shipped shelf entry in the language of the paper; what the studio named itself stays as it is.
#[must_use]
pub fn shelf_name(name: &str, texts: &Texts) -> String {
    if texts.language() == Language::English {
        return name.to_owned();
    }
    static IDS: OnceLock<BTreeMap<&'static str, &'static str>> = OnceLock::new();
    let ids = IDS.get_or_init(|| Shelf::shipped().entries().map(|entry| (entry.name(), entry.id().as_str())).collect());
    let key = ids.get(name).map(|id| format!("shelf-{id}")).filter(|key| texts.has(key));
    key.map_or_else(|| name.to_owned(), |key| texts.label(&key))
}

/// A price's metal by name where it is a fine metal, as it was written otherwise.
#[must_use]
pub fn metal_name(of: &str, texts: &Texts) -> String {
    let key = format!("metal-{}", of.to_ascii_lowercase());
    if of.bytes().all(|byte| byte.is_ascii_alphabetic()) && texts.has(&key) { texts.label(&key) } else { clean(of, texts) }
}

/// Words of the caster on one line: control characters become spaces, and what is empty says so.
#[must_use]
pub fn clean(text: &str, texts: &Texts) -> String {
    let line = one_line(text);
    if line.is_empty() { texts.label("unnamed") } else { line }
}

/// The same, empty where there is nothing.
#[must_use]
pub fn one_line(text: &str) -> String {
    let unbroken: String = text.chars().map(|sign| if sign.is_control() { ' ' } else { sign }).collect();
    unbroken.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a figure or term is called, beginning with a capital.
#[must_use]
pub fn figure_title(figure: &Figure<'_>, texts: &Texts) -> String {
    match figure.origin {
        Origin::Derived(rule) => texts.rule_title(rule.id),
        origin => {
            let title = texts.input_title(origin.key());
            let mut signs = title.chars();
            signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
        }
    }
}

/// A figure of the book as it is printed. One that waits for a term says what is the matter with that term: not said, not chosen, not
/// known yet.
#[must_use]
pub fn print_figure(book: &Book, id: Id, words: &Words<'_>) -> String {
    let finer = words.style.finer();
    let words = &if is_fine(book.figure(id).origin.key()) { Words { style: &finer, ..*words } } else { *words };
    let value = book.value(id);
    match value {
        Value::Missing(Cause::Term) => cause_words(root_cause(book, id), words.texts),
        _ => print_value(value, book.kind(id), words),
    }
}

/// Why a figure is missing in the end. What is not known yet goes before what nobody said: waiting helps there.
fn root_cause(book: &Book, id: Id) -> Cause {
    let causes: Vec<Cause> = book.root_causes(id).into_iter().filter_map(|root| book.value(root).cause()).collect();
    if causes.contains(&Cause::Pending) { Cause::Pending } else { causes.first().copied().unwrap_or(Cause::Term) }
}

/// Is a figure so small that a decimal more is needed to say anything? Radii that fill, and moduli that are compared.
#[must_use]
pub fn is_fine(key: &str) -> bool {
    let modulus = (key.starts_with("feed.") || key.starts_with("freeze.")) && key.contains("modulus");
    modulus || matches!(key, "fill.detail" | "fill.thin-radius" | "pattern.thinnest" | "feed.at-joint")
}

/// A value as it is printed, with its unit: a moment by the clock on the wall, money with its currency, a price of a gram with the four
/// decimals it is multiplied with, and a missing value by its cause.
#[must_use]
pub fn print_value(value: Value, kind: Kind, words: &Words<'_>) -> String {
    let number = match (value, value.number()) {
        (Value::Missing(cause), _) => return cause_words(cause, words.texts),
        (_, None) => return cause_words(Cause::NotFinite, words.texts),
        (_, Some(number)) => number,
    };
    match kind {
        Kind::Moment => {
            moment_of(number, words.zone).map_or_else(|| cause_words(Cause::NotFinite, words.texts), |at| moment_words(at, words.texts))
        }
        Kind::Money => with_currency(print(number, kind, words.style).number, "", words.currency),
        Kind::PricePerGram => {
            let printed = print(number, kind, &words.style.finer());
            with_currency(printed.number, printed.unit, words.currency)
        }
        _ => print(number, kind, words.style).to_string(),
    }
}

/// An amount followed by its currency and what it is for: `12.50 EUR`, `0.8512 EUR/g`.
#[must_use]
pub fn with_currency(number: String, per: &str, currency: &str) -> String {
    let currency = one_line(currency);
    if currency.is_empty() { format!("{number}{per}") } else { format!("{number}{THIN}{currency}{per}") }
}

/// Short words for a missing value.
#[must_use]
pub fn cause_words(cause: Cause, texts: &Texts) -> String {
    texts.label(match cause {
        Cause::NotSaid => "cause-not-said",
        Cause::NotChosen => "cause-not-chosen",
        Cause::NotOnShelf => "cause-not-on-shelf",
        Cause::NoFile => "cause-no-file",
        Cause::NoSuchNumber => "cause-no-such-number",
        Cause::TooFew => "cause-too-few",
        Cause::Pending => "cause-pending",
        Cause::NotFinite => "cause-not-finite",
        Cause::DoesNotApply => "cause-does-not-apply",
        Cause::Term => "cause-term",
    })
}

/// The shape-word of a weight, in capitals.
#[must_use]
pub fn weight_mark(weight: Weight, texts: &Texts) -> String {
    texts.label(match weight {
        Weight::Stop => "mark-stop",
        Weight::Caution => "mark-caution",
        Weight::Note => "mark-note",
    })
}

/// A weight in a word, for running text.
#[must_use]
pub fn weight_words(weight: Weight, texts: &Texts) -> String {
    texts.label(match weight {
        Weight::Stop => "weight-stop",
        Weight::Caution => "weight-caution",
        Weight::Note => "weight-note",
    })
}

/// How far a number is to be trusted, in words.
#[must_use]
pub fn trust_words(trust: Trust, texts: &Texts) -> String {
    texts.label(match trust {
        Trust::Standard => "trust-standard",
        Trust::Published => "trust-published",
        Trust::Article => "trust-article",
        Trust::Computed => "trust-computed",
        Trust::CommonPractice => "trust-common-practice",
        Trust::FromMemory => "trust-from-memory",
        Trust::Studio => "trust-studio",
    })
}

/// How far a piece is, in words.
#[must_use]
pub fn stage_words(stage: PieceStage, texts: &Texts) -> String {
    texts.label(match stage {
        PieceStage::Made => "reached-made",
        PieceStage::Cleaned => "reached-cleaned",
        PieceStage::Checked => "reached-checked",
        PieceStage::OnTree => "reached-on-tree",
        PieceStage::Invested => "reached-invested",
        PieceStage::BurntOut => "reached-burnt-out",
        PieceStage::Cast => "reached-cast",
        PieceStage::CutOff => "reached-cut-off",
        PieceStage::Weighed => "reached-weighed",
        PieceStage::Finished => "reached-finished",
        PieceStage::Out => "reached-out",
        PieceStage::Delivered => "reached-delivered",
    })
}

/// What pieces are out of the house for, in words.
#[must_use]
pub fn out_for_words(what_for: OutFor, texts: &Texts) -> String {
    texts.label(match what_for {
        OutFor::Hallmark => "out-hallmark",
        OutFor::Setting => "out-setting",
        OutFor::Sizing => "out-sizing",
        OutFor::Repair => "out-repair",
        OutFor::Plating => "out-plating",
        OutFor::Casting => "out-casting",
        OutFor::Other => "out-other",
    })
}

/// A moment, in minutes since 1970 in UTC, by the clock on the wall.
#[must_use]
pub fn moment_of(minutes: f64, zone: &TimeZone) -> Option<DateTime> {
    let since = SignedDuration::try_from_secs_f64((minutes * 60.0).round()).ok()?;
    Timestamp::from_duration(since).ok().map(|at| zone.to_datetime(at))
}

/// `Thu 26 Nov 06:40`.
#[must_use]
pub fn moment_words(at: DateTime, texts: &Texts) -> String {
    let (weekday, month) = (at.weekday().to_monday_one_offset(), at.month());
    let args = [
        ("weekday", texts.label(&format!("day-{weekday}")).into()),
        ("day", at.day().to_string().into()),
        ("month", texts.label(&format!("month-{month}")).into()),
        ("time", format!("{:02}:{:02}", at.hour(), at.minute()).into()),
    ];
    texts.say("moment", &args)
}

/// `Thu 06:40`.
#[must_use]
pub fn moment_short(at: DateTime, texts: &Texts) -> String {
    let weekday = texts.label(&format!("day-{}", at.weekday().to_monday_one_offset()));
    format!("{weekday}{THIN}{:02}:{:02}", at.hour(), at.minute())
}

/// `26 Nov 2026`.
#[must_use]
pub fn date_words(date: Date, texts: &Texts) -> String {
    let month = texts.label(&format!("month-{}", date.month()));
    texts.say("date", &[("day", date.day().to_string().into()), ("month", month.into()), ("year", date.year().to_string().into())])
}
