//! The house itself: licences of everything it is built from, the top level, and what the README promises.

use std::path::Path;
use std::process::Command;

const ROOT: &str = env!("CARGO_MANIFEST_DIR");

/// Licences that may be used; the second list only for the crates named with them.
const ALLOWED: [&str; 11] =
    ["MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "ISC", "Zlib", "Unicode-3.0", "Unlicense", "CC0-1.0", "MIT-0", "0BSD"];
// `colored` prints what differs between two pictures; it is in the tests alone, and not in what is given away.
const ONLY_FOR: [(&str, &str); 2] = [("MPL-2.0", "option-ext"), ("MPL-2.0", "colored")];

/// True where one of the alternatives of a licence expression needs nothing but allowed licences.
fn may_be_used(expression: &str, package: &str) -> bool {
    let spaced = expression.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut rest = words.as_slice();
    either(&mut rest, package) && rest.is_empty()
}

fn either(words: &mut &[&str], package: &str) -> bool {
    let mut good = both(words, package);
    while let ["OR", rest @ ..] = *words {
        *words = rest;
        good |= both(words, package);
    }
    good
}

fn both(words: &mut &[&str], package: &str) -> bool {
    let mut good = single(words, package);
    while let ["AND", rest @ ..] = *words {
        *words = rest;
        good &= single(words, package);
    }
    good
}

fn single(words: &mut &[&str], package: &str) -> bool {
    let (first, rest) = words.split_first().expect("a licence");
    *words = rest;
    if *first == "(" {
        let good = either(words, package);
        *words = words.strip_prefix(&[")"]).expect("a closing bracket");
        return good;
    }
    if let ["WITH", _, rest @ ..] = *words {
        *words = rest;
    }
    ALLOWED.contains(first) || ONLY_FOR.contains(&(*first, package))
}

#[test]
fn licence_expressions_are_understood() {
    for good in ["MIT", "MIT OR Apache-2.0", "MIT/Apache-2.0", "(MIT OR GPL-3.0) AND Unicode-3.0", "Apache-2.0 WITH LLVM-exception"] {
        assert!(may_be_used(good, "x"), "{good}");
    }
    for bad in ["GPL-3.0", "AGPL-3.0-only", "LGPL-2.1", "MIT AND GPL-3.0", "MPL-2.0", "(GPL-2.0 OR LGPL-2.1) AND MIT"] {
        assert!(!may_be_used(bad, "x"), "{bad}");
    }
    assert!(may_be_used("MPL-2.0", "option-ext"));
}

#[test]
fn every_crate_may_be_used() {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    // Crates of other systems may not lie on this machine, and no network is asked for.
    let told = Command::new(std::env::var("RUSTC").unwrap_or_else(|_| "rustc".to_owned())).arg("-vV").output().expect("rustc is there");
    let told = String::from_utf8(told.stdout).expect("UTF-8");
    let host = told.lines().find_map(|line| line.strip_prefix("host: ")).expect("a host");
    let output = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked", "--offline", "--filter-platform", host, "--manifest-path"])
        .arg(Path::new(ROOT).join("Cargo.toml"))
        .output()
        .expect("cargo is there");
    assert!(output.status.success(), "cargo metadata: {}", String::from_utf8_lossy(&output.stderr));
    let metadata: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    let packages = metadata["packages"].as_array().expect("packages");
    assert!(packages.len() > 50, "only {} packages were looked at", packages.len());
    for package in packages {
        let (name, licence) = (package["name"].as_str().expect("a name"), package["license"].as_str());
        assert!(licence.is_some_and(|licence| may_be_used(licence, name)), "{name} is under {licence:?}");
    }
}

#[test]
fn the_top_level_is_as_agreed() {
    let agreed = ["Cargo.toml", "Cargo.lock", "README.md", "DEVELOPERS.md", "src", "resources", "tests", "sample-jobs", "target"];
    for entry in std::fs::read_dir(ROOT).expect("the project's folder") {
        let name = entry.expect("an entry").file_name().into_string().expect("a name");
        assert!(agreed.contains(&name.as_str()) || name.starts_with('.') || name.starts_with("LICENSE"), "{name} stands at the top level");
    }
}

#[test]
fn the_readme_names_its_two_commands_and_files_that_are_there() {
    let readme = std::fs::read_to_string(Path::new(ROOT).join("README.md")).expect("README.md");
    let commands: Vec<&str> = readme.lines().filter_map(|line| line.strip_prefix("    cargo ")).collect();
    assert_eq!(commands, ["run --release -- sample-jobs/first-pour.ron", "test"]);
    assert!(Path::new(ROOT).join("sample-jobs/first-pour.ron").is_file());
}

#[test]
fn every_dependency_has_its_line_in_the_developers_guide() {
    let manifest = std::fs::read_to_string(Path::new(ROOT).join("Cargo.toml")).expect("Cargo.toml");
    let guide = std::fs::read_to_string(Path::new(ROOT).join("DEVELOPERS.md")).expect("DEVELOPERS.md");
    let mut section = "";
    let mut seen = 0;
    for line in manifest.lines() {
        if let Some(name) = line.strip_prefix('[') {
            section = name.trim_end_matches(']');
        } else if matches!(section, "dependencies" | "dev-dependencies")
            && let Some((name, _)) = line.split_once(" = ")
        {
            seen += 1;
            assert!(guide.contains(&format!("`{}`", name.trim())), "DEVELOPERS.md does not say why {name} is used");
        }
    }
    assert!(seen > 10, "only {seen} dependencies were found");
}
