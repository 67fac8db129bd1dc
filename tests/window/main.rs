//! The window under hands that cannot see it: driven by names and keys, looked at through the shapes it draws. Needs no display and no driver.
#![cfg(feature = "window")]
#![allow(missing_docs, clippy::unwrap_used, clippy::expect_used, reason = "a test may stop where it stands")]

mod after;
mod append;
mod bench;
mod build;
mod crash;
mod deeds;
mod delivery;
mod fields;
mod hands;
mod house;
mod jobs;
mod kiln;
mod layout;
mod names;
mod paper;
mod part;
mod patterns;
mod pictures;
mod pieces;
mod plan;
mod prints;
mod shapes;
mod spin;
mod standing;
mod tables;
mod take_out;
mod taught;
mod walk;
mod weighed;
mod what_now;

use std::path::Path;
use std::sync::Arc;

use eframe::egui::{Theme as EguiTheme, vec2};
use egui_kittest::Harness;
use jiff::civil::{Date, date};
use pourbook::app::page::Page;
use pourbook::app::theme;
use pourbook::app::window::Window;
use pourbook::files::disk::{Disk, RealDisk};
use pourbook::files::preferences::{Preferences, Theme};

/// The day every test is on.
pub const TODAY: Date = date(2026, 11, 25);

/// How a window is looked at.
#[derive(Debug, Clone, Copy)]
pub struct Sight {
    pub width: f32,
    pub height: f32,
    pub dark: bool,
    pub zoom: u32,
    pub trade: bool,
}

/// By day, at the size most will have.
pub const USUAL: Sight = Sight { width: 1280.0, height: 800.0, dark: false, zoom: 100, trade: false };

/// A window on an empty batch.
pub fn empty(sight: Sight) -> Harness<'static, Window> {
    let preferences = Preferences {
        theme: if sight.dark { Theme::Dark } else { Theme::Light },
        zoom: sight.zoom,
        trade_units: sight.trade,
        ..Preferences::default()
    };
    let disk: Arc<dyn Disk> = Arc::new(RealDisk);
    let window = Window::on(disk, TODAY, preferences);
    let mut harness = Harness::builder()
        .with_size(vec2(sight.width, sight.height))
        .with_theme(if sight.dark { EguiTheme::Dark } else { EguiTheme::Light })
        .with_max_steps(16)
        .with_context_setup(theme::install)
        .build_ui_state(
            |ui, window: &mut Window| {
                let ctx = ui.ctx().clone();
                window.logic(&ctx);
                window.ui(ui);
            },
            window,
        );
    harness.run();
    harness
}

/// A window on a sample, its pattern files read.
pub fn on_sample(name: &str, sight: Sight) -> Harness<'static, Window> {
    let mut harness = empty(sight);
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs").join(name);
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &path);
    for _ in 0..500 {
        harness.state_mut().workbook.poll();
        if harness.state().workbook.reading().is_none() && !harness.state().workbook.heater.is_running() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    assert!(harness.state().workbook.reading().is_none(), "the patterns were read");
    harness.run();
    harness
}

/// Is every pattern file read, and was the chosen one, on its page, looked at closely?
pub fn is_looked_at(window: &Window) -> bool {
    let workbook = &window.workbook;
    let whole = workbook.view.page != Page::Patterns || workbook.inspection().is_none_or(|(found, share)| found.whole && share.is_none());
    workbook.reading().is_none() && !workbook.is_comparing() && whole
}

/// Waits until every pattern file is read and the chosen one, on its page, was looked at closely.
pub fn looked_at(harness: &mut Harness<'static, Window>) {
    for _ in 0..1500 {
        harness.run();
        if is_looked_at(harness.state()) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("the chosen pattern was looked at");
}
