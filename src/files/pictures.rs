//! Pictures for paper: the studio's own for its letterhead, and shaded ones of pattern files.

use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;
use std::sync::Arc;

use image::{ImageFormat, ImageReader, Limits};

use super::disk::Disk;
use super::outside::{Allowed, folder_to_ask};
use crate::job::{Job, Studio};
use crate::mesh;
use crate::paper::Pictures;
use crate::paper::block::Raster;

/// The largest file a letterhead's picture may be, in bytes.
const LARGEST: u64 = 16 << 20;
/// And its largest side in pixels.
const MOST_PX: u32 = 6000;
/// Side of a pattern's picture in pixels: 13 mm at some 375 dots per inch.
const SIDE_PX: u32 = 192;

/// Reads every picture the papers of a job may show. A pattern's file that cannot be read is told of among the findings, not here.
#[must_use]
pub fn pictures(disk: &dyn Disk, folder: &Path, job: &Job, studio: &Studio, allowed: &Allowed) -> Pictures {
    let mut seen: BTreeMap<std::path::PathBuf, Option<Arc<Raster>>> = BTreeMap::new();
    let mut pictures = letterhead(disk, folder, studio);
    for pattern in &job.patterns {
        let Some(file) = pattern.file.as_ref().filter(|file| !file.path.is_empty()) else { continue };
        let path = folder.join(&file.path);
        let found = seen.entry(path).or_insert_with_key(|path| match folder_to_ask(disk, folder, path, allowed) {
            Some(_) => None,
            None => pattern_picture(disk, path),
        });
        if let Some(raster) = found {
            pictures.patterns.insert(pattern.id, Arc::clone(raster));
        }
    }
    pictures
}

/// The studio's picture alone.
#[must_use]
pub fn letterhead(disk: &dyn Disk, folder: &Path, studio: &Studio) -> Pictures {
    let named = studio.letterhead.trim();
    if named.is_empty() {
        return Pictures::default();
    }
    let path = folder.join(named);
    // The disk names the path itself.
    let decoded = |bytes: Vec<u8>| decode(&bytes).map_err(|why| format!("{why} ({})", path.display()));
    match disk.read(&path, LARGEST).map_err(|error| error.to_string()).and_then(decoded) {
        Ok(raster) => Pictures { letterhead: Some(Arc::new(raster)), ..Pictures::default() },
        Err(why) => Pictures { complaints: vec![format!("the letterhead's picture was left out: {why}")], ..Pictures::default() },
    }
}

/// A PNG or JPEG as pixels.
fn decode(bytes: &[u8]) -> Result<Raster, String> {
    let mut reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format().map_err(|error| error.to_string())?;
    if !matches!(reader.format(), Some(ImageFormat::Png | ImageFormat::Jpeg)) {
        return Err("it is neither a PNG nor a JPEG".to_owned());
    }
    let mut limits = Limits::default();
    (limits.max_image_width, limits.max_image_height, limits.max_alloc) = (Some(MOST_PX), Some(MOST_PX), Some(256 << 20));
    reader.limits(limits);
    let pixels = reader.decode().map_err(|error| error.to_string())?.to_rgba8();
    Ok(Raster { width: pixels.width(), height: pixels.height(), rgba: pixels.into_raw() })
}

/// A pattern's file, seen from the front right; none where it cannot be read.
#[must_use]
pub fn pattern_picture(disk: &dyn Disk, path: &Path) -> Option<Arc<Raster>> {
    let limits = mesh::Limits::default();
    let bytes = disk.read(path, limits.max_bytes).ok()?;
    shaded(&mesh::read(&bytes, &limits).ok()?)
}

/// A mesh as a picture.
#[must_use]
pub fn shaded(soup: &mesh::Soup) -> Option<Arc<Raster>> {
    let shade = mesh::shade(soup, SIDE_PX)?;
    let pixel = |(grey, cover): (&u8, &u8)| [*grey, *grey, *grey, *cover];
    let rgba = shade.grey.iter().zip(&shade.cover).flat_map(pixel).collect();
    Some(Arc::new(Raster { width: shade.side, height: shade.side, rgba }))
}
