//! `figures --csv`, `pieces` and `programme`, read back as a spreadsheet would.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use csv::{ReaderBuilder, StringRecord};
use pourbook::job::format::read_job;
use serde_json::Value;

use crate::{DAY, JOBS, job, run, sample, told};

const TABLES: [&str; 3] = ["figures", "pieces", "programme"];

/// A table with its head, each row as long as that.
struct Read {
    head: StringRecord,
    rows: Vec<StringRecord>,
}

impl Read {
    fn of(bytes: &[u8]) -> Self {
        let mut reader = ReaderBuilder::new().flexible(false).from_reader(bytes);
        let head = reader.headers().expect("a head").clone();
        Self { head, rows: reader.records().map(|row| row.expect("as long as the head")).collect() }
    }

    fn cell<'r>(&self, row: &'r StringRecord, column: &str) -> &'r str {
        let at = self.head.iter().position(|head| head == column).unwrap_or_else(|| panic!("no column {column}"));
        row.get(at).expect("as long as the head")
    }

    fn column(&self, column: &str) -> Vec<&str> {
        self.rows.iter().map(|row| self.cell(row, column)).collect()
    }
}

/// A table of a job that has nothing wrong.
fn table(command: &str, path: &Path) -> Read {
    let output = run(&format!("{command} {{}} --csv --at {DAY}"), path);
    let (code, stdout, stderr) = told(&output);
    assert_eq!((code, stderr.as_str()), (0, ""), "{command} {}", path.display());
    assert!(stdout.ends_with("\r\n") && !stdout.starts_with('\u{feff}'), "{stdout:.40}");
    Read::of(&output.stdout)
}

#[test]
fn every_table_has_plain_heads_and_rows_as_long_as_they() {
    for (command, name) in TABLES.iter().flat_map(|command| JOBS.map(|name| (*command, name))) {
        let read = table(command, &sample(name));
        for head in &read.head {
            assert!(!head.is_empty() && head.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'_'), "{command}: {head}");
        }
        assert_eq!(read.head.iter().collect::<BTreeSet<_>>().len(), read.head.len(), "{command}: a head stands twice");
    }
}

#[test]
fn pieces_have_a_row_each_with_what_is_their_own() {
    for name in JOBS {
        let text = std::fs::read(sample(name)).expect("there");
        let job = read_job(&text).expect("sound").document;
        let read = table("pieces", &sample(name));
        let ordered: Vec<String> =
            job.lines().flat_map(|(_, line)| (1..=line.quantity).map(|number| format!("{}.{number}", line.id))).collect();
        assert_eq!(read.column("piece"), ordered, "{name}");
        for number in read.column("rough_g").into_iter().chain(read.column("bore_mm")).filter(|cell| !cell.is_empty()) {
            assert!(number.parse::<f64>().expect("a number") > 0.0 && !number.contains('e'), "{name}: {number}");
        }
    }
    let read = table("pieces", &sample("mixed-kiln.ron"));
    let of = |piece: &str, column: &str| {
        let row = read.rows.iter().find(|row| read.cell(row, "piece") == piece).expect("the piece");
        read.cell(row, column).to_owned()
    };
    assert_eq!((of("1.1", "size"), of("1.2", "size")), ("ISO 8653 57".into(), "ISO 8653 63".into()));
    // A size of this scale is the inner circumference in mm.
    for (piece, around_mm) in [("1.1", 57.0), ("1.2", 63.0)] {
        let bore_mm: f64 = of(piece, "bore_mm").parse().expect("a number");
        assert!((bore_mm * std::f64::consts::PI - around_mm).abs() < 1e-9, "{piece}: {bore_mm}");
    }
    assert_eq!((of("1.1", "pattern_id"), of("1.2", "pattern_id")), ("1".into(), "2".into()));
    assert_ne!(of("1.1", "rough_g"), of("1.2", "rough_g"));
    assert_eq!(of("1.2", "from_job"), "e2b85f40196c4d7da3f1087c5be6d921");
    assert_eq!((of("3.1", "due"), of("3.1", "scratch"), of("3.1", "tree")), ("2026-12-19".into(), "G".into(), "Gold".into()));
    let book = table("pieces", &sample("order-book.ron"));
    let cancelled: Vec<_> = book.rows.iter().filter(|row| book.cell(row, "cancelled") == "yes").collect();
    assert_eq!(cancelled.len(), 1);
    assert_eq!((book.cell(cancelled[0], "piece"), book.cell(cancelled[0], "rough_g")), ("7.5", ""));
}

#[test]
fn figures_are_those_of_the_json() {
    for name in JOBS {
        let read = table("figures", &sample(name));
        let mut numbers: BTreeMap<(&str, &str), Vec<f64>> = BTreeMap::new();
        for row in read.rows.iter().filter(|row| read.cell(row, "origin") == "figure") {
            let value = read.cell(row, "value");
            assert_eq!(value.is_empty(), !read.cell(row, "state").is_empty(), "{name}: {row:?}");
            if !value.is_empty() {
                let key = (read.cell(row, "place"), read.cell(row, "key"));
                numbers.entry(key).or_default().push(value.parse().expect("a number"));
            }
        }
        let (_, stdout, _) = told(&run(&format!("figures {{}} --json --at {DAY}"), &sample(name)));
        let json: Value = serde_json::from_str(&stdout).expect("JSON");
        let known = json["figures"].as_array().expect("figures").iter().filter(|figure| figure["value"].is_number());
        let mut count = 0;
        for figure in known {
            count += 1;
            let key = (figure["place"].as_str().expect("a place"), figure["rule"].as_str().expect("a rule"));
            let value = figure["value"].as_f64().expect("a number");
            // The table has every digit; the reader of JSON may take the last one for its neighbour.
            let same = |number: &f64| (number - value).abs() <= f64::EPSILON * value.abs();
            let found = numbers.get(&key).is_some_and(|numbers| numbers.iter().any(same));
            assert!(found, "{name}: {key:?} is {value} in JSON and {:?} in the table", numbers.get(&key));
        }
        assert_eq!(numbers.values().map(Vec::len).sum::<usize>(), count, "{name}");
    }
}

#[test]
fn programmes_run_from_mixing_to_the_pour() {
    let read = table("programme", &sample("mixed-kiln.ron"));
    let mut mixings = vec!["mixing"; 3];
    mixings.extend(["stage"; 5]);
    mixings.push("pour");
    assert_eq!(read.column("step"), mixings);
    assert_eq!(read.column("flasks")[2..4], ["B", "S, G, B"]);
    let stages: Vec<_> = read.rows.iter().filter(|row| read.cell(row, "step") == "stage").collect();
    for pair in stages.windows(2) {
        assert_eq!(read.cell(pair[0], "ends"), read.cell(pair[1], "begins"), "one stage after the other");
    }
    let last = read.rows.last().expect("the pour");
    assert_eq!((read.cell(last, "begins"), read.cell(last, "ends")), ("2026-12-05T10:00", ""));
    assert_eq!(read.cell(stages[0], "begins"), "2026-12-04T14:28");
    assert_eq!(table("programme", &sample("order-book.ron")).rows.len(), 0, "no load, no row");
}

#[test]
fn words_of_any_sort_survive_and_none_becomes_a_formula() {
    let awkward =
        ["a \"ring\", small; of 1,5 mm", "two\nlines\r\nthree", "=HYPERLINK(\"http://x\")", "-3 mm", "@home", "\tindented", "plain"];
    let lines: Vec<String> =
        (1..).zip(awkward).map(|(id, design): (u32, &str)| format!("(id: {id}, design: {design:?}, quantity: 1, notes: \"+1\")")).collect();
    let (_folder, path) = job(&format!(
        "(format: 1, readable_since: 1, orders: [(id: 1, client: \"-C\", lines: [{}])], burnouts: [(id: 1, name: \"=1\")])",
        lines.join(", ")
    ));
    let read = table("pieces", &path);
    for (cell, design) in read.column("design").into_iter().zip(awkward) {
        let guarded = design.starts_with(['=', '-', '@', '\t']);
        assert_eq!(cell, if guarded { format!("'{design}") } else { design.to_owned() });
    }
    assert!(read.column("client").iter().all(|client| *client == "'-C"));
    assert!(read.column("line_notes").iter().all(|notes| *notes == "'+1"));
    assert_eq!(table("programme", &path).column("load"), ["'=1"]);
    // A program that splits at semicolons too finds them in quotes alone.
    let (_, stdout, _) = told(&run("pieces {} --csv", &path));
    assert!(stdout.contains("\"a \"\"ring\"\", small; of 1,5 mm\""), "{stdout}");
}

#[test]
fn without_csv_they_are_lists() {
    let (code, pieces, said) = told(&run(&format!("pieces {{}} --at {DAY}"), &sample("first-pour.ron")));
    assert_eq!((code, said.as_str()), (0, ""));
    let rows: Vec<&str> = pieces.lines().skip(2).collect();
    assert_eq!(rows.len(), 10, "{pieces}");
    assert!(rows[0].starts_with("1.1 ") && rows[0].contains("Limpet ring") && rows[0].ends_with("on the tree"), "{pieces}");
    let (_, programme, _) = told(&run(&format!("programme {{}} --at {DAY}"), &sample("first-pour.ron")));
    assert!(programme.contains("Overnight") && programme.contains("Stage 5") && programme.contains("Thu 3 Dec 09:30"), "{programme}");
    let (code, programme, _) = told(&run("programme {}", &sample("order-book.ron")));
    assert_eq!((code, programme.as_str()), (0, "No kiln load is planned.\n"));
    assert!(!pieces.contains('«') && !programme.contains('«'));
}

#[test]
fn a_table_goes_into_a_file_and_never_over_one() {
    let folder = tempfile::tempdir().expect("a folder");
    for (command, name) in [("figures --csv", "f.csv"), ("pieces --csv", "p.csv"), ("programme --csv", "k.csv")] {
        let path = folder.path().join(name);
        let arguments = format!("{command} {{}} -o {} --at {DAY}", path.display());
        assert_eq!(told(&run(&arguments, &sample("mixed-kiln.ron"))), (0, String::new(), String::new()), "{command}");
        let (written, printed) =
            (std::fs::read(&path).expect("written"), run(&format!("{command} {{}} --at {DAY}"), &sample("mixed-kiln.ron")).stdout);
        let mark: &[u8] = if printed.is_ascii() { b"" } else { b"\xEF\xBB\xBF" };
        assert_eq!(written, [mark, &printed].concat(), "{command}");
        assert_eq!(Read::of(&written).head, Read::of(&printed).head, "the mark belongs to no cell");
        std::fs::write(&path, "mine").expect("written");
        let (code, stdout, stderr) = told(&run(&arguments, &sample("mixed-kiln.ron")));
        assert_eq!((code, stdout.as_str()), (2, ""), "{command}");
        assert!(stderr.contains(name), "{stderr}");
        assert_eq!(std::fs::read_to_string(&path).expect("there"), "mine");
    }
    // Neither lists nor JSON take the mark.
    for (command, name) in [("pieces", "p.txt"), ("figures", "f.txt"), ("figures --json", "f.json")] {
        let path = folder.path().join(name);
        assert_eq!(told(&run(&format!("{command} {{}} -o {} --at {DAY}", path.display()), &sample("mixed-kiln.ron"))).0, 0);
        let printed = run(&format!("{command} {{}} --at {DAY}"), &sample("mixed-kiln.ron")).stdout;
        assert_eq!(std::fs::read(&path).expect("written"), printed, "{command}");
    }
    let nowhere = folder.path().join("no/such/folder/p.csv");
    assert_eq!(told(&run(&format!("pieces {{}} --csv -o {}", nowhere.display()), &sample("mixed-kiln.ron"))).0, 2);
}

#[test]
fn tables_end_as_the_other_commands_do() {
    for command in TABLES {
        // A Stop is for `findings` to end with; a table of the same job is as good as any.
        assert_eq!(told(&run(&format!("{command} {{}} --csv --at {DAY}"), &sample("workshop-class.ron"))).0, 0, "{command}");
        assert_eq!(told(&run(&format!("{command} {{}} --csv"), Path::new("/nowhere/job.ron"))).0, 2, "{command}");
        assert_eq!(told(&run(&format!("{command} {{}} --csv --at yesterday"), &sample("first-pour.ron"))).0, 2, "{command}");
    }
    assert_eq!(told(&run("figures {} --json --csv", &sample("first-pour.ron"))).0, 2, "one or the other");
    let (_folder, path) = job(
        "(format: 1, readable_since: 1, orders: [(id: 1, lines: [(id: 1, design: \"good\", quantity: 2), (id: 1, design: \"twice\", quantity: 3)])])",
    );
    let output = run("pieces {} --csv", &path);
    let (code, _, stderr) = told(&output);
    assert_eq!(code, 2, "something was left out");
    assert!(stderr.contains("line/1, id:"), "{stderr}");
    assert_eq!(Read::of(&output.stdout).column("design"), ["good", "good"], "and the rest still printed");
}
