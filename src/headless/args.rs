//! What can be asked for on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use jiff::civil::Date;

use crate::files::outside::Allowed;

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

/// The day to reckon by, and what may be read for it.
#[derive(Debug, Clone, Copy, Args)]
pub(super) struct Day {
    /// The day prices and quotes are judged by, such as 2026-12-01; today where it is not given
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub at: Option<Date>,
    /// Read pattern files that lie outside the job's folder too; the window asks before it does
    #[arg(long)]
    pub outside: bool,
}

impl Day {
    /// Which folders outside the job's own may be read.
    pub fn allowed(&self) -> Allowed {
        if self.outside { Allowed::Every } else { Allowed::None }
    }
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

/// What a batch is planned with.
#[derive(Debug, Clone, Args)]
pub(super) struct Planning {
    /// The job's file
    pub job: PathBuf,
    /// Poured from this crucible of the shelf; from the largest that may melt each alloy where it is not given
    #[arg(long, value_name = "ID")]
    pub crucible: Option<String>,
    /// Burnt out in this kiln of the shelf, empty; in that of the open load where it is not given
    #[arg(long, value_name = "ID", conflicts_with = "any_kiln")]
    pub kiln: Option<String>,
    /// However many flasks a kiln takes
    #[arg(long)]
    pub any_kiln: bool,
    /// Flasks of the job that are neither weighed nor invested may take more pieces
    #[arg(long)]
    pub add: bool,
    /// The language
    #[arg(long, value_enum, default_value_t = Tongue::En)]
    pub language: Tongue,
    #[command(flatten)]
    pub day: Day,
}

/// A kiln's log, and what it is held against.
#[derive(Debug, Clone, Args)]
pub(super) struct Readings {
    /// The job's file
    pub job: PathBuf,
    /// The log of its kiln: a table in text
    pub log: PathBuf,
    /// The number of the load; the last where it is not given
    #[arg(long, value_name = "NUMBER")]
    pub load: Option<u32>,
    /// The column of the temperature, from 1; found by its name and its numbers where it is not given
    #[arg(long, value_name = "NUMBER")]
    pub column: Option<usize>,
    /// The unit of the temperature; as the log says where it is not given
    #[arg(long, value_enum)]
    pub unit: Option<LogUnit>,
    /// The language
    #[arg(long, value_enum, default_value_t = Tongue::En)]
    pub language: Tongue,
    #[command(flatten)]
    pub day: Day,
}

/// A unit of temperature.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(super) enum LogUnit {
    /// °C
    C,
    /// °F
    F,
    /// K
    K,
}

/// What is printed, and how.
#[derive(Debug, Clone, Args)]
pub(super) struct Printing {
    /// The job's file
    pub job: PathBuf,
    /// Into this file, which must not exist yet, instead of the terminal; as a PDF where its name ends so. Papers of several clients go into
    /// a PDF each
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Only what is for this client
    #[arg(long, value_name = "CODE")]
    pub client: Option<String>,
    /// The paper
    #[arg(long, value_enum, default_value_t = PaperSize::A4)]
    pub paper: PaperSize,
    /// The language
    #[arg(long, value_enum, default_value_t = Tongue::En)]
    pub language: Tongue,
    /// The units
    #[arg(long, value_enum, default_value_t = UnitSet::Metric)]
    pub units: UnitSet,
    /// A comma for the decimal mark; German has one anyway
    #[arg(long)]
    pub comma: bool,
    #[command(flatten)]
    pub day: Day,
}

/// The size of the paper.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(super) enum PaperSize {
    A4,
    Letter,
}

/// The language of the paper.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(super) enum Tongue {
    En,
    De,
}

/// The units on the paper.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(super) enum UnitSet {
    /// Millimetres, grams, °C
    Metric,
    /// Inches, pennyweights, °F
    Trade,
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
    /// What happened to the batch, entry by entry
    Record(Listing),
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
    /// Every piece that hangs on no tree, planned into as few flasks as will do; nothing is written
    Plan(Planning),
    /// A kiln's log held against a load: where it fell, and how far every mould has come
    Readings(Readings),
    /// The bench sheet, a page a flask
    Sheet(Printing),
    /// The kiln sheet, a page a load
    Kiln(Printing),
    /// The quotes, a page a client
    Quote(Printing),
    /// The order slips with the codes of their pieces, a page an order
    Slip(Printing),
    /// Receipts for the metal that clients brought, a page a client
    Receipt(Printing),
    /// Accounts of the metal that clients brought, a page a client
    Account(Printing),
    /// What lies in the parcels that left the house, a page a parcel
    Parcel(Printing),
    /// The cards for when something goes wrong, a page a card
    WhatNow(Printing),
    /// Volume, area, size and faults of pattern files
    Measure {
        /// The files
        #[arg(required = true)]
        files: Vec<PathBuf>,
        /// Walls and the heaviest places too
        #[arg(long)]
        walls: bool,
        /// As JSON
        #[arg(long)]
        json: bool,
    },
}
