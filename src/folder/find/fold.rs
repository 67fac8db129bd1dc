//! Folding: what is the same word to a reader becomes the same letters.

use std::collections::HashMap;
use std::sync::LazyLock;

use super::letters::FOLDED;

static LETTERS: LazyLock<HashMap<char, &'static str>> =
    LazyLock::new(|| FOLDED.iter().flat_map(|(to, letters)| letters.chars().map(move |letter| (letter, *to))).collect());

/// Small letters without accents, in words with one space between: “Écume, 2.ª ed.” becomes `ecume 2 a ed`. What is neither letter nor
/// digit parts words.
#[must_use]
pub fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    let mut parted = false;
    let put = |folded: &mut String, letters: &str, parted: &mut bool| {
        if std::mem::take(parted) && !folded.is_empty() {
            folded.push(' ');
        }
        folded.push_str(letters);
    };
    for letter in text.chars() {
        if letter.is_ascii() {
            if letter.is_ascii_alphanumeric() {
                put(&mut folded, letter.to_ascii_lowercase().encode_utf8(&mut [0; 4]), &mut parted);
            } else {
                parted = true;
            }
            continue;
        }
        // A mark that stands above the letter before it.
        if matches!(letter, '\u{300}'..='\u{36f}') {
            continue;
        }
        if !letter.is_alphanumeric() {
            parted = true;
            continue;
        }
        for small in letter.to_lowercase().filter(|small| !matches!(small, '\u{300}'..='\u{36f}')) {
            match LETTERS.get(&small) {
                Some(plain) => put(&mut folded, plain, &mut parted),
                None => put(&mut folded, small.encode_utf8(&mut [0; 4]), &mut parted),
            }
        }
    }
    folded
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_letter_the_unicode_database_takes_apart_is_folded_to_its_base() {
        // Written by Python's unicodedata: canonical decomposition without combining marks, lower case.
        let mut many = 0;
        for line in include_str!("../../../tests/folder/decomposed.txt").lines() {
            let (letter, base) = line.split_once(' ').unwrap_or_default();
            assert_eq!(fold(letter), fold(base), "{letter}");
            assert!(base.contains(['æ', 'ø', 'ſ', 'ʹ', 'ϒ', 'ʒ']) || fold(letter) == base, "{letter}");
            many += 1;
        }
        assert!(many > 500);
    }

    #[test]
    fn words_are_parted_and_small() {
        for (text, folded) in [
            ("Limpet Ring", "limpet ring"),
            ("  silver-925 ", "silver 925"),
            ("É\u{301}cume", "ecume"),
            ("e\u{301}cume", "ecume"),
            ("Straße Œuf SØR", "strasse oeuf sor"),
            ("İstanbul", "istanbul"),
            ("6 1/2", "6 1 2"),
            ("—", ""),
            ("", ""),
            ("Ежевика", "ежевика"),
        ] {
            assert_eq!(fold(text), folded, "{text:?}");
        }
    }
}
