//! Passing over a field that is not known, without understanding it.

/// The bytes of the field `name` whose name ends at or shortly before `near`: from its name to behind the comma after its value.
/// `None` where it cannot be found or never ends.
pub(super) fn field_before(text: &str, near: usize, name: &str) -> Option<(usize, usize)> {
    let window = text.get(..ceil(text, near + name.len()))?;
    let start = window.rfind(name)?;
    let colon = start + name.len() + text[start + name.len()..].find(':')?;
    Some((start, value_end(text, colon + 1)?))
}

fn ceil(text: &str, mut at: usize) -> usize {
    at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at += 1;
    }
    at
}

/// Where the value that starts at `from` ends: behind its comma, or at the bracket that closes what it stands in.
fn value_end(text: &str, from: usize) -> Option<usize> {
    let bytes = text.as_bytes();
    let (mut at, mut depth) = (from, 0_usize);
    while let Some(byte) = bytes.get(at) {
        match byte {
            b'"' => at = string_end(bytes, at)?,
            b'r' if raw_hashes(bytes, at).is_some() => at = raw_end(text, at)?,
            b'/' if bytes.get(at + 1) == Some(&b'/') => at += text[at..].find('\n')?,
            b'/' if bytes.get(at + 1) == Some(&b'*') => at = comment_end(bytes, at)?,
            b'\'' => at = char_end(bytes, at),
            b'(' | b'[' | b'{' => depth += 1,
            b')' | b']' | b'}' if depth == 0 => return Some(at),
            b')' | b']' | b'}' => depth -= 1,
            b',' if depth == 0 => return Some(at + 1),
            _ => {}
        }
        at += 1;
    }
    None
}

/// Index of the last byte of the block comment that opens at `open`; comments nest.
fn comment_end(bytes: &[u8], open: usize) -> Option<usize> {
    let (mut at, mut depth) = (open, 0_usize);
    loop {
        match (bytes.get(at)?, bytes.get(at + 1)?) {
            (b'/', b'*') => (at, depth) = (at + 2, depth + 1),
            (b'*', b'/') if depth == 1 => return Some(at + 1),
            (b'*', b'/') => (at, depth) = (at + 2, depth - 1),
            _ => at += 1,
        }
    }
}

/// Index of the closing quote.
fn string_end(bytes: &[u8], open: usize) -> Option<usize> {
    let mut at = open + 1;
    loop {
        match bytes.get(at)? {
            b'\\' => at += 2,
            b'"' => return Some(at),
            _ => at += 1,
        }
    }
}

/// Index of the closing quote of a character, or of the quote itself where it opens none.
fn char_end(bytes: &[u8], open: usize) -> usize {
    let step = if bytes.get(open + 1) == Some(&b'\\') { 3 } else { 2 };
    (open + step..open + step + 8).find(|at| bytes.get(*at) == Some(&b'\'')).unwrap_or(open)
}

/// How many hashes open a raw string at `at`, where one does.
fn raw_hashes(bytes: &[u8], at: usize) -> Option<usize> {
    let hashes = bytes[at + 1..].iter().take_while(|byte| **byte == b'#').count();
    (bytes.get(at + 1 + hashes) == Some(&b'"')).then_some(hashes)
}

fn raw_end(text: &str, at: usize) -> Option<usize> {
    let hashes = raw_hashes(text.as_bytes(), at)?;
    let open = at + 1 + hashes + 1;
    let close = format!("\"{}", "#".repeat(hashes));
    Some(open + text[open..].find(&close)? + close.len() - 1)
}
