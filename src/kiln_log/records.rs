//! The lines of a text that have something on them.

use super::LogError;

/// A line, or several where a quoted cell goes on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Record<'a> {
    /// Number of its first line, from 1.
    pub line: u32,
    pub text: &'a str,
    /// True where it begins with `#` or `//`.
    pub comment: bool,
}

/// The lines a quoted cell may go on for: a header may be broken, but a stray quote must not eat the file.
const MOST_JOINED: usize = 3;

/// The lines that are not blank; they end with LF, CR or both.
pub(super) fn records(text: &str, most: usize) -> Result<Vec<Record<'_>>, LogError> {
    let bytes = text.as_bytes();
    let (mut at, mut line, mut found) = (0, 0_u32, Vec::new());
    while at < bytes.len() {
        let (mut end, mut next) = line_end(bytes, at);
        let first_line = line + 1;
        line += 1;
        if opens_quote(&bytes[at..end])
            && let Some((closing_end, after, lines)) = closing(bytes, next)
        {
            (end, next) = (closing_end, after);
            line += lines;
        }
        let text = text.get(at..end).unwrap_or_default();
        if !text.trim_ascii().is_empty() && !text.trim().is_empty() {
            if found.len() >= most {
                return Err(LogError::TooManyRows { most });
            }
            let comment = text.trim_start().starts_with('#') || text.trim_start().starts_with("//");
            found.push(Record { line: first_line, text, comment });
        }
        at = next;
    }
    Ok(found)
}

/// Where the line ends, and where the next begins.
fn line_end(bytes: &[u8], from: usize) -> (usize, usize) {
    let end = bytes[from..].iter().position(|&b| b == b'\n' || b == b'\r').map_or(bytes.len(), |length| from + length);
    let width = match bytes.get(end..) {
        Some([b'\r', b'\n', ..]) => 2,
        Some([_, ..]) => 1,
        _ => 0,
    };
    (end, end + width)
}

/// True where the last quote of a line stands where a cell begins, and is not closed.
fn opens_quote(line: &[u8]) -> bool {
    if line.iter().filter(|&&b| b == b'"').count() % 2 == 0 {
        return false;
    }
    let before = line.iter().rposition(|&b| b == b'"').and_then(|at| at.checked_sub(1)).and_then(|at| line.get(at));
    before.is_none_or(|b| b",;\t|".contains(b))
}

/// The end of a cell that goes on in the next lines, the start of the line after it, and how many lines it takes.
fn closing(bytes: &[u8], from: usize) -> Option<(usize, usize, u32)> {
    let (mut at, mut lines) = (from, 0);
    for _ in 0..MOST_JOINED {
        if at >= bytes.len() {
            return None;
        }
        let (end, next) = line_end(bytes, at);
        lines += 1;
        if bytes[at..end].iter().filter(|&&b| b == b'"').count() % 2 == 1 {
            return Some((end, next, lines));
        }
        at = next;
    }
    None
}
