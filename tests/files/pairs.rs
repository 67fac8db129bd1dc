//! Pairs whose files are left and right, the same, or neither, by files written here.

use std::fs;
use std::path::Path;

use pourbook::calc::Runs;
use pourbook::files::disk::RealDisk;
use pourbook::files::outside::Allowed;
use pourbook::files::pattern_runs::measure_patterns;
use pourbook::job::{FileUnit, Job, Pair, PairKind, Pattern, PatternFile, PatternId};
use pourbook::mesh::{Limits, Triangle, as_stl};
use pourbook::quantity::Finite;

/// A tetrahedron whose edges all differ, so that it is not its own mirror image; each corner goes through `to`.
fn corner(to: impl Fn([f32; 3]) -> [f32; 3]) -> Vec<Triangle> {
    let [a, b, c, d] = [[0.0, 0.0, 0.0], [10.0, 0.0, 0.0], [0.0, 6.0, 0.0], [0.0, 0.0, 3.0]].map(to);
    let triangles = [[a, c, b], [a, b, d], [a, d, c], [b, c, d]];
    let first = pourbook::mesh::read(&as_stl(&triangles), &Limits::default()).unwrap();
    let outward = pourbook::mesh::measure(&first).problems.iter().all(|problem| problem.key() != "inside-out");
    if outward { triangles.into() } else { triangles.map(|[a, b, c]| [a, c, b]).into() }
}

/// Two patterns, the first of which names the second as its pair.
fn runs(folder: &Path, file: impl Fn(u32) -> PatternFile) -> Runs {
    let pair = Pair { with: PatternId(2), like: PairKind::MirrorImages };
    let patterns = [1, 2].map(|id| Pattern { id: PatternId(id), file: Some(file(id)), ..Pattern::default() });
    let mut job = Job { patterns: patterns.into(), ..Job::default() };
    job.patterns[0].pair = Some(pair);
    measure_patterns(&RealDisk, folder, &job, &Allowed::None, &Limits::default())
}

fn compared(second: &[Triangle], unit: FileUnit, scale: Option<f64>) -> [f64; 2] {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("1.stl"), as_stl(&corner(|at| at))).unwrap();
    fs::write(folder.path().join("2.stl"), as_stl(second)).unwrap();
    let runs = runs(folder.path(), |id| {
        let mut file = PatternFile { path: format!("{id}.stl"), ..PatternFile::default() };
        if id == 2 {
            (file.unit, file.scale) = (unit, scale.and_then(Finite::new));
        }
        file
    });
    let found = runs.pairs[&PatternId(1)];
    assert_eq!(runs.pairs.len(), 1, "compared once, at the pattern that names the other");
    [found.as_it_is_mm, found.mirrored_mm]
}

#[test]
fn left_and_right_are_told_from_two_of_a_side() {
    // Turned and moved, so that nothing lies where it was.
    let aside = |[x, y, z]: [f32; 3]| [20.0 - y, x + 5.0, z - 7.0];
    let [same, mirrored] = compared(&corner(aside), FileUnit::Millimetre, None);
    assert!(same < 0.001 && mirrored > 0.2, "{same} {mirrored}");
    let [same, mirrored] = compared(&corner(|[x, y, z]| aside([-x, y, z])), FileUnit::Millimetre, None);
    assert!(mirrored < 0.001 && same > 0.2, "{same} {mirrored}");
}

#[test]
fn files_are_compared_at_the_size_they_are_printed() {
    let inches = corner(|at| at.map(|x| x / 25.4));
    assert!(compared(&inches, FileUnit::Inch, None)[0] < 0.001);
    assert!(compared(&inches, FileUnit::Millimetre, Some(25.4))[0] < 0.001);
    // The far corner lies some ten millimetres from where the smaller one has it.
    assert!(compared(&inches, FileUnit::Millimetre, None)[0] > 1.0);
    assert!(compared(&corner(|at| at), FileUnit::Millimetre, Some(1.02))[0] > 0.05);
}

#[test]
fn without_two_files_nothing_is_compared() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("1.stl"), as_stl(&corner(|at| at))).unwrap();
    let runs = runs(folder.path(), |id| PatternFile { path: format!("{id}.stl"), ..PatternFile::default() });
    assert!(runs.pairs.is_empty());
}
