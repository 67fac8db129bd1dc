//! The numbers of tables, one after the other, from words or from bytes.

use super::header::Scalar;
use crate::mesh::ReadError;
use crate::mesh::read_error::shortened;
use crate::mesh::words::Words;

/// Why a table could not be read to its end.
pub(super) enum Stop {
    /// The bytes end.
    Ends,
    /// A list has a length below nothing.
    NegativeLength,
    /// Anything that names its own place.
    Told(ReadError),
}

impl From<ReadError> for Stop {
    fn from(error: ReadError) -> Self {
        Self::Told(error)
    }
}

/// Numbers in the order of the file.
pub(super) trait Values {
    const IS_TEXT: bool;

    /// A coordinate. What is too large for it becomes infinite.
    fn number(&mut self, scalar: Scalar) -> Result<f32, Stop>;

    /// A number of a corner or a length.
    fn whole(&mut self, scalar: Scalar) -> Result<i64, Stop>;

    /// Passes over so many numbers.
    fn skip(&mut self, count: u64, scalar: Scalar) -> Result<(), Stop>;

    /// Passes over so many bytes, or words of a text.
    fn jump(&mut self, count: u64) -> Result<(), Stop>;

    /// Bytes that have not been read.
    fn left(&self) -> u64;

    /// Bytes that are left and mean something, once every table is read.
    fn after_end(&mut self) -> u64;
}

/// Words, whatever lines they stand on.
#[derive(Clone)]
pub(super) struct Text<'a>(Words<'a>);

impl<'a> Text<'a> {
    /// The words of a file from a byte on.
    pub fn new(bytes: &'a [u8], from: usize) -> Self {
        Self(Words { bytes, at: from, word_at: from })
    }

    fn parsed<T: std::str::FromStr>(&mut self, wanted: &'static str) -> Result<T, Stop> {
        let word = self.0.next().ok_or(Stop::Ends)?;
        let number = std::str::from_utf8(word).ok().and_then(|text| text.parse().ok());
        number.ok_or_else(|| {
            let line = self.0.line_of(self.0.word_at);
            Stop::Told(ReadError::UnexpectedWord { line, found: shortened(word), wanted })
        })
    }
}

impl Values for Text<'_> {
    const IS_TEXT: bool = true;

    fn number(&mut self, _scalar: Scalar) -> Result<f32, Stop> {
        self.parsed("a number")
    }

    fn whole(&mut self, _scalar: Scalar) -> Result<i64, Stop> {
        self.parsed("a whole number")
    }

    fn skip(&mut self, count: u64, _scalar: Scalar) -> Result<(), Stop> {
        self.jump(count)
    }

    fn jump(&mut self, count: u64) -> Result<(), Stop> {
        (0..count).try_for_each(|_| self.0.next().map(|_| ()).ok_or(Stop::Ends))
    }

    fn left(&self) -> u64 {
        (self.0.bytes.len() - self.0.at) as u64
    }

    fn after_end(&mut self) -> u64 {
        self.0.next().map_or(0, |_| (self.0.bytes.len() - self.0.word_at) as u64)
    }
}

/// Bytes without anything between them.
#[derive(Clone)]
pub(super) struct Binary<'a> {
    bytes: &'a [u8],
    big_end_first: bool,
}

impl<'a> Binary<'a> {
    pub fn new(bytes: &'a [u8], big_end_first: bool) -> Self {
        Self { bytes, big_end_first }
    }

    /// The next bytes, the least first.
    fn take<const N: usize>(&mut self) -> Result<[u8; N], Stop> {
        let (taken, rest) = self.bytes.split_first_chunk::<N>().ok_or(Stop::Ends)?;
        self.bytes = rest;
        let mut taken = *taken;
        if self.big_end_first {
            taken.reverse();
        }
        Ok(taken)
    }
}

impl Values for Binary<'_> {
    const IS_TEXT: bool = false;

    fn number(&mut self, scalar: Scalar) -> Result<f32, Stop> {
        Ok(match scalar {
            Scalar::F32 => f32::from_le_bytes(self.take()?),
            Scalar::F64 => f64::from_le_bytes(self.take()?) as f32,
            _ => self.whole(scalar)? as f32,
        })
    }

    fn whole(&mut self, scalar: Scalar) -> Result<i64, Stop> {
        Ok(match scalar {
            Scalar::I8 => i8::from_le_bytes(self.take()?).into(),
            Scalar::U8 => u8::from_le_bytes(self.take()?).into(),
            Scalar::I16 => i16::from_le_bytes(self.take()?).into(),
            Scalar::U16 => u16::from_le_bytes(self.take()?).into(),
            Scalar::I32 => i32::from_le_bytes(self.take()?).into(),
            Scalar::U32 => u32::from_le_bytes(self.take()?).into(),
            // A header with such a length or number of a corner is not taken.
            Scalar::F32 => f32::from_le_bytes(self.take()?) as i64,
            Scalar::F64 => f64::from_le_bytes(self.take()?) as i64,
        })
    }

    fn skip(&mut self, count: u64, scalar: Scalar) -> Result<(), Stop> {
        self.jump(count.saturating_mul(scalar.bytes()))
    }

    fn jump(&mut self, count: u64) -> Result<(), Stop> {
        let count = usize::try_from(count).map_err(|_| Stop::Ends)?;
        self.bytes = self.bytes.get(count..).ok_or(Stop::Ends)?;
        Ok(())
    }

    fn left(&self) -> u64 {
        self.bytes.len() as u64
    }

    fn after_end(&mut self) -> u64 {
        // A last line end does not hurt.
        if self.bytes.trim_ascii().is_empty() { 0 } else { self.left() }
    }
}
