//! The arrows between layers: what stands in `src/` uses only what it may, outside crates included.
#![allow(clippy::unwrap_used, reason = "in tests a missing value is a failure")]

mod paths;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use paths::{bare, named_paths};

/// Each layer with the layers it may use beside itself. A layer that is not here is a violation.
const LAYERS: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    ("stock", &["quantity"]),
    ("job", &["stock", "quantity"]),
    ("calc", &["job", "stock", "quantity"]),
    ("cores", &["calc", "job", "stock", "quantity"]),
    ("drawing", &["calc", "job", "stock", "quantity"]),
    ("texts", &["quantity"]),
    ("paper", &["drawing", "calc", "job", "stock", "quantity", "texts"]),
    ("mesh", &["quantity"]),
    ("table", &[]),
    ("kiln_log", &["table"]),
    ("files", &["paper", "drawing", "calc", "job", "stock", "quantity", "mesh", "table"]),
    ("folder", &["files", "paper", "drawing", "calc", "job", "stock", "quantity", "mesh", "table", "texts"]),
    (
        "headless",
        &["folder", "cores", "files", "paper", "drawing", "calc", "job", "stock", "quantity", "mesh", "kiln_log", "table", "texts"],
    ),
    ("app", &["folder", "cores", "files", "paper", "drawing", "calc", "job", "stock", "quantity", "mesh", "kiln_log", "table", "texts"]),
    (
        "main",
        &[
            "folder", "cores", "app", "headless", "files", "paper", "drawing", "calc", "job", "stock", "quantity", "mesh", "kiln_log",
            "table", "texts",
        ],
    ),
];

/// Outside crates and the layers that may use them. A dependency that is not here may be used by the window alone.
const CRATES: &[(&str, &[&str])] = &[
    ("blake3", &["stock", "job", "files", "folder", "headless", "mesh"]),
    ("clap", &["headless", "main"]),
    ("csv", &["paper"]),
    ("dejavu", &["paper", "app"]),
    ("fluent_bundle", &["texts"]),
    ("robust", &["mesh"]),
    ("statrs", &["calc"]),
    ("encoding_rs", &["table"]),
    ("getrandom", &["job", "files"]),
    ("harfrust", &["paper"]),
    ("i_overlay", &["mesh"]),
    ("image", &["files"]),
    ("jiff", &["quantity", "job", "calc", "drawing", "paper", "table", "kiln_log", "files", "folder", "headless", "app"]),
    ("krilla", &["paper"]),
    ("num_rational", &["quantity", "calc"]),
    ("num_traits", &["quantity", "calc"]),
    ("quick_xml", &["mesh"]),
    ("obvhs", &["mesh"]),
    ("ron", &["stock", "job", "files"]),
    ("rust_decimal", &["quantity", "job", "calc", "paper", "files", "headless", "app"]),
    ("rustix", &["files"]),
    ("serde", &["quantity", "table", "stock", "job", "paper", "texts", "files", "folder", "headless", "app"]),
    ("serde_json", &["headless"]),
    ("tempfile", &["files"]),
    ("thiserror", &["quantity", "stock", "job", "texts", "mesh", "paper", "files", "headless", "app"]),
    ("unic_langid", &["texts"]),
    ("zip", &["mesh"]),
];

/// Layers that know no file, network, thread, clock, environment or process.
const PURE: &[&str] = &["quantity", "stock", "job", "calc", "drawing", "paper", "texts"];
const OUTSIDE_WORLD: &[&str] = &["fs", "net", "thread", "time", "process", "env", "os"];

const MOST_LINES: usize = 500;

fn layer_of(path: &Path) -> String {
    let first = path.iter().next().unwrap().to_str().unwrap();
    first.strip_suffix(".rs").unwrap_or(first).to_owned()
}

/// The module a file is: `calc/heat/mod.rs` is `calc::heat`, `job/place.rs` is `job::place`.
fn module_of(path: &Path) -> Vec<String> {
    let mut parts: Vec<String> = path.with_extension("").iter().map(|part| part.to_str().unwrap().to_owned()).collect();
    if matches!(parts.last().map(String::as_str), Some("mod" | "lib" | "main")) {
        parts.pop();
    }
    parts
}

/// The names of the dependencies, as they are written in code.
fn dependencies() -> BTreeSet<String> {
    let manifest = std::fs::read_to_string("Cargo.toml").unwrap();
    let mut inside = false;
    let mut names = BTreeSet::new();
    for line in manifest.lines() {
        if line.starts_with('[') {
            inside = line.contains("dependencies") && !line.contains("dev-dependencies");
        } else if let (true, Some((name, _))) = (inside, line.split_once('=')) {
            names.insert(name.trim().split('.').next().unwrap().replace('-', "_"));
        }
    }
    names
}

/// Everything one file does that it must not.
fn violations(path: &Path, text: &str, dependencies: &BTreeSet<String>) -> Vec<String> {
    let layer = layer_of(path);
    let mut found = Vec::new();
    if text.lines().count() > MOST_LINES {
        found.push(format!("{} lines, more than {MOST_LINES}", text.lines().count()));
    }
    let code = bare(text);
    for word in ["unsafe", "extern"] {
        if code.words().any(|found| found == word) {
            found.push(format!("says `{word}`"));
        }
    }
    for hidden in ["#[path", "#![path", "include!("] {
        if code.squeezed().contains(hidden) {
            found.push(format!("brings in code by `{hidden}`"));
        }
    }
    if layer == "lib" {
        if code.words().any(|word| word == "use") {
            found.push("the crate's root only declares the layers".to_owned());
        }
        return found;
    }
    let Some((_, allowed)) = LAYERS.iter().find(|(name, _)| *name == layer) else {
        found.push(format!("`{layer}` is no layer"));
        return found;
    };
    for named in named_paths(&code, &module_of(path)) {
        let first = named[0].as_str();
        if let Some(inner) = named.strip_prefix(&["crate".to_owned()][..]) {
            let to = inner.first().map_or("", String::as_str);
            if to != layer && !allowed.contains(&to) {
                found.push(format!("uses `{}`", named.join("::")));
            }
        } else if first == "std" {
            let part = named.get(1).map_or("*", String::as_str);
            if part == "*" || part == "net" || (PURE.contains(&layer.as_str()) && OUTSIDE_WORLD.contains(&part)) {
                found.push(format!("uses `{}`", named.join("::")));
            }
        } else if dependencies.contains(first) {
            let may = CRATES.iter().find(|(name, _)| *name == first).map_or(&["app"][..], |(_, layers)| layers);
            if !may.contains(&layer.as_str()) {
                found.push(format!("uses `{}`", named.join("::")));
            }
        }
    }
    found
}

fn sources(under: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(under).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

#[test]
fn every_layer_uses_only_what_it_may() {
    let dependencies = dependencies();
    let files = sources(Path::new("src"));
    assert!(files.len() > 50, "only {} files were looked at", files.len());
    let mut found = Vec::new();
    for path in files {
        let text = std::fs::read_to_string(&path).unwrap();
        let inside = path.strip_prefix("src").unwrap();
        found.extend(violations(inside, &text, &dependencies).into_iter().map(|what| format!("{}: {what}", path.display())));
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn the_layers_are_those_of_the_crate() {
    let text = std::fs::read_to_string("src/lib.rs").unwrap();
    let declared: BTreeSet<&str> = text.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).collect();
    let known: BTreeSet<&str> = LAYERS.iter().map(|(name, _)| *name).collect();
    assert!(declared.is_subset(&known), "{declared:?}");
}

#[test]
fn the_table_of_layers_is_closed() {
    // Whatever a layer may use may use nothing that the layer may not: no arrow leads round a corner back up.
    let uses = |name: &str| LAYERS.iter().find(|(layer, _)| *layer == name).map(|(_, uses)| *uses).unwrap();
    for (layer, allowed) in LAYERS {
        for lower in *allowed {
            assert!(!uses(lower).contains(layer), "{layer} and {lower} use each other");
            // Files write what paper renders, but speak to nobody themselves.
            let missing: Vec<_> =
                uses(lower).iter().filter(|name| !allowed.contains(name) && (*layer, **name) != ("files", "texts")).collect();
            assert!(missing.is_empty(), "{layer} uses {lower}, which uses {missing:?}");
        }
    }
}

fn planted(path: &str, text: &str) -> Vec<String> {
    let dependencies = ["jiff", "clap", "fluent_bundle", "rust_decimal", "serde", "eframe"].map(str::to_owned).into();
    violations(Path::new(path), text, &dependencies)
}

#[test]
fn planted_violations_are_seen() {
    for (path, text) in [
        ("stock/alloy.rs", "use crate::job::Job;"),
        ("stock/alloy.rs", "use crate::{quantity::Kind, calc};"),
        ("stock/alloy.rs", "use crate::{\n    quantity::{Finite, Kind},\n    calc::{self, Book},\n};"),
        ("stock/alloy.rs", "fn f() -> crate::job::Job { todo!() }"),
        ("stock/alloy.rs", "fn f(x: & crate :: job :: Job) {}"),
        ("stock/alloy.rs", "use super::super::job::Job;"),
        ("stock/alloy.rs", "fn f() { super::super::calc::recompute() }"),
        ("stock/mod.rs", "use super::job::Job;"),
        ("calc/heat/mod.rs", "use super::super::drawing::Line;"),
        ("calc/heat/scheme.rs", "pub use super::super::super::paper::Page;"),
        ("job/place.rs", "mod inner { use super::super::super::calc::Book; }"),
        ("job/place.rs", "mod inner { use super::super::super::{calc}; }"),
        ("job/place.rs", "pub(in crate::job) use crate::calc::Book as Kept;"),
        ("job/place.rs", "pub use crate::files as elsewhere;"),
        ("job/place.rs", "use crate::*;"),
        ("job/place.rs", "use crate as pourbook;"),
        ("job/place.rs", "use ::pourbook::calc::Book;"),
        ("job/place.rs", "use pourbook::calc::Book;"),
        ("job/place.rs", "macro_rules! m { () => { $crate::calc::Book } }"),
        ("job/place.rs", "use crate::Disk;"),
        ("job/place.rs", "/* use crate::stock::X; */ // x\nlet c = '\"'; use crate::calc::Book; let d = \"\";"),
        ("job/place.rs", "let r = r#\"\"crate\"#; crate::calc::f();"),
        ("job/place.rs", "fn f<'a>(x: &'a str) { crate::calc::f() }"),
        ("lib.rs", "pub mod job; pub use calc::Book;"),
        ("calc/heat/mod.rs", "use std::fs;"),
        ("calc/heat/mod.rs", "use std::{fmt, thread};"),
        ("calc/heat/mod.rs", "fn f() { std::time::Instant::now(); }"),
        ("calc/heat/mod.rs", "use std::*;"),
        ("files/save.rs", "use std::net::TcpStream;"),
        ("headless/mod.rs", "use std::net;"),
        ("calc/mod.rs", "use clap::Parser;"),
        ("calc/mod.rs", "#[derive(serde::Serialize)] struct S;"),
        ("headless/mod.rs", "use fluent_bundle::FluentBundle;"),
        ("headless/mod.rs", "use eframe::egui;"),
        ("texts/mod.rs", "use crate::calc::Finding;"),
        ("files/mod.rs", "use crate::texts::say;"),
        ("mesh/mod.rs", "use crate::job::Pattern;"),
        ("quantity/unit.rs", "fn f() { unsafe { g() } }"),
        ("quantity/unit.rs", "extern crate std;"),
        ("quantity/unit.rs", "#[path = \"../calc/mod.rs\"] mod calc;"),
        ("quantity/unit.rs", "include!(\"../calc/mod.rs\");"),
        ("scratch/mod.rs", "fn f() {}"),
    ] {
        assert!(!planted(path, text).is_empty(), "{path}: {text}");
    }
    assert!(!planted("calc/long.rs", &"// a line\n".repeat(MOST_LINES + 1)).is_empty());
}

#[test]
fn what_is_allowed_is_let_pass() {
    for (path, text) in [
        ("calc/mod.rs", "use crate::{job::{Job, Studio}, stock::Shelf, quantity::Kind};"),
        ("calc/mod.rs", "use super::job::Job; use self::book::Book; mod book;"),
        ("calc/heat/mod.rs", "use super::book::Book; use super::super::job::Job;"),
        ("calc/heat/mod.rs", "// use crate::app::X;\n/* crate::app::Y /* crate::app */ */ const S: &str = \"crate::app::Z\";"),
        ("calc/heat/mod.rs", "/// See [`crate::app`].\nfn f() { let r = r\"crate::app::\"; let s = r#\"\"crate::app\"#; }"),
        ("calc/heat/mod.rs", "mod tests { use super::*; use super::super::book::Book; fn f() { let unsafe_looking = 'u'; } }"),
        ("calc/mod.rs", "use std::collections::BTreeMap; use rust_decimal::Decimal; use jiff::civil::Date;"),
        ("headless/mod.rs", "use std::fs; use clap::Parser; use crate::texts::say;"),
        ("paper/mod.rs", "use crate::texts::say; use crate::drawing::Line;"),
        ("app/mod.rs", "use eframe::egui; use crate::files::Disk;"),
        ("main.rs", "fn main() -> std::process::ExitCode { pourbook::headless::run() }"),
        ("job/place.rs", "const INCLUDED: &str = include_str!(\"x\"); fn serde_like(serde: u8) -> u8 { serde }"),
    ] {
        assert_eq!(planted(path, text), Vec::<String>::new(), "{path}: {text}");
    }
}
