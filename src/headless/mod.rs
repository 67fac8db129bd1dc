//! The terminal: figures, findings, sheets, quotes, tables and measured files as text, JSON and CSV. Data goes to stdout, messages to stderr.
//!
//! Exit codes: 0 fine, 1 for `findings` with a Stop nobody signed for, 2 bad input (all good entries still printed).

mod args;
mod figures;
mod findings;
mod json;
mod measure;
mod open;
mod out;
mod plan;
mod readings;
mod sheets;
mod tables;

use std::ffi::OsString;
use std::path::Path;
use std::process::ExitCode;

use args::{Command, Line};
use clap::Parser;
use out::Out;

use crate::paper::Sort;

/// Everything went well.
const FINE: u8 = 0;
/// A Stop stands that nobody signed for.
const STOPPED: u8 = 1;
/// Something given could not be used.
const BAD_INPUT: u8 = 2;

/// Runs the program with the arguments of the command line, the program's own name first.
///
/// `window` tries to open the window on a job and says in one line why it could not.
pub fn run(arguments: impl IntoIterator<Item = OsString>, window: impl FnOnce(Option<&Path>) -> Result<(), String>) -> ExitCode {
    let mut out = Out::default();
    let code = match Line::try_parse_from(arguments) {
        Ok(line) => dispatch(line, window, &mut out),
        Err(error) => {
            let code = if error.use_stderr() { BAD_INPUT } else { FINE };
            let text = error.render().to_string();
            if error.use_stderr() {
                out.tell(&text)
            } else {
                out.data(&text)
            }
            code
        }
    };
    // A pipe that was closed at the other end has all it wanted.
    ExitCode::from(out.finish().map_or(code, |()| code))
}

fn dispatch(line: Line, window: impl FnOnce(Option<&Path>) -> Result<(), String>, out: &mut Out) -> u8 {
    match line.command {
        None => main_job(line.job.as_deref(), &line.day, window, out),
        Some(Command::Figures { how, json }) => figures::print(&how, json, out),
        Some(Command::Pieces(how)) => tables::pieces(&how, out),
        Some(Command::Programme(how)) => tables::programme(&how, out),
        Some(Command::Record(how)) => tables::record(&how, out),
        Some(Command::Findings { job, json, day }) => findings::print(&job, json, &day, out),
        Some(Command::Plan(how)) => plan::print(&how, out),
        Some(Command::Readings(how)) => readings::print(&how, out),
        Some(Command::Sheet(how)) => sheets::print(Sort::Bench, &how, out),
        Some(Command::Kiln(how)) => sheets::print(Sort::Kiln, &how, out),
        Some(Command::Quote(how)) => sheets::print(Sort::Quote, &how, out),
        Some(Command::Slip(how)) => sheets::print(Sort::Slip, &how, out),
        Some(Command::Receipt(how)) => sheets::print(Sort::Receipt, &how, out),
        Some(Command::Account(how)) => sheets::print(Sort::Account, &how, out),
        Some(Command::Parcel(how)) => sheets::print(Sort::Parcel, &how, out),
        Some(Command::WhatNow(how)) => sheets::print(Sort::WhatNow, &how, out),
        Some(Command::Measure { files, walls, json }) => measure::print(&files, walls, json, out),
    }
}

/// Opens the window; where none can be opened, says so in one line and prints the batch's bench sheet.
fn main_job(job: Option<&Path>, day: &args::Day, window: impl FnOnce(Option<&Path>) -> Result<(), String>, out: &mut Out) -> u8 {
    let Err(reason) = window(job) else { return FINE };
    match job {
        Some(job) => {
            out.tell(&format!("{reason}; here is the bench sheet instead"));
            match sheets::bench(job, day, out) {
                BAD_INPUT => BAD_INPUT,
                _ => FINE,
            }
        }
        None => {
            out.tell(&format!("{reason}. Name a job file, such as sample-jobs/first-pour.ron, or ask for --help"));
            BAD_INPUT
        }
    }
}
