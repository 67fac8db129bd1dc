//! What lies outside a job's folder is not read unasked, whether it is named outright, climbed to, or linked to.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use pourbook::calc::PatternRun;
use pourbook::files::disk::{Disk, RealDisk};
use pourbook::files::outside::{Allowed, folder_to_ask};
use pourbook::files::pattern_runs::measure_patterns;
use pourbook::files::take_in::{copy_beside, looks_like_pattern, named_in};
use pourbook::job::{Job, Pattern, PatternFile, PatternId};
use pourbook::mesh::Limits;

const TETRAHEDRON: &str = "solid t
facet normal 0 0 0 outer loop vertex 0 0 0 vertex 0 10 0 vertex 10 0 0 endloop endfacet
facet normal 0 0 0 outer loop vertex 0 0 0 vertex 10 0 0 vertex 0 0 10 endloop endfacet
facet normal 0 0 0 outer loop vertex 0 0 0 vertex 0 0 10 vertex 0 10 0 endloop endfacet
facet normal 0 0 0 outer loop vertex 10 0 0 vertex 0 10 0 vertex 0 0 10 endloop endfacet
endsolid t
";

/// A studio's folder with a file, and a file in a folder beside it.
fn folders() -> (tempfile::TempDir, std::path::PathBuf, std::path::PathBuf) {
    let root = tempfile::tempdir().unwrap();
    let (studio, elsewhere) = (root.path().join("studio"), root.path().join("elsewhere"));
    fs::create_dir_all(&studio).unwrap();
    fs::create_dir_all(&elsewhere).unwrap();
    fs::write(studio.join("in.stl"), TETRAHEDRON).unwrap();
    fs::write(elsewhere.join("out.stl"), TETRAHEDRON).unwrap();
    (root, studio, elsewhere)
}

fn run(studio: &Path, path: &str, allowed: &Allowed) -> PatternRun {
    let file = PatternFile { path: path.to_owned(), ..PatternFile::default() };
    let job = Job { patterns: vec![Pattern { id: PatternId(1), file: Some(file), ..Pattern::default() }], ..Job::default() };
    measure_patterns(&RealDisk, studio, &job, allowed, &Limits::default()).patterns.remove(&PatternId(1)).unwrap()
}

#[test]
fn only_what_is_allowed_is_read_outside() {
    let (_root, studio, elsewhere) = folders();
    let out = elsewhere.join("out.stl").display().to_string();
    assert!(matches!(run(&studio, "in.stl", &Allowed::None), PatternRun::Measured(_)));
    for path in [out.as_str(), "../elsewhere/out.stl"] {
        assert_eq!(run(&studio, path, &Allowed::None), PatternRun::Apart, "{path}");
        let folder = folder_to_ask(&RealDisk, &studio, &studio.join(path), &Allowed::None).unwrap();
        assert_eq!(folder, RealDisk.resolve(&elsewhere).unwrap());
        assert!(matches!(run(&studio, path, &Allowed::Folders(BTreeSet::from([folder]))), PatternRun::Measured(_)), "{path}");
        assert!(matches!(run(&studio, path, &Allowed::Every), PatternRun::Measured(_)), "{path}");
    }
    assert_eq!(run(&studio, "../elsewhere/none.stl", &Allowed::None), PatternRun::Missing);
    // A way out and in again stays inside.
    assert!(matches!(run(&studio, "../studio/in.stl", &Allowed::None), PatternRun::Measured(_)));
}

#[cfg(unix)]
#[test]
fn a_link_that_leads_out_is_outside() {
    let (_root, studio, elsewhere) = folders();
    std::os::unix::fs::symlink(elsewhere.join("out.stl"), studio.join("link.stl")).unwrap();
    std::os::unix::fs::symlink(&elsewhere, studio.join("folder")).unwrap();
    std::os::unix::fs::symlink(studio.join("in.stl"), studio.join("own.stl")).unwrap();
    assert_eq!(run(&studio, "link.stl", &Allowed::None), PatternRun::Apart);
    assert_eq!(run(&studio, "folder/out.stl", &Allowed::None), PatternRun::Apart);
    assert!(matches!(run(&studio, "own.stl", &Allowed::None), PatternRun::Measured(_)));
}

#[test]
fn a_copy_lies_beside_the_job_and_never_over_anything() {
    let (_root, studio, elsewhere) = folders();
    let out = elsewhere.join("out.stl");
    let copy = copy_beside(&RealDisk, &out, &studio, 1 << 20).unwrap();
    assert_eq!((named_in(&studio, &copy).as_str(), fs::read_to_string(&copy).unwrap().as_str()), ("patterns/out.stl", TETRAHEDRON));
    // The same content again is the same copy; another content of that name gets a number.
    assert_eq!(copy_beside(&RealDisk, &out, &studio, 1 << 20).unwrap(), copy);
    fs::write(&out, "another").unwrap();
    let second = copy_beside(&RealDisk, &out, &studio, 1 << 20).unwrap();
    assert_eq!(named_in(&studio, &second), "patterns/out-2.stl");
    assert_eq!(fs::read_to_string(&copy).unwrap(), TETRAHEDRON);
    assert!(copy_beside(&RealDisk, &out, &studio, 3).is_err());
    assert!(looks_like_pattern(Path::new("a/B.3MF")) && !looks_like_pattern(Path::new("a/stl")));
}
