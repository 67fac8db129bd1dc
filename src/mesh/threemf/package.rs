//! The zip package: which part is the model, and the bytes of a part.

use super::meter::Meter;
use crate::mesh::read_error::shortened;
use crate::mesh::{Limits, ReadError};
use quick_xml::events::Event;
use std::io::{BufReader, Cursor, Read};
use zip::result::ZipError;
use zip::{CompressionMethod, ZipArchive};

/// The most entries a package may list.
const MOST_ENTRIES: u64 = 65_536;
/// Where a package says what it holds.
const RELATIONSHIPS: &str = "_rels/.rels";
/// Where the model lies in a package that does not say.
const USUAL_MODEL: &str = "3D/3dmodel.model";
/// The kind of relationship that leads to the model (core specification, 2.1.1).
const MODEL_KIND: &[u8] = b"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

pub(super) struct Package<'a>(ZipArchive<Cursor<&'a [u8]>>);

/// A refusal of the package as a whole.
pub(super) fn refused(reason: impl Into<String>) -> ReadError {
    ReadError::Package { reason: reason.into() }
}

pub(super) fn missing(name: &str) -> ReadError {
    refused(format!("it has no part \"{}\"", shortened(name.as_bytes())))
}

impl<'a> Package<'a> {
    pub fn open(bytes: &'a [u8]) -> Result<Self, ReadError> {
        // The list of entries is made room for on the word of this record alone, so it is looked at first.
        if announces_too_many(bytes) {
            return Err(refused("it lists too many parts"));
        }
        ZipArchive::new(Cursor::new(bytes)).map(Self).map_err(|error| told(&error))
    }

    /// The name of the part that holds the model.
    pub fn model_part(&mut self, left: &mut u64, limits: &Limits) -> Result<String, ReadError> {
        let Some(at) = self.find(RELATIONSHIPS) else {
            return Ok(USUAL_MODEL.to_owned());
        };
        let mut meter = Meter::new(self.bytes_of(at)?, *left, limits);
        let mut target = None;
        loop {
            match meter.next()? {
                Event::Eof => break,
                Event::Start(tag) | Event::Empty(tag) if tag.local_name().as_ref() == b"Relationship" && target.is_none() => {
                    target = model_target(&tag)?;
                }
                _ => {}
            }
        }
        *left = meter.left();
        match target {
            Some(target) => part_name(&target),
            None => Ok(USUAL_MODEL.to_owned()),
        }
    }

    /// The bytes of a part, as they come out of the package.
    pub fn part(&mut self, name: &str) -> Result<BufReader<impl Read + '_>, ReadError> {
        let at = self.find(name).ok_or_else(|| missing(name))?;
        self.bytes_of(at)
    }

    fn bytes_of(&mut self, at: usize) -> Result<BufReader<impl Read + '_>, ReadError> {
        let entry = self.0.by_index(at).map_err(|error| told(&error))?;
        // Another way would be noticed only while reading, as if the part were damaged.
        if !matches!(entry.compression(), CompressionMethod::Stored | CompressionMethod::Deflated) {
            return Err(refused("a part is packed in an unusual way"));
        }
        Ok(BufReader::with_capacity(1 << 16, entry))
    }

    /// Names of parts mean the same in capitals and small letters (open packaging conventions, 7.2.3.5).
    fn find(&self, name: &str) -> Option<usize> {
        self.0.index_for_name(name).or_else(|| self.0.file_names_raw().position(|other| other.eq_ignore_ascii_case(name.as_bytes())))
    }
}

/// The target of a relationship to the model.
fn model_target(tag: &quick_xml::events::BytesStart) -> Result<Option<String>, ReadError> {
    let (mut is_model, mut is_outside, mut target) = (false, false, None);
    for attribute in tag.attributes().take(32) {
        let attribute = attribute.map_err(|_| refused("its relationships cannot be read"))?;
        match attribute.key.as_ref() {
            b"Type" => is_model = *attribute.value == *MODEL_KIND,
            b"TargetMode" => is_outside = *attribute.value == *b"External",
            b"Target" => target = Some(String::from_utf8_lossy(&attribute.value).into_owned()),
            _ => {}
        }
    }
    match target.filter(|_| is_model) {
        Some(_) if is_outside => Err(refused("the model lies outside the package")),
        target => Ok(target),
    }
}

/// A path from the top of the package as the name of a part. Nothing is looked for outside the package.
pub(super) fn part_name(path: &str) -> Result<String, ReadError> {
    let name = path.strip_prefix('/').unwrap_or(path);
    if name.contains(['\\', ':', '%', '\0']) || name.split('/').any(|step| matches!(step, "" | "." | "..")) {
        return Err(refused(format!("\"{}\" is no path within the package", shortened(path.as_bytes()))));
    }
    Ok(name.to_owned())
}

/// True when a record for large packages (`PK 06 06`) says that there are more entries than are ever read.
fn announces_too_many(bytes: &[u8]) -> bool {
    let record = b"PK\x06\x06";
    let mut from = 0;
    while let Some(found) = bytes[from..].windows(4).position(|window| window == record) {
        let start = from + found;
        // How many on this disk and how many in all, eight bytes each.
        let counts = bytes.get(start + 24..start + 40).unwrap_or_default();
        if counts.as_chunks::<8>().0.iter().any(|count| u64::from_le_bytes(*count) > MOST_ENTRIES) {
            return true;
        }
        from = start + 4;
    }
    false
}

fn told(error: &ZipError) -> ReadError {
    refused(match error {
        ZipError::InvalidPassword => "it is locked with a password",
        ZipError::UnsupportedArchive(reason) if *reason == ZipError::PASSWORD_REQUIRED => "it is locked with a password",
        ZipError::UnsupportedArchive(_) | ZipError::CompressionMethodNotSupported(_) => "it is packed in an unusual way",
        _ => "it is cut short or damaged",
    })
}
