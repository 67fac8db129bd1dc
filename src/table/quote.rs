//! Quotes around cells, where doubled quotes stand for one (RFC 4180, section 2, rules 5 to 7).

/// What a quote at the beginning of a cell is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Opened {
    /// It opens a cell, which the quote at this place closes.
    Cell(usize),
    /// It is a sign like any other: words stand behind the quote that would close it.
    Nothing,
    /// No quote closes it, or none before too many line breaks.
    Unclosed,
}

/// What the quote at `open` is. A cell ends before one of `signs`, a line break or the end; blanks may stand before it.
///
/// Ends at the first quote that is not doubled, so that all quotes of a file together take time in proportion to its length.
pub(super) fn opened(bytes: &[u8], open: usize, signs: &[u8], max_breaks: usize) -> Opened {
    let mut at = open + 1;
    let close = loop {
        let Some(length) = bytes.get(at..).and_then(|rest| rest.iter().position(|&b| b == b'"')) else { return Opened::Unclosed };
        at += length;
        if bytes.get(at + 1) != Some(&b'"') {
            break at;
        }
        at += 2;
    };
    let behind = blanks_from(bytes, close + 1);
    match bytes.get(behind) {
        Some(b) if !signs.contains(b) && !matches!(b, b'\n' | b'\r') => Opened::Nothing,
        _ if breaks(bytes.get(open..close).unwrap_or_default()) > max_breaks => Opened::Unclosed,
        _ => Opened::Cell(close),
    }
}

/// The first place from `at` on that is no blank.
pub(super) fn blanks_from(bytes: &[u8], at: usize) -> usize {
    at + bytes.get(at..).map_or(0, |rest| rest.iter().take_while(|&&b| b == b' ').count())
}

/// Line breaks: LF, CR, or both as one.
pub(super) fn breaks(bytes: &[u8]) -> usize {
    let ends = bytes.iter().filter(|&&b| b == b'\n' || b == b'\r').count();
    ends - bytes.windows(2).filter(|pair| *pair == b"\r\n").count()
}
