//! Every text of the folder once, folded and cut into words, so that a query looks at each only once.

use std::collections::HashMap;

use std::sync::Arc;

use super::fold;

/// Parts words in [`Texts::letters`]; no folded word holds it.
const BETWEEN: u8 = 0;

/// The texts, by number from 0 in the order they came.
#[derive(Debug, Clone, Default)]
pub(crate) struct Texts {
    numbers: HashMap<Arc<str>, u32>,
    all: Vec<Arc<str>>,
    /// All words of all texts, each with [`BETWEEN`] behind it.
    letters: Vec<u8>,
    /// Where each word begins in `letters`.
    words: Vec<u32>,
    /// The number of the first word of each text.
    first_word: Vec<u32>,
}

/// What of a query a text answers, a bit for each of the query's words.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Answer {
    /// A word of the text begins so.
    pub(super) begins: u32,
    /// A word of the text is just that.
    pub(super) whole: u32,
    /// The whole text is what a narrowing asks for, a bit for each narrowing.
    pub(super) narrowed: u32,
}

impl Texts {
    /// The number of a text, which is taken up where it is new.
    pub(crate) fn number(&mut self, text: &str) -> u32 {
        if let Some(number) = self.numbers.get(text) {
            return *number;
        }
        let number = small(self.all.len());
        let shared: Arc<str> = text.into();
        self.numbers.insert(Arc::clone(&shared), number);
        self.all.push(shared);
        self.first_word.push(small(self.words.len()));
        for word in fold(text).split(' ').filter(|word| !word.is_empty()) {
            self.words.push(small(self.letters.len()));
            self.letters.extend_from_slice(word.as_bytes());
            self.letters.push(BETWEEN);
        }
        number
    }

    pub(crate) fn len(&self) -> usize {
        self.all.len()
    }

    pub(crate) fn text(&self, number: u32) -> Option<&Arc<str>> {
        self.all.get(number as usize)
    }

    /// What each text answers: `words` are beginnings of words, `narrowings` whole texts, all of them folded.
    pub(super) fn answers(&self, words: &[String], narrowings: &[String]) -> Vec<Answer> {
        let narrowings: Vec<Vec<u8>> = narrowings.iter().map(|text| laid_out(text)).collect();
        let ends = self.first_word.iter().skip(1).copied().chain([small(self.words.len())]);
        let ranges = self.first_word.iter().zip(ends);
        ranges.map(|(first, end)| self.answer(*first as usize..end as usize, words, &narrowings)).collect()
    }

    fn answer(&self, range: std::ops::Range<usize>, words: &[String], narrowings: &[Vec<u8>]) -> Answer {
        let mut answer = Answer::default();
        let starts = self.words.get(range.clone()).unwrap_or_default();
        for start in starts {
            let letters = self.letters.get(*start as usize..).unwrap_or_default();
            for (bit, word) in words.iter().enumerate() {
                if letters.starts_with(word.as_bytes()) {
                    answer.begins |= 1 << bit;
                    answer.whole |= u32::from(letters.get(word.len()) == Some(&BETWEEN)) << bit;
                }
            }
        }
        if !narrowings.is_empty() {
            let start = starts.first().map_or(self.letters.len(), |start| *start as usize);
            let end = self.words.get(range.end).map_or(self.letters.len(), |end| *end as usize);
            let letters = self.letters.get(start..end).unwrap_or_default();
            for (bit, narrowing) in narrowings.iter().enumerate() {
                answer.narrowed |= u32::from(!starts.is_empty() && letters == narrowing) << bit;
            }
        }
        answer
    }
}

/// A folded text as it lies in [`Texts::letters`].
fn laid_out(folded: &str) -> Vec<u8> {
    folded.split(' ').flat_map(|word| word.bytes().chain([BETWEEN])).collect()
}

fn small(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
