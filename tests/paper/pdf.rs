//! PDFs: the same bytes every time, sound beside the readers' own tools (ignored: they need poppler), and pictures of pages.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Arc;

use pourbook::job::PatternId;
use pourbook::paper::block::Raster;
use pourbook::paper::layout::{Format, Mark};
use pourbook::paper::{Pictures, SheetInput, Sort, as_pages, as_pdf, papers};
use pourbook::texts::{Language, Texts};

use crate::jobs::{Ready, studio, three_flasks};

fn holds(bytes: &[u8], word: &str) -> bool {
    bytes.windows(word.len()).any(|window| window == word.as_bytes())
}

fn checked() -> Arc<Raster> {
    let pixel = |index: u32| if index.is_multiple_of(3) { [30, 30, 30, 255] } else { [220, 220, 220, 120] };
    Arc::new(Raster { width: 12, height: 12, rgba: (0..144).flat_map(pixel).collect() })
}

#[test]
fn the_same_input_gives_the_same_bytes_with_title_language_and_tree() {
    let ready = Ready::new(three_flasks(), studio());
    let mut pictures = Pictures { letterhead: Some(checked()), ..Pictures::default() };
    pictures.patterns.insert(PatternId(1), checked());
    let input = SheetInput { pictures: &pictures, ..ready.input() };
    let mut seen = BTreeSet::new();
    for sort in Sort::ALL {
        for printed in papers(&input, sort) {
            let pdf = || as_pdf(&printed, Format::A4, &input).unwrap();
            let bytes = pdf();
            assert_eq!(bytes, pdf(), "{sort:?}");
            assert!(bytes.starts_with(b"%PDF-1.7"));
            for word in ["/StructTreeRoot", "/Lang(en)", "/MarkInfo<</Marked true", "/Outlines", "/FontFile2", "/ToUnicode", "pdfuaid:part"]
            {
                assert!(holds(&bytes, word), "{sort:?}: {word}");
            }
            assert!(!holds(&bytes, "/Suspects"));
            seen.insert(bytes);
        }
    }
    // Two clients and an order of each, a bench sheet, a kiln sheet and the cards; nobody brought metal.
    assert_eq!(seen.len(), 7);
}

#[test]
fn words_no_face_has_signs_for_make_a_sound_pdf() {
    let mut job = three_flasks();
    job.name = "漢字 \u{202E}abc\u{0}\u{E000} 🜚 עברית".into();
    job.orders[0].lines[0].design = "لؤلؤ \u{FFFF}\u{1F600}".into();
    let ready = Ready::new(job, studio());
    for sort in [Sort::Bench, Sort::Quote, Sort::Slip] {
        for printed in papers(&ready.input(), sort) {
            let bytes = as_pdf(&printed, Format::Letter, &ready.input()).unwrap();
            assert!(holds(&bytes, "pdfuaid:part"), "{sort:?} is written by the rules for what can be heard");
        }
    }
}

/// A sample job as the program prints it, in a folder of its own.
struct Sheets {
    folder: tempfile::TempDir,
}

impl Sheets {
    fn of(sample: &str, more: &[&str]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        for sort in ["sheet", "kiln", "quote", "slip", "receipt", "account", "parcel", "what-now"] {
            let job = Path::new("sample-jobs").join(format!("{sample}.ron"));
            let done = Command::new(env!("CARGO_BIN_EXE_pourbook"))
                .arg(sort)
                .arg(job)
                .args(["--at", "2026-11-26", "-o"])
                .arg(folder.path().join(format!("{sort}.pdf")))
                .args(more)
                .output()
                .unwrap();
            assert!(matches!(done.status.code(), Some(0)), "{sample} {sort}: {}", String::from_utf8_lossy(&done.stderr));
        }
        Self { folder }
    }

    fn files(&self) -> Vec<PathBuf> {
        let mut all: Vec<PathBuf> = std::fs::read_dir(self.folder.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
        all.sort();
        all
    }
}

/// Runs a tool that must have nothing to complain of.
fn quiet(tool: &str, args: &[&str], file: &Path, last: &[&str]) -> String {
    let done = Command::new(tool).args(args).arg(file).args(last).output().unwrap_or_else(|error| panic!("{tool}: {error}"));
    let said = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success() && said.is_empty(), "{tool} on {}: {said}", file.display());
    String::from_utf8_lossy(&done.stdout).into_owned()
}

const SAMPLES: [&str; 5] = ["first-pour", "mixed-kiln", "workshop-class", "order-book", "own-gold"];

#[test]
#[ignore = "needs poppler's tools"]
fn a_widespread_reader_has_nothing_to_complain_of() {
    let mut files = 0;
    for sample in SAMPLES {
        for more in [&["--paper", "a4"][..], &["--paper", "letter", "--language", "de", "--units", "trade"]] {
            for file in Sheets::of(sample, more).files() {
                let about = quiet("pdfinfo", &[], &file, &[]);
                let says = |key: &str| about.lines().find(|line| line.starts_with(key)).map(|line| line[key.len()..].trim().to_owned());
                assert_eq!(says("Tagged:").as_deref(), Some("yes"), "{}", file.display());
                assert_eq!(says("JavaScript:").as_deref(), Some("no"));
                assert!(says("Title:").is_some_and(|title| title.len() > 5), "{about}");
                let size = if more[1] == "a4" { "(A4)" } else { "(letter)" };
                assert!(says("Page size:").is_some_and(|said| said.contains(size)), "{about}");
                let fonts = quiet("pdffonts", &[], &file, &[]);
                for font in fonts.lines().skip(2) {
                    assert!(
                        font.contains("DejaVuSansCondensed") && font.contains(" yes yes yes "),
                        "embedded, in part, with its text: {font}"
                    );
                }
                files += 1;
            }
        }
    }
    assert!(files > 50, "{files}");
}

/// The text a reader finds, on one line.
fn text_of(file: &Path) -> String {
    quiet("pdftotext", &["-enc", "UTF-8"], file, &["-"]).split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
#[ignore = "needs poppler's tools"]
fn every_word_can_be_searched_and_copied_as_it_was_set() {
    let job = std::fs::read("sample-jobs/mixed-kiln.ron").unwrap();
    let studio = std::fs::read("sample-jobs/studio.ron").unwrap();
    let job = pourbook::job::format::read_job(&job).unwrap().document;
    let studio = pourbook::job::format::read_studio(&studio).unwrap().document;
    let ready = Ready::new(job, studio);
    let folder = tempfile::tempdir().unwrap();
    let (mut words, mut minus) = (0, 0);
    for language in Language::ALL {
        let input = SheetInput { texts: Texts::of(language), ..ready.input() };
        for sort in Sort::ALL {
            for printed in papers(&input, sort) {
                let file = folder.path().join("one.pdf");
                std::fs::write(&file, as_pdf(&printed, Format::A4, &input).unwrap()).unwrap();
                let found = text_of(&file);
                let laid = as_pages(&printed, Format::A4, input.texts);
                for content in laid.leaves.iter().flat_map(|leaf| &leaf.contents) {
                    let Mark::Text { run, .. } = &content.mark else { continue };
                    let set = run.words.split_whitespace().collect::<Vec<_>>().join(" ");
                    assert!(found.contains(&set), "{sort:?} {language:?}: “{set}” is not in\n{found}");
                    words += 1;
                    minus += usize::from(set.contains('−'));
                }
            }
        }
    }
    assert!(words > 2000, "{words} runs of words looked for");
    // A minus and a hyphen are two signs, on the page and in what is copied.
    let class = Sheets::of("workshop-class", &[]);
    let sheet = text_of(&class.folder.path().join("sheet.pdf"));
    assert!(sheet.contains("−1.3 mm") && !sheet.contains("-1.3 mm"), "{minus}: {sheet}");
    assert!(sheet.contains("bell jar") && sheet.contains("S-9"));
}

#[test]
#[ignore = "needs poppler's tools"]
fn who_hears_a_sheet_is_told_its_headings_tables_and_drawings_in_order() {
    let sheets = Sheets::of("mixed-kiln", &[]);
    let tree = quiet("pdfinfo", &["-struct-text"], &sheets.folder.path().join("sheet.pdf"), &[]);
    let at = |word: &str| tree.find(word).unwrap_or_else(|| panic!("{word} is not in\n{tree}"));
    let order = [
        "Flask 1",
        "Before you begin",
        "Tree and pieces",
        "Investment",
        "Burnout",
        "Tree in the flask",
        "Melt",
        "Quench and devest",
        "Flask 2",
    ];
    for pair in order.windows(2) {
        assert!(at(pair[0]) < at(pair[1]), "{pair:?}");
    }
    for kind in ["Table", "TR", "TH", "TD", "Figure", "H1", "H2"] {
        assert!(tree.contains(kind), "{kind}");
    }
}

/// Three pages of each sample, in grey, small; taken anew with `UPDATE_SNAPSHOTS=true`.
#[test]
#[ignore = "needs poppler's tools"]
fn pages_look_as_they_did() {
    let kept = Path::new("tests/paper/pictures");
    let anew = std::env::var("UPDATE_SNAPSHOTS").is_ok_and(|value| value == "true");
    let pages = [
        ("first-pour", ["sheet", "kiln", "quote-A"]),
        ("mixed-kiln", ["sheet", "quote-D", "slip-C-1"]),
        ("workshop-class", ["sheet", "kiln", "quote-E"]),
        ("order-book", ["sheet", "slip-D-2", "receipt-H"]),
        ("own-gold", ["kiln", "account", "parcel"]),
    ];
    let mut wrong = Vec::new();
    for (sample, sorts) in pages {
        let sheets = Sheets::of(sample, &[]);
        for sort in sorts {
            let pdf = sheets.folder.path().join(format!("{sort}.pdf"));
            let out = sheets.folder.path().join(format!("{sort}-picture"));
            let out = out.to_str().unwrap();
            quiet("pdftoppm", &["-gray", "-r", "60", "-f", "1", "-l", "1", "-singlefile", "-png"], &pdf, &[out]);
            let now = image::open(format!("{out}.png")).unwrap().to_luma8();
            let file = kept.join(format!("{sample}-{sort}.png"));
            if anew {
                std::fs::create_dir_all(kept).unwrap();
                now.save(&file).unwrap();
                continue;
            }
            let was = image::open(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display())).to_luma8();
            assert_eq!(was.dimensions(), now.dimensions(), "{}", file.display());
            // Readers of other versions smooth edges otherwise: only what is plainly other counts.
            let other = was.pixels().zip(now.pixels()).filter(|(was, now)| was.0[0].abs_diff(now.0[0]) > 90).count();
            let share = other as f64 / was.pixels().count() as f64;
            if share > 0.002 {
                wrong.push(format!("{}: {:.2} % of it", file.display(), share * 100.0));
            }
        }
    }
    assert!(wrong.is_empty(), "look otherwise: {wrong:?}");
}
