//! Pure functions from documents to figures, findings and schedules. Knows no file, clock, screen, thread or network.
//!
//! Start at [`recompute`]. Every figure is made by [`Book::derive`] from a [`rule::Rule`]; each page below holds its rules, its inputs,
//! its defaults, and the step of the recompute that uses them.

pub mod against;
mod alloy;
pub mod arrange;
pub mod batch;
pub mod board;
mod book;
mod burnout;
mod by_id;
mod calibrate;
pub mod checks;
mod clearance;
mod client_account;
mod client_lots;
pub mod compare;
pub mod controller;
mod dewax;
mod feed;
mod fill;
pub mod finding;
mod flask;
pub mod floor;
mod form;
mod freeze;
mod freeze_time;
pub mod heat;
mod hung;
mod investment;
mod kiln_energy;
pub mod kiln_floor;
pub mod labour;
pub mod learned;
pub mod marking;
mod melt;
mod melt_lots;
mod metal;
pub mod mould;
pub mod mould_heat;
pub mod night;
mod offer;
mod order;
pub mod outline;
mod pair;
mod pass;
mod pattern;
mod pattern_file;
mod piece_weights;
pub mod places;
pub mod plan;
mod plate;
mod pour;
mod pour_order;
mod price;
mod print;
mod print_care;
mod print_plate;
mod quench;
mod rework;
pub mod rule;
mod setting;
pub mod shortest;
pub mod site;
pub mod size;
pub mod solid;
mod spin;
pub mod stand;
pub mod taught;
pub mod timetable;
mod tree;
mod value;
mod wanting;
pub mod weeks;
mod weighed_in_water;
mod whole;
pub mod work;

pub use book::{Book, Figure, Id, Origin, ShelfTerm};
pub use burnout::{BurnoutFigures, StageFigures};
pub use calibrate::{AcceptedLine, AxisFigures, CalibrationFigures, GaugeFigures, LEAST_ROWS, accepted, accepted_line};
pub use clearance::{ClearanceFigures, Wanting};
pub use client_account::{AccountOf, AccountRow, ClientAccount};
pub use client_lots::ClientLot;
pub use dewax::DewaxFigures;
pub use feed::{BrokenFeed, FedRow, FeedFigures, FeedPart, SILENT_BELOW_MM};
pub use fill::{FillFigures, VACUUM_KPA};
pub use finding::{Arg, Finding, FindingKind, Weight};
pub use flask::FlaskFigures;
pub use form::{FileFrame, PatternForm};
pub use freeze::plan_of;
pub use investment::MixFigures;
pub use kiln_energy::EnergyFigures;
pub use melt::MeltFigures;
pub use metal::MetalFigures;
pub use mould::MouldFigures;
pub use mould_heat::{HeatFigures, MouldHeat};
pub use offer::{OfferFigures, OfferLineFigures, WorkFor};
pub use order::LineFigures;
pub use outline::Outline;
pub use pair::{PAIR_TOLERANCE_MM, PairFigures};
pub use pattern::{LEAST_WALL_MM, PatternFigures, section_of};
pub use pattern_file::{print_mm, unit_key};
pub use piece_weights::PieceWeights;
pub use plate::{Parts, plates};
pub use pour::PourFigures;
pub use pour_order::PourRound;
pub use price::{AlloyPrice, PRICE_DAYS};
pub use print::{PrintFigures, PrintRowFigures};
pub use rework::ReworkFigures;
pub use setting::{FileProblem, PairRun, PatternMeasure, PatternRun, PatternShape, Runs, Setting};
pub use site::SiteFigures;
pub use size::{PrinterLine, PrinterLines, RingFigures, SideFigures, Typed, WayBack};
pub use spin::SpinFigures;
pub use tree::{TreeFigures, TreePart};
pub use value::{Cause, Value};
pub use weighed_in_water::{WeighingFigures, water_density_g_cm3};

use std::collections::BTreeMap;

use crate::job::{BurnoutId, Job, PatternId, Studio};
use crate::stock::{OverlayNote, Shelf};
use pass::Pass;

/// What a recompute gives beside the book: figures by what they belong to, and findings by weight.
#[derive(Debug, Clone)]
pub struct Report {
    /// The place.
    pub site: SiteFigures,
    /// The patterns, sorted by id.
    pub patterns: Vec<PatternFigures>,
    /// Their forms as they hang, where they are known.
    pub forms: BTreeMap<PatternId, PatternForm>,
    /// Patterns that belong together as pairs, in the job's order.
    pub pairs: Vec<PairFigures>,
    /// The print runs, in the job's order.
    pub prints: Vec<PrintFigures>,
    /// The calibrations of printers, in the studio's order.
    pub calibrations: Vec<CalibrationFigures>,
    /// The prices of the alloys the job names.
    pub prices: Vec<AlloyPrice>,
    /// The order lines, in the job's order.
    pub lines: Vec<LineFigures>,
    /// The trees.
    pub trees: Vec<TreeFigures>,
    /// The flasks.
    pub flasks: Vec<FlaskFigures>,
    /// The kiln loads.
    pub burnouts: Vec<BurnoutFigures>,
    /// The heat of the moulds, load by load, of flasks of which enough is known.
    pub heat: Vec<HeatFigures>,
    /// The heat that all moulds of a load take in, of loads whose every mould was computed.
    pub heat_of_loads: Vec<mould_heat::HeatOfLoad>,
    /// The work before each pour whose time and programme are known.
    pub work: Vec<work::WorkFigures>,
    /// Energy and cost of those loads, where their kiln says what it loses.
    pub energy: Vec<(BurnoutId, EnergyFigures)>,
    /// The melts; a flask that names none has one of its own.
    pub melts: Vec<MeltFigures>,
    /// What clients are offered.
    pub offers: Vec<OfferFigures>,
    /// The metal that clients brought, in the studio's order.
    pub client_lots: Vec<ClientLot>,
    /// What is left of it after this batch, by client and metal.
    pub client_accounts: Vec<ClientAccount>,
    /// Repairs and sizings, in the order of the record.
    pub reworks: Vec<ReworkFigures>,
    /// The studio's samples weighed in water.
    pub weighings: Vec<WeighingFigures>,
    /// What must be known, Stops first.
    pub findings: Vec<Finding>,
}

/// The shelf a job is computed with.
#[derive(Debug, Clone)]
pub struct Shelves {
    /// Today's shelf: shipped, with the studio's overlay.
    pub today: Shelf,
    /// The same under the copies the job took along.
    pub job: Shelf,
    /// What does not fit in the overlay.
    pub notes: Vec<OverlayNote>,
    /// Names of copies in the job whose content is not what their hash says.
    pub altered: Vec<String>,
}

impl Shelves {
    /// The shelf of a job in a studio. Made once when a document or the overlay changes, not in every recompute.
    #[must_use]
    pub fn new(job: &Job, studio: &Studio) -> Self {
        let (today, notes) = Shelf::with_overlay(&crate::stock::Overlay(studio.shelf.clone()));
        let altered = job.shelf.iter().filter(|copied| copied.entry.hash() != copied.hash);
        let altered = altered.map(|copied| copied.entry.name().to_owned()).collect();
        let job = today.laid_over(job.shelf.iter().map(|copied| &copied.entry));
        Self { today, job, notes, altered }
    }
}

/// Computes every figure and finding of a job. The book is emptied and filled anew; it keeps its memory.
///
/// The job is taken as it is: give it through [`crate::job::check::mend`] first, so that nothing absurd is computed with.
pub fn recompute(job: &Job, studio: &Studio, shelves: &Shelves, runs: &Runs, setting: &Setting, book: &mut Book) -> Report {
    book.clear();
    let by_id = by_id::ById::new(job);
    let mut pass = Pass::new(job, studio, &shelves.job, runs, setting, book);
    let site = pass.site();
    let patterns = pass.patterns();
    let pairs = pass.pairs(&patterns);
    let prints = pass.prints(&patterns);
    let calibrations = pass.calibrations();
    let prices = pass.prices();
    let lines = pass.lines(&patterns, &prices);
    let forms = pass.forms(&patterns);
    let mut trees = pass.trees(&patterns, &forms, &by_id);
    let mut flasks = pass.flasks(&trees, &patterns, &by_id, &site);
    pass.buttons(&mut trees, &flasks);
    let burnouts = pass.burnouts(&flasks, &trees);
    pass.investing_times(&mut flasks, &burnouts);
    let (heat, heat_of_loads) = pass.heat(&flasks, &burnouts, &trees);
    let work = pass.work(&burnouts, &flasks, &prints);
    let energy = pass.energy(&burnouts, &heat_of_loads);
    let melts = pass.melts(&flasks, &by_id);
    let offers = pass.offers(&lines);
    let client_lots = pass.client_lots();
    let client_accounts = pass.client_accounts(&client_lots, &melts, &flasks);
    let reworks = pass.reworks(&melts);
    pass.marking(&shelves.today);
    let weighings = pass.weighings(&shelves.today);
    pass.trees_in_flasks();
    pass.wanting(&flasks);
    pass.checks();
    pass.pieces_hung(&by_id);
    pass.late(&flasks, &burnouts, &by_id);
    pass.shelf_changes(shelves);
    pass.unconfirmed_defaults();
    pass.settle();
    let findings = pass.findings;
    Report {
        site,
        patterns,
        forms,
        pairs,
        prints,
        calibrations,
        prices,
        lines,
        trees,
        flasks,
        burnouts,
        heat,
        heat_of_loads,
        work,
        energy,
        melts,
        offers,
        client_lots,
        client_accounts,
        reworks,
        weighings,
        findings,
    }
}

/// Every rule, page by page.
#[must_use]
pub fn all_rules() -> Vec<&'static rule::Rule> {
    let pages = [
        site::RULES,
        pattern::RULES,
        pair::RULES,
        print::RULES,
        calibrate::RULES,
        order::RULES,
        size::RULES,
        mould::RULES,
        weighed_in_water::RULES,
        price::RULES,
        offer::RULES,
        tree::RULES,
        outline::RULES,
        metal::RULES,
        investment::RULES,
        clearance::RULES,
        pour::RULES,
        burnout::RULES,
        burnout::findings::RULES,
        mould_heat::RULES,
        flask::RULES,
        melt::RULES,
        client_lots::RULES,
        client_account::RULES,
        rework::RULES,
        dewax::RULES,
        kiln_energy::RULES,
        pour_order::RULES,
        quench::RULES,
        work::RULES,
        batch::RULES,
        freeze_time::RULES,
        fill::RULES,
        feed::RULES,
        spin::RULES,
    ];
    pages.concat()
}

/// Every input, page by page.
#[must_use]
pub fn all_inputs() -> Vec<&'static rule::Input> {
    let pages = [
        alloy::INPUTS,
        site::INPUTS,
        pattern::INPUTS,
        pair::INPUTS,
        print::INPUTS,
        print_care::INPUTS,
        calibrate::INPUTS,
        order::INPUTS,
        size::INPUTS,
        mould::INPUTS,
        mould_heat::INPUTS,
        weighed_in_water::INPUTS,
        price::INPUTS,
        offer::INPUTS,
        tree::INPUTS,
        outline::INPUTS,
        metal::INPUTS,
        investment::INPUTS,
        clearance::INPUTS,
        pour::INPUTS,
        burnout::INPUTS,
        burnout::findings::INPUTS,
        flask::INPUTS,
        melt::INPUTS,
        client_account::INPUTS,
        rework::INPUTS,
        batch::INPUTS,
        freeze_time::INPUTS,
        fill::INPUTS,
        feed::INPUTS,
        spin::INPUTS,
        dewax::INPUTS,
        kiln_energy::INPUTS,
        quench::INPUTS,
        work::INPUTS,
    ];
    pages.concat()
}

/// Every default and constant, page by page.
#[must_use]
pub fn all_givens() -> Vec<&'static rule::Given> {
    let pages = [
        site::GIVENS,
        pattern::GIVENS,
        pair::GIVENS,
        size::GIVENS,
        mould::GIVENS,
        weighed_in_water::GIVENS,
        print::GIVENS,
        price::GIVENS,
        offer::GIVENS,
        tree::GIVENS,
        outline::GIVENS,
        metal::GIVENS,
        investment::GIVENS,
        clearance::GIVENS,
        batch::GIVENS,
        client_account::GIVENS,
        rework::GIVENS,
        fill::GIVENS,
        feed::GIVENS,
        spin::GIVENS,
        kiln_energy::GIVENS,
        quench::GIVENS,
        work::GIVENS,
    ];
    pages.concat()
}
