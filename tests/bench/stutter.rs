//! Does the window stand still while a pattern file of five million triangles is read, measured and looked at, and then turned by hand?
//!
//! `cargo bench --bench stutter` draws frames as a screen of 60 Hz asks for them, without a display, and prints how long they took: the usual
//! one, the ninety-ninth of a hundred, the worst. `-- --smoke`, and any run that is not `cargo bench`, takes a small file.
#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

#[cfg(feature = "window")]
mod knurl;

#[cfg(not(feature = "window"))]
fn main() {}

#[cfg(feature = "window")]
fn main() {
    window::measure();
}

#[cfg(feature = "window")]
mod window {
    use std::path::Path;
    use std::sync::Arc;
    use std::time::{Duration, Instant};

    use eframe::egui::{Context, Event, Modifiers, PointerButton, Pos2, RawInput, Rect, pos2, vec2};
    use jiff::civil::date;
    use pourbook::app::page::Page;
    use pourbook::app::theme;
    use pourbook::app::window::Window;
    use pourbook::files::disk::RealDisk;
    use pourbook::files::preferences::Preferences;
    use pourbook::job::format::write_job;
    use pourbook::job::{Job, Pattern, PatternFile, PatternId};

    /// A screen asks for a frame every sixtieth of a second.
    const FRAME: Duration = Duration::from_nanos(16_666_667);
    /// Where the form is seen, so that a drag turns it.
    const FORM: Pos2 = pos2(980.0, 400.0);

    fn frame(ctx: &Context, window: &mut Window, since: Instant, events: Vec<Event>) -> f64 {
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 800.0))),
            time: Some(since.elapsed().as_secs_f64()),
            events,
            ..RawInput::default()
        };
        let begun = Instant::now();
        window.logic(ctx);
        let mut output = ctx.run_ui(input, |ui| window.ui(ui));
        let shapes = std::mem::take(&mut output.shapes);
        let meshes = ctx.tessellate(shapes, output.pixels_per_point);
        let taken = begun.elapsed();
        assert!(!meshes.is_empty());
        output.drop_without_applying_deltas();
        std::thread::sleep(FRAME.saturating_sub(taken));
        taken.as_secs_f64() * 1e3
    }

    fn told(what: &str, mut times: Vec<f64>, seconds: f64) {
        times.sort_by(f64::total_cmp);
        let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize];
        println!(
            "{what}: {} frames in {seconds:.1} s; usual {:.1} ms, 99 of 100 {:.1} ms, worst {:.1} ms",
            times.len(),
            at(0.5),
            at(0.99),
            at(1.0)
        );
    }

    fn batch(folder: &Path) {
        let file = PatternFile { path: "large.stl".to_owned(), ..PatternFile::default() };
        let pattern = Pattern { id: PatternId(1), name: "large".to_owned(), file: Some(file), ..Pattern::default() };
        std::fs::write(folder.join("job.ron"), write_job(&Job { patterns: vec![pattern], ..Job::default() }).unwrap()).unwrap();
    }

    pub fn measure() {
        let arguments: Vec<String> = std::env::args().skip(1).collect();
        let smoke = arguments.iter().any(|a| a == "--smoke" || a == "--test") || !arguments.iter().any(|a| a == "--bench");
        let (around, across) = if smoke { (200, 100) } else { (2500, 1000) };
        let folder = tempfile::tempdir().unwrap();
        super::knurl::write(&folder.path().join("large.stl"), &super::knurl::band(around, across));
        batch(folder.path());
        println!("{} triangles", 2 * around * across);
        let ctx = Context::default();
        theme::install(&ctx);
        let mut window = Window::on(Arc::new(RealDisk), date(2026, 11, 25), Preferences::default());
        let since = Instant::now();
        window.open(&ctx, &folder.path().join("job.ron"));
        window.workbook.view.page = Page::Patterns;
        window.workbook.view.pattern = Some(PatternId(1));
        let (mut times, begun) = (Vec::new(), Instant::now());
        loop {
            times.push(frame(&ctx, &mut window, since, Vec::new()));
            let looked = window.workbook.inspection().is_some_and(|(found, share)| found.whole && share.is_none());
            if window.workbook.reading().is_none() && looked {
                break;
            }
            assert!(begun.elapsed() < Duration::from_secs(600), "it was looked at");
        }
        told("read, measured and looked at", times, begun.elapsed().as_secs_f64());
        let press = |at: Pos2, pressed: bool| {
            vec![
                Event::PointerMoved(at),
                Event::PointerButton { pos: at, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE },
            ]
        };
        frame(&ctx, &mut window, since, press(FORM, true));
        let (mut times, begun) = (Vec::new(), Instant::now());
        for step in 0..if smoke { 5_u16 } else { 180 } {
            let at = FORM + vec2(1.5 * f32::from(step), 0.2 * f32::from(step));
            times.push(frame(&ctx, &mut window, since, vec![Event::PointerMoved(at)]));
        }
        frame(&ctx, &mut window, since, press(FORM, false));
        told("turned by hand", times, begun.elapsed().as_secs_f64());
    }
}
