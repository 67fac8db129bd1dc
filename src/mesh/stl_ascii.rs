//! Text STL: `solid name`, facets of three `vertex` lines, `endsolid name`; any number of such blocks.

use super::read_error::shortened;
use super::soup::{Soup, Triangle};
use super::words::Words;
use super::{Format, Limits, ReadError};

/// True when the first word, after blanks and a byte-order mark, is `solid` in any case.
pub(super) fn begins_with_solid(bytes: &[u8]) -> bool {
    Words::new(bytes).next().is_some_and(|word| word.eq_ignore_ascii_case(b"solid"))
}

/// Reads the triangles of every block.
pub(super) fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let mut reader = Reader { words: Words::new(bytes), triangles: Vec::new(), most: limits.triangles() };
    let mut cut_name = false;
    let mut blocks = 0;
    while let Some(word) = reader.words.next() {
        if !word.eq_ignore_ascii_case(b"solid") {
            return Err(if blocks == 0 { ReadError::NotAMesh } else { reader.unexpected(word, "solid") });
        }
        let name = reader.words.rest_of_line();
        reader.facets()?;
        let end_name = reader.words.rest_of_line();
        cut_name = end_name.len() < name.len() && !end_name.is_empty() && name.starts_with(end_name) && reader.words.at == bytes.len();
        blocks += 1;
    }
    if reader.triangles.is_empty() {
        return Err(ReadError::NoGeometry);
    }
    Ok(Soup::new(Format::StlAscii, reader.triangles, cut_name))
}

struct Reader<'a> {
    words: Words<'a>,
    triangles: Vec<Triangle>,
    most: u32,
}

impl<'a> Reader<'a> {
    /// Reads facets up to and with `endsolid`.
    fn facets(&mut self) -> Result<(), ReadError> {
        loop {
            let word = self.need()?;
            if word.eq_ignore_ascii_case(b"endsolid") {
                return Ok(());
            }
            if !word.eq_ignore_ascii_case(b"facet") {
                return Err(self.unexpected(word, "facet or endsolid"));
            }
            self.normal()?;
            self.expect(b"loop", "loop")?;
            if self.triangles.len() as u64 >= u64::from(self.most) {
                return Err(ReadError::TooManyTriangles { most: self.most });
            }
            let triangle = [self.vertex()?, self.vertex()?, self.vertex()?];
            self.expect(b"endloop", "endloop")?;
            self.expect(b"endfacet", "endfacet")?;
            self.triangles.push(triangle);
        }
    }

    /// Passes over the stored normal, up to and with `outer`. Whatever it says, the corners decide.
    fn normal(&mut self) -> Result<(), ReadError> {
        for _ in 0..5 {
            let word = self.need()?;
            if word.eq_ignore_ascii_case(b"outer") {
                return Ok(());
            }
        }
        let at = self.words.word_at;
        let found = self.words.bytes[at..self.words.at].to_vec();
        Err(self.unexpected(&found, "outer loop"))
    }

    fn vertex(&mut self) -> Result<[f32; 3], ReadError> {
        self.expect(b"vertex", "vertex")?;
        let mut corner = [0.0_f32; 3];
        for value in &mut corner {
            let word = self.need()?;
            let number: f32 = match std::str::from_utf8(word).ok().and_then(|text| text.parse().ok()) {
                Some(number) => number,
                None if self.words.at == self.words.bytes.len() => return Err(self.cut_short()),
                None => return Err(self.unexpected(word, "a number")),
            };
            if !number.is_finite() {
                return Err(ReadError::NotFinite { triangle: self.triangles.len() as u32 + 1 });
            }
            *value = number + 0.0;
        }
        Ok(corner)
    }

    fn need(&mut self) -> Result<&'a [u8], ReadError> {
        self.words.next().ok_or_else(|| self.cut_short())
    }

    fn expect(&mut self, wanted: &[u8], name: &'static str) -> Result<(), ReadError> {
        let word = self.need()?;
        if word.eq_ignore_ascii_case(wanted) { Ok(()) } else { Err(self.unexpected(word, name)) }
    }

    fn cut_short(&self) -> ReadError {
        ReadError::TextCutShort { line: self.words.line_of(self.words.bytes.len()), whole: self.triangles.len() as u32 }
    }

    fn unexpected(&self, word: &[u8], wanted: &'static str) -> ReadError {
        // A last word that is only the beginning of a keyword means a file that was cut off.
        if self.words.at == self.words.bytes.len() {
            return self.cut_short();
        }
        let line = self.words.line_of(self.words.word_at);
        ReadError::UnexpectedWord { line, found: shortened(word), wanted }
    }
}
