//! The signs of an entry: numbers, units, operators, brackets.

use std::ops::Range;

use super::Kind;
use super::entry_error::{EntryError, EntryErrorKind};
use super::number::{Literal, number_at};
use super::unit::{Meaning, kind_of_word, word_at};

/// One sign.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Token {
    Number(Literal),
    Word(Meaning),
    Plus,
    Minus,
    Times,
    Over,
    Open,
    Close,
    Colon,
    /// Reported when it is reached, so that the first fault of an entry is the one told.
    Wrong(EntryError),
}

/// A sign and the bytes it covers.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Placed {
    pub(super) token: Token,
    pub(super) at: Range<usize>,
}

/// The signs of `text` in a field of `kind`, up to the first that is wrong.
pub(super) fn tokens(text: &str, kind: Kind) -> Vec<Placed> {
    let mut found = Vec::new();
    let mut place = 0;
    while let Some(sign) = text[place..].chars().next() {
        if sign.is_whitespace() {
            place += sign.len_utf8();
            continue;
        }
        let placed = token_at(text, place, sign, kind);
        place = placed.at.end;
        let wrong = matches!(placed.token, Token::Wrong(_));
        found.push(placed);
        if wrong {
            break;
        }
    }
    found
}

fn token_at(text: &str, start: usize, sign: char, kind: Kind) -> Placed {
    if let Some(number) = number_at(text, start) {
        return match number {
            Ok(literal) => Placed { at: literal.at.clone(), token: Token::Number(literal) },
            Err(error) => Placed { at: error.at.clone(), token: Token::Wrong(error) },
        };
    }
    if let Some((length, meaning)) = word_at(&text[start..], kind) {
        return Placed { token: Token::Word(meaning), at: start..start + length };
    }
    let after = &text[start + sign.len_utf8()..];
    let token = match sign {
        '+' => Token::Plus,
        '-' | '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}' => Token::Minus,
        '*' | '×' | '·' | '⋅' | '∙' | '✕' => Token::Times,
        'x' | 'X' if !after.starts_with(char::is_alphabetic) => Token::Times,
        '/' | '÷' | '\u{2044}' | '\u{2215}' => Token::Over,
        // `40:100` is a ratio.
        ':' if kind == Kind::Ratio => Token::Over,
        ':' => Token::Colon,
        '(' => Token::Open,
        ')' => Token::Close,
        _ => return wrong(text, start, sign, kind),
    };
    Placed { token, at: start..start + sign.len_utf8() }
}

fn wrong(text: &str, start: usize, sign: char, asked: Kind) -> Placed {
    let rest = &text[start..];
    let letters = &rest[..rest.find(|letter: char| !letter.is_alphabetic()).unwrap_or(rest.len())];
    let word = letters.to_owned();
    let why = match letters.to_lowercase().as_str() {
        "" if sign == '∞' => EntryErrorKind::NotANumber(sign.to_string()),
        "" => EntryErrorKind::UnknownSign(sign),
        "nan" | "inf" | "infinity" | "infinite" => EntryErrorKind::NotANumber(word),
        "e" if text[..start].ends_with(|before: char| before.is_ascii_digit() || before == '.') => EntryErrorKind::PowerOfTen,
        _ => match kind_of_word(letters) {
            Some(measures) if measures != asked => EntryErrorKind::OtherKind { word, measures, asked },
            _ => EntryErrorKind::UnknownWord(word),
        },
    };
    let at = start..start + letters.len().max(sign.len_utf8());
    Placed { token: Token::Wrong(EntryError::new(why, at.clone())), at }
}
