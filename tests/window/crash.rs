//! What a crash or a careless close may cost: nothing.

use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use eframe::egui::{Context, RawInput, ViewportCommand, ViewportEvent, ViewportId};
use pourbook::app::dialog::{Answer, Dialog, Then};
use pourbook::app::theme;
use pourbook::app::window::{Home, Window};
use pourbook::files::disk::{Disk, RealDisk};

fn home(folder: &Path) -> Home {
    Home { preferences: folder.join("config/window.ron"), recovery: folder.join("recovery") }
}

fn window(folder: &Path, job: Option<&Path>) -> (Context, Window) {
    let ctx = Context::default();
    theme::install(&ctx);
    let disk: Arc<dyn Disk> = Arc::new(RealDisk);
    let window = Window::start(&ctx, disk, Some(home(folder)), job);
    (ctx, window)
}

/// One pass of the window while it is hidden: only what runs without drawing.
fn hidden(ctx: &Context, window: &mut Window, close: bool) -> Vec<ViewportCommand> {
    let mut input = RawInput::default();
    if close {
        input.viewports.entry(ViewportId::ROOT).or_default().events.push(ViewportEvent::Close);
    }
    let mut output = ctx.run_ui(input, |ui| window.logic(ui.ctx()));
    let viewports = std::mem::take(&mut output.viewport_output);
    output.drop_without_applying_deltas();
    viewports.into_iter().filter(|(id, _)| *id == ViewportId::ROOT).flat_map(|(_, viewport)| viewport.commands).collect()
}

#[test]
fn closing_with_changes_asks_even_while_minimised() {
    let folder = tempfile::tempdir().unwrap();
    let (ctx, mut window) = window(folder.path(), None);
    assert!(!hidden(&ctx, &mut window, true).contains(&ViewportCommand::CancelClose), "nothing is lost by closing");
    let (ctx, mut window) = self::window(folder.path(), None);
    window.workbook.edit("name it", |job| job.name = "Tide".to_owned());
    let commands = hidden(&ctx, &mut window, true);
    assert!(commands.contains(&ViewportCommand::CancelClose) && commands.contains(&ViewportCommand::Minimized(false)));
    assert_eq!(window.dialog, Some(Dialog::Close(Then::Quit)));
}

/// Waits until so many documents were set aside: the writer works beside the window.
fn set_aside(folder: &Path, many: usize) {
    let written = || {
        std::fs::read_dir(folder.join("recovery")).map_or(0, |files| {
            // Under its name it is whole.
            files.filter(|file| file.as_ref().is_ok_and(|file| file.path().extension().is_some_and(|ending| ending == "recovery"))).count()
        })
    };
    for _ in 0..500 {
        if written() == many {
            return;
        }
        std::thread::sleep(Duration::from_millis(10));
    }
    panic!("{} of {many} documents were set aside", written());
}

/// A folder with a studio and a batch, opened in a window whose program then goes without a word, with changes of both documents.
fn gone_with_changes(folder: &Path) -> std::path::PathBuf {
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs");
    for file in ["studio.ron", "first-pour.ron"] {
        std::fs::copy(samples.join(file), folder.join(file)).unwrap();
    }
    let path = folder.join("first-pour.ron");
    let (ctx, mut first) = window(folder, Some(&path));
    first.workbook.edit("name it", |job| job.name = "Tide pool".to_owned());
    first.workbook.edit_studio("hire", |studio| studio.hands.clear());
    hidden(&ctx, &mut first, false);
    set_aside(folder, 2);
    std::mem::forget(first);
    path
}

#[test]
fn the_studio_is_offered_again_as_well() {
    let folder = tempfile::tempdir().unwrap();
    gone_with_changes(folder.path());
    let (ctx, mut second) = window(folder.path(), None);
    assert!(matches!(&second.dialog, Some(Dialog::Recover { studio: false, changed: false, .. })), "the job first: {:?}", second.dialog);
    second.answer(&ctx, Answer::Recover);
    assert!(matches!(&second.dialog, Some(Dialog::Recover { studio: true, .. })), "then its studio: {:?}", second.dialog);
    second.answer(&ctx, Answer::Recover);
    assert_eq!(second.dialog, None);
    assert_eq!((second.workbook.job.name.as_str(), second.workbook.studio.hands.len()), ("Tide pool", 0));
    second.perform(&ctx, pourbook::app::action::Action::Save);
    assert!(!second.workbook.is_changed(), "{:?}", second.message);
    drop(second);
    let (_, third) = window(folder.path(), None);
    assert_eq!(third.dialog, None, "what was saved is not offered again");
}

#[test]
fn a_file_that_somebody_saved_since_is_not_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let path = gone_with_changes(folder.path());
    let theirs = std::fs::read_to_string(&path).unwrap().replacen("First pour", "Theirs", 1);
    std::fs::write(&path, &theirs).unwrap();
    let (ctx, mut second) = window(folder.path(), None);
    let Some(Dialog::Recover { changed: true, differs, .. }) = &second.dialog else { panic!("{:?}", second.dialog) };
    assert!(differs.iter().any(|part| part.key == "batch-about"), "{differs:?}");
    second.answer(&ctx, Answer::RecoverApart);
    assert_eq!((second.workbook.job.name.as_str(), second.workbook.path()), ("Tide pool", None));
    second.dialog = None;
    second.answer(&ctx, Answer::SaveAs(folder.path().join("ours.ron"), None));
    assert!(!second.workbook.is_changed());
    assert_eq!(std::fs::read_to_string(&path).unwrap(), theirs, "both stay");
    drop(second);
    let (_, third) = window(folder.path(), None);
    assert!(!matches!(&third.dialog, Some(Dialog::Recover { studio: false, .. })), "the job is not offered again: {:?}", third.dialog);
}

#[test]
fn work_that_was_not_saved_is_offered_again() {
    let folder = tempfile::tempdir().unwrap();
    let (ctx, mut first) = window(folder.path(), None);
    first.workbook.edit("name it", |job| job.name = "Tide pool, second kiln".to_owned());
    hidden(&ctx, &mut first, false);
    set_aside(folder.path(), 1);
    // The program is gone without a word.
    std::mem::forget(first);
    let (ctx, mut second) = window(folder.path(), None);
    assert!(matches!(&second.dialog, Some(Dialog::Recover { name, .. }) if name == "Tide pool, second kiln"));
    second.answer(&ctx, Answer::Recover);
    assert_eq!(second.workbook.job.name, "Tide pool, second kiln");
    assert!(second.workbook.is_changed(), "it is not saved yet");
}

#[test]
fn what_was_saved_under_a_name_is_not_offered_again() {
    let folder = tempfile::tempdir().unwrap();
    let (ctx, mut first) = window(folder.path(), None);
    first.workbook.edit("name it", |job| job.name = "Tide".to_owned());
    hidden(&ctx, &mut first, false);
    first.answer(&ctx, Answer::SaveAs(folder.path().join("tide.ron"), None));
    assert!(!first.workbook.is_changed() && first.dialog.is_none());
    // The writer removes it beside the window; dropping the window waits for that.
    drop(first);
    let (_, second) = window(folder.path(), None);
    assert_eq!(second.dialog, None);
}

#[test]
fn the_studio_of_a_folder_is_never_written_over_by_an_empty_one() {
    let folder = tempfile::tempdir().unwrap();
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/studio.ron");
    let studio = folder.path().join("studio.ron");
    std::fs::copy(sample, &studio).unwrap();
    let before = std::fs::read(&studio).unwrap();
    let (ctx, mut window) = window(&folder.path().join("home"), None);
    window.workbook.edit("name it", |job| job.name = "Tide".to_owned());
    window.answer(&ctx, Answer::SaveAs(folder.path().join("tide.ron"), None));
    assert!(!window.workbook.studio.hands.is_empty(), "the folder's studio is taken");
    window.workbook.edit("name it", |job| job.name = "Tide pool".to_owned());
    window.perform(&ctx, pourbook::app::action::Action::Save);
    assert!(!window.workbook.is_changed());
    assert_eq!(std::fs::read(&studio).unwrap(), before);
}

#[test]
fn preferences_and_the_batches_opened_last_are_kept() {
    let folder = tempfile::tempdir().unwrap();
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/first-pour.ron");
    let (ctx, mut first) = window(folder.path(), Some(&sample));
    first.preferences.zoom_by(2);
    hidden(&ctx, &mut first, false);
    let (_, second) = window(folder.path(), None);
    assert_eq!((second.preferences.zoom, second.preferences.recent.first()), (150, Some(&sample)));
}

#[test]
fn a_batch_that_goes_on_under_another_name_keeps_the_studio_as_it_was_changed_and_an_id_of_its_own() {
    let folder = tempfile::tempdir().unwrap();
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs");
    for file in ["studio.ron", "first-pour.ron"] {
        std::fs::copy(samples.join(file), folder.path().join(file)).unwrap();
    }
    let (ctx, mut window) = window(&folder.path().join("home"), Some(&folder.path().join("first-pour.ron")));
    let first = window.workbook.job.job_id;
    window.workbook.edit("name it", |job| job.name = "Again".to_owned());
    window.workbook.edit_studio("let go", |studio| studio.hands.clear());
    window.answer(&ctx, Answer::SaveAs(folder.path().join("again.ron"), None));
    assert!(window.workbook.studio.hands.is_empty() && !window.workbook.is_changed(), "{:?}", window.dialog);
    let on_disk = pourbook::files::batch::open_studio(&RealDisk, &folder.path().join("studio.ron")).unwrap().unwrap();
    assert!(on_disk.hands.is_empty(), "the change of the studio was saved");
    let second = window.workbook.job.job_id;
    assert_ne!(first, second);
    window.workbook.undo();
    window.workbook.undo();
    assert_eq!(window.workbook.job.job_id, second, "taken back as far as it goes, it is still another batch");
}

#[test]
fn a_set_aside_job_whose_file_cannot_be_opened_goes_into_no_other() {
    let folder = tempfile::tempdir().unwrap();
    let path = gone_with_changes(folder.path());
    std::fs::write(&path, "(format: 99, readable_since: 99,").unwrap();
    let (ctx, mut second) = window(folder.path(), None);
    assert!(matches!(&second.dialog, Some(Dialog::Recover { studio: false, .. })));
    let before = second.workbook.job.clone();
    second.answer(&ctx, Answer::Recover);
    assert_eq!(second.workbook.job, before, "no other batch takes it");
    drop(second);
    let (_, third) = window(folder.path(), None);
    assert!(matches!(&third.dialog, Some(Dialog::Recover { studio: false, .. })), "and it is still offered");
}
