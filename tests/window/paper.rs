//! Papers in the window: looked at page by page, dressed otherwise, put into files; by mouse and by keys alone.

use std::path::{Path, PathBuf};

use eframe::egui::{Key, Modifiers};
use pourbook::app::page::Page;
use pourbook::paper::Sort;
use pourbook::paper::layout::Format;
use pourbook::texts::Language;

use super::hands::{Hands, Way, words};
use super::{USUAL, empty};

/// The sample studio in a folder of its own, with a batch open.
fn open(folder: &Path, name: &str, way: Way) -> Hands {
    std::fs::create_dir_all(folder.join("patterns")).unwrap();
    for part in ["", "patterns"] {
        for entry in std::fs::read_dir(Path::new("sample-jobs").join(part)).unwrap() {
            let path = entry.unwrap().path();
            if path.is_file() {
                std::fs::copy(&path, folder.join(part).join(path.file_name().unwrap())).unwrap();
            }
        }
    }
    let mut harness = empty(USUAL);
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &folder.join(name));
    let mut hands = Hands::new(harness, way);
    hands.settle();
    hands
}

fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let all = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut found: Vec<PathBuf> = all.filter(|path| path.extension().is_some_and(|extension| extension == ending)).collect();
    found.sort();
    found
}

fn leaf(hands: &Hands) -> usize {
    hands.harness.state().workbook.view.paper.leaf
}

#[test]
fn a_paper_is_looked_at_dressed_and_kept_by_mouse_and_by_keys() {
    for way in [Way::Mouse, Way::Keys] {
        let folder = tempfile::tempdir().unwrap();
        let mut hands = open(folder.path(), "mixed-kiln.ron", way);
        hands.key(Modifiers::COMMAND, Key::P);
        hands.settle();
        assert_eq!(hands.harness.state().workbook.view.page, Page::Paper);
        let shown = |hands: &Hands| hands.harness.state().workbook.shown.clone().unwrap();
        // What is answered for on the bronze flask makes its sheet run on.
        assert_eq!(shown(&hands).laid.unwrap().leaves.len(), 5, "three flasks, one of them on two pages, and the batch");
        hands.press(&words("paper-next"));
        hands.press(&words("paper-next"));
        assert_eq!(leaf(&hands), 2);
        hands.press(&words("paper-before"));
        assert_eq!(leaf(&hands), 1);
        hands.choose(&words("paper-language"), Language::German.name());
        hands.choose(&words("paper-format"), &words("paper-letter"));
        let dressed = shown(&hands);
        assert_eq!((dressed.dress.language, dressed.dress.format, dressed.dress.comma), (Language::German, Format::Letter, true));
        assert!(dressed.laid.unwrap().title.starts_with("Werkbankblatt"));
        hands.press(&words("paper-pdf"));
        hands.press(&words("paper-text"));
        let pdf = std::fs::read(folder.path().join("mixed-kiln-sheet.pdf")).unwrap();
        assert!(pdf.starts_with(b"%PDF-") && pdf.windows(8).any(|word| word == b"/Lang(de"));
        let text = std::fs::read_to_string(folder.path().join("mixed-kiln-sheet.txt")).unwrap();
        assert!(text.contains("EINWAAGE") && text.contains("83,89 g"), "{text}");
        // Twice the same name is never written over.
        hands.press(&words("paper-pdf"));
        assert_eq!(std::fs::read(folder.path().join("mixed-kiln-sheet-2.pdf")).unwrap(), pdf, "the same bytes for the same batch");
        // Quotes keep a dress of their own, and each client has a file that does not tell of the batch.
        hands.press(&words("sort-quote"));
        assert_eq!(shown(&hands).dress.language, Language::English);
        hands.press("D");
        assert_eq!(shown(&hands).document().unwrap().client, "D");
        hands.press("All 4 as PDFs");
        let quotes: Vec<String> =
            files(folder.path(), "pdf").iter().map(|path| path.file_name().unwrap().to_string_lossy().into_owned()).collect();
        for client in ["C", "D", "H", "K"] {
            assert!(quotes.contains(&format!("quote-{client}.pdf")), "{quotes:?}");
        }
        assert!(!hands.harness.state().workbook.is_changed(), "printing changes nothing");
    }
}

#[test]
fn what_is_not_saved_says_so_beside_its_version_and_a_change_is_set_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let mut hands = open(folder.path(), "first-pour.ron", Way::Mouse);
    hands.go(Page::Paper);
    let said = |hands: &Hands| {
        let shown = hands.harness.state().workbook.shown.as_ref().unwrap();
        shown.document().unwrap().paper.head.iter().map(|(left, right)| format!("{left} {right}")).collect::<Vec<_>>().join(" ")
    };
    let before = said(&hands);
    assert!(!before.contains("not saved"), "{before}");
    hands.harness.state_mut().workbook.edit("another name", |job| job.name = "Second pour".into());
    hands.settle();
    let after = said(&hands);
    assert!(after.contains("Second pour") && after.contains("not saved") && after != before, "{after}");
    hands.harness.state_mut().workbook.undo();
    hands.settle();
    assert_eq!(said(&hands), before);
}

#[test]
fn a_sort_with_nothing_to_print_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let mut hands = open(folder.path(), "order-book.ron", Way::Mouse);
    hands.harness.state_mut().workbook.view.paper.sort = Sort::Kiln;
    hands.go(Page::Paper);
    assert!(hands.harness.state().workbook.shown.as_ref().unwrap().laid.is_none());
    hands.harness.state_mut().workbook.view.paper.sort = Sort::Slip;
    hands.settle();
    assert_eq!(hands.harness.state().workbook.shown.as_ref().unwrap().printed.len(), 4);
}
