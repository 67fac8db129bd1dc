//! A whole batch of three flasks built from nothing, as a caster does it: once by mouse, once by keys alone. What stands on the disk at the end
//! is the sample, to the last digit.

use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::calc::Weight;
use pourbook::files::batch::Batch;
use pourbook::files::disk::RealDisk;
use pourbook::job::{Job, Studio};
use pourbook::stock::Shelf;
use std::path::Path;

use super::hands::{Hands, Way, words};
use super::{USUAL, empty};

/// The folder of a studio that has an order book, pattern files and lots, and wrote no price down yet.
fn studio() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs");
    std::fs::create_dir(folder.path().join("patterns")).unwrap();
    for file in std::fs::read_dir(samples.join("patterns")).unwrap() {
        let file = file.unwrap();
        std::fs::copy(file.path(), folder.path().join("patterns").join(file.file_name())).unwrap();
    }
    std::fs::copy(samples.join("order-book.ron"), folder.path().join("order-book.ron")).unwrap();
    let mut studio = Batch::open(&RealDisk, &samples.join("mixed-kiln.ron")).unwrap().studio;
    studio.prices.clear();
    let text = pourbook::job::format::write_studio(&studio).unwrap();
    std::fs::write(folder.path().join("studio.ron"), text).unwrap();
    folder
}

fn sample() -> (Job, Studio) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/mixed-kiln.ron");
    let batch = Batch::open(&RealDisk, &path).unwrap();
    (batch.job, batch.studio)
}

/// What an entry of the shelf is called.
fn named(id: &str) -> String {
    Shelf::shipped().entry(id).unwrap().name().to_owned()
}

/// A label of the catalogue with what stands behind it in a field's name.
fn of(key: &str, which: &str) -> String {
    format!("{} {which}", words(key))
}

impl Hands {
    fn put(&mut self, key: &str, text: &str) {
        self.fill(&words(key), text);
    }

    fn pick(&mut self, key: &str, id: &str) {
        self.choose(&words(key), &named(id));
    }

    fn open(&mut self, key: &str) {
        self.unfold(&words(key));
    }

    fn stops(&self) -> usize {
        self.harness.state().stops()
    }
}

/// A piece of a line, by number.
fn piece(key: &str, number: u32) -> String {
    format!("{}, Piece {number}", words(key))
}

fn take_on(hands: &mut Hands, design: &str) {
    hands.go(Page::Orders);
    hands.press(&format!("{}: {design}", words("orders-take-on-do")));
}

fn orders(hands: &mut Hands, folder: &Path, sample: &Job) {
    hands.go(Page::Orders);
    hands.open("batch-about");
    hands.put("batch-name", &sample.name);
    hands.put("batch-made", "2026-11-21");
    hands.put("batch-notes", &sample.notes);
    hands.open("orders-take-on");
    hands.put("orders-take-on-path", "order-book.ron");
    take_on(hands, "Bramble band");
    hands.open("orders-line-more");
    hands.put("orders-line-notes", &sample.orders[0].lines[0].notes);
    first_patterns(hands, folder, sample);
    hands.go(Page::Orders);
    hands.open("orders-single-pieces");
    hands.row("Piece 2");
    hands.choose(&piece("orders-pattern", 2), "Bramble band, printed larger");
    hands.fill(&piece("orders-notes", 2), "");
    hands.fill(&format!("{} Whelk pendant", words("orders-take-on-how-many")), "2");
    take_on(hands, "Whelk pendant");
    take_on(hands, "Limpet ring");
    hands.open("orders-more");
    hands.put("orders-order-notes", "");
    take_on(hands, "Haw studs");
    hands.press(&words("orders-add"));
    hands.put("orders-client", "H");
    hands.put("orders-taken", "2026-11-16");
    hands.put("orders-due", "2026-12-20");
    hands.put("orders-design", "Plain band, own gold");
    hands.pick("orders-alloy", "gold-14k-yellow");
    hands.pick("orders-scale", "ring-uk");
    hands.put("orders-size", "N");
    hands.put("orders-mark", "585");
    hands.put("orders-finishing", "30");
    hands.put("orders-finish", "polished");
    hands.put("orders-line-notes", &sample.orders[2].lines[0].notes);
    hands.go(Page::Patterns);
    hands.press(&words("patterns-add"));
    hands.put("patterns-name", "Plain band, carved");
    hands.pick("patterns-material", "wax-carving-hard");
    hands.put("patterns-on-scale", "0.34");
    hands.open("patterns-more");
    hands.choose(&words("patterns-section"), &words("section-medium"));
    hands.put("patterns-thinnest", "1.6");
    sides(hands, ["20.4", "20.4", "4"]);
    hands.go(Page::Orders);
    hands.choose(&words("orders-pattern"), "Plain band, carved");
    take_on(hands, "Snail");
    hands.press(&words("orders-add-line"));
    let knob = &sample.orders[3].lines[1];
    hands.put("orders-design", &knob.design);
    hands.put("orders-quantity", "2");
    hands.pick("orders-alloy", "bronze-silicon");
    hands.put("orders-finishing", "20 min");
    hands.put("orders-finish", "brushed");
    hands.put("orders-line-notes", &knob.notes);
}

fn sides(hands: &mut Hands, sides: [&str; 3]) {
    for (key, side) in ["patterns-along-typed", "patterns-across-typed", "patterns-deep-typed"].into_iter().zip(sides) {
        hands.put(key, side);
    }
}

/// Takes the choice of a section back.
fn no_section(hands: &mut Hands) {
    hands.choose(&words("patterns-section"), &words("choice-nothing"));
}

fn first_patterns(hands: &mut Hands, folder: &Path, sample: &Job) {
    hands.go(Page::Patterns);
    hands.row("Bramble band, to print");
    hands.put("patterns-name", "Bramble band, printed");
    hands.put("patterns-on-scale", ".57");
    hands.put("patterns-scale", "1");
    hands.open("patterns-more");
    no_section(hands);
    hands.put("patterns-thinnest", "1.4");
    hands.put("patterns-notes", &sample.patterns[0].notes);
    hands.pattern_file(folder, "patterns/bramble-band.stl");
    hands.put("patterns-name", "Bramble band, printed larger");
    hands.pick("patterns-material", "resin-castable");
    hands.put("patterns-scale", "1.105");
    hands.put("patterns-thinnest", "1,5");
    hands.put("patterns-notes", &sample.patterns[1].notes);
}

fn more_patterns(hands: &mut Hands, folder: &Path, sample: &Job) {
    hands.go(Page::Patterns);
    hands.row("Whelk, to print");
    hands.put("patterns-name", "Whelk, printed");
    hands.put("patterns-scale", "1");
    hands.row("Limpet ring, to print");
    hands.put("patterns-name", "Limpet ring, printed");
    hands.put("patterns-scale", "0.985");
    hands.row("Haw, shot");
    sides(hands, ["8", "8 mm", "0.8 cm"]);
    hands.put("patterns-labour", "");
    hands.put("patterns-waste", "");
    hands.row("Snail, to print");
    hands.put("patterns-name", "Snail, printed");
    hands.put("patterns-on-scale", "17.3");
    hands.put("patterns-scale", "1");
    sides(hands, ["53", "32.5", "22"]);
    hands.put("patterns-notes", &sample.patterns[6].notes);
    hands.pattern_file(folder, "patterns/barnacle-stud.stl");
    hands.put("patterns-name", "Barnacle knob, printed double");
    hands.pick("patterns-material", "resin-castable");
    hands.put("patterns-scale", "2");
    hands.choose(&words("patterns-section"), &words("section-heavy"));
    hands.go(Page::Orders);
    hands.choose(&words("orders-pattern"), "Barnacle knob, printed double");
}

/// A tree: base, pieces by their line's words and tier, weighings, main sprue, runs of feed sprues.
struct Built<'a> {
    name: &'a str,
    base: &'a str,
    pieces: &'a [(&'a str, &'a str)],
    weighed: &'a [(&'a str, &'a str)],
    main: [&'a str; 2],
    runs: &'a [[&'a str; 4]],
    notes: &'a str,
}

fn tree(hands: &mut Hands, built: &Built<'_>) {
    let before = hands.harness.state().workbook.job.trees.len();
    hands.press(&words("trees-add"));
    assert_eq!(hands.harness.state().workbook.job.trees.len(), before + 1);
    hands.put("trees-name", built.name);
    hands.pick("trees-base", built.base);
    for (place, (line, tier)) in built.pieces.iter().enumerate() {
        let number = (place + 1).to_string();
        hands.press(&words("trees-hang"));
        hands.choose(&of("trees-line", &number), line);
        hands.fill(&of("trees-tier", &number), tier);
    }
    for (place, (material, grams)) in built.weighed.iter().enumerate() {
        let number = (place + 1).to_string();
        hands.press(&words("trees-weigh"));
        hands.choose(&of("trees-material", &number), &named(material));
        if place == 0 {
            hands.choose(&of("trees-way", &number), &words("trees-net"));
        }
        hands.fill(&of("trees-weight", &number), grams);
        hands.fill(&of("trees-scale", &number), "Gold balance");
    }
    let main = |key: &str| format!("{}, {}", words("trees-main"), words(key));
    hands.choose(&main("trees-material"), &named("wax-sprue"));
    hands.fill(&main("trees-main-diameter"), built.main[0]);
    hands.fill(&main("trees-main-length"), built.main[1]);
    for (place, run) in built.runs.iter().enumerate() {
        // Weighings have fields of the same label.
        let number = (place + 1).to_string();
        hands.press(&words("trees-sprue-add"));
        for (key, text) in ["trees-sprue-count", "trees-sprue-diameter", "trees-sprue-length", "trees-sprue-angle"].into_iter().zip(run) {
            hands.fill(&of(key, &number), text);
        }
    }
    hands.put("trees-notes", built.notes);
}

fn trees(hands: &mut Hands, sample: &Job) {
    hands.go(Page::Trees);
    let silver = Built {
        name: "Silver",
        base: "base-89",
        pieces: &[("Bramble band, C, 2", "1"), ("Whelk pendant, C, 2", "2")],
        weighed: &[("resin-castable", "3.41"), ("wax-sprue", "2.62")],
        main: ["8", "38"],
        runs: &[["4", "3.5", "6", "30"]],
        notes: "",
    };
    tree(hands, &silver);
    let gold = Built {
        name: "Gold",
        base: "base-76",
        pieces: &[("Limpet ring, D, 1", "1"), ("Plain band, own gold, H, 1", "1"), ("Haw studs, D, 2", "2")],
        weighed: &[("resin-castable", "0.47"), ("wax-injection", "0.5"), ("wax-carving-hard", "0.34"), ("wax-sprue", "1.02")],
        main: ["7", "18"],
        runs: &[["4", "2.5", "5", "30"]],
        notes: &sample.trees[1].notes,
    };
    tree(hands, &gold);
    let bronze = Built {
        name: "Bronze",
        base: "base-102",
        pieces: &[("Snail, K, 1", "2"), ("Barnacle drawer knob, K, 2", "1")],
        weighed: &[],
        main: ["14", "30"],
        runs: &[["2", "8", "10", "12"], ["2", "5", "10", "12"]],
        notes: &sample.trees[2].notes,
    };
    tree(hands, &bronze);
}

struct Filled<'a> {
    scratch: &'a str,
    vessel: &'a str,
    tree: &'a str,
    button: &'a str,
    share: &'a str,
    reserve: &'a str,
    turn: &'a str,
    drive: Option<&'a str>,
    notes: &'a str,
    ratio: &'a str,
    mould: &'a str,
    /// What is set on the spinning machine.
    counterweight: Option<&'a str>,
}

fn flask(hands: &mut Hands, filled: &Filled<'_>) {
    hands.go(Page::Flasks);
    hands.press(&words("flasks-add"));
    hands.put("flasks-scratch", filled.scratch);
    hands.pick("flasks-vessel", filled.vessel);
    hands.choose(&words("flasks-tree"), filled.tree);
    hands.confirm(&words("flasks-collar"));
    hands.put("flasks-button-least", filled.button);
    hands.put("flasks-button-share", filled.share);
    hands.put("flasks-reserve", filled.reserve);
    hands.put("flasks-turn", filled.turn);
    if let Some(drive) = filled.drive {
        hands.choose(&words("flasks-drive"), &words(drive));
    }
    hands.put("flasks-notes", filled.notes);
    hands.go(Page::Investment);
    hands.pick("invest-powder", "powder-gypsum-resin");
    hands.put("invest-lot", "P-07");
    hands.put("invest-ratio", filled.ratio);
    hands.put("invest-spill", "10 %");
    hands.go(Page::Pour);
    hands.put("pour-mould-at", filled.mould);
    if let Some(counterweight) = filled.counterweight {
        hands.unfold(&words("pour-fill"));
        hands.put("pour-spin-set", counterweight);
    }
}

fn flasks(hands: &mut Hands, sample: &Job) {
    let silver = Filled {
        scratch: "S",
        vessel: "flask-64x64",
        tree: "Silver",
        button: "20",
        share: "0.1",
        reserve: "2",
        turn: "2",
        drive: None,
        notes: "",
        ratio: "0.39",
        mould: "580",
        counterweight: None,
    };
    flask(hands, &silver);
    assert!(hands.stops() > 0, "the tree is too large for the flask");
    hands.go(Page::Flasks);
    hands.pick("flasks-vessel", "flask-89x102");
    let tight = |found: &&pourbook::calc::Finding| found.kind.key.starts_with("tree-too");
    assert_eq!(hands.harness.state().report().findings.iter().filter(tight).count(), 0, "and fits in a larger one");
    let gold = Filled {
        scratch: "G",
        vessel: "flask-76x76",
        tree: "Gold",
        button: "17",
        reserve: "1",
        turn: "1",
        drive: Some("drive-centrifugal"),
        ratio: "0.4",
        mould: "620",
        counterweight: Some("1180"),
        ..silver
    };
    flask(hands, &gold);
    let bronze = Filled {
        scratch: "B",
        vessel: "flask-102x152",
        tree: "Bronze",
        button: "62",
        share: "15 %",
        reserve: "10",
        turn: "3",
        drive: Some("drive-gravity"),
        notes: &sample.flasks[2].notes,
        ratio: "0.38",
        mould: "450",
        counterweight: None,
    };
    flask(hands, &bronze);
}

fn burnout(hands: &mut Hands, sample: &Job) {
    hands.go(Page::Burnout);
    hands.put("heat-pour-at", "2026-12-05 10:00");
    hands.choose(&words("heat-table"), &words("choice-nothing"));
    hands.press(&words("heat-from-nothing"));
    for _ in 0..4 {
        hands.press(&words("heat-add-stage"));
    }
    let stages = [("149", "120", "3 h"), ("300", "80", "2 h"), ("482", "100", "90"), ("732", "125", "4 h"), ("", "", "1.5 h")];
    for (place, (target, rate, hold)) in stages.into_iter().enumerate() {
        let number = (place + 1).to_string();
        if !target.is_empty() {
            hands.fill(&of("heat-to", &number), target);
            hands.fill(&of("heat-rate", &number), rate);
        }
        hands.fill(&of("heat-hold", &number), hold);
    }
    for (flask, place) in [("S", "left, front"), ("G", "right, front"), ("B", "back")] {
        hands.fill(&format!("{} Flask {flask}", words("heat-position")), place);
    }
    hands.open("heat-more");
    hands.put("heat-name", "Friday to Saturday");
    hands.put("heat-loaded-at", "20");
    hands.put("heat-notes", &sample.burnouts[0].notes);
}

fn melts(hands: &mut Hands, sample: &Job) {
    hands.go(Page::Metal);
    for (melt, flask) in sample.melts.iter().zip(["S", "G", "B"]) {
        hands.press(&words("melt-add"));
        hands.pick("melt-crucible", melt.crucible.as_ref().unwrap().as_str());
        hands.tick(&format!("Flask {flask}"));
        for (place, draw) in melt.charge.iter().enumerate() {
            let number = (place + 1).to_string();
            hands.press(&words("melt-draw"));
            hands.choose(&of("melt-lot", &number), &draw.lot.to_string());
            hands.fill(&of("melt-grams", &number), &draw.grams.decimal().to_string());
            if !draw.notes.is_empty() {
                hands.fill(&of("melt-draw-notes", &number), &draw.notes);
            }
        }
        for consent in &melt.consents {
            hands.press(&words("melt-consent"));
            hands.fill(&of("melt-client", "1"), &consent.client);
            hands.fill(&of("melt-paper", "1"), &consent.paper);
        }
        hands.open("melt-more");
        hands.put("melt-name", &melt.name);
        if let Some(target) = melt.target_permille {
            hands.put("melt-target", &target.get().to_string());
        }
    }
}

fn prices(hands: &mut Hands, studio: &Studio) {
    use pourbook::job::PriceUnit;
    hands.go(Page::Settings);
    hands.open("settings-prices");
    for (place, price) in studio.prices.iter().enumerate() {
        let number = (place + 1).to_string();
        hands.press(&words("price-add"));
        hands.fill(&of("price-of", &number), &price.of);
        hands.fill(&of("price-amount", &number), &price.amount.decimal().to_string());
        let per = match price.per {
            PriceUnit::TroyOunce => "price-ozt",
            PriceUnit::Gram => "price-g",
            PriceUnit::Kilogram => "price-kg",
        };
        hands.choose(&of("price-per", &number), &words(per));
        hands.fill(&of("price-on", &number), &price.on.unwrap().to_string());
        hands.fill(&of("price-note", &number), &price.note);
    }
}

fn sign(hands: &mut Hands, sample: &Job) {
    hands.go(Page::Investment);
    hands.row("Flask B");
    for accepted in &sample.accepted {
        if accepted.finding == "feed-thin" {
            hands.go(Page::Trees);
        }
        hands.press_beginning(&words("do-answer"));
        hands.choose(&words("sign-hands"), &accepted.hands);
        hands.put("sign-reason", &accepted.reason);
        hands.press(&words("sign-do"));
        assert!(hands.harness.state().dialog.is_none());
    }
}

/// What was built and what is on the disk are the sample, but for what is different in every batch: its id, and when somebody signed.
fn compare(window: &Window, path: &Path, (mut sample, studio): (Job, Studio)) {
    let saved = Batch::open(&RealDisk, path).unwrap();
    assert_eq!(saved.job, *window.workbook.job, "what stands on the screen is what was saved");
    let mut built = saved.job;
    built.job_id = sample.job_id;
    for (ours, theirs) in built.accepted.iter_mut().zip(&sample.accepted) {
        assert!(ours.at.is_some());
        ours.at = theirs.at;
    }
    sample.shelf.sort_by(|a, b| a.entry.id().cmp(b.entry.id()));
    let text = |job: &Job| pourbook::job::format::write_job(job).unwrap();
    let (ours, theirs) = (text(&built), text(&sample));
    let differ: Vec<String> =
        ours.lines().zip(theirs.lines()).filter(|(a, b)| a != b).take(12).map(|(a, b)| format!("{a}   not   {b}")).collect();
    assert_eq!(ours, theirs, "{differ:#?}");
    let text = |studio: &Studio| pourbook::job::format::write_studio(studio).unwrap();
    assert_eq!(text(&saved.studio), text(&studio));
}

fn build(way: Way) {
    let folder = studio();
    let (sample, studio) = sample();
    let mut hands = Hands::new(empty(USUAL), way);
    let path = folder.path().join("built.ron");
    hands.save_as(&path);
    orders(&mut hands, folder.path(), &sample);
    more_patterns(&mut hands, folder.path(), &sample);
    trees(&mut hands, &sample);
    flasks(&mut hands, &sample);
    burnout(&mut hands, &sample);
    melts(&mut hands, &sample);
    prices(&mut hands, &studio);
    sign(&mut hands, &sample);
    hands.save();
    let window = hands.harness.state();
    assert_eq!(window.workbook.computed.of_weight(Weight::Stop).count(), 0);
    compare(window, &path, (sample, studio));
}

#[test]
fn a_whole_batch_is_built_by_mouse() {
    build(Way::Mouse);
}

#[test]
fn a_whole_batch_is_built_by_keys_alone() {
    build(Way::Keys);
}
