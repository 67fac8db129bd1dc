//! Why an entry is refused, where, and which readings of it can be taken instead.

use std::fmt;
use std::ops::Range;

use super::{Kind, Mistake};

/// A refused entry. `Display` gives the English sentence; `key` and `args` serve the text catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct EntryError {
    /// Why.
    pub kind: EntryErrorKind,
    /// Bytes of the entry at fault; empty at the end of the entry where something is missing.
    pub at: Range<usize>,
    /// What the entry could mean, best first, where it can mean something. Their values differ.
    pub readings: Vec<Reading>,
}

/// One thing an ambiguous entry can mean.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// An entry that means this and nothing else.
    pub text: String,
    /// Its value in the unit of the kind.
    pub value: f64,
    /// What it is read as: `1 250.0 g: the comma parts the thousands`.
    pub says: String,
}

/// Why an entry is refused.
#[derive(Debug, Clone, PartialEq)]
pub enum EntryErrorKind {
    /// Nothing but spaces.
    Empty,
    /// More than two hundred bytes.
    TooLong,
    /// Too many brackets within brackets.
    TooDeep,
    /// `nan`, `inf`, `∞`.
    NotANumber(String),
    /// A power of ten: `1e5`.
    PowerOfTen,
    /// Separators that fit no way to write a number: `1,2,3`.
    BadNumber(String),
    /// A sign that has no place here.
    UnknownSign(char),
    /// A word that is no unit.
    UnknownWord(String),
    /// A unit of another kind.
    OtherKind {
        /// As typed.
        word: String,
        /// What it measures.
        measures: Kind,
        /// What is asked for.
        asked: Kind,
    },
    /// A word easily mistaken for a unit of this kind.
    Mistaken(Mistake),
    /// A number is missing where one must stand.
    MissingNumber,
    /// Two numbers side by side.
    TwoNumbers,
    /// Two units behind one number.
    TwoUnits,
    /// A bracket without its partner.
    Bracket,
    /// `1 min 2 h`: the larger unit stands first.
    CompoundOrder,
    /// `1:75`, `1:30 min`.
    BadClock,
    /// Division by nothing.
    DivisionByZero,
    /// Two amounts with units multiplied.
    AmountTimesAmount,
    /// Something divided by an amount with a unit.
    DividedByAmount,
    /// The sum of two temperatures.
    TwoTemperatures,
    /// A multiple of a temperature.
    ScaledTemperature,
    /// A difference where a temperature is asked.
    OnlyADifference,
    /// Below what is possible for the kind.
    TooSmall {
        /// What is asked for.
        asked: Kind,
        /// The lower bound, in the unit of the kind.
        least: f64,
    },
    /// Above what is possible for the kind.
    TooLarge {
        /// What is asked for.
        asked: Kind,
        /// The upper bound, in the unit of the kind.
        most: f64,
    },
    /// A part of a thing.
    NotWhole,
    /// One separator followed by three digits.
    AmbiguousSeparator(char),
    /// A word for two units.
    AmbiguousUnit(String),
    /// A number without a unit beside numbers of several.
    AmbiguousBare,
    /// `1-1/2`: one and a half, or one less a half.
    AmbiguousFraction,
    /// Karats: parts of 24, or the mark of that name.
    AmbiguousKarat,
    /// No date and time in the form `2026-03-04 14:30`.
    MomentForm,
    /// A time of day that the clock skips on that date.
    MomentSkipped,
    /// A time of day that comes twice on that date.
    MomentTwice,
}

impl EntryError {
    /// Every key that [`Self::key`] can give.
    pub const KEYS: [&'static str; 35] = [
        "entry-empty",
        "entry-too-long",
        "entry-too-deep",
        "entry-not-a-number",
        "entry-power-of-ten",
        "entry-bad-number",
        "entry-unknown-sign",
        "entry-unknown-word",
        "entry-other-kind",
        "entry-carat-for-fineness",
        "entry-karat-for-weight",
        "entry-currency",
        "entry-missing-number",
        "entry-two-numbers",
        "entry-two-units",
        "entry-bracket",
        "entry-compound-order",
        "entry-bad-clock",
        "entry-division-by-zero",
        "entry-amount-times-amount",
        "entry-divided-by-amount",
        "entry-two-temperatures",
        "entry-scaled-temperature",
        "entry-only-a-difference",
        "entry-too-small",
        "entry-too-large",
        "entry-not-whole",
        "entry-ambiguous-separator",
        "entry-ambiguous-unit",
        "entry-ambiguous-bare",
        "entry-ambiguous-fraction",
        "entry-ambiguous-karat",
        "entry-moment-form",
        "entry-moment-skipped",
        "entry-moment-twice",
    ];

    pub(super) fn new(kind: EntryErrorKind, at: Range<usize>) -> Self {
        Self { kind, at, readings: Vec::new() }
    }

    /// The place at fault counted in characters of `text`, the refused entry.
    #[must_use]
    pub fn characters(&self, text: &str) -> Range<usize> {
        let count = |end: usize| text.char_indices().take_while(|(place, _)| *place < end).count();
        count(self.at.start)..count(self.at.end)
    }

    /// The key of the sentence in the text catalogue.
    #[must_use]
    pub fn key(&self) -> &'static str {
        use EntryErrorKind as Why;
        match &self.kind {
            Why::Empty => "entry-empty",
            Why::TooLong => "entry-too-long",
            Why::TooDeep => "entry-too-deep",
            Why::NotANumber(_) => "entry-not-a-number",
            Why::PowerOfTen => "entry-power-of-ten",
            Why::BadNumber(_) => "entry-bad-number",
            Why::UnknownSign(_) => "entry-unknown-sign",
            Why::UnknownWord(_) => "entry-unknown-word",
            Why::OtherKind { .. } => "entry-other-kind",
            Why::Mistaken(Mistake::CaratForFineness) => "entry-carat-for-fineness",
            Why::Mistaken(Mistake::KaratForMass) => "entry-karat-for-weight",
            Why::Mistaken(Mistake::Currency) => "entry-currency",
            Why::MissingNumber => "entry-missing-number",
            Why::TwoNumbers => "entry-two-numbers",
            Why::TwoUnits => "entry-two-units",
            Why::Bracket => "entry-bracket",
            Why::CompoundOrder => "entry-compound-order",
            Why::BadClock => "entry-bad-clock",
            Why::DivisionByZero => "entry-division-by-zero",
            Why::AmountTimesAmount => "entry-amount-times-amount",
            Why::DividedByAmount => "entry-divided-by-amount",
            Why::TwoTemperatures => "entry-two-temperatures",
            Why::ScaledTemperature => "entry-scaled-temperature",
            Why::OnlyADifference => "entry-only-a-difference",
            Why::TooSmall { .. } => "entry-too-small",
            Why::TooLarge { .. } => "entry-too-large",
            Why::NotWhole => "entry-not-whole",
            Why::AmbiguousSeparator(_) => "entry-ambiguous-separator",
            Why::AmbiguousUnit(_) => "entry-ambiguous-unit",
            Why::AmbiguousBare => "entry-ambiguous-bare",
            Why::AmbiguousFraction => "entry-ambiguous-fraction",
            Why::AmbiguousKarat => "entry-ambiguous-karat",
            Why::MomentForm => "entry-moment-form",
            Why::MomentSkipped => "entry-moment-skipped",
            Why::MomentTwice => "entry-moment-twice",
        }
    }

    /// The arguments of the sentence, by name.
    #[must_use]
    pub fn args(&self) -> Vec<(&'static str, String)> {
        use EntryErrorKind as Why;
        match &self.kind {
            Why::NotANumber(word) | Why::BadNumber(word) | Why::UnknownWord(word) | Why::AmbiguousUnit(word) => {
                vec![("word", word.clone())]
            }
            Why::UnknownSign(sign) | Why::AmbiguousSeparator(sign) => vec![("sign", sign.to_string())],
            Why::OtherKind { word, measures, asked } => {
                vec![("word", word.clone()), ("measures", measures.name().to_owned()), ("asked", asked.name().to_owned())]
            }
            Why::TooSmall { asked, least: bound } | Why::TooLarge { asked, most: bound } => {
                vec![("asked", asked.name().to_owned()), ("bound", format!("{bound}")), ("unit", asked.unit().to_owned())]
            }
            _ => Vec::new(),
        }
    }
}

impl fmt::Display for EntryError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use EntryErrorKind as Why;
        match &self.kind {
            Why::Empty => f.write_str("Nothing is written here. Type a number."),
            Why::TooLong => f.write_str("This is too long to be one figure. Work it out in parts."),
            Why::TooDeep => f.write_str("There are too many brackets within brackets. Work it out in parts."),
            Why::NotANumber(word) => write!(f, "“{word}” is not a number. Type the figure itself."),
            Why::PowerOfTen => f.write_str("Powers of ten are not read here. Write the number out in full."),
            Why::BadNumber(word) => write!(f, "“{word}” is not written like a number. Use one decimal mark, and groups of three digits or none."),
            Why::UnknownSign(sign) => write!(f, "“{sign}” has no place in a figure. Take it out."),
            Why::UnknownWord(word) => write!(f, "“{word}” is no unit known here. Use another unit or none."),
            Why::OtherKind { word, measures, asked } => {
                write!(f, "“{word}” measures {}; here the {} is asked for. Use a unit for that, or none.", measures.name(), asked.name())
            }
            Why::Mistaken(Mistake::CaratForFineness) => f.write_str(
                "Carat (ct) is a weight of stones here. In British spelling gold is marked in carats too: write k for those, or parts per thousand.",
            ),
            Why::Mistaken(Mistake::KaratForMass) => {
                f.write_str("Karat (k) is a fineness, not a weight. Stones are weighed in carats: write ct for those, or g.")
            }
            Why::Mistaken(Mistake::Currency) => {
                f.write_str("Amounts here are in the studio's currency and none is changed into it. Type the number alone.")
            }
            Why::MissingNumber => f.write_str("A number is missing here. Complete the sum or take the sign out."),
            Why::TwoNumbers => f.write_str("Two numbers stand side by side. Write + or × between them, or a unit behind the first."),
            Why::TwoUnits => f.write_str("Two units follow one number. Keep one of them."),
            Why::Bracket => f.write_str("A bracket has no partner. Close it or take it out."),
            Why::CompoundOrder => f.write_str("The larger unit comes first, as in 1 h 30 min. Write + between them otherwise."),
            Why::BadClock => f.write_str("Hours and minutes are written 1:30, with minutes below 60 and no unit."),
            Why::DivisionByZero => f.write_str("This divides by nothing, so there is no answer. Check the number below the line."),
            Why::AmountTimesAmount => f.write_str("Two amounts with units cannot be multiplied here. Leave the unit off one of them."),
            Why::DividedByAmount => f.write_str("This divides by an amount with a unit. Leave its unit off."),
            Why::TwoTemperatures => {
                f.write_str("Two temperatures cannot be added. Write the step in K, as in 450 C + 20 K, or add the bare numbers.")
            }
            Why::ScaledTemperature => f.write_str("A temperature cannot be multiplied or divided. Write the temperature itself."),
            Why::OnlyADifference => f.write_str("This is a difference of temperatures; a temperature is asked for."),
            Why::TooSmall { asked: Kind::Temperature, .. } => f.write_str("This is below absolute zero, −273.15 °C. Check number and unit."),
            Why::TooSmall { asked, least } if *least == 0.0 => write!(f, "No {} can be below zero. Check the sign.", asked.name()),
            Why::TooSmall { asked, least } => write!(f, "No {} can be below {}. Check number and unit.", asked.name(), bound(*least, *asked)),
            Why::TooLarge { asked, most } => write!(f, "No {} can be above {}. Check number and unit.", asked.name(), bound(*most, *asked)),
            Why::NotWhole => f.write_str("Things are counted whole. Type a whole number."),
            Why::AmbiguousSeparator(sign) => {
                let name = if *sign == ',' { "comma" } else { "point" };
                write!(f, "The {name} may part the thousands or be the decimal mark. Choose which is meant.")
            }
            Why::AmbiguousUnit(word) => write!(f, "“{word}” can mean two units. Choose which is meant."),
            Why::AmbiguousBare => f.write_str("One number has no unit and others have different ones. Choose which is meant."),
            Why::AmbiguousFraction => f.write_str("The dash may join a whole number and a fraction, or take the fraction away. Choose which is meant."),
            Why::AmbiguousKarat => f.write_str("Karats may mean parts of 24 or the mark of that name, and the two differ. Choose which is meant."),
            Why::MomentForm => f.write_str("Write date and time as 2026-03-04 14:30."),
            Why::MomentSkipped => f.write_str("The clocks go forward over this time of day, so it does not come on that date. Choose another."),
            Why::MomentTwice => f.write_str("The clocks go back on that date and this time of day comes twice. Choose which is meant."),
        }
    }
}

impl std::error::Error for EntryError {}

fn bound(value: f64, kind: Kind) -> String {
    super::print(value, kind, &super::Style::METRIC).to_string()
}
