//! Files of a newer program: readable ones open read-only without what is unknown, others are refused naming both formats.

use pourbook::job::Job;
use pourbook::job::format::{FORMAT, ReadError, read_job, write_job};

use super::world::World;

/// The job as a newer program might have written it: the next format, with `extra` at the start of the job and of its first flask.
fn newer(job: &Job, extra: &str) -> String {
    let text = write_job(job).unwrap().replacen(
        &format!("(format: {FORMAT}, readable_since: 1,"),
        &format!("(format: {}, readable_since: 1, {extra}", FORMAT + 1),
        1,
    );
    let (head, flasks) = text.split_once("flasks: [\n    (").unwrap();
    format!("{head}flasks: [\n    ({extra}{flasks}")
}

const VALUES: &[&str] = &[
    "5",
    "-1.5e3",
    "true",
    "\"plain\"",
    "\"brackets ) ] } , ( [ { in it\"",
    "\"a quote \\\" and a backslash \\\\\"",
    "r\"raw ) \\\"",
    "r#\"raw \" ) with a quote\"#",
    "r##\"raw \"# ) too\"##",
    "'x'",
    "')'",
    "'\\''",
    "'\"'",
    "None",
    "Some(5)",
    "Some((a: [1, 2], b: \")\"))",
    "()",
    "[]",
    "[1, 2, 3]",
    "[(a: 1), (b: \"]\")]",
    "{\"key)\": [1, 2], \"other\": {}}",
    "(x: 1, y: (z: [(), (w: {1: \"}\"})]))",
    "Variant",
    "Variant(1, \"two\")",
    "Variant(field: 1, name: \"flasks: [\")",
    "/* a ) comment \" */ 5",
    "5 /* behind ] it */",
    "[ // a ) comment, with a comma\n 1, 2 ]",
    "[ /* nested /* comment ) */ still ) */ 1 ]",
    "\"wrench, colour: (\"",
    "(wrench: 1, wrench2: \"wrench: \")",
    "\"ﬂask Ø\"",
];

#[test]
fn unknown_fields_of_every_shape_are_passed_over() {
    let job = World::full().job;
    for value in VALUES {
        for field in ["wrench", "id2", "nam", "flask", "r", "ﬁeld"] {
            let field = if field == "ﬁeld" { "field_" } else { field };
            let text = newer(&job, &format!("{field}: {value}, "));
            let opened = read_job(text.as_bytes()).unwrap_or_else(|error| panic!("{field}: {value}: {error}"));
            assert!(opened.read_only, "{value}");
            assert_eq!(opened.format, FORMAT + 1);
            assert_eq!(opened.document, job, "{field}: {value}");
        }
    }
}

#[test]
fn an_unknown_field_may_stand_last_and_without_a_comma() {
    let job = World::sound().job;
    for value in VALUES {
        let text = write_job(&job).unwrap().replacen(&format!("(format: {FORMAT}"), "(format: 7", 1);
        let text = format!("{}\n  wrench: {value}\n)\n", text.trim_end().strip_suffix(')').unwrap());
        let opened = read_job(text.as_bytes()).unwrap_or_else(|error| panic!("{value}: {error}"));
        assert_eq!((opened.document, opened.read_only), (job.clone(), true), "{value}");
    }
}

#[test]
fn several_unknown_fields_and_names_that_stand_elsewhere_too() {
    let job = World::sound().with(|world| world.job.notes = "wrench: (5), colour: [".to_owned()).job;
    let extra = "wrench: \"colour: 1\", colour: (wrench: 2), /* wrench: 3 */ twirl: [\"wrench\"], ";
    let opened = read_job(newer(&job, extra).as_bytes()).unwrap();
    assert_eq!(opened.document, job);
}

#[test]
fn what_is_wrong_behind_unknown_fields_is_found_at_its_place_whatever_their_letters() {
    let wrong = |words: &str| {
        let text =
            format!("(format: 7, readable_since: 1,\n  wrench: \"{words}\", twirl{words}: 1,\n  orders: [(Ø: 1, id: 1, client: 5)])");
        read_job(text.as_bytes()).unwrap_err()
    };
    assert!(matches!(wrong("OOO"), ReadError::Syntax { line: 3, .. }));
    // Letters of two and of three bytes.
    assert_eq!((wrong("ØØØ"), wrong("ẞẞẞ")), (wrong("OOO"), wrong("OOO")));
}

#[test]
fn what_is_known_is_still_checked_in_a_newer_file() {
    let text = newer(&World::sound().job, "wrench: 1, ");
    let broken = text.replacen("quantity: 4", "quantity: \"four\"", 1);
    assert_ne!(text, broken);
    assert!(matches!(read_job(broken.as_bytes()), Err(ReadError::Syntax { .. })));
    for unclosed in ["wrench: (", "wrench: \"", "wrench: [1, 2", "wrench: r#\"x\"", "wrench: /* ", "wrench"] {
        let text = format!("(format: 7, readable_since: 1, {unclosed}");
        assert!(matches!(read_job(text.as_bytes()), Err(ReadError::Syntax { .. })), "{unclosed}");
    }
}

#[test]
fn too_new_a_file_stops_naming_both_formats() {
    let text = write_job(&World::sound().job).unwrap().replacen(
        &format!("(format: {FORMAT}, readable_since: 1,"),
        "(format: 9, readable_since: 8,",
        1,
    );
    let error = read_job(text.as_bytes()).unwrap_err();
    assert_eq!(error, ReadError::TooNew { file: 9, needs: 8 });
    let says = error.to_string();
    assert!(says.contains("format 9") && says.contains("format 8") && says.contains(&format!("up to {FORMAT}")), "{says}");
    // Nothing behind the header is looked at: it may be of any shape.
    assert_eq!(read_job(b"(format: 9, readable_since: 8, \x28\x28\x28").unwrap_err(), ReadError::TooNew { file: 9, needs: 8 });
}

#[test]
fn a_newer_file_full_of_unknown_fields_is_read_or_refused_in_time() {
    let extra: String = (0..9000).map(|number| format!("wrench_{number}: \"a value of some length, as there are\", ")).collect();
    let started = std::time::Instant::now();
    let opened = read_job(format!("(format: 9, readable_since: 1, {extra} name: \"x\")").as_bytes()).unwrap();
    assert_eq!(opened.document.name, "x");
    assert!(started.elapsed().as_secs() < 20, "{:?}", started.elapsed());
}
