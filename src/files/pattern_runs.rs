//! Measures the pattern files of a job, so that the recompute can take the results as inputs.

use std::collections::BTreeMap;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::disk::Disk;
use super::outside::{Allowed, folder_to_ask};
use super::pair_runs::compare_pairs;
use crate::calc::{FileProblem, PatternMeasure, PatternRun, PatternShape, Runs};
use crate::job::{FileUnit, Job};
use crate::mesh::{self, Limits, Measure, Problem, Soup};

/// Files of more triangles are measured without their walls, which take a second for two hundred thousand.
const QUICK_TRIANGLES: usize = 400_000;

/// Reads and measures every pattern file of a job; a file that several patterns share is read once. What lies outside the job's folder is read
/// where it is allowed. Pairs are compared.
#[must_use]
pub fn measure_patterns(disk: &dyn Disk, folder: &Path, job: &Job, allowed: &Allowed, limits: &Limits) -> Runs {
    let mut seen: BTreeMap<PathBuf, PatternRun> = BTreeMap::new();
    let mut runs = Runs::default();
    for pattern in &job.patterns {
        let Some(file) = pattern.file.as_ref().filter(|file| !file.path.is_empty()) else { continue };
        let path = folder.join(&file.path);
        let run = seen.entry(path).or_insert_with_key(|path| match folder_to_ask(disk, folder, path, allowed) {
            Some(_) => PatternRun::Apart,
            None => measure_file(disk, path, limits),
        });
        runs.patterns.insert(pattern.id, run.clone());
    }
    compare_pairs(disk, folder, job, &mut runs, limits);
    runs
}

/// Notes in a job which content of each pattern file was measured and what it measured, where that is not noted yet. A file that changed since
/// stays noted as it was.
pub fn note_measures(job: &mut Job, runs: &Runs) {
    for pattern in &mut job.patterns {
        let Some(PatternRun::Measured(measure)) = runs.patterns.get(&pattern.id) else { continue };
        let Some(file) = &mut pattern.file else { continue };
        let same = file.hash.as_ref().is_none_or(|hash| *hash == measure.hash);
        if same && (file.hash.is_none() || file.kept.is_none()) {
            (file.hash, file.kept) = (Some(measure.hash.clone()), Some(measure.kept()));
        }
    }
}

/// Reads and measures one file.
#[must_use]
pub fn measure_file(disk: &dyn Disk, path: &Path, limits: &Limits) -> PatternRun {
    look_at_file(disk, path, limits, |_| ()).0
}

/// Reads and measures one file, and makes something else of its triangles in the same reading, such as its picture.
#[must_use]
pub fn look_at_file<T>(disk: &dyn Disk, path: &Path, limits: &Limits, make: impl FnOnce(&Soup) -> T) -> (PatternRun, Option<T>) {
    let bytes = match disk.read(path, limits.max_bytes) {
        Ok(bytes) => bytes,
        Err(error) if error.kind == ErrorKind::NotFound => return (PatternRun::Missing, None),
        Err(error) => return (PatternRun::Unreadable(error.to_string()), None),
    };
    match mesh::read(&bytes, limits) {
        Ok(soup) => {
            let hash = blake3::hash(&bytes).to_hex().to_string();
            (PatternRun::Measured(pattern_measure(&soup, hash)), Some(make(&soup)))
        }
        Err(error) => (PatternRun::Unreadable(error.to_string()), None),
    }
}

/// What the calculation needs of a measured mesh.
fn pattern_measure(soup: &Soup, hash: String) -> PatternMeasure {
    let measure = mesh::measure(soup);
    let large = (soup.triangles().len() > QUICK_TRIANGLES).then_some(FileProblem::WallsNotMeasured);
    PatternMeasure {
        hash,
        volume: measure.volume_mm3,
        // Where shells overlap too intricately the sum is an upper bound, and flagged as one.
        fills: measure.fills_mm3.or(measure.fills_at_most_mm3),
        area: measure.area_mm2,
        size: measure.size_mm,
        triangles: measure.triangles,
        shells: u32::try_from(measure.shells.len()).unwrap_or(u32::MAX),
        walls: walls(soup, &measure),
        problems: measure.problems.iter().map(file_problem).chain(large).collect(),
        shape: shape(soup),
    }
}

/// The rough shape of a file that is not too large for a quick look.
fn shape(soup: &Soup) -> Option<Arc<PatternShape>> {
    let few = soup.triangles().len() <= QUICK_TRIANGLES;
    let rough = mesh::rough(few.then(|| soup.triangles())?)?;
    Some(Arc::new(PatternShape { around: rough.around, triangles: rough.triangles }))
}

/// The thinnest, the typical and the heaviest wall of a sound file that is not too large for a quick look.
fn walls(soup: &Soup, measure: &Measure) -> Option<[f64; 3]> {
    if measure.fills_mm3.is_none() || soup.triangles().len() > QUICK_TRIANGLES {
        return None;
    }
    let walls = mesh::thickness(soup, &mesh::Unwatched)?;
    let [thinnest, typical, heaviest] = [walls.thinnest, walls.typical, walls.heaviest].map(|wall| wall.map(|wall| wall.thickness_mm));
    Some([thinnest?, typical?, heaviest?])
}

fn unit_of(unit: mesh::FileUnit) -> FileUnit {
    match unit {
        mesh::FileUnit::Metre => FileUnit::Metre,
        mesh::FileUnit::Inch => FileUnit::Inch,
        mesh::FileUnit::Centimetre => FileUnit::Centimetre,
        mesh::FileUnit::Mil => FileUnit::Mil,
        mesh::FileUnit::Micrometre => FileUnit::Micrometre,
    }
}

fn file_problem(problem: &Problem) -> FileProblem {
    match problem {
        Problem::Open { edges } => FileProblem::Open(u64::from(*edges)),
        Problem::MixedWinding { .. } => FileProblem::MixedWinding,
        Problem::SealedVoid { void_mm3, .. } => FileProblem::SealedVoid(*void_mm3),
        Problem::OverlappingShells { union, at_most_mm3, .. } => {
            FileProblem::Overlapping { union: union.map(|union| union.volume_mm3), plain_sum: *at_most_mm3 }
        }
        Problem::OverlapNotSettled { at_most_mm3 } => FileProblem::Overlapping { union: None, plain_sum: *at_most_mm3 },
        Problem::NestedSameWinding { counted_twice_mm3, .. } => FileProblem::Nested(*counted_twice_mm3),
        Problem::AbsurdSize { probable_unit: Some(unit), .. } => FileProblem::ProbableUnit(unit_of(*unit)),
        other => FileProblem::Remark(other.to_string()),
    }
}
