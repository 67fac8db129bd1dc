//! Three invented years of a studio as job files, whose truth is known: written to a folder, read again, and learned from.

use std::path::Path;
use std::time::Instant;

use jiff::civil::{Date, DateTime, date};
use pourbook::app::folder_run::read_folder;
use pourbook::calc::learned::{Said, Verdict};
use pourbook::calc::taught::{By, Lesson};
use pourbook::files::disk::RealDisk;
use pourbook::job::format::write_job;
use pourbook::job::{
    BenchStep, Burnout, BurnoutId, Entry, Event, Flask, FlaskId, Frozen, FrozenFigure, Hung, InvestedAs, Job, JobId, Line, LineId,
    MetalKind, Order, OrderId, Pattern, PatternId, PieceId, PieceStage, Place, PouredAs, Programme, RecordId, Tree, TreeId,
};
use pourbook::quantity::{Finite, Grams};
use pourbook::stock::{EntryId, Section};

use super::chance::Chance;

/// The truth: sterling loses 1.4 %, bronze 2.6 %; filing and polishing take 8 %; gloss-off comes after 10.2 min; a mix takes 4.3 min;
/// a piece in a hundred fails, but of lot P-4 one in eight.
const LOSS: [(&str, f64); 2] = [("silver-925", 0.014), ("bronze-silicon", 0.026)];
const FINISHING: f64 = 0.08;
const GLOSS_OFF_MIN: f64 = 10.2;
const MIX_MIN: f64 = 4.3;
const LOTS: [(&str, f64); 5] = [("P-1", 0.01), ("P-2", 0.01), ("P-3", 0.01), ("P-4", 0.125), ("P-5", 0.01)];
const JOBS: u32 = 600;

fn entry(id: &str) -> Option<EntryId> {
    EntryId::new(id)
}

fn grams(value: f64) -> Grams {
    Grams::new(format!("{value:.2}").parse().unwrap()).unwrap()
}

fn number(value: f64) -> Option<Finite> {
    Finite::new(value)
}

/// A batch of one flask of six pieces, with everything that was weighed and timed.
fn batch(nth: u32, dice: &mut Chance) -> Job {
    let mut id = [0; 16];
    id[..4].copy_from_slice(&(nth + 1).to_be_bytes());
    let day: Date = date(2023, 9, 4).checked_add(jiff::Span::new().days(i64::from(nth) * 1095 / i64::from(JOBS))).unwrap();
    let at = |hour: i8, minute: i8| Some(day.at(hour, minute, 0, 0));
    let (alloy, loss) = LOSS[usize::from(nth.is_multiple_of(3))];
    let (lot, bad) = LOTS[(nth / 7 % 5) as usize];
    let piece = |number| PieceId { line: LineId(1), number };
    let mut job = Job {
        job_id: JobId(id),
        name: format!("batch {}", nth + 1),
        made: Some(day),
        orders: vec![Order {
            id: OrderId(1),
            client: char::from(b'A' + u8::try_from(nth % 20).unwrap()).to_string(),
            taken: Some(day),
            lines: vec![Line {
                id: LineId(1),
                design: ["limpet ring", "bramble stud", "whelk charm", "sloe pendant"][(nth % 4) as usize].to_owned(),
                quantity: 6,
                alloy: entry(alloy),
                pattern: Some(PatternId(1)),
                ..Line::default()
            }],
            ..Order::default()
        }],
        patterns: vec![Pattern { id: PatternId(1), section: Some(Section::Medium), ..Pattern::default() }],
        trees: vec![Tree { id: TreeId(1), pieces: vec![Hung { line: LineId(1), ..Hung::default() }], ..Tree::default() }],
        flasks: vec![Flask {
            id: FlaskId(1),
            tree: Some(TreeId(1)),
            powder: entry("powder-gypsum"),
            powder_lot: lot.to_owned(),
            burnout: Some(BurnoutId(1)),
            ..Flask::default()
        }],
        burnouts: vec![Burnout { id: BurnoutId(1), programme: Some(Programme::Table(entry("stages-wax").unwrap())), ..Burnout::default() }],
        ..Job::default()
    };
    let mut record = Vec::new();
    let mut tell = |at: Option<DateTime>, event: Event| {
        let id = RecordId(u32::try_from(record.len()).unwrap() + 1);
        record.push(Entry { id, at, hands: "MW".to_owned(), event, ..Entry::default() });
    };
    let minutes = MIX_MIN + 0.3 * dice.normal();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few minutes")]
    tell(at(15, 0), Event::Timed { step: BenchStep::Mix, of: Place::Flask(FlaskId(1)), seconds: (60.0 * minutes) as u32 });
    let done = InvestedAs { lot: lot.to_owned(), gloss_off_min: number(GLOSS_OFF_MIN + 0.4 * dice.normal()), ..InvestedAs::default() };
    tell(at(15, 10), Event::Invested { flask: FlaskId(1), plan: Frozen::default(), done });
    // What was planned is what comes, but for what is lost and for a weight that is never quite the file's.
    let (tree, button) = (60.0 + 20.0 * dice.uniform(), 15.55);
    let figure =
        |rule: &str, value: f64| FrozenFigure { rule: rule.to_owned(), place: Place::Flask(FlaskId(1)), value: number(value).unwrap() };
    let plan = Frozen { figures: vec![figure("flask.tree-metal", tree), figure("flask.button", button)], ..Frozen::default() };
    let charge = (tree + button) * (1.0 + 0.004 * dice.normal()) / (1.0 - loss);
    let came = charge * (1.0 - loss - 0.003 * dice.normal());
    tell(at(9, 30), Event::Poured { flask: FlaskId(1), plan, done: PouredAs { charge: Some(grams(charge)), ..PouredAs::default() } });
    let metal = |what, weight: f64| Event::Metal { melt: None, flask: Some(FlaskId(1)), what, grams: grams(weight) };
    tell(at(11, 0), metal(MetalKind::GoodPieces, 0.6 * came));
    tell(at(11, 1), metal(MetalKind::SpruesAndButton, 0.4 * came));
    for number in 1..=6 {
        if dice.uniform() < bad {
            tell(at(11, 30), Event::Rejected { piece: piece(number), defect: "porosity".to_owned() });
            continue;
        }
        let rough = 6.0 + dice.uniform();
        tell(at(11, 40), Event::PieceWeighed { piece: piece(number), finished: false, grams: grams(rough) });
        let finished = rough * (1.0 - FINISHING - 0.01 * dice.normal());
        tell(at(16, 0), Event::PieceWeighed { piece: piece(number), finished: true, grams: grams(finished) });
    }
    tell(at(17, 0), Event::Reached { pieces: (1..=6).map(piece).collect(), stage: PieceStage::Delivered });
    job.record = record;
    job
}

#[test]
fn three_years_teach_what_was_true() {
    let folder = tempfile::tempdir().unwrap();
    let mut dice = Chance::new(7);
    for nth in 0..JOBS {
        let text = write_job(&batch(nth, &mut dice)).unwrap();
        std::fs::write(folder.path().join(format!("batch-{:03}.ron", nth + 1)), text).unwrap();
    }
    // One that is broken is told, and stops nothing.
    std::fs::write(folder.path().join("broken.ron"), "(format: 2, readable_since: 1,\n  orders: [(").unwrap();
    let begun = Instant::now();
    let found = read_folder(&RealDisk, Path::new(folder.path()), &Job::default(), date(2026, 11, 27), &|_| true);
    println!("{JOBS} jobs read and learned from in {:.2} s", begun.elapsed().as_secs_f64());
    assert_eq!((found.open.len(), found.broken.len()), (0, 1), "all is delivered");
    assert_eq!(found.settled, JOBS as usize);
    let taught = &found.taught;
    assert_eq!(taught.jobs, JOBS as usize);
    let near = |lesson: &Lesson, truth: f64| {
        let learned = taught.lessons.get(lesson).unwrap_or_else(|| panic!("{lesson:?}"));
        let band = learned.all.mean_interval.unwrap();
        println!("{lesson:?}: {:.4} from {:.4} to {:.4}, truth {truth}, {} jobs", learned.all.mean, band.lower, band.upper, learned.jobs);
        // Four times the half width: five lessons, one seed, and seconds cut to whole ones.
        assert!((learned.all.mean - truth).abs() < 2.0 * (band.upper - band.lower), "{lesson:?}: {} and not {truth}", learned.all.mean);
        assert!(band.upper - band.lower < 0.05 * truth, "600 batches say it narrowly");
    };
    for (alloy, loss) in LOSS {
        near(&Lesson::MeltLoss(alloy.to_owned()), loss);
        near(&Lesson::Finishing(alloy.to_owned()), FINISHING);
    }
    near(&Lesson::GlossOff("powder-gypsum".to_owned()), GLOSS_OFF_MIN);
    near(&Lesson::Minutes(BenchStep::Mix), MIX_MIN);
    let lots = &taught.defects[&By::PowderLot];
    assert_eq!((lots[0].key.as_str(), lots[0].said), ("P-4", Said::Worse), "the bad lot stands first");
    assert!(lots[1..].iter().all(|lot| lot.said != Said::Worse), "{lots:?}");
    let metal = taught.metal.as_ref().unwrap();
    assert_eq!(metal.count, JOBS as usize);
    assert!(matches!(metal.verdict, Verdict::TooWide | Verdict::Holds), "{:?}: it comes nearer than 3 %", metal.verdict);
    // Nothing is learned of what nobody measured.
    assert!(!taught.lessons.keys().any(|lesson| matches!(lesson, Lesson::Density(_))));
}

/// A gram and an eighth in a cubic centimetre, whatever the file is drawn in, and however it is scaled.
#[test]
fn density_is_of_the_print_and_not_of_the_file() {
    use pourbook::job::{FileUnit, KeptMeasures, PatternFile, Weighing};
    let lesson = Lesson::Density("resin-castable".to_owned());
    let learned = |unit: FileUnit, scale: f64, volume: f64| {
        let kept = Some(KeptMeasures { volume: number(volume), ..KeptMeasures::default() });
        let file = Some(PatternFile { unit, scale: number(scale), kept, ..PatternFile::default() });
        let pattern = Pattern { material: entry("resin-castable"), weighed: Some(Weighing::Net(grams(1.12))), file, ..Pattern::default() };
        let job = Job { patterns: vec![pattern], ..Job::default() };
        pourbook::calc::taught::teach([pourbook::calc::taught::Notes::of(&job)]).lessons[&lesson].all.mean
    };
    // 1 cm³ is 1000 mm³, and 0.0610237 in³ (NIST SP 811, table B.8: 1 in³ = 1.638 706 E-05 m³).
    for (unit, scale, volume) in
        [(FileUnit::Millimetre, 1.0, 1000.0), (FileUnit::Inch, 1.0, 1.0 / 16.387_06), (FileUnit::Millimetre, 2.0, 125.0)]
    {
        let density = learned(unit, scale, volume);
        assert!((density - 1.12).abs() < 1e-5, "{unit:?} {scale}: {density}");
    }
}
