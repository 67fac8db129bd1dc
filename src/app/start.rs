//! Opening the window, wrapped so that a machine that cannot open one says why instead of falling over.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::sync::Arc;

use eframe::egui::{ViewportBuilder, vec2};

use super::theme;
use super::window::{Home, Window};
use crate::files::disk::RealDisk;

/// Opens the window on a job, or says in one line why it cannot be opened.
///
/// # Errors
/// The reason, as the beginning of a sentence.
pub fn open(job: Option<&Path>) -> Result<(), String> {
    let job = job.map(Path::to_path_buf);
    let viewport = ViewportBuilder::default()
        .with_title("Pourbook")
        .with_app_id("pourbook")
        .with_inner_size(vec2(1280.0, 800.0))
        .with_min_inner_size(vec2(1024.0, 700.0))
        .with_drag_and_drop(true);
    let options = eframe::NativeOptions { viewport, renderer: eframe::Renderer::Glow, ..Default::default() };
    // The window's library panics where parts of the display's own are missing; its words are not for a caster.
    let hook = std::panic::take_hook();
    let begun = Arc::new(std::sync::atomic::AtomicBool::new(false));
    let seen = Arc::clone(&begun);
    let loud = Arc::new(hook);
    let hook = Arc::clone(&loud);
    std::panic::set_hook(Box::new(move |info| {
        if seen.load(std::sync::atomic::Ordering::Relaxed) {
            hook(info);
        }
    }));
    let started = Arc::clone(&begun);
    let outcome = catch_unwind(AssertUnwindSafe(|| {
        eframe::run_native(
            "pourbook",
            options,
            Box::new(move |cc| {
                started.store(true, std::sync::atomic::Ordering::Relaxed);
                theme::install(&cc.egui_ctx);
                Ok(Box::new(Window::start(&cc.egui_ctx, Arc::new(RealDisk), Home::of_user(), job.as_deref())))
            }),
        )
    }));
    let _ = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |info| loud(info)));
    match outcome {
        Ok(Ok(())) => Ok(()),
        Err(panic) if begun.load(std::sync::atomic::Ordering::Relaxed) => std::panic::resume_unwind(panic),
        Ok(Err(_)) | Err(_) => Err("No window can be opened here".to_owned()),
    }
}
