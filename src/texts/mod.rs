//! Every sentence a person reads, by key, from one catalogue: so that one voice and a second language have one place.
//!
//! Start at [`Texts::english`] and [`Texts::say`]. A key that is not in the catalogue, or an argument it lacks, shows the key in «».

use std::borrow::Cow;
use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde::{Deserialize, Serialize};
use unic_langid::LanguageIdentifier;

/// The English catalogue: what is printed and computed, the window, and the window's pages.
pub const ENGLISH: [&str; 13] = [
    include_str!("../../resources/texts/en.ftl"),
    include_str!("../../resources/texts/paper.ftl"),
    include_str!("../../resources/texts/feeding.ftl"),
    include_str!("../../resources/texts/cards.ftl"),
    include_str!("../../resources/texts/window.ftl"),
    include_str!("../../resources/texts/window_orders.ftl"),
    include_str!("../../resources/texts/window_jobs.ftl"),
    include_str!("../../resources/texts/window_flasks.ftl"),
    include_str!("../../resources/texts/window_heat.ftl"),
    include_str!("../../resources/texts/window_studio.ftl"),
    include_str!("../../resources/texts/window_prints.ftl"),
    include_str!("../../resources/texts/window_part.ftl"),
    include_str!("../../resources/texts/window_feeding.ftl"),
];

/// The German catalogue: what prints, and the names of the shipped shelf. What it lacks is said in English.
pub const GERMAN: [&str; 7] = [
    include_str!("../../resources/texts/de.ftl"),
    include_str!("../../resources/texts/de_findings.ftl"),
    include_str!("../../resources/texts/de_titles.ftl"),
    include_str!("../../resources/texts/de_paper.ftl"),
    include_str!("../../resources/texts/de_shelf.ftl"),
    include_str!("../../resources/texts/de_feeding.ftl"),
    include_str!("../../resources/texts/de_cards.ftl"),
];

/// A language that papers are printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    German,
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// Its code (BCP 47).
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }

    /// What it is called by those who speak it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }

    /// Is a comma its decimal mark?
    #[must_use]
    pub const fn has_comma(self) -> bool {
        matches!(self, Self::German)
    }
}

/// An argument of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Word<'a> {
    /// Words, or a figure as it is printed.
    Text(Cow<'a, str>),
    /// A number of things, which the text may choose its wording by.
    Count(u64),
}

impl<'a> From<&'a str> for Word<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl<'a> From<&'a String> for Word<'a> {
    fn from(text: &'a String) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Word<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

impl From<u64> for Word<'_> {
    fn from(count: u64) -> Self {
        Self::Count(count)
    }
}

impl From<usize> for Word<'_> {
    fn from(count: usize) -> Self {
        Self::Count(u64::try_from(count).unwrap_or(u64::MAX))
    }
}

/// A catalogue of texts in one language.
pub struct Texts {
    language: Language,
    bundle: FluentBundle<FluentResource>,
    /// Says what this catalogue lacks.
    other: Option<&'static Texts>,
}

impl std::fmt::Debug for Texts {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Texts")
    }
}

impl Texts {
    /// The English catalogue, read once.
    ///
    /// # Panics
    /// Never: the catalogue is part of the program and read by a test.
    #[must_use]
    pub fn english() -> &'static Self {
        static TEXTS: OnceLock<Texts> = OnceLock::new();
        TEXTS.get_or_init(|| Self::read(Language::English, &ENGLISH, None))
    }

    /// The catalogue of a language, read once.
    #[must_use]
    pub fn of(language: Language) -> &'static Self {
        static GERMAN_TEXTS: OnceLock<Texts> = OnceLock::new();
        match language {
            Language::English => Self::english(),
            Language::German => GERMAN_TEXTS.get_or_init(|| Self::read(Language::German, &GERMAN, Some(Self::english()))),
        }
    }

    fn read(language: Language, parts: &[&str], other: Option<&'static Self>) -> Self {
        let code: LanguageIdentifier = language.code().parse().expect("a language code");
        let mut bundle = FluentBundle::new_concurrent(vec![code]);
        // The marks keep right-to-left names apart in running text; in a printed column they are stray characters.
        bundle.set_use_isolating(false);
        for part in parts {
            let resource = FluentResource::try_new((*part).to_owned()).expect("the shipped catalogue is sound");
            bundle.add_resource(resource).expect("the shipped catalogue has each key once");
        }
        Self { language, bundle, other }
    }

    /// The language it speaks.
    #[must_use]
    pub fn language(&self) -> Language {
        self.language
    }

    /// The text of a key with its arguments; the key in «» where it is not there or an argument is lacking.
    #[must_use]
    pub fn say(&self, key: &str, args: &[(&str, Word<'_>)]) -> String {
        let Some(pattern) = self.bundle.get_message(key).and_then(|message| message.value()) else {
            return self.other.map_or_else(|| format!("«{key}»"), |other| other.say(key, args));
        };
        let mut given = FluentArgs::with_capacity(args.len());
        for (name, word) in args {
            let value = match word {
                Word::Text(text) => FluentValue::from(text.as_ref()),
                Word::Count(count) => FluentValue::from(*count),
            };
            given.set(*name, value);
        }
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(&given), &mut errors).into_owned();
        if errors.is_empty() { text } else { format!("«{key}»") }
    }

    /// The text of a key that takes no argument.
    #[must_use]
    pub fn label(&self, key: &str) -> String {
        self.say(key, &[])
    }

    /// Is there such a key?
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.bundle.has_message(key) || self.other.is_some_and(|other| other.has(key))
    }

    /// What the figure of a rule is called; `id` as the rule has it, `page.name`.
    #[must_use]
    pub fn rule_title(&self, id: &str) -> String {
        self.label(&format!("rule-{}-title", dashed(id)))
    }

    /// Why a rule works its figure out so.
    #[must_use]
    pub fn rule_why(&self, id: &str) -> String {
        self.label(&format!("rule-{}-why", dashed(id)))
    }

    /// What an input, default or constant is called.
    #[must_use]
    pub fn input_title(&self, key: &str) -> String {
        self.label(&format!("input-{}", dashed(key)))
    }
}

/// Keys of the catalogue have no points in them.
fn dashed(id: &str) -> String {
    id.replace('.', "-")
}
