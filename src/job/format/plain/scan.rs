//! Looking over many bytes at once, for the two things a job file is mostly made of: texts in quotes, and the spaces that set lines in.

/// Index of the first `"` or `\` at or behind `from`.
pub(super) fn quote_or_backslash(bytes: &[u8], from: usize) -> Option<usize> {
    let rest = bytes.get(from..)?;
    let (eights, tail) = rest.as_chunks::<8>();
    for (number, eight) in eights.iter().enumerate() {
        let word = u64::from_le_bytes(*eight);
        let found = zero_bytes(word ^ spread(b'"')) | zero_bytes(word ^ spread(b'\\'));
        if found != 0 {
            return Some(from + number * 8 + (found.trailing_zeros() / 8) as usize);
        }
    }
    let at = tail.iter().position(|byte| matches!(byte, b'"' | b'\\'))?;
    Some(from + eights.len() * 8 + at)
}

/// Index of the first byte at or behind `from` that is no space, tab or line end; the length where there is none.
pub(super) fn behind_white(bytes: &[u8], mut from: usize) -> usize {
    while let Some(byte) = bytes.get(from) {
        match byte {
            b' ' => {
                from += 1;
                while bytes.get(from..from + 4) == Some(b"    ") {
                    from += 4;
                }
            }
            b'\n' | b'\t' | b'\r' => from += 1,
            _ => break,
        }
    }
    from
}

const fn spread(byte: u8) -> u64 {
    u64::from_le_bytes([byte; 8])
}

/// The high bit of every byte that is zero. Bits above the lowest of them may be set wrongly; only the lowest is looked at.
const fn zero_bytes(word: u64) -> u64 {
    word.wrapping_sub(spread(0x01)) & !word & spread(0x80)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_quote_or_backslash_is_found_wherever_it_stands() {
        // Against looking at every byte, over all positions and the bytes that differ from them by one bit or by one.
        for stop in [b'"', b'\\'] {
            for length in 0..40 {
                for at in 0..=length {
                    for filler in [b'a', b'!', b'#', b'[', b']', 0x5d, 0xa2, 0xdc, 0x00, 0xff, 0x80] {
                        let mut bytes = vec![filler; length];
                        if let Some(byte) = bytes.get_mut(at) {
                            *byte = stop;
                        }
                        for from in [0, 1, 7, 9] {
                            let plainly = (from..length).find(|at| matches!(bytes[*at], b'"' | b'\\'));
                            assert_eq!(quote_or_backslash(&bytes, from), plainly, "{bytes:?} from {from}");
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn white_space_ends_at_the_first_other_byte() {
        for text in ["", "a", " a", "\n        \t  \r\n     a", "          ", "\n\n", "    \u{a0}", "     \u{b}x"] {
            let plainly = text.bytes().position(|byte| !matches!(byte, b' ' | b'\n' | b'\t' | b'\r')).unwrap_or(text.len());
            assert_eq!(behind_white(text.as_bytes(), 0), plainly, "{text:?}");
        }
    }
}
