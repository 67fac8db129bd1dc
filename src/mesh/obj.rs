//! OBJ: a text of lines, of which `v` gives a corner and `f` a face by the numbers of its corners, from 1 or backward from −1.
//!
//! All objects and groups of a file are taken together; normals, textures, colours, lines and points are passed over. A line goes on where it
//! ends with `\`; `#` begins a comment. The corners are read first and the faces after them, so that they may stand in any order.

use super::gather::Gather;
use super::read_error::shortened;
use super::soup::Soup;
use super::{Format, Limits, Place, ReadError};

/// What a statement can begin with.
const KNOWN: &[&[u8]] = &[
    b"v",
    b"vt",
    b"vn",
    b"vp",
    b"f",
    b"fo",
    b"l",
    b"p",
    b"o",
    b"g",
    b"s",
    b"mg",
    b"mtllib",
    b"usemtl",
    b"usemap",
    b"maplib",
    b"lod",
    b"bevel",
    b"c_interp",
    b"d_interp",
    b"shadow_obj",
    b"trace_obj",
    b"deg",
    b"cstype",
];

/// Statements that give a curved surface, which has no triangles.
const CURVED: &[&[u8]] = &[b"surf", b"bzp", b"bsp", b"cdc", b"cdp"];

/// True when every statement up to the first corner is one of this format, and there is a corner.
pub(super) fn looks_like(bytes: &[u8]) -> bool {
    let mut lines = Lines::new(bytes);
    while let Some(keyword) = lines.statement() {
        if keyword == b"v" {
            return lines.number().is_ok();
        }
        if !KNOWN.contains(&keyword) {
            return false;
        }
    }
    false
}

/// Reads the faces of every object and group.
pub(super) fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let corners = corners(bytes, limits)?;
    let mut gather = Gather::new(limits);
    let mut lines = Lines::new(bytes);
    let (mut before, mut face) = (0_u64, Vec::new());
    while let Some(keyword) = lines.statement() {
        match keyword {
            b"v" => before += 1,
            b"f" | b"fo" => {
                let place = Place::Line(lines.line);
                face.clear();
                while let Some(word) = lines.word() {
                    if face.len() >= gather.most_corners() {
                        return Err(gather.too_many());
                    }
                    let said = lines.index(word)?;
                    let there = if said < 0 { before } else { corners.len() as u64 };
                    let missing = ReadError::NoSuchCorner { place, said, there };
                    // Backward from the last corner before the face.
                    let at = if said < 0 { before.checked_sub(said.unsigned_abs()) } else { said.unsigned_abs().checked_sub(1) };
                    face.push(*at.and_then(|at| corners.get(usize::try_from(at).ok()?)).ok_or(missing)?);
                }
                gather.face(&face, place)?;
            }
            _ => {}
        }
    }
    gather.finish(Format::Obj)
}

fn corners(bytes: &[u8], limits: &Limits) -> Result<Vec<[f32; 3]>, ReadError> {
    let mut corners: Vec<[f32; 3]> = Vec::new();
    let mut lines = Lines::new(bytes);
    while let Some(keyword) = lines.statement() {
        if keyword == b"v" {
            if corners.len() as u64 >= limits.corners() {
                return Err(ReadError::TooManyCorners { most: limits.corners() });
            }
            corners.push([lines.number()?, lines.number()?, lines.number()?]);
        } else if CURVED.contains(&keyword) {
            return Err(ReadError::Refused { line: lines.line, reason: "a curved surface cannot be read; export the model as triangles" });
        }
    }
    Ok(corners)
}

/// Walks over the statements of a text, which need not be UTF-8.
struct Lines<'a> {
    bytes: &'a [u8],
    at: usize,
    line: u64,
    /// LF, or CR in a file that has no LF.
    end: u8,
    /// The byte after which a statement may begin has been passed.
    within: bool,
}

impl<'a> Lines<'a> {
    fn new(bytes: &'a [u8]) -> Self {
        let at = if bytes.starts_with(b"\xef\xbb\xbf") { 3 } else { 0 };
        let end = if bytes.contains(&b'\n') { b'\n' } else { b'\r' };
        Self { bytes, at, line: 1, end, within: false }
    }

    /// Passes over what is left of the statement and gives the first word of the next.
    fn statement(&mut self) -> Option<&'a [u8]> {
        loop {
            if self.within {
                self.at += self.bytes[self.at..].iter().position(|&b| b == self.end)? + 1;
                self.line += 1;
            }
            self.within = true;
            if let Some(word) = self.word() {
                return Some(word);
            }
        }
    }

    /// The next word of the statement.
    fn word(&mut self) -> Option<&'a [u8]> {
        loop {
            match *self.bytes.get(self.at)? {
                b if b == self.end => return None,
                b'#' => return None,
                b'\\' if self.goes_on(self.at) => self.next_line(),
                b' ' | b'\t' | b'\r' | 0x0b | 0x0c => self.at += 1,
                _ => break,
            }
        }
        let start = self.at;
        while let Some(&b) = self.bytes.get(self.at) {
            if b == self.end || matches!(b, b' ' | b'\t' | b'\r' | 0x0b | 0x0c) || (b == b'\\' && self.goes_on(self.at)) {
                break;
            }
            self.at += 1;
        }
        Some(&self.bytes[start..self.at])
    }

    /// True when nothing but the end of the line follows a `\`.
    fn goes_on(&self, at: usize) -> bool {
        match (self.bytes.get(at + 1), self.bytes.get(at + 2)) {
            (Some(&b), _) if b == self.end => true,
            (Some(b'\r'), Some(&b)) => b == self.end,
            _ => false,
        }
    }

    fn next_line(&mut self) {
        self.at += if self.bytes[self.at + 1] == self.end { 2 } else { 3 };
        self.line += 1;
    }

    fn number(&mut self) -> Result<f32, ReadError> {
        let word = self.word().ok_or(ReadError::LineEnds { line: self.line, wanted: "a number" })?;
        std::str::from_utf8(word).ok().and_then(|text| text.parse().ok()).ok_or_else(|| self.unexpected(word, "a number"))
    }

    /// The number of a corner in `7`, `7/1`, `7//3` or `7/1/3`.
    fn index(&self, word: &[u8]) -> Result<i64, ReadError> {
        let first = word.split(|&b| b == b'/').next().unwrap_or(word);
        std::str::from_utf8(first).ok().and_then(|text| text.parse().ok()).ok_or_else(|| self.unexpected(word, "the number of a corner"))
    }

    fn unexpected(&self, word: &[u8], wanted: &'static str) -> ReadError {
        ReadError::UnexpectedWord { line: self.line, found: shortened(word), wanted }
    }
}
