//! The words of a text that a mesh is written in.

/// Walks over the words of a text, which need not be UTF-8: names of solids come in every encoding.
#[derive(Clone)]
pub(super) struct Words<'a> {
    pub bytes: &'a [u8],
    /// Where the last word ends.
    pub at: usize,
    /// Where it begins.
    pub word_at: usize,
}

impl<'a> Words<'a> {
    pub fn new(bytes: &'a [u8]) -> Self {
        let at = if bytes.starts_with(b"\xef\xbb\xbf") { 3 } else { 0 };
        Self { bytes, at, word_at: at }
    }

    /// The next word, if there is one.
    pub fn next(&mut self) -> Option<&'a [u8]> {
        let blank = |b: &u8| b.is_ascii_whitespace() || *b == 0x0b;
        let start = self.at + self.bytes[self.at..].iter().position(|b| !blank(b))?;
        let length = self.bytes[start..].iter().position(blank).unwrap_or(self.bytes.len() - start);
        self.word_at = start;
        self.at = start + length;
        Some(&self.bytes[start..self.at])
    }

    /// What is left of the line the last word stands on.
    pub fn rest_of_line(&mut self) -> &'a [u8] {
        let rest = &self.bytes[self.at..];
        let length = rest.iter().position(|&b| b == b'\n' || b == b'\r').unwrap_or(rest.len());
        self.at += length;
        rest[..length].trim_ascii()
    }

    /// The line of a byte, counted from 1.
    pub fn line_of(&self, at: usize) -> u64 {
        // Files of very old machines end their lines with CR alone; counting LF is right for all others.
        1 + self.bytes[..at].iter().filter(|&&b| b == b'\n').count() as u64
    }
}
