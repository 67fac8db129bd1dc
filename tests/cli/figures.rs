//! `figures` and `findings`.

use serde_json::Value;

use crate::{DAY, JOBS, job, run, sample, told};

#[test]
fn figures_as_json_carry_their_working() {
    for name in JOBS {
        let (code, stdout, stderr) = told(&run(&format!("figures {{}} --json --at {DAY}"), &sample(name)));
        assert_eq!((code, stderr.as_str()), (0, ""), "{name}");
        let json: Value = serde_json::from_str(&stdout).expect("JSON");
        assert!(json["job"].is_object() && json["findings"].is_array(), "{name}");
        let figures = json["figures"].as_array().expect("figures");
        assert!(figures.len() >= 4, "{name} has {} figures", figures.len());
        let mut ids = std::collections::BTreeSet::new();
        for figure in figures {
            for key in ["id", "place", "unit", "rule", "formula", "source", "trust"] {
                assert!(figure[key].is_string(), "{name}: {key} of {figure}");
            }
            assert!(figure["value"].is_number() || figure["missing"].is_string(), "{name}: {figure}");
            assert!(ids.insert(figure["id"].to_string()), "{name}: {} stands twice", figure["id"]);
            for term in figure["terms"].as_array().expect("terms") {
                for key in ["symbol", "key", "place", "unit", "origin", "source", "trust"] {
                    assert!(term[key].is_string(), "{name}: {key} of {term}");
                }
            }
        }
        let known = |id: &Value| id.is_null() || ids.contains(&id.to_string());
        assert!(figures.iter().flat_map(|figure| figure["terms"].as_array().expect("terms")).all(|term| known(&term["id"])), "{name}");
    }
}

#[test]
fn the_same_job_prints_the_same_bytes() {
    for name in JOBS {
        let arguments = format!("figures {{}} --json --at {DAY}");
        assert_eq!(run(&arguments, &sample(name)).stdout, run(&arguments, &sample(name)).stdout, "{name}");
    }
}

#[test]
fn findings_end_with_one_while_a_stop_stands() {
    let (code, stdout, _) = told(&run(&format!("findings {{}} --at {DAY}"), &sample("workshop-class.ron")));
    assert_eq!(code, 1);
    assert!(stdout.lines().any(|line| line.starts_with("STOP ")), "{stdout}");
    for name in ["first-pour.ron", "mixed-kiln.ron", "order-book.ron"] {
        let (code, stdout, stderr) = told(&run(&format!("findings {{}} --at {DAY}"), &sample(name)));
        assert_eq!((code, stderr.as_str()), (0, ""), "{name}: {stdout}");
    }
}

#[test]
fn a_stop_that_a_master_signs_for_stops_no_longer() {
    let flask = |accepted: &str| {
        format!(
            r#"(format: 1, readable_since: 1,
              trees: [(id: 1, weighed: [(material: "wax-injection", weight: Net(300))])],
              flasks: [(id: 1, vessel: "flask-89x102", tree: 1, alloy: "silver-925", powder: "powder-gypsum", melt: 1)],
              melts: [(id: 1, crucible: "crucible-graphite-small")], accepted: [{accepted}])"#
        )
    };
    let signed = |hands: &str, reason: &str| {
        flask(&format!(r#"(finding: "crucible-full", place: "melt/1", value: 100.0, hands: "{hands}", reason: "{reason}")"#))
    };
    let code_of = |text: &str| {
        let (folder, path) = job(text);
        let studio = r#"(format: 1, readable_since: 1, hands: [(initials: "MA", role: Master), (initials: "AP")])"#;
        std::fs::write(folder.path().join("studio.ron"), studio).expect("written");
        told(&run(&format!("findings {{}} --at {DAY}"), &path))
    };
    assert_eq!(code_of(&flask("")).0, 1);
    assert_eq!(code_of(&signed("AP", "it will be fine")).0, 1, "an apprentice does not overrule a Stop");
    assert_eq!(code_of(&signed("MA", "")).0, 1, "a reason is wanted");
    let (code, stdout, stderr) = code_of(&signed("MA", "two pours from one charge"));
    assert_eq!(code, 0, "{stdout}{stderr}");
    assert!(stdout.contains("MA answers for it: two pours from one charge"), "{stdout}");
}

#[test]
fn figures_as_text_name_every_figure_and_every_term() {
    let (code, stdout, _) = told(&run(&format!("figures {{}} --at {DAY}"), &sample("first-pour.ron")));
    assert_eq!(code, 0);
    assert!(stdout.contains("flask.charge = (tree + button + reserve)/(1 - loss)"), "{stdout}");
    assert!(!stdout.contains('«') && !stdout.contains("NaN"), "{stdout}");
}
