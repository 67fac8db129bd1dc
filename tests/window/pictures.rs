//! A few pictures to the pixel, drawn by a software driver: what shapes and names do not show, such as colours, marks and curves. Only with
//! `--ignored`, since they need a Vulkan driver; `UPDATE_SNAPSHOTS=true` takes them anew.

use eframe::egui::{Rect, pos2};
use egui_kittest::{OsThreshold, SnapshotOptions, SnapshotResults};
use pourbook::app::page::Page;

use super::{Sight, USUAL, on_sample};

/// Drivers of different versions differ by a hair at the edges of signs.
fn options() -> SnapshotOptions {
    SnapshotOptions::new().threshold(1.0).max_failed_pixels(OsThreshold::new(40)).output_path("tests/window/pictures")
}

const SMALL: Sight = Sight { width: 1024.0, height: 700.0, ..USUAL };

#[test]
#[ignore = "needs a Vulkan driver"]
fn pages_look_as_they_did() {
    let mut results = SnapshotResults::new();
    for (name, page, dark) in [
        ("flasks-day", Page::Flasks, false),
        ("burnout-evening", Page::Burnout, true),
        ("metal-day", Page::Metal, false),
        ("gallery-evening", Page::Gallery, true),
    ] {
        let mut harness = on_sample("mixed-kiln.ron", Sight { dark, ..SMALL });
        harness.state_mut().workbook.view.page = page;
        harness.run();
        harness.snapshot_options(name, &options());
        results.extend_harness(&mut harness);
    }
}

#[test]
#[ignore = "needs a Vulkan driver"]
fn the_bench_view_looks_as_it_did() {
    let mut harness = on_sample("first-pour.ron", Sight { dark: true, ..SMALL });
    harness.state_mut().workbook.view.bench = Some(0);
    harness.run();
    // The time of day.
    harness.mask(Rect::from_min_max(pos2(880.0, 40.0), pos2(1000.0, 100.0)));
    harness.snapshot_options("bench-evening", &options());
}
