//! Every sentence a person reads, by key, from one catalogue: so that one voice and a second language have one place.
//!
//! Start at [`Texts::english`] and [`Texts::say`]. A key that is not in the catalogue, or an argument it lacks, shows the key in «».

use std::borrow::Cow;
use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

/// The English catalogue: what is printed and computed, the window, and the window's pages.
pub const ENGLISH: [&str; 6] = [
    include_str!("../../resources/texts/en.ftl"),
    include_str!("../../resources/texts/window.ftl"),
    include_str!("../../resources/texts/window_orders.ftl"),
    include_str!("../../resources/texts/window_flasks.ftl"),
    include_str!("../../resources/texts/window_heat.ftl"),
    include_str!("../../resources/texts/window_studio.ftl"),
];

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
    bundle: FluentBundle<FluentResource>,
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
        TEXTS.get_or_init(|| {
            let english: LanguageIdentifier = "en".parse().expect("a language code");
            let mut bundle = FluentBundle::new_concurrent(vec![english]);
            // The marks keep right-to-left names apart in running text; in a printed column they are stray characters.
            bundle.set_use_isolating(false);
            for part in ENGLISH {
                let resource = FluentResource::try_new(part.to_owned()).expect("the shipped catalogue is sound");
                bundle.add_resource(resource).expect("the shipped catalogue has each key once");
            }
            Self { bundle }
        })
    }

    /// The text of a key with its arguments; the key in «» where it is not there or an argument is lacking.
    #[must_use]
    pub fn say(&self, key: &str, args: &[(&str, Word<'_>)]) -> String {
        let Some(pattern) = self.bundle.get_message(key).and_then(|message| message.value()) else { return format!("«{key}»") };
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
        self.bundle.has_message(key)
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
