//! Pattern files in the window: taken in, looked at, corrected, mended, painted.

use std::fs;
use std::path::{Path, PathBuf};

use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use pourbook::app::action::Action;
use pourbook::app::dialog::Dialog;
use pourbook::app::page::Page;
use pourbook::app::page::patterns::form::Colouring;
use pourbook::app::window::Window;
use pourbook::job::format::write_job;
use pourbook::job::{FileUnit, InnerSolids, Job, NoGoKind, Pair, PairKind, Pattern, PatternFile, PatternId};
use pourbook::quantity::Finite;

use super::hands::words;
use super::{Sight, USUAL, empty, looked_at};

/// So high that nothing has to be scrolled to.
const TALL: Sight = Sight { height: 2400.0, ..USUAL };

fn reference(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/outside/meshes/synthetic").join(name)
}

/// A batch in a folder of its own, with a pattern for each of these files.
fn batch(files: &[&str]) -> (tempfile::TempDir, Harness<'static, Window>) {
    let folder = tempfile::tempdir().unwrap();
    let patterns = (1..).zip(files).map(|(id, name)| {
        fs::copy(reference(name), folder.path().join(name)).unwrap();
        let file = PatternFile { path: (*name).to_owned(), ..PatternFile::default() };
        Pattern { id: PatternId(id), name: (*name).to_owned(), file: Some(file), ..Pattern::default() }
    });
    let job = Job { patterns: patterns.collect(), ..Job::default() };
    fs::write(folder.path().join("job.ron"), write_job(&job).unwrap()).unwrap();
    let mut harness = empty(TALL);
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &folder.path().join("job.ron"));
    harness.state_mut().workbook.view.page = Page::Patterns;
    looked_at(&mut harness);
    (folder, harness)
}

fn file(harness: &Harness<'static, Window>, at: usize) -> PatternFile {
    harness.state().workbook.job.patterns[at].file.clone().unwrap()
}

fn press(harness: &mut Harness<'static, Window>, name: &str) {
    harness.get_by_role_and_label(Role::Button, name).click();
    looked_at(harness);
}

fn has(harness: &Harness<'static, Window>, key: &str) -> bool {
    harness.state().report().findings.iter().any(|found| found.kind.key == key)
}

#[test]
fn a_file_in_inches_is_corrected_with_one_press() {
    let (_folder, mut harness) = batch(&["inch_scale_cube.stl"]);
    assert!(has(&harness, "file-unit"));
    harness.get_by_label_contains("It is drawn in").click();
    looked_at(&mut harness);
    assert_eq!(file(&harness, 0).unit, FileUnit::Inch);
    assert!(!has(&harness, "file-unit"));
}

#[test]
fn an_open_file_is_mended_into_another_and_undone() {
    let (folder, mut harness) = batch(&["cube_one_facet_missing_offset.stl"]);
    assert!(has(&harness, "file-open"));
    let before = fs::read(folder.path().join("cube_one_facet_missing_offset.stl")).unwrap();
    press(&mut harness, &words("mend-do"));
    assert_eq!(file(&harness, 0).path, "cube_one_facet_missing_offset-mended.stl");
    assert!(!has(&harness, "file-open"));
    let measure = pourbook::mesh::measure_file(&folder.path().join(file(&harness, 0).path), &pourbook::mesh::Limits::default()).unwrap();
    assert!((measure.volume_mm3.unwrap() - 1000.0).abs() < 1e-6);
    assert_eq!(fs::read(folder.path().join("cube_one_facet_missing_offset.stl")).unwrap(), before, "the old file is as it was");
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Undo);
    looked_at(&mut harness);
    assert_eq!(file(&harness, 0).path, "cube_one_facet_missing_offset.stl");
    assert!(has(&harness, "file-open"));
}

#[test]
fn a_changed_file_keeps_its_old_measures_until_it_is_taken() {
    let (folder, mut harness) = batch(&["cube_10.stl"]);
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Save);
    let kept = file(&harness, 0).kept.expect("its measures are kept with the batch");
    assert_eq!(kept.fills.map(Finite::get), Some(1000.0));
    fs::copy(reference("sphere_r6.stl"), folder.path().join("cube_10.stl")).unwrap();
    harness.state_mut().open(&ctx, &folder.path().join("job.ron"));
    harness.state_mut().workbook.view.page = Page::Patterns;
    looked_at(&mut harness);
    let volume = |harness: &Harness<'static, Window>| {
        let computed = &harness.state().workbook.computed;
        computed.book.number(computed.report.patterns[0].charge_volume).unwrap()
    };
    assert!(has(&harness, "file-changed"));
    assert_eq!(volume(&harness), 1.0);
    press(&mut harness, &words("patterns-take-file"));
    assert!(!has(&harness, "file-changed"));
    // Its faceted volume by closed_form.json.
    assert!((volume(&harness) - 0.903_164_949_551).abs() < 1e-7);
}

#[test]
fn a_file_that_is_drawn_anew_meanwhile_is_noticed_on_coming_back() {
    let (folder, mut harness) = batch(&["cube_10.stl"]);
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Save);
    fs::copy(reference("sphere_r6.stl"), folder.path().join("cube_10.stl")).unwrap();
    for focused in [false, true] {
        harness.input_mut().focused = focused;
        harness.run();
    }
    looked_at(&mut harness);
    assert!(has(&harness, "file-changed"));
    fs::remove_file(folder.path().join("cube_10.stl")).unwrap();
    harness.state_mut().perform(&ctx, Action::LookAgain);
    looked_at(&mut harness);
    assert!(has(&harness, "file-missing") && !has(&harness, "file-changed"));
}

#[test]
fn files_outside_are_asked_about_once_a_folder() {
    let (folder, mut harness) = batch(&["cube_10.stl"]);
    let elsewhere = tempfile::tempdir().unwrap();
    for name in ["sphere_r6.stl", "flat_band.stl"] {
        fs::copy(reference(name), elsewhere.path().join(name)).unwrap();
    }
    let take = |harness: &mut Harness<'static, Window>, name: &str| {
        let ctx = harness.ctx.clone();
        harness.state_mut().perform(&ctx, Action::TakeIn(vec![elsewhere.path().join(name)]));
        looked_at(harness);
    };
    take(&mut harness, "sphere_r6.stl");
    assert!(matches!(harness.state().dialog, Some(Dialog::Outside { .. })));
    press(&mut harness, &words("outside-copy"));
    assert_eq!(file(&harness, 1).path, "patterns/sphere_r6.stl");
    assert!(folder.path().join("patterns/sphere_r6.stl").exists());
    take(&mut harness, "flat_band.stl");
    press(&mut harness, &words("outside-leave"));
    assert_eq!(file(&harness, 2).path, elsewhere.path().join("flat_band.stl").display().to_string());
    assert!(harness.state().preferences.allowed.contains(&fs::canonicalize(elsewhere.path()).unwrap()));
    // The folder was allowed: nothing more is asked.
    take(&mut harness, "sphere_r6.stl");
    assert!(harness.state().dialog.is_none());
    assert_eq!(harness.state().workbook.job.patterns.len(), 4);
}

#[test]
fn a_batch_that_names_files_outside_asks_before_it_reads_them() {
    let elsewhere = tempfile::tempdir().unwrap();
    fs::copy(reference("sphere_r6.stl"), elsewhere.path().join("sphere_r6.stl")).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let path = elsewhere.path().join("sphere_r6.stl").display().to_string();
    let pattern = Pattern { id: PatternId(1), file: Some(PatternFile { path, ..PatternFile::default() }), ..Pattern::default() };
    fs::write(folder.path().join("job.ron"), write_job(&Job { patterns: vec![pattern], ..Job::default() }).unwrap()).unwrap();
    let mut harness = empty(USUAL);
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &folder.path().join("job.ron"));
    looked_at(&mut harness);
    assert!(has(&harness, "file-apart"));
    press(&mut harness, &words("outside-refuse"));
    assert!(harness.state().dialog.is_none() && has(&harness, "file-apart"));
    harness.state_mut().open(&ctx, &folder.path().join("job.ron"));
    looked_at(&mut harness);
    press(&mut harness, &words("outside-allow"));
    assert!(!has(&harness, "file-apart"));
}

#[test]
fn a_place_without_a_sprue_is_painted_and_kept_clear_of() {
    let (_folder, mut harness) = batch(&["sphere_r6.stl"]);
    let heaviest = |harness: &Harness<'static, Window>| harness.state().workbook.inspection().unwrap().0.heavy.unwrap();
    // A ball of six millimetres' radius: the largest ball in it is itself.
    assert!((heaviest(&harness).places[0].diameter_mm - 12.0).abs() < 0.1);
    harness.state_mut().workbook.view.colouring = Colouring::NoSprue(NoGoKind::Seat);
    harness.state_mut().workbook.view.brush_mm = Some(3.0);
    looked_at(&mut harness);
    harness.get_by_role(Role::Canvas).click();
    looked_at(&mut harness);
    let painted = file(&harness, 0).no_go;
    assert_eq!(painted.len(), 1);
    let at = painted[0].at.unwrap().map(Finite::get);
    assert!((at.iter().map(|part| part * part).sum::<f64>().sqrt() - 6.0).abs() < 0.05, "on the surface: {at:?}");
    let clear = heaviest(&harness).places[0].foot.unwrap().place_mm;
    let away = (0..3).map(|axis| (clear[axis] - at[axis]).powi(2)).sum::<f64>().sqrt();
    assert!(away >= 3.0, "{clear:?} stands {away} from what was painted");
    // A click on the painted place wipes it off.
    harness.get_by_role(Role::Canvas).click();
    looked_at(&mut harness);
    assert!(file(&harness, 0).no_go.is_empty());
}

#[test]
fn a_solid_in_a_solid_is_asked_about() {
    let (_folder, mut harness) = batch(&["nested_same_winding.stl"]);
    assert!(has(&harness, "shells-nested"));
    press(&mut harness, &words("patterns-inner-is-hollow"));
    assert_eq!(file(&harness, 0).inner, InnerSolids::Hollow);
    assert!(!has(&harness, "shells-nested") && has(&harness, "sealed-void"));
    // Drained and held, it is a hollow in metal too.
    press(&mut harness, &words("patterns-drained-do"));
    assert!(!has(&harness, "sealed-void") && has(&harness, "drained-void"));
    // Answered once, the answer stays in sight and can be taken back.
    assert!(harness.query_all_by_label(&words("patterns-inner")).next().is_some());
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Undo);
    harness.state_mut().perform(&ctx, Action::Undo);
    looked_at(&mut harness);
    assert!(has(&harness, "shells-nested"));
    press(&mut harness, &words("patterns-inner-is-solid"));
    assert!(!has(&harness, "shells-nested") && !has(&harness, "sealed-void"));
}

#[test]
fn a_pair_is_compared_beside_the_window() {
    let (_folder, mut harness) = batch(&["sphere_r6.stl", "cube_10.stl"]);
    let make = |harness: &mut Harness<'static, Window>, with: Option<PatternId>| {
        harness.state_mut().workbook.edit(String::new(), move |job| {
            job.patterns[0].pair = with.map(|with| Pair { with, like: PairKind::Alike });
        });
        looked_at(harness);
    };
    make(&mut harness, Some(PatternId(2)));
    assert!(has(&harness, "pair-differs"));
    assert!(harness.query_by_label_contains(&words("patterns-pair-title")).is_some());
    // A ball against a die: 5 mm from the middle to a face, 8.66 to a corner, 6 all round. Places are spread over the surface, none in a corner.
    let apart = |harness: &Harness<'static, Window>| {
        let computed = &harness.state().workbook.computed;
        computed.book.number(computed.report.pairs[0].apart.unwrap()).unwrap()
    };
    assert!((2.4..2.67).contains(&apart(&harness)), "{}", apart(&harness));
    make(&mut harness, None);
    assert!(!has(&harness, "pair-differs"));
    assert!(harness.state().workbook.computed.report.pairs.is_empty());
}
