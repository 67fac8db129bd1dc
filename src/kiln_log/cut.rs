//! Cutting a line into cells.

/// What parts the cells of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Separator {
    /// A tab.
    Tab,
    /// `;`
    Semicolon,
    /// `|`
    Bar,
    /// `,`
    Comma,
    /// Blanks, as many as there are.
    Blanks,
}

impl Separator {
    /// In the order in which they are believed.
    pub(super) const ALL: [Self; 5] = [Self::Tab, Self::Semicolon, Self::Bar, Self::Comma, Self::Blanks];

    pub(super) fn byte(self) -> u8 {
        match self {
            Self::Tab => b'\t',
            Self::Semicolon => b';',
            Self::Bar => b'|',
            Self::Comma => b',',
            Self::Blanks => b' ',
        }
    }
}

/// The cells of a line that are looked at.
pub(super) const MOST_CELLS: usize = 256;

/// Cuts a line into cells without blanks and quotes around them.
pub(super) fn cut<'a>(text: &'a str, separator: Separator, cells: &mut Vec<&'a str>) {
    cells.clear();
    match separator {
        Separator::Blanks => cut_at_blanks(text, cells),
        _ => cut_at_sign(text, separator.byte(), cells),
    }
}

fn cut_at_sign<'a>(text: &'a str, sign: u8, cells: &mut Vec<&'a str>) {
    let bytes = text.as_bytes();
    // A quote that is never closed is none, nor are those after it.
    let (mut at, mut quotes) = (0, true);
    while cells.len() < MOST_CELLS {
        let start = at + bytes[at..].iter().take_while(|&&b| b == b' ').count();
        if quotes && bytes.get(start) == Some(&b'"') {
            if let Some(close) = closing_quote(bytes, start + 1) {
                cells.push(text[start + 1..close].trim());
                match bytes[close..].iter().position(|&b| b == sign) {
                    Some(length) => at = close + length + 1,
                    None => return,
                }
                continue;
            }
            quotes = false;
        }
        let end = bytes[at..].iter().position(|&b| b == sign).map_or(bytes.len(), |length| at + length);
        cells.push(trimmed(&text[at..end]));
        if end == bytes.len() {
            return;
        }
        at = end + 1;
    }
}

/// As `trim`, but quick where there is nothing to do.
fn trimmed(cell: &str) -> &str {
    match cell.as_bytes() {
        [first, .., last] if first.is_ascii_graphic() && last.is_ascii_graphic() => cell,
        _ => cell.trim(),
    }
}

/// The quote that closes a cell; two stand for one in the text.
fn closing_quote(bytes: &[u8], from: usize) -> Option<usize> {
    let mut at = from;
    loop {
        at += bytes.get(at..)?.iter().position(|&b| b == b'"')?;
        if bytes.get(at + 1) != Some(&b'"') {
            return Some(at);
        }
        at += 2;
    }
}

fn cut_at_blanks<'a>(text: &'a str, cells: &mut Vec<&'a str>) {
    let bytes = text.as_bytes();
    let mut at = 0;
    let mut cell_at = 0;
    while cells.len() < MOST_CELLS {
        let start = at + bytes[at..].iter().take_while(|b| b.is_ascii_whitespace()).count();
        if start == bytes.len() {
            return;
        }
        let end = bytes[start..].iter().position(u8::is_ascii_whitespace).map_or(bytes.len(), |length| start + length);
        let word = &text[start..end];
        // The half of the day belongs to the time before it.
        let half_day = ["am", "pm", "a.m.", "p.m."].iter().any(|half| word.eq_ignore_ascii_case(half));
        match cells.last_mut() {
            Some(last) if half_day && last.contains(':') => *last = &text[cell_at..end],
            _ => {
                cell_at = start;
                cells.push(word.trim_matches('"'));
            }
        }
        at = end;
    }
}

/// Cuts a header over columns that blanks part. Two blanks part more surely than one; brackets hold together.
pub(super) fn cut_header(text: &str, wanted: usize) -> Vec<&str> {
    let wide: Vec<&str> = text.split("  ").flat_map(|part| part.split('\t')).map(str::trim).filter(|part| !part.is_empty()).collect();
    if wide.len() >= wanted {
        return wide.into_iter().take(MOST_CELLS).collect();
    }
    let mut words: Vec<&str> = Vec::new();
    let (mut depth, mut start) = (0_usize, None);
    for (at, c) in text.char_indices() {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' => depth = depth.saturating_sub(1),
            _ => {}
        }
        if !c.is_whitespace() {
            start = start.or(Some(at));
        } else if depth == 0
            && let Some(from) = start
            && !text[at..].trim_start().starts_with(['(', '['])
        {
            words.push(&text[from..at]);
            start = None;
        }
    }
    words.extend(start.map(|from| text[from..].trim_end()));
    words.truncate(MOST_CELLS);
    words
}
