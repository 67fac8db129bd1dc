//! What the record teaches is shown with what it would change, and taken on only when that is pressed.

use std::time::{Duration, Instant};

use eframe::egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use jiff::civil::date;
use pourbook::app::page::Page;
use pourbook::job::format::write_job;
use pourbook::job::{Entry, Event, Flask, FlaskId, Frozen, Job, JobId, MetalKind, PouredAs, RecordId};
use pourbook::quantity::Grams;
use pourbook::stock::{Entry as ShelfEntry, EntryId, OverlayItem, Trust};
use pourbook::texts::Texts;

use super::shapes::texts;
use super::{Sight, USUAL, empty};

fn grams(text: &str) -> Grams {
    Grams::new(text.parse().unwrap()).unwrap()
}

/// A batch of one flask of sterling that lost three and a half hundredths, a little more or less.
fn batch(nth: u8) -> Job {
    let flask = Flask { id: FlaskId(1), alloy: EntryId::new("silver-925"), ..Flask::default() };
    let poured =
        Event::Poured { flask: FlaskId(1), plan: Frozen::default(), done: PouredAs { charge: Some(grams("100")), ..PouredAs::default() } };
    let metal = |what, weight: &str| Event::Metal { melt: None, flask: Some(FlaskId(1)), what, grams: grams(weight) };
    let good = format!("6{}.{nth}", 6 + nth % 2);
    let events = [poured, metal(MetalKind::GoodPieces, &good), metal(MetalKind::SpruesAndButton, "29.7")];
    let at = Some(date(2026, 10, i8::try_from(nth).unwrap() + 1).at(9, 30, 0, 0));
    let record = (1..).zip(events).map(|(id, event)| Entry { id: RecordId(id), at, event, ..Entry::default() });
    Job { job_id: JobId([nth + 1; 16]), name: format!("batch {nth}"), flasks: vec![flask], record: record.collect(), ..Job::default() }
}

#[test]
fn a_melt_loss_of_the_record_is_taken_on() {
    let folder = tempfile::tempdir().unwrap();
    for nth in 0..7 {
        std::fs::write(folder.path().join(format!("batch-{nth}.ron")), write_job(&batch(nth)).unwrap()).unwrap();
    }
    let mut harness = empty(Sight { height: 4000.0, ..USUAL });
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &folder.path().join("batch-0.ron"));
    harness.state_mut().workbook.view.page = Page::Settings;
    harness.state_mut().workbook.view.unfolded.insert("settings-taught");
    harness.run();
    let begun = Instant::now();
    while harness.state().workbook.folder_jobs.found().is_none() {
        assert!(begun.elapsed() < Duration::from_secs(60), "the folder was read");
        std::thread::sleep(Duration::from_millis(50));
        harness.run_steps(2);
    }
    harness.run();
    let written: Vec<String> = texts(&harness.output().shapes).into_iter().map(|seen| seen.words).collect();
    let says = |words: &str| written.iter().any(|text| text.contains(words));
    assert!(says("7 jobs tell something.") && says("With it, what takes 100 g in the crucible now takes"), "{written:?}");
    assert!(harness.state().workbook.studio.shelf.is_empty(), "nothing is taken on unasked");
    let take = Texts::english().label("taught-take");
    let name = {
        let buttons = harness.query_all_by_role(Role::Button).filter_map(|node| node.accesskit_node().label());
        buttons.into_iter().find(|name| name.starts_with(&take)).expect("it can be taken on")
    };
    harness.get_by_label(&name).click();
    harness.run();
    let shelf = &harness.state().workbook.studio.shelf;
    let [OverlayItem::Replace { entry: ShelfEntry::Alloy(alloy), .. }] = shelf.as_slice() else { panic!("{shelf:?}") };
    assert_eq!((alloy.id.as_str(), alloy.melt_loss.trust), ("silver-925", Trust::Studio));
    // 100 g in, 29.7 and from 66.0 to 67.5 g out.
    assert!((0.025..0.045).contains(&alloy.melt_loss.value), "{}", alloy.melt_loss.value);
    assert!(alloy.melt_loss.source.contains("7 jobs"), "{}", alloy.melt_loss.source);
}
