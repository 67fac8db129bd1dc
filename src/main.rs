//! The `pourbook` command: hands its arguments to the terminal layer, which opens the window or prints.

use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    pourbook::headless::run(std::env::args_os(), open_window)
}

#[cfg(feature = "window")]
fn open_window(job: Option<&Path>) -> Result<(), String> {
    pourbook::app::open(job)
}

#[cfg(not(feature = "window"))]
fn open_window(_job: Option<&Path>) -> Result<(), String> {
    Err("This build has no window".to_owned())
}
