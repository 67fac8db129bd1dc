//! The main job, `sheet` and `quote`.

use crate::{DAY, JOBS, run, sample, told};

#[test]
fn the_main_job_prints_the_sheet_and_ends_well() {
    for name in JOBS {
        let (code, sheet, said) = told(&run(&format!("{{}} --at {DAY}"), &sample(name)));
        assert_eq!((code, said.lines().count()), (0, 1), "{name}: {said}");
        assert_eq!(sheet, told(&run(&format!("sheet {{}} --at {DAY}"), &sample(name))).1, "{name}");
        assert!(sheet.lines().count() > 20, "{name}");
    }
}

#[test]
fn quotes_are_there_for_every_client_of_the_order_book() {
    let (code, quotes, said) = told(&run(&format!("quote {{}} --at {DAY}"), &sample("mixed-kiln.ron")));
    assert_eq!((code, said.as_str()), (0, ""));
    assert!(quotes.matches('\u{c}').count() >= 3, "four clients have four pages");
}

#[test]
fn a_sheet_goes_into_a_file_and_never_over_one() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("sheet.txt");
    let arguments = format!("sheet {{}} -o {} --at {DAY}", path.display());
    let (code, stdout, stderr) = told(&run(&arguments, &sample("first-pour.ron")));
    assert_eq!((code, stdout.as_str(), stderr.as_str()), (0, "", ""));
    let written = std::fs::read_to_string(&path).expect("written");
    assert_eq!(written, told(&run(&format!("sheet {{}} --at {DAY}"), &sample("first-pour.ron"))).1);
    std::fs::write(&path, "mine").expect("written");
    let (code, _, stderr) = told(&run(&arguments, &sample("first-pour.ron")));
    assert_eq!(code, 2, "{stderr}");
    assert_eq!(std::fs::read_to_string(&path).expect("there"), "mine");
}
