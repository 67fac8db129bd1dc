//! The plain part of RON, piece by piece: what the program writes, and comments and other layout by hand. Whatever else RON allows is met
//! with `None`, which means "unsure", never "wrong".

use std::borrow::Cow;

use super::scan::{behind_white, quote_or_backslash};
use crate::job::format::header::Header;

/// Brackets within brackets that are read. `ron` counts up to three levels a bracket and stops at `DEEPEST`; a job has ten or so.
const DEEPEST_BRACKETS: u32 = 15;

/// A place in the text.
pub(super) struct Plain<'de> {
    text: &'de str,
    at: usize,
    deep: u32,
    /// The opening bracket of the document is behind us already, with the header.
    pub(super) opened: bool,
}

impl<'de> Plain<'de> {
    /// Stands behind the header, in the document's own bracket. `None` where something uncommon stands before it.
    pub(super) fn behind_header(text: &'de str, header: Header) -> Option<Self> {
        let before = text.get(..header.span.0)?;
        let before = before.strip_prefix('\u{feff}').unwrap_or(before).strip_suffix('(')?;
        if behind_white(before.as_bytes(), 0) < before.len() {
            return None;
        }
        // What the header's own reader passes over may be no white space in RON.
        text.get(header.span.0..header.span.1)?;
        Some(Self { text, at: header.span.1, deep: 1, opened: true })
    }

    pub(super) fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// Passes over white space and comments.
    pub(super) fn white(&mut self) -> Option<()> {
        loop {
            self.at = behind_white(self.text.as_bytes(), self.at);
            if self.peek() != Some(b'/') {
                return Some(());
            }
            let rest = self.text.get(self.at + 1..)?;
            match rest.bytes().next()? {
                b'/' => self.at += 2 + rest.find('\n')?,
                b'*' => self.at = block_end(self.text.as_bytes(), self.at)?,
                _ => return None,
            }
        }
    }

    /// Passes over this very byte.
    pub(super) fn take(&mut self, byte: u8) -> Option<()> {
        (self.peek() == Some(byte)).then(|| self.at += 1)
    }

    /// Passes over an opening bracket and the white space behind it.
    pub(super) fn open(&mut self, bracket: u8) -> Option<()> {
        self.take(bracket)?;
        self.deep += 1;
        if self.deep > DEEPEST_BRACKETS { None } else { self.white() }
    }

    /// At the end of a value in brackets: passes over a comma. True where the closing bracket stands behind it, which is passed over too.
    pub(super) fn comma_or_close(&mut self, bracket: u8) -> Option<bool> {
        self.white()?;
        let comma = self.take(b',').is_some();
        if comma {
            self.white()?;
        }
        if self.close(bracket) {
            return Some(true);
        }
        comma.then_some(false)
    }

    /// Passes over the closing bracket, where it stands here.
    pub(super) fn close(&mut self, bracket: u8) -> bool {
        let closes = self.take(bracket).is_some();
        if closes {
            self.deep = self.deep.saturating_sub(1);
        }
        closes
    }

    /// Passes over a colon with white space round it.
    pub(super) fn colon(&mut self) -> Option<()> {
        self.white()?;
        self.take(b':')?;
        self.white()
    }

    /// A name: a letter or `_`, then letters, digits and `_`. A raw string or byte string begins like a name and is none.
    pub(super) fn name(&mut self) -> Option<&'de str> {
        let rest = self.text.get(self.at..)?;
        let long = rest.bytes().position(|byte| !(byte.is_ascii_alphanumeric() || byte == b'_')).unwrap_or(rest.len());
        let name = rest.get(..long)?;
        let behind = rest.as_bytes().get(long).copied();
        let strange = behind.is_some_and(|byte| matches!(byte, b'.' | b'+' | b'-' | b'"' | b'\'' | b'#') || !byte.is_ascii());
        if strange || !name.bytes().next().is_some_and(|first| first.is_ascii_alphabetic() || first == b'_') {
            return None;
        }
        self.at += long;
        Some(name)
    }

    /// A number in decimal digits; the flag is true where it has a decimal point.
    pub(super) fn number(&mut self) -> Option<(&'de str, bool)> {
        let bytes = self.text.as_bytes();
        let digits = |from: usize| bytes.get(from..).map_or(0, |rest| rest.iter().take_while(|byte| byte.is_ascii_digit()).count());
        let first = self.at + usize::from(self.peek() == Some(b'-'));
        let whole = digits(first);
        let mut end = first + whole;
        let point = bytes.get(end) == Some(&b'.');
        if point {
            let decimals = digits(end + 1);
            end += 1 + decimals;
            if decimals == 0 {
                return None;
            }
        }
        // Larger whole numbers may not fit; `ron` decides.
        let fits = whole > 0 && whole <= if point { 300 } else { 18 };
        let ends = bytes.get(end).is_none_or(|byte| matches!(byte, b',' | b')' | b']' | b'}' | b':' | b'\n' | b' ' | b'\r' | b'\t' | b'/'));
        if !fits || !ends {
            return None;
        }
        let number = self.text.get(self.at..end)?;
        self.at = end;
        Some((number, point))
    }

    /// A text in plain quotes.
    pub(super) fn quoted(&mut self) -> Option<Cow<'de, str>> {
        self.take(b'"')?;
        let stop = quote_or_backslash(self.text.as_bytes(), self.at)?;
        let first = self.text.get(self.at..stop)?;
        self.at = stop;
        if self.take(b'"').is_some() {
            return Some(Cow::Borrowed(first));
        }
        let mut text = first.to_owned();
        while self.take(b'"').is_none() {
            text.push(self.escape()?);
            let stop = quote_or_backslash(self.text.as_bytes(), self.at)?;
            text.push_str(self.text.get(self.at..stop)?);
            self.at = stop;
        }
        Some(Cow::Owned(text))
    }

    /// Passes over a text in plain quotes.
    pub(super) fn pass_quoted(&mut self) -> Option<()> {
        self.take(b'"')?;
        loop {
            self.at = quote_or_backslash(self.text.as_bytes(), self.at)?;
            if self.take(b'"').is_some() {
                return Some(());
            }
            self.escape()?;
        }
    }

    fn escape(&mut self) -> Option<char> {
        self.take(b'\\')?;
        let escape = self.peek()?;
        self.at += 1;
        Some(match escape {
            b'"' | b'\\' | b'\'' => char::from(escape),
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'0' => '\0',
            b'u' => {
                self.take(b'{')?;
                let rest = self.text.get(self.at..)?;
                let long = rest.bytes().take(7).take_while(u8::is_ascii_hexdigit).count();
                let hex = rest.get(..long).filter(|hex| (1..=6).contains(&hex.len()))?;
                let letter = char::from_u32(u32::from_str_radix(hex, 16).ok()?)?;
                self.at += long;
                self.take(b'}')?;
                letter
            }
            _ => return None,
        })
    }

    /// Steps back to an earlier place.
    pub(super) fn back_to(&mut self, at: usize) {
        self.at = at;
    }

    pub(super) fn place(&self) -> usize {
        self.at
    }

    /// `None` where anything but white space and comments follows.
    pub(super) fn end(mut self) -> Option<()> {
        self.white()?;
        (self.at == self.text.len()).then_some(())
    }
}

/// Index behind the block comment that opens at `open`; comments nest.
fn block_end(bytes: &[u8], open: usize) -> Option<usize> {
    let (mut at, mut depth) = (open, 0_usize);
    loop {
        match (bytes.get(at)?, bytes.get(at + 1)?) {
            (b'/', b'*') => (at, depth) = (at + 2, depth + 1),
            (b'*', b'/') if depth == 1 => return Some(at + 2),
            (b'*', b'/') => (at, depth) = (at + 2, depth - 1),
            _ => at += 1,
        }
    }
}
