//! Bytes as they come out of a package, counted.

use crate::mesh::{Limits, ReadError};
use quick_xml::Reader;
use quick_xml::events::Event;
use std::io::{BufRead, Error, Read};

/// The longest single tag, text or comment, in bytes.
const MOST_AT_ONCE: u64 = 1 << 20;
/// The deepest that tags may lie within each other. A model needs six.
const MOST_DEEP: usize = 64;

/// The events of an XML text, within limits of size and depth.
pub(super) struct Meter<R: BufRead> {
    reader: Reader<Counted<R>>,
    buffer: Vec<u8>,
    depth: usize,
    most: u64,
}

impl<R: BufRead> Meter<R> {
    /// At most `left` bytes are read.
    pub fn new(inner: R, left: u64, limits: &Limits) -> Self {
        let reader = Reader::from_reader(Counted { inner, left, at_once: MOST_AT_ONCE, line: 1, is_at_end: false, trouble: None });
        Self { reader, buffer: Vec::new(), depth: 0, most: limits.max_expanded_bytes }
    }

    /// The next event. Texts, comments and notes to programs come too; what asks for more than is in the text itself is refused.
    pub fn next(&mut self) -> Result<Event<'_>, ReadError> {
        self.buffer.clear();
        self.reader.get_mut().at_once = MOST_AT_ONCE;
        let event = match self.reader.read_event_into(&mut self.buffer) {
            Ok(event) => event,
            Err(error) => return Err(told(&error, self.reader.get_ref(), self.most)),
        };
        let line = self.reader.get_ref().line;
        match &event {
            Event::Start(_) => self.depth += 1,
            Event::End(_) => self.depth = self.depth.saturating_sub(1),
            Event::DocType(_) => return Err(refused(line, "it brings definitions of its own (DOCTYPE), which are not followed")),
            Event::Decl(declaration) => {
                if let Some(Ok(name)) = declaration.encoding()
                    && !name.eq_ignore_ascii_case(b"utf-8")
                {
                    return Err(refused(line, "its letters are not written in UTF-8"));
                }
            }
            Event::Eof if self.depth > 0 => return Err(refused(line, "the text ends too early")),
            _ => {}
        }
        if self.depth > MOST_DEEP {
            return Err(refused(line, "tags lie too deep within each other"));
        }
        Ok(event)
    }

    /// The line that has been come to, counted from 1.
    pub fn line(&self) -> u64 {
        self.reader.get_ref().line
    }

    /// Bytes that may still be read.
    pub fn left(&self) -> u64 {
        self.reader.get_ref().left
    }
}

/// A refusal on a line of the model.
pub(super) fn refused(line: u64, reason: impl Into<String>) -> ReadError {
    ReadError::Model { line, reason: reason.into() }
}

fn told<R>(error: &quick_xml::Error, counted: &Counted<R>, most: u64) -> ReadError {
    match (counted.trouble, error) {
        (Some(Trouble::All), _) => ReadError::TooLargeUnpacked { most },
        (Some(Trouble::AtOnce), _) => refused(counted.line, "a single tag or text is too long"),
        (None, quick_xml::Error::Io(_)) => super::package::refused("a part of it is damaged"),
        (None, quick_xml::Error::Syntax(_)) if counted.is_at_end => refused(counted.line, "the text ends too early"),
        (None, _) => refused(counted.line, "it is no well-formed XML"),
    }
}

#[derive(Debug, Clone, Copy)]
enum Trouble {
    All,
    AtOnce,
}

struct Counted<R> {
    inner: R,
    left: u64,
    at_once: u64,
    line: u64,
    is_at_end: bool,
    trouble: Option<Trouble>,
}

impl<R: BufRead> Read for Counted<R> {
    fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
        let count = self.fill_buf()?.read(into)?;
        self.consume(count);
        Ok(count)
    }
}

impl<R: BufRead> BufRead for Counted<R> {
    fn fill_buf(&mut self) -> std::io::Result<&[u8]> {
        let most = self.left.min(self.at_once);
        let bytes = self.inner.fill_buf()?;
        self.is_at_end = bytes.is_empty();
        if most == 0 && !self.is_at_end {
            self.trouble = Some(if self.left == 0 { Trouble::All } else { Trouble::AtOnce });
            return Err(Error::other("too much"));
        }
        Ok(&bytes[..bytes.len().min(usize::try_from(most).unwrap_or(usize::MAX))])
    }

    fn consume(&mut self, count: usize) {
        // The buffer is full: looking into it again reads nothing.
        if let Ok(bytes) = self.inner.fill_buf() {
            self.line += bytes[..count.min(bytes.len())].iter().filter(|&&b| b == b'\n').count() as u64;
        }
        self.inner.consume(count);
        self.left -= count as u64;
        self.at_once -= count as u64;
    }
}
