//! A document that proves itself whole: a number, filling, and the hash of both.

use std::path::Path;

use pourbook::files::{
    disk::Disk,
    save::{Hash, Original, SaveError, Saved, hash_of, save},
};

/// A document with a number in it, about `len_bytes` long.
pub fn document(number: u64, len_bytes: usize) -> Vec<u8> {
    let mut text = format!("number {number}\n");
    while text.len() + 65 < len_bytes {
        text.push(char::from(b'a' + u8::try_from(text.len() * 7 % 23).expect("below 23")));
    }
    let hash = hash_of(text.as_bytes()).to_hex();
    format!("{text}\n{hash}").into_bytes()
}

/// The number of a whole document; an error for anything torn, filled or mixed.
pub fn number(bytes: &[u8]) -> Result<u64, String> {
    let text = std::str::from_utf8(bytes).map_err(|error| error.to_string())?;
    let (body, hash) = text.rsplit_once('\n').ok_or("no hash")?;
    if hash_of(body.as_bytes()).to_hex().as_str() != hash {
        return Err("the hash is another".to_owned());
    }
    body.lines().next().and_then(|line| line.strip_prefix("number ")).and_then(|number| number.parse().ok()).ok_or("no number".to_owned())
}

/// The check that every save here is given.
pub fn check(bytes: &[u8]) -> Result<(), String> {
    number(bytes).map(|_| ())
}

/// A plain save of a file of our own.
pub fn plain(disk: &dyn Disk, path: &Path, bytes: &[u8], base: Option<&Hash>) -> Result<Saved, SaveError> {
    save(disk, path, bytes, base, Original::Replace, check)
}

#[test]
fn a_document_knows_when_it_is_torn() {
    let whole = document(7, 300);
    assert_eq!(number(&whole), Ok(7));
    assert!((0..whole.len()).all(|end| number(&whole[..end]).is_err()), "every shorter one is torn");
    let mut filled = whole.clone();
    filled[100..].fill(0);
    assert!(number(&filled).is_err());
}
