//! The quick reader against the reader that opens jobs, and against `ron`.

use std::path::Path;

use pourbook::folder::Brief;
use pourbook::job::Job;
use pourbook::job::format::{read_job, read_plain, write_job};

use super::Seed;
use super::studio::make;

/// What the quick reader says must be what the other says; where it is unsure, nothing is asked. True where it was sure.
#[track_caller]
fn agrees(bytes: &[u8]) -> bool {
    let plain = read_plain::<Job>(bytes);
    if let Some(plain) = &plain {
        let read = read_job(bytes).map(|opened| opened.document);
        assert_eq!(read.as_ref(), Ok(plain), "{}", String::from_utf8_lossy(bytes));
    }
    plain.is_some()
}

fn samples() -> Vec<(String, Vec<u8>)> {
    let mut all = Vec::new();
    for folder in ["sample-jobs", "tests/golden"] {
        for entry in std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            if name.ends_with(".ron") && !name.starts_with("studio") {
                all.push((name, std::fs::read(path).unwrap()));
            }
        }
    }
    all.sort();
    assert!(all.len() >= 9);
    all
}

#[test]
fn every_job_there_is_is_read_by_the_quick_reader_whole_and_briefly() {
    for (name, bytes) in samples() {
        // Some of the whole is not plain: briefly it is.
        agrees(&bytes);
        let brief = read_plain::<Brief>(&bytes);
        assert_eq!(brief, Some(Brief::of(&read_job(&bytes).unwrap().document)), "{name}");
        assert_eq!(Brief::read(&bytes).ok(), brief);
    }
}

#[test]
fn every_kind_of_entry_in_the_record_is_known() {
    // One that was forgotten would still be read, by the slow reader: this tells.
    let mut seed = Seed(3);
    for number in 0..200 {
        let job = make(number, &mut seed);
        let text = write_job(&job).unwrap();
        assert_eq!(read_plain::<Brief>(text.as_bytes()), Some(Brief::of(&job)));
    }
}

#[test]
fn a_studio_is_no_job() {
    let bytes = std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/studio.ron")).unwrap();
    assert!(Brief::read(&bytes).is_err());
}

#[test]
fn what_is_no_job_is_told_as_the_other_reader_tells_it() {
    for bytes in [
        &b""[..],
        b"hello",
        b"(format: 2, readable_since: 1,\n  name: 5,\n)",
        b"(format: 9, readable_since: 9,)",
        b"(format: 2, readable_since: 1,\n  name: \"a\",\n  name: \"b\",\n)",
        b"(format: 2, readable_since: 1,\n  name: \"\xff\",\n)",
        b"(format: 2, readable_since: 1,\n  name: \"cut",
    ] {
        assert_eq!(Brief::read(bytes).err(), read_job(bytes).err(), "{}", String::from_utf8_lossy(bytes));
    }
}

/// Pieces of text that mean something in RON, or nearly.
const TOKENS: [&str; 50] = [
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    "\"",
    "\\",
    "'",
    "/",
    "//",
    "/*",
    "*/",
    "\n",
    " ",
    "\t",
    "\r",
    "\u{b}",
    "\u{a0}",
    "\u{2028}",
    "\u{feff}",
    "é",
    "-",
    "+",
    ".",
    "..",
    "_",
    "#",
    "r\"",
    "r#\"",
    "b\"",
    "Some(",
    "None",
    "true",
    "inf",
    "NaN",
    "0x1f",
    "1e5",
    "1_000",
    "18446744073709551616",
    "-0",
    "007",
    "1.",
    ".5",
    "()",
    "Abc(",
    "id: 7,",
    "\\u{1f600}",
];

fn mutate(text: &[u8], seed: &mut Seed) -> Vec<u8> {
    let mut bytes = text.to_vec();
    for _ in 0..1 + seed.below(3) {
        let (at, other) = (seed.below(bytes.len() + 1), seed.below(bytes.len() + 1));
        let end = bytes.len().min(at + seed.below(12));
        match seed.below(7) {
            0 => bytes.truncate(at),
            1 => drop(bytes.splice(at..end, [])),
            2 => drop(bytes.splice(at..at, seed.of(&TOKENS).bytes())),
            3 => drop(bytes.splice(at..end, seed.of(&TOKENS).bytes())),
            4 => {
                let copied = bytes[at..end].to_vec();
                drop(bytes.splice(other..other, copied));
            }
            5 => {
                let whole_line = bytes[at..].iter().position(|byte| *byte == b'\n').map_or(bytes.len(), |long| at + long + 1);
                let copied = bytes[at..whole_line].to_vec();
                drop(bytes.splice(at..at, copied));
            }
            _ => {
                if let Some(byte) = bytes.get_mut(at) {
                    *byte = seed.draw() as u8;
                }
            }
        }
    }
    bytes
}

#[test]
fn mutated_jobs_are_read_alike() {
    let mut seed = Seed(2);
    let (mut sure, mut read) = (0, 0);
    for number in 0..3_000 {
        let text = write_job(&make(number % 50, &mut seed)).unwrap();
        let bytes = mutate(text.as_bytes(), &mut seed);
        sure += usize::from(agrees(&bytes));
        read += usize::from(read_job(&bytes).is_ok());
    }
    // Both ends must be met often, or nothing was tried.
    assert!(read > 100 && read < 2_500 && sure > 80, "{read} read, {sure} by the quick reader");
}

/// A brief by `ron` itself: the first line is blanked, as the reader of jobs does.
fn by_ron(text: &str) -> Option<Brief> {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME).with_recursion_limit(48);
    options.from_str(&text.replacen("format: 2, readable_since: 1,", "                             ", 1)).ok()
}

/// A value as a hand might write it, of any shape.
fn any(seed: &mut Seed, depth: usize) -> String {
    const RAW: [&str; 40] = [
        "0",
        "-1",
        "1.5",
        "-0.0",
        "00.10",
        "123456789012345678",
        "1234567890123456789",
        "99999999999999999999",
        "1e3",
        "1.5e-3",
        "1_0",
        "0b11",
        "0xff",
        "+1",
        "1.",
        ".1",
        "-",
        "1..2",
        "..",
        "true",
        "false",
        "truest",
        "None",
        "Some(1)",
        "Some(None)",
        "inf",
        "-inf",
        "NaN",
        "'a'",
        "'\"'",
        "b'x'",
        "b\"x\"",
        "r\"a\\\"",
        "r#\"a\"b\"#",
        "()",
        "( )",
        "Word",
        "Word()",
        "a_b",
        "r#a",
    ];
    const TEXTS: [&str; 7] =
        ["\"\"", "\"plain\"", "\"with \\\"quotes\\\"\"", "\"back\\\\slash\"", "\"two\\nlines\"", "\"ünï \\u{200b}\"", "\"( [ { /* //\""];
    let many = |seed: &mut Seed, most: usize| {
        let all: Vec<String> = (0..seed.below(most)).map(|_| any(seed, depth + 1)).collect();
        all.join(seed.of(&[", ", ",", " /* , \" */ ,\n", ",// )\n"]))
    };
    match seed.below(if depth > 5 { 2 } else { 7 }) {
        0 => seed.of(&RAW).to_owned(),
        1 => seed.of(&TEXTS).to_owned(),
        2 => format!("[{}]", many(seed, 4)),
        3 => format!("({})", many(seed, 4)),
        4 => format!("{{{}: {}}}", any(seed, depth + 4), any(seed, depth + 1)),
        5 => format!("{}({})", seed.of(&["Word", "Base", "None", "Some", "NaNny", "_x", "true"]), many(seed, 3)),
        _ => {
            let names = ["id", "name", "x", "true", "None", "r#x", "a-b", "größe", "_", "T1"];
            let fields: Vec<String> = (0..seed.below(4)).map(|_| format!("{}: {}", seed.of(&names), any(seed, depth + 1))).collect();
            format!("({})", fields.join(", "))
        }
    }
}

#[test]
fn values_of_any_shape_are_passed_over_as_ron_does() {
    let mut seed = Seed(4);
    let (mut sure, mut read) = (0, 0);
    for _ in 0..12_000 {
        let name = seed.of(&["patterns", "shelf", "notes", "name", "made", "orders", "record", "melts", "trees", "site", "flasks"]);
        let text = format!("(format: 2, readable_since: 1, {name}: {}, quotes: {},)", any(&mut seed, 0), any(&mut seed, 1));
        let (plain, by_ron) = (read_plain::<Brief>(text.as_bytes()), by_ron(&text));
        if let Some(plain) = plain {
            assert_eq!(Some(plain), by_ron, "{text}");
            sure += 1;
        }
        read += usize::from(by_ron.is_some());
    }
    assert!(read > 1_200 && sure > 500, "{read} read, {sure} by the quick reader");
}

#[test]
fn nesting_is_read_to_the_same_depth_or_left_to_ron() {
    for (open, close) in [("(", ")"), ("[", "]"), ("(a: ", ")"), ("Word(", ")"), ("{1: ", "}"), ("Word(a: [", "])"), ("{[", "]: 1}")] {
        for depth in 0..60 {
            let nested = format!("{}1{}", open.repeat(depth), close.repeat(depth));
            for field in ["notes2", "shelf", "orders"] {
                let text = format!("(format: 2, readable_since: 1, {field}: {nested})");
                if let Some(plain) = read_plain::<Brief>(text.as_bytes()) {
                    assert_eq!(Some(plain), by_ron(&text), "{text}");
                }
            }
        }
    }
}
