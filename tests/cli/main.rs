//! The commands as a person runs them: what they print, where, and with which exit code.

mod bad_input;
mod figures;
mod measure;
mod plan;
mod readings;
mod sheets;
mod tables;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// The sample studio.
fn sample(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs").join(name)
}

/// Every job of the sample studio.
const JOBS: [&str; 8] = [
    "first-pour.ron",
    "mixed-kiln.ron",
    "workshop-class.ron",
    "order-book.ron",
    "fair.ron",
    "three-trees.ron",
    "power-cut.ron",
    "own-gold.ron",
];

/// A day on which every sample's pour lies ahead.
const DAY: &str = "2026-11-25";

/// Runs the program; the arguments are split at spaces, `{}` stands for the path.
fn run(arguments: &str, path: &Path) -> Output {
    let words = arguments.split(' ').map(|word| if word == "{}" { path.as_os_str() } else { word.as_ref() });
    Command::new(env!("CARGO_BIN_EXE_pourbook"))
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .args(words)
        .output()
        .expect("the program starts")
}

/// Exit code, stdout, stderr.
fn told(output: &Output) -> (i32, String, String) {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).expect("UTF-8");
    (output.status.code().expect("it was not killed"), text(&output.stdout), text(&output.stderr))
}

/// A folder of this test's own, with a job of the given text in it.
fn job(text: &str) -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("job.ron");
    std::fs::write(&path, text).expect("written");
    (folder, path)
}
