//! What can be asked for on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};
use jiff::civil::Date;

/// A casting-batch workbook for small studios.
#[derive(Debug, Parser)]
#[command(name = "pourbook", version, args_conflicts_with_subcommands = true, after_help = EXIT_CODES)]
pub(super) struct Line {
    /// The job to open
    pub job: Option<PathBuf>,
    #[command(flatten)]
    pub day: Day,
    #[command(subcommand)]
    pub command: Option<Command>,
}

const EXIT_CODES: &str = "Exit codes: 0 fine; 1 when `findings` holds a Stop that nobody signed for; 2 when something given could not be used \
                          (everything that could be is still printed).";

/// The day to reckon by.
#[derive(Debug, Clone, Copy, Args)]
pub(super) struct Day {
    /// The day prices and quotes are judged by, such as 2026-12-01; today where it is not given
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub at: Option<Date>,
}

/// A table of a job, and where it goes.
#[derive(Debug, Clone, Args)]
pub(super) struct Listing {
    /// The job's file
    pub job: PathBuf,
    /// As CSV, for a spreadsheet
    #[arg(long)]
    pub csv: bool,
    /// Into this file, which must not exist yet, instead of the terminal
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    #[command(flatten)]
    pub day: Day,
}

fn day(text: &str) -> Result<Date, String> {
    text.trim().parse().map_err(|_| "a day is written as year, month and day, such as 2026-12-01".to_owned())
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Every figure of a job with its working
    Figures {
        #[command(flatten)]
        how: Listing,
        /// As JSON
        #[arg(long, conflicts_with = "csv")]
        json: bool,
    },
    /// Every piece that was ordered: what it is, where it hangs, how far it is
    Pieces(Listing),
    /// The kiln loads step by step, from mixing to the pour
    Programme(Listing),
    /// What must be known before metal, flask or person comes to harm
    Findings {
        /// The job's file
        job: PathBuf,
        /// As JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        day: Day,
    },
    /// The bench sheet, a page a flask
    Sheet {
        /// The job's file
        job: PathBuf,
        /// Into this file, which must not exist yet, instead of the terminal
        #[arg(short, long, value_name = "FILE")]
        output: Option<PathBuf>,
        #[command(flatten)]
        day: Day,
    },
    /// The quotes, a page a client
    Quote {
        /// The job's file
        job: PathBuf,
        /// Into this file, which must not exist yet, instead of the terminal
        #[arg(short, long, value_name = "FILE")]
        output: Option<PathBuf>,
        #[command(flatten)]
        day: Day,
    },
    /// Volume, area, size and faults of pattern files
    Measure {
        /// The files
        #[arg(required = true)]
        files: Vec<PathBuf>,
        /// As JSON
        #[arg(long)]
        json: bool,
    },
}
