//! Bytes to characters.

use std::borrow::Cow;

/// The text of a file in UTF-8, UTF-16 or Latin-1, with or without byte order mark. `None` where it is no text.
pub(super) fn decode(bytes: &[u8]) -> Option<Cow<'_, str>> {
    let text = match bytes {
        [0xef, 0xbb, 0xbf, rest @ ..] => eight_bit(rest),
        [0xff, 0xfe, rest @ ..] => utf16(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => utf16(rest, u16::from_be_bytes),
        _ => match zeros_by_place(bytes) {
            (true, false) => utf16(bytes, u16::from_be_bytes),
            (false, true) => utf16(bytes, u16::from_le_bytes),
            _ => eight_bit(bytes),
        },
    };
    // Loggers that make room for the file beforehand leave zeros behind the text; old systems end it with Ctrl-Z.
    let kept = text.trim_end_matches(['\0', '\u{1a}']).len();
    let text = match text {
        Cow::Borrowed(text) => Cow::Borrowed(&text[..kept]),
        Cow::Owned(mut text) => {
            text.truncate(kept);
            Cow::Owned(text)
        }
    };
    (!text.contains('\0')).then_some(text)
}

/// Whether many of the first bytes at even and at odd places are zero: the upper halves of UTF-16 without a mark.
fn zeros_by_place(bytes: &[u8]) -> (bool, bool) {
    let pairs = bytes.len().min(400) / 2;
    let zeros = |place: usize| bytes.chunks_exact(2).take(pairs).filter(|pair| pair[place] == 0).count();
    (2 * zeros(0) > pairs, 2 * zeros(1) > pairs)
}

fn eight_bit(bytes: &[u8]) -> Cow<'_, str> {
    match std::str::from_utf8(bytes) {
        Ok(text) => Cow::Borrowed(text),
        // The first 256 characters of Unicode are those of Latin-1.
        Err(_) => Cow::Owned(bytes.iter().map(|&byte| char::from(byte)).collect()),
    }
}

fn utf16(bytes: &[u8], join: fn([u8; 2]) -> u16) -> Cow<'_, str> {
    let units = bytes.chunks_exact(2).map(|pair| join([pair[0], pair[1]]));
    Cow::Owned(char::decode_utf16(units).map(|c| c.unwrap_or(char::REPLACEMENT_CHARACTER)).collect())
}
