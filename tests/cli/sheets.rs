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
fn the_kiln_sheet_holds_the_whole_night() {
    let (code, sheet, _) = told(&run(&format!("kiln {{}} --at {DAY}"), &sample("power-cut.ron")));
    assert_eq!(code, 0);
    for words in ["Into the controller", "full speed", "In the moulds", "The work before the pour", "Light the kiln", "carbon"] {
        assert!(sheet.contains(words), "{words}: {sheet}");
    }
    // The steam begins when the timetable says so.
    let clock = |line: &str| line.split_whitespace().find(|word| word.contains(':')).map(str::to_owned);
    let line = |words: &str| sheet.lines().find(|line| line.contains(words)).map(str::to_owned).unwrap_or_default();
    let steam = line("[ ]   Steam");
    assert_eq!(clock(&line("Start the steam")), clock(&steam), "{sheet}");
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

#[test]
fn every_paper_goes_into_pdfs_a_client_each_and_the_same_bytes_twice() {
    let folder = tempfile::tempdir().expect("a folder");
    let to = |name: &str| folder.path().join(name).display().to_string();
    let print = |arguments: &str| told(&run(&format!("{arguments} --at {DAY}"), &sample("mixed-kiln.ron")));
    for (sort, files) in [
        ("sheet", vec!["sheet.pdf"]),
        ("kiln", vec!["kiln.pdf"]),
        ("quote", vec!["quote-C.pdf", "quote-D.pdf", "quote-H.pdf", "quote-K.pdf"]),
        ("slip", vec!["slip-C-1.pdf", "slip-D-2.pdf", "slip-H-3.pdf", "slip-K-4.pdf"]),
        ("receipt", vec!["receipt-H.pdf", "receipt-M.pdf"]),
        ("account", vec!["account.pdf"]),
        ("what-now", vec!["what-now.pdf"]),
    ] {
        let (code, _, stderr) = print(&format!("{sort} {{}} --paper letter --units trade -o {}", to(&format!("{sort}.pdf"))));
        assert_eq!((code, stderr.as_str()), (0, ""), "{sort}");
        for file in files {
            let bytes = std::fs::read(folder.path().join(file)).expect(file);
            assert!(bytes.starts_with(b"%PDF-") && bytes.len() > 10_000, "{file}");
        }
    }
    let (code, ..) = print(&format!("quote {{}} --client d --paper letter --units trade -o {}", to("again.pdf")));
    assert_eq!(code, 0);
    let read = |name: &str| std::fs::read(folder.path().join(name)).expect(name);
    assert_eq!(read("again.pdf"), read("quote-D.pdf"), "the one client, the same bytes");
    let (code, ..) = print(&format!("receipt {{}} --client h -o {}", to("receipt-H.pdf")));
    assert_eq!(code, 2, "what is there already is left as it is");
}

#[test]
fn papers_speak_the_language_and_the_units_that_are_asked_for() {
    let (code, german, said) = told(&run(&format!("sheet {{}} --language de --units trade --at {DAY}"), &sample("first-pour.ron")));
    assert_eq!((code, said.as_str()), (0, ""));
    for words in ["EINWAAGE", "Küvette 1", "dwt", "°F", "Sterlingsilber 925", "Seite 1 von"] {
        assert!(german.contains(words), "{words} is not in\n{german}");
    }
    assert!(!german.contains("CHARGE ON THE BALANCE") && !german.contains('«'));
    let (_, slip, _) = told(&run(&format!("slip {{}} --at {DAY}"), &sample("first-pour.ron")));
    assert!(slip.contains("1.1") && slip.contains("Order 1 for A"), "{slip}");
    let (code, kiln, _) = told(&run(&format!("kiln {{}} --comma --at {DAY}"), &sample("order-book.ron")));
    assert_eq!((code, kiln.trim()), (0, "No kiln load, so no kiln sheet."));
    assert_eq!(told(&run("sheet {} --paper a5", &sample("first-pour.ron"))).0, 2);
}

#[test]
fn cards_for_when_something_goes_wrong_are_a_page_each_with_what_the_batch_knows() {
    let (code, cards, said) = told(&run(&format!("what-now {{}} --at {DAY}"), &sample("mixed-kiln.ron")));
    assert_eq!((code, said.as_str()), (0, ""));
    assert_eq!(cards.split('\u{c}').count(), 9, "{cards}");
    for words in ["Kiln off", "Somebody is burnt", "20 minutes", "788 °C", "270 °C", "Data sheets, the equipment's manuals, local codes"]
    {
        assert!(cards.contains(words), "{words} is not in\n{cards}");
    }
    let (code, german, _) = told(&run(&format!("what-now {{}} --language de --units trade --at {DAY}"), &sample("order-book.ron")));
    assert_eq!(code, 0);
    for words in ["Ofen aus", "Jemand ist verbrannt", "518 °F", "Notruf"] {
        assert!(german.contains(words), "{words} is not in\n{german}");
    }
    assert!(!cards.contains('«') && !german.contains('«'));
}
