//! Which of the known alloys a cell means.

use super::alloy_atoms::{Atoms, atoms};
use super::alloy_words::METALS;
use super::letters::key;
use std::collections::BTreeMap;

/// Suggestions for a name that nothing is called.
const MOST_NEAREST: usize = 3;
/// How alike two names must be for a suggestion, from 0 to 1.
const ALIKE: f64 = 0.3;

/// Which alloys a cell means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Meant {
    /// This one, by id.
    One(String),
    /// Any of these.
    Several(Vec<String>),
    /// None; these come nearest.
    Unknown(Vec<String>),
}

/// The known alloys, ready to be looked up.
pub(super) struct Alloys<'a> {
    entries: Vec<Entry>,
    /// What a person said that words mean.
    said: &'a BTreeMap<String, String>,
}

struct Entry {
    id: String,
    keys: [String; 2],
    /// What the id says, and what the name says.
    atoms: [Atoms; 2],
    all: Atoms,
    /// Pairs of letters of the id, and of the name.
    pairs: [Vec<(char, char)>; 2],
}

impl<'a> Alloys<'a> {
    /// From ids and names.
    pub fn new(alloys: &[(String, String)], said: &'a BTreeMap<String, String>) -> Self {
        let entries = alloys.iter().map(|(id, name)| {
            let atoms = [atoms(id), atoms(name)];
            let [by_id, by_name] = &atoms;
            let keys = [key(id), key(name)];
            Entry { id: id.clone(), all: by_id | by_name, pairs: keys.each_ref().map(|key| pairs(key)), keys, atoms }
        });
        Self { entries: entries.collect(), said }
    }

    /// What a cell means: what a person said it does; the alloy of that id or name; the only alloy of which all that it says is true; among
    /// several the only one of which nothing more is to be said. A mark alone leaves its metal unsaid: `925` is plain sterling although
    /// other alloys have the mark too, but `14k` is neither yellow nor white.
    pub fn meant(&self, cell: &str) -> Meant {
        self.fitting(cell).unwrap_or_else(|| Meant::Unknown(self.nearest(cell)))
    }

    /// True where a cell means one alloy or several.
    pub fn is_one(&self, cell: &str) -> bool {
        self.fitting(cell).is_some()
    }

    fn fitting(&self, cell: &str) -> Option<Meant> {
        let wanted = key(cell);
        if let Some(id) = self.said.get(&wanted)
            && self.entries.iter().any(|entry| entry.id == *id)
        {
            return Some(Meant::One(id.clone()));
        }
        let same: Vec<&Entry> = self.entries.iter().filter(|entry| entry.keys.contains(&wanted)).collect();
        if let [one] = same.as_slice() {
            return Some(Meant::One(one.id.clone()));
        }
        let said = atoms(cell);
        let fitting: Vec<&Entry> = self.entries.iter().filter(|entry| !said.is_empty() && said.is_subset(&entry.all)).collect();
        let plain: Vec<&Entry> = fitting.iter().copied().filter(|entry| entry.is_said_by(&said)).collect();
        match (fitting.as_slice(), plain.as_slice()) {
            ([], _) => None,
            ([one], _) | (_, [one]) => Some(Meant::One(one.id.clone())),
            (several, _) => Some(Meant::Several(several.iter().map(|entry| entry.id.clone()).collect())),
        }
    }

    fn nearest(&self, cell: &str) -> Vec<String> {
        let (letters, said) = (pairs(&key(cell)), atoms(cell));
        let alike = |entry: &Entry| {
            let by_atoms = entry.atoms.iter().map(|atoms| dice(said.intersection(atoms).count(), said.len(), atoms.len()));
            let both = |other: &[(char, char)]| letters.iter().filter(|pair| other.binary_search(pair).is_ok()).count();
            let by_letters = entry.pairs.iter().map(|other| dice(both(other), letters.len(), other.len()));
            by_atoms.chain(by_letters).fold(0.0, f64::max)
        };
        let mut ranked: Vec<(f64, &Entry)> = self.entries.iter().map(|entry| (alike(entry), entry)).collect();
        ranked.retain(|(alike, _)| *alike >= ALIKE);
        ranked.sort_by(|one, other| other.0.total_cmp(&one.0));
        ranked.into_iter().take(MOST_NEAREST).map(|(_, entry)| entry.id.clone()).collect()
    }
}

impl Entry {
    /// True where its id or its name says no more than that, but for the one metal of a mark.
    fn is_said_by(&self, said: &Atoms) -> bool {
        let is_metal = |atom: &&String| METALS.contains(&atom.as_str());
        let has_mark = said.iter().any(|atom| atom.len() == 3 && atom.bytes().all(|b| b.is_ascii_digit()));
        let may_be_unsaid = has_mark && self.all.iter().filter(is_metal).count() == 1;
        self.atoms.iter().any(|atoms| !atoms.is_empty() && atoms.difference(said).all(|atom| may_be_unsaid && is_metal(&atom)))
    }
}

/// The likeness of two sets (Dice 1945, from memory), from 0 to 1.
fn dice(both: usize, one: usize, other: usize) -> f64 {
    if one + other == 0 { 0.0 } else { 2.0 * both as f64 / (one + other) as f64 }
}

/// The pairs of letters of a word, each once, in order; of long words the first.
fn pairs(word: &str) -> Vec<(char, char)> {
    let mut pairs: Vec<(char, char)> = word.chars().zip(word.chars().skip(1)).take(80).collect();
    pairs.sort_unstable();
    pairs.dedup();
    pairs
}
