//! Words made alike, so that they can be compared.

/// A piece of a text: letters, digits, or one sign that is neither.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Token<'a> {
    Letters(&'a str),
    Digits(&'a str),
    Sign(char),
}

/// Small letters without their marks: `Weißgold` becomes `weissgold`, `Größe` `grosse`.
pub(super) fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.chars().flat_map(char::to_lowercase) {
        match c {
            'ä' | 'á' | 'à' | 'â' => folded.push('a'),
            'ö' | 'ó' | 'ô' => folded.push('o'),
            'ü' | 'ú' | 'û' => folded.push('u'),
            'é' | 'è' | 'ê' => folded.push('e'),
            'ß' => folded.push_str("ss"),
            // What is left of a composed letter.
            '\u{300}'..='\u{36f}' => {}
            other => folded.push(other),
        }
    }
    folded
}

/// The pieces of a folded text, without blanks.
pub(super) fn tokens(folded: &str) -> Vec<Token<'_>> {
    let mut found = Vec::new();
    let mut rest = folded;
    while let Some(first) = rest.chars().next() {
        let alike = |c: char| if first.is_ascii_digit() { c.is_ascii_digit() } else { c.is_alphabetic() };
        let length = rest.find(|c| !alike(c)).unwrap_or(rest.len()).max(first.len_utf8());
        let (piece, after) = rest.split_at_checked(length).unwrap_or((rest, ""));
        if first.is_ascii_digit() {
            found.push(Token::Digits(piece));
        } else if first.is_alphabetic() {
            found.push(Token::Letters(piece));
        } else if !first.is_whitespace() {
            found.push(Token::Sign(first));
        }
        rest = after;
    }
    found
}

/// Words and numbers with one blank between them: `Order-No.` becomes `order no`.
pub(super) fn key(text: &str) -> String {
    let folded = fold(text);
    let words = tokens(&folded).into_iter().filter_map(|token| match token {
        Token::Letters(word) | Token::Digits(word) => Some(word),
        Token::Sign('#') => Some("#"),
        Token::Sign(_) => None,
    });
    words.collect::<Vec<_>>().join(" ")
}

/// Without blanks at the ends, and with one blank where several or line breaks stood.
pub(super) fn tidy(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// True for a cell that says nothing: blanks, dashes, `n/a`.
pub(super) fn says_nothing(cell: &str) -> bool {
    let cell = cell.trim();
    cell.chars().all(|c| matches!(c, '-' | '–' | '—' | '−'))
        || ["n/a", "n.a.", "k.a.", "k. a."].iter().any(|word| cell.eq_ignore_ascii_case(word))
}

/// True for what a spreadsheet writes where it cannot work out a cell, in English and German; `####` where the column was too narrow.
pub(super) fn is_spreadsheet_fault(cell: &str) -> bool {
    const FAULTS: [&str; 12] =
        ["#ref!", "#n/a", "#nv", "#name?", "#value!", "#div/0!", "#num!", "#null!", "#wert!", "#bezug!", "#zahl!", "#spill!"];
    let cell = cell.trim();
    if !cell.starts_with('#') {
        return false;
    }
    let is_narrow = cell.len() > 2 && cell.bytes().all(|b| b == b'#');
    is_narrow || FAULTS.iter().any(|fault| cell.eq_ignore_ascii_case(fault))
}
