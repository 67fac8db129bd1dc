//! The first line of a document.

/// What the first line says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Header {
    /// The format the file was written in.
    pub format: u32,
    /// The oldest format whose program can read it.
    pub readable_since: u32,
    /// Bytes of the text from the start of `format` to behind the comma after `readable_since`.
    pub(super) span: (usize, usize),
}

/// Reads `(format: N, readable_since: M,` at the start of `text`; spaces, line ends and a byte-order mark are skipped.
/// `None` where it does not start so. Nothing behind it is looked at.
#[must_use]
pub fn header(text: &str) -> Option<Header> {
    let mut scan = Scan(text.strip_prefix('\u{feff}').unwrap_or(text));
    scan.word("(")?;
    let start = text.len() - scan.0.len();
    scan.word("format")?;
    scan.word(":")?;
    let format = scan.number()?;
    scan.word(",")?;
    scan.word("readable_since")?;
    scan.word(":")?;
    let readable_since = scan.number()?;
    // A document with no field of its own may end here.
    if scan.word(",").is_none() && !scan.0.trim_start().starts_with(')') {
        return None;
    }
    Some(Header { format, readable_since, span: (start, text.len() - scan.0.len()) })
}

struct Scan<'a>(&'a str);

impl Scan<'_> {
    fn word(&mut self, word: &str) -> Option<()> {
        self.0 = self.0.trim_start().strip_prefix(word)?;
        Some(())
    }

    fn number(&mut self) -> Option<u32> {
        self.0 = self.0.trim_start();
        let end = self.0.find(|c: char| !c.is_ascii_digit()).unwrap_or(self.0.len());
        let (digits, rest) = self.0.split_at(end);
        self.0 = rest;
        digits.parse().ok()
    }
}
