//! Bad input ends in a plain sentence with file, line or field; whatever is good still prints.

use std::io::Read;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::{DAY, job, run, sample, told};

/// The file as given says no more than this, and the program says these words and ends with 2.
fn refused(text: &str, words: &[&str]) {
    let (_folder, path) = job(text);
    for command in ["figures", "findings", "sheet", "quote", "pieces", "programme", "figures --csv", "pieces --csv"] {
        let (code, stdout, stderr) = told(&run(&format!("{command} {{}} --at {DAY}"), &path));
        assert_eq!((code, stdout.as_str()), (2, ""), "{command}: {text:.80}");
        assert!(stderr.contains("job.ron"), "{stderr}");
        assert_eq!(stderr.lines().count(), 1, "{stderr}");
        for word in words {
            assert!(stderr.contains(word), "“{word}” in: {stderr}");
        }
    }
    assert_eq!(std::fs::read_to_string(&path).expect("there"), text, "the file was touched");
}

#[test]
fn what_cannot_be_read_is_said_with_its_line() {
    refused("", &["empty"]);
    refused("hello", &["line 1"]);
    refused("(format: 1, readable_since: 1,\n  name: \"a\",\n  flaks: [],\n)", &["line 3", "flaks"]);
    refused("(format: 1, readable_since: 1,\n  name: 7,\n)", &["line 2"]);
    refused("(format: 1, readable_since: 1,\n  site: (altitude_m: NaN),\n)", &["line 2", "finite"]);
    refused("(format: 1, readable_since: 1,\n  site: (altitude_m: 1e999),\n)", &["line 2", "finite"]);
    refused("(format: 1, readable_since: 1,\n  name: \"cut", &["line"]);
    refused("(format: 9, readable_since: 8,\n)", &["9", "8"]);
    let deep = format!("(format: 1, readable_since: 1,\n  orders: {}{},\n)", "[".repeat(20_000), "]".repeat(20_000));
    refused(&deep, &["line 2"]);
}

#[test]
fn a_fault_is_said_with_its_place_and_the_rest_is_computed() {
    let (_folder, path) = job(r#"(format: 1, readable_since: 1, name: "faulty",
  trees: [(id: 1, weighed: [(material: "wax-injection", weight: Net(-3))]), (id: 1), (id: 2, weighed: [(material: "wax-injection", weight: Net(12))])],
  flasks: [(id: 1, vessel: "flask-89x102", tree: 2, alloy: "silver-925", powder: "powder-gypsum", ratio: 900)])"#);
    let (code, stdout, stderr) = told(&run(&format!("figures {{}} --json --at {DAY}"), &path));
    assert_eq!(code, 2);
    for word in ["tree/1, weighed: -3", "tree/1, id:", "flask/1, ratio: 900"] {
        assert!(stderr.contains(word), "“{word}” in: {stderr}");
    }
    let json: serde_json::Value = serde_json::from_str(&stdout).expect("JSON");
    let charge =
        json["figures"].as_array().expect("figures").iter().find(|figure| figure["id"] == "flask/1/flask.charge").expect("a charge");
    assert!(charge["value"].is_number(), "{charge}");
}

#[test]
fn a_missing_file_a_folder_and_wrong_words_end_with_two() {
    for path in [Path::new("/nowhere/job.ron"), Path::new(env!("CARGO_MANIFEST_DIR"))] {
        let (code, stdout, stderr) = told(&run("figures {}", path));
        assert_eq!((code, stdout.as_str()), (2, ""));
        assert!(stderr.contains(path.to_str().expect("UTF-8")), "{stderr}");
    }
    for arguments in ["figures", "frobnicate {} {}", "figures {} --at yesterday", "measure"] {
        assert_eq!(told(&run(arguments, &sample("first-pour.ron"))).0, 2, "{arguments}");
    }
    for arguments in ["--help", "--version", "figures --help"] {
        let (code, stdout, _) = told(&run(arguments, Path::new("")));
        assert!(code == 0 && !stdout.is_empty(), "{arguments}");
    }
}

#[test]
fn a_broken_studio_is_said_and_the_job_still_computed() {
    let (folder, path) = job("(format: 1, readable_since: 1, name: \"a\")");
    std::fs::write(folder.path().join("studio.ron"), "(format: 1, readable_since: 1,\n  naem: \"x\")").expect("written");
    let (code, stdout, stderr) = told(&run(&format!("figures {{}} --json --at {DAY}"), &path));
    assert_eq!(code, 2);
    assert!(stderr.contains("studio.ron") && stderr.contains("line 2"), "{stderr}");
    assert!(stdout.contains("vacuum.barometer"), "{stdout}");
}

#[test]
fn a_reader_that_closes_early_is_no_error() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_pourbook"))
        .args(["figures", "--json"])
        .arg(sample("mixed-kiln.ron"))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("it starts");
    drop(child.stdout.take());
    let mut said = String::new();
    child.stderr.take().expect("piped").read_to_string(&mut said).expect("UTF-8");
    assert_eq!((child.wait().expect("it ends").code(), said.as_str()), (Some(0), ""));
}
