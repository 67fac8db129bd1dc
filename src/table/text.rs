//! Bytes to characters.

use encoding_rs::WINDOWS_1252;
use std::borrow::Cow;

/// How the characters of a file are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Encoding {
    /// UTF-8, with or without byte order mark.
    Utf8,
    /// UTF-16, the lower byte first.
    Utf16Le,
    /// UTF-16, the upper byte first.
    Utf16Be,
    /// Windows-1252, which holds Latin-1: what is no UTF-8 is taken for it.
    Windows1252,
}

/// The text of a file.
#[derive(Debug, Clone)]
pub struct Decoded<'a> {
    /// The characters, without byte order mark.
    pub text: Cow<'a, str>,
    /// How they were written.
    pub encoding: Encoding,
    /// Where in the text the first bytes stood that are no character; they were replaced by U+FFFD.
    pub broken: Option<usize>,
}

/// The text of a file in UTF-8, UTF-16 or Windows-1252, with or without byte order mark.
///
/// # Errors
/// Where a zero stands in it, so that it is no text: what stands before the zero, which tells its line.
pub fn decode(bytes: &[u8]) -> Result<Decoded<'_>, String> {
    let mut decoded = match bytes {
        [0xef, 0xbb, 0xbf, rest @ ..] => marked_utf8(rest),
        [0xff, 0xfe, rest @ ..] => utf16(rest, Encoding::Utf16Le),
        [0xfe, 0xff, rest @ ..] => utf16(rest, Encoding::Utf16Be),
        _ => match zeros_by_place(bytes) {
            (true, false) => utf16(bytes, Encoding::Utf16Be),
            (false, true) => utf16(bytes, Encoding::Utf16Le),
            _ => eight_bit(bytes),
        },
    };
    // Loggers that make room for the file beforehand leave zeros behind the text; old systems end it with Ctrl-Z.
    let kept = decoded.text.trim_end_matches(['\0', '\u{1a}']).len();
    match &mut decoded.text {
        Cow::Borrowed(text) => *text = text.get(..kept).unwrap_or_default(),
        Cow::Owned(text) => text.truncate(kept),
    }
    decoded.broken = decoded.broken.filter(|&place| place < kept);
    match decoded.text.find('\0') {
        Some(at) => Err(decoded.text.get(..at).unwrap_or_default().to_owned()),
        None => Ok(decoded),
    }
}

/// Whether many of the first bytes at even and at odd places are zero: the upper halves of UTF-16 without a mark.
fn zeros_by_place(bytes: &[u8]) -> (bool, bool) {
    let pairs = bytes.len().min(400) / 2;
    let zeros = |place: usize| bytes.chunks_exact(2).take(pairs).filter(|pair| pair.get(place) == Some(&0)).count();
    (2 * zeros(0) > pairs, 2 * zeros(1) > pairs)
}

fn marked_utf8(bytes: &[u8]) -> Decoded<'_> {
    let broken = std::str::from_utf8(bytes).err().map(|error| error.valid_up_to());
    Decoded { text: String::from_utf8_lossy(bytes), encoding: Encoding::Utf8, broken }
}

fn eight_bit(bytes: &[u8]) -> Decoded<'_> {
    match std::str::from_utf8(bytes) {
        Ok(text) => Decoded { text: Cow::Borrowed(text), encoding: Encoding::Utf8, broken: None },
        Err(_) => Decoded { text: WINDOWS_1252.decode_without_bom_handling(bytes).0, encoding: Encoding::Windows1252, broken: None },
    }
}

fn utf16(bytes: &[u8], encoding: Encoding) -> Decoded<'_> {
    let join = if encoding == Encoding::Utf16Be { u16::from_be_bytes } else { u16::from_le_bytes };
    let pairs = bytes.chunks_exact(2);
    let odd_one = pairs.remainder().iter().any(|&b| b != 0);
    let units = pairs.filter_map(|pair| <[u8; 2]>::try_from(pair).ok()).map(join);
    let (mut text, mut broken) = (String::with_capacity(bytes.len() / 2), None);
    for unit in char::decode_utf16(units).chain(odd_one.then_some(Ok(char::REPLACEMENT_CHARACTER))) {
        if unit.is_err() {
            broken = broken.or(Some(text.len()));
        }
        text.push(unit.unwrap_or(char::REPLACEMENT_CHARACTER));
    }
    if odd_one {
        broken = broken.or(Some(text.len() - char::REPLACEMENT_CHARACTER.len_utf8()));
    }
    Decoded { text: Cow::Owned(text), encoding, broken }
}
