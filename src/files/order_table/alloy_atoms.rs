//! A name of an alloy taken apart into what it says: metal, mark, colour, additions.

use super::alloy_words::{EMPTY, KARAT, KARATS, SAME_MARKS, SHORT_COLOURS, WORDS};
use super::letters::{Token, fold, tokens};
use std::collections::BTreeSet;

/// What a name says, each thing by one word.
pub(super) type Atoms = BTreeSet<String>;

/// What a name says: `14KY` and `585 Gelbgold` both say gold, 585, yellow. Words that nobody taught are kept as they are.
pub(super) fn atoms(text: &str) -> Atoms {
    let folded = fold(text).replace("92.5", "925").replace("92,5", "925");
    let mut tokens = tokens(&folded);
    tokens.retain(|token| *token != Token::Sign('-'));
    let mut atoms = Atoms::new();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        let next = tokens.get(at + 1).copied();
        at += match *token {
            Token::Digits(digits) => take_digits(digits, next, &mut atoms),
            Token::Letters("nickel") if next == Some(Token::Letters("silver")) => {
                atoms.insert("nickelsilver".to_owned());
                2
            }
            Token::Letters(word) => {
                take_word(word, &mut atoms);
                1
            }
            // Which of two is meant is for a person to say.
            Token::Sign(sign) => {
                if sign == '?' {
                    atoms.insert("?".to_owned());
                }
                1
            }
        };
    }
    atoms
}

/// Takes a number and what belongs to it; gives how many pieces that were.
fn take_digits(digits: &str, next: Option<Token<'_>>, atoms: &mut Atoms) -> usize {
    let mut add = |atom: &str| atoms.insert(atom.to_owned());
    if let Some(Token::Letters(word)) = next
        && let Some(karat) = KARATS.iter().find(|(karat, _)| digits.parse() == Ok(*karat))
        && let Some(colour) = behind_karats(word)
    {
        add("gold");
        add(karat.1);
        if !colour.is_empty() {
            add(colour);
        }
        return 2;
    }
    match (digits, next) {
        // A share of an addition, or the thousandths of 925/1000 and 925/000.
        (_, Some(Token::Sign('%'))) => 2,
        ("000" | "1000", _) => 1,
        (_, Some(Token::Letters("n"))) => {
            add(&format!("{digits}n"));
            2
        }
        _ => {
            add(SAME_MARKS.iter().find(|(other, _)| *other == digits).map_or(digits, |(_, mark)| mark));
            1
        }
    }
}

/// The colour in `kyg`, nothing in `kt`; `None` where the letters do not begin with karats.
fn behind_karats(word: &str) -> Option<&'static str> {
    KARAT.iter().filter_map(|karat| word.strip_prefix(karat)).find_map(|short| {
        if short.is_empty() { Some("") } else { SHORT_COLOURS.iter().find(|(other, _)| *other == short).map(|(_, colour)| *colour) }
    })
}

fn take_word(word: &str, atoms: &mut Atoms) {
    if EMPTY.contains(&word) {
        return;
    }
    match WORDS.iter().find(|(words, _)| words.contains(&word)) {
        Some((_, said)) => atoms.extend(said.iter().map(|&atom| atom.to_owned())),
        None => {
            atoms.insert(word.to_owned());
        }
    }
}
