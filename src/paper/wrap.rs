//! Lines of a fixed pitch.

/// Columns a text takes, one for each sign.
#[must_use]
pub(super) fn columns(text: &str) -> usize {
    text.chars().count()
}

/// The text with spaces up to `width` columns.
#[must_use]
pub(super) fn fill(text: &str, width: usize) -> String {
    let mut filled = text.to_owned();
    filled.extend(std::iter::repeat_n(' ', width.saturating_sub(columns(text))));
    filled
}

/// Lines of at most `width` columns, broken at plain spaces; the thin space inside a figure holds it together. A word longer than a line
/// is cut. An empty text is one empty line.
#[must_use]
pub(super) fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let mut lines = vec![String::new()];
    let mut used = 0;
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let mut signs: Vec<char> = word.chars().collect();
        if used > 0 && used + 1 + signs.len() > width {
            lines.push(String::new());
            used = 0;
        }
        while signs.len() > width {
            let rest = signs.split_off(width);
            add(&mut lines, &mut used, &signs);
            lines.push(String::new());
            (signs, used) = (rest, 0);
        }
        add(&mut lines, &mut used, &signs);
    }
    lines
}

fn add(lines: &mut [String], used: &mut usize, signs: &[char]) {
    let Some(line) = lines.last_mut() else { return };
    if *used > 0 {
        line.push(' ');
        *used += 1;
    }
    line.extend(signs);
    *used += signs.len();
}

#[cfg(test)]
mod tests {
    use super::{columns, fill, wrap};

    #[test]
    fn wraps_at_plain_spaces_and_cuts_long_words() {
        assert_eq!(wrap("one two three", 7), ["one two", "three"]);
        assert_eq!(wrap("abcdefghij k", 4), ["abcd", "efgh", "ij k"]);
        assert_eq!(wrap("12\u{202F}g", 3), ["12\u{202F}", "g"]);
        assert_eq!(wrap("a 12\u{202F}g b", 6), ["a", "12\u{202F}g b"]);
        assert_eq!(wrap("", 5), [""]);
        assert_eq!(fill("Ø", 3), "Ø  ");
        assert_eq!(columns("Ø89×102"), 7);
    }
}
