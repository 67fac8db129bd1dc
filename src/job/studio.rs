//! The studio: receipts only. What goes out of a metal lot is written in the job that draws it, so that a balance is
//! receipts minus draws over all jobs, and undo in a job is safe.

use jiff::civil::{Date, DateTime, Time};
use serde::{Deserialize, Serialize};

use super::id::{JobId, LotId};
use super::printer::{Calibration, Printer};
use super::serial::document;
use super::spin::Centrifuge;
use crate::quantity::{Finite, Grams, Money};
use crate::stock::{EntryId, OverlayItem};

document! {
    /// Everything a studio knows beyond its jobs.
    pub struct Studio {
        /// The studio's own id.
        studio_id: JobId,
        /// The name that prints.
        name: String,
        /// Address lines that print.
        address: Vec<String>,
        /// A picture for the letterhead, by path relative to this file.
        letterhead: String,
        /// Where it stands: altitude, barometer, room, clock.
        site: Site,
        /// The people, by initials.
        hands: Vec<Hand>,
        /// Money matters.
        money: Terms,
        /// The country whose law on marking the studio sells under, by shelf id.
        marking: Option<EntryId>,
        /// Smallest step of the balance the metal is weighed on, in grams.
        balance_step: Option<Grams>,
        /// When somebody is there; always where nothing is said.
        hours: Vec<WorkingHours>,
        /// Days when nobody is.
        days_off: Vec<Date>,
        /// The thinnest wall this studio casts without fear, in mm.
        least_wall_mm: Option<Finite>,
        /// The mixing bowl, in cm³.
        bowl_cm3: Option<Finite>,
        /// The flasks it has, size by size; every size of the shelf where nothing is said.
        flasks: Vec<FlaskStock>,
        /// How its trees are usually built.
        usual_tree: UsualTree,
        /// The studio's own shelf entries, and changes to the shipped ones.
        shelf: Vec<OverlayItem>,
        /// Metal lots with their receipts.
        lots: Vec<Lot>,
        /// Stocktakes. Each freezes balances, so that a job that went missing is noticed.
        stocktakes: Vec<Stocktake>,
        /// Metal prices, by hand, with their dates.
        prices: Vec<Price>,
        /// Register of rubber moulds.
        moulds: Vec<Mould>,
        /// Samples of pattern materials weighed in water.
        water_weighings: Vec<WaterWeighing>,
        /// Register of powder and resin lots.
        materials: Vec<MaterialLot>,
        /// Register of everything that wears and is checked: bases, crucibles, kilns, scales, gaskets, pumps.
        equipment: Vec<Equipment>,
        /// Machines that spin the metal into the flask.
        centrifuges: Vec<Centrifuge>,
        /// Printers and how they are set.
        printers: Vec<Printer>,
        /// How true the printers print.
        calibrations: Vec<Calibration>,
        /// Constants learned from the record and accepted.
        learned: Vec<Learned>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// Hours of a day when somebody is there. A day may have several.
    pub struct WorkingHours {
        /// The day of the week.
        day: Day,
        /// From this time of the clock on the wall.
        from: Option<Time>,
        /// To this one; over midnight where it is not later.
        to: Option<Time>,
    }
}

/// A day of the week.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub enum Day {
    /// Monday.
    #[default]
    Monday,
    /// Tuesday.
    Tuesday,
    /// Wednesday.
    Wednesday,
    /// Thursday.
    Thursday,
    /// Friday.
    Friday,
    /// Saturday.
    Saturday,
    /// Sunday.
    Sunday,
}

impl Day {
    /// From Monday to Sunday.
    pub const ALL: [Self; 7] = [Self::Monday, Self::Tuesday, Self::Wednesday, Self::Thursday, Self::Friday, Self::Saturday, Self::Sunday];
}

document! {
    /// Flasks of one size.
    pub struct FlaskStock {
        /// The size, by shelf id.
        entry: Option<EntryId>,
        /// How many there are; no end of them where not said.
        count: Option<u32>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// What a tree is reckoned with before it is built.
    pub struct UsualTree {
        /// Diameter of the main sprue in mm.
        main_diameter_mm: Option<Finite>,
        /// Diameter of a feed sprue in mm.
        feed_diameter_mm: Option<Finite>,
        /// Length of a feed sprue in mm.
        feed_length_mm: Option<Finite>,
        /// Angle of a feed sprue to the main sprue in degrees.
        feed_angle_deg: Option<Finite>,
        /// Room between two pieces in mm.
        gap_mm: Option<Finite>,
    }
}

document! {
    /// Where work is done. A job may say what differs.
    pub struct Site {
        /// Time zone, by its common name ("Europe/Dublin"); the clock of the machine where not said.
        zone: String,
        /// Height above the sea in m.
        altitude_m: Option<Finite>,
        /// Station pressure in kPa, read today; it rules over the altitude.
        barometer_kpa: Option<Finite>,
        /// Room temperature in °C.
        room_c: Option<Finite>,
        /// Temperature of the mixing water in °C.
        water_c: Option<Finite>,
    }
}

document! {
    /// A person, by initials only.
    pub struct Hand {
        /// Initials.
        initials: String,
        /// What they may answer for.
        role: Role,
    }
}

/// What a person may answer for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Role {
    /// Learns; does not overrule a Stop.
    #[default]
    Apprentice,
    /// Works alone; signs for Cautions.
    Caster,
    /// Answers for the studio; the only one who signs for a Stop.
    Master,
}

document! {
    /// Money matters.
    pub struct Terms {
        /// Currency code, such as EUR.
        currency: String,
        /// Price of an hour's work.
        hour: Option<Money>,
        /// Price of a kilowatt-hour.
        kwh: Option<Money>,
        /// Margin on everything but the metal, as a share.
        margin: Option<Finite>,
        /// Premium on the metal's price, as a share.
        metal_premium: Option<Finite>,
        /// Tax as a share.
        tax: Option<Finite>,
        /// How many days a metal price holds.
        price_days: Option<u32>,
        /// How many days a quote holds.
        quote_days: Option<u32>,
        /// Terms printed on quotes.
        words: String,
    }
}

document! {
    /// A metal lot.
    pub struct Lot {
        /// Its label.
        id: LotId,
        /// What it is.
        what: LotKind,
        /// The alloy, by shelf id, where it is one.
        alloy: Option<EntryId>,
        /// The precious metal it is accounted in ("Au"), where it is one.
        metal: String,
        /// Fineness in thousandths; by the lot's papers, not assayed, unless an assay says so.
        fineness_permille: Option<Finite>,
        /// Assayed, with the paper's number.
        assay: String,
        /// The client it belongs to, by letter code; the studio's where empty.
        owner: String,
        /// How often it has been melted.
        melts: u32,
        /// Solder is in it.
        soldered: bool,
        /// What came in.
        receipts: Vec<Receipt>,
        /// Remarks.
        notes: String,
    }
}

/// What a lot is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum LotKind {
    /// New casting grain.
    #[default]
    NewMetal,
    /// Fine metal.
    FineMetal,
    /// Master alloy, to be mixed with fine metal.
    MasterAlloy,
    /// Own sprues, buttons and rejects.
    Scrap,
    /// Filings, sweeps, filters: for the refiner.
    Refining,
}

document! {
    /// Metal that came in.
    pub struct Receipt {
        /// When.
        on: Option<Date>,
        /// How much.
        grams: Grams,
        /// What was paid.
        paid: Option<Money>,
        /// The paper it came with.
        paper: String,
        /// The job it came back from, where it did.
        from_job: Option<JobId>,
    }
}

document! {
    /// Balances as they were weighed.
    pub struct Stocktake {
        /// When.
        at: Option<DateTime>,
        /// By whom.
        hands: String,
        /// What was found.
        found: Vec<Found>,
        /// The jobs that counted, so that one that went missing later is noticed.
        jobs: Vec<JobId>,
    }
}

document! {
    /// One lot at a stocktake.
    pub struct Found {
        /// The lot.
        lot: LotId,
        /// What the scale showed.
        grams: Grams,
        /// What the books said.
        book: Grams,
    }
}

document! {
    /// A metal price of a day.
    pub struct Price {
        /// A fine metal ("Ag") or an alloy's shelf id.
        of: String,
        /// The price.
        amount: Money,
        /// For how much.
        per: PriceUnit,
        /// Of which day.
        on: Option<Date>,
        /// Where it was read.
        note: String,
    }
}

/// What a price is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum PriceUnit {
    /// A gram.
    #[default]
    Gram,
    /// A troy ounce.
    TroyOunce,
    /// A kilogram.
    Kilogram,
}

document! {
    /// A rubber mould.
    pub struct Mould {
        /// Its number.
        number: String,
        /// The drawer it lies in.
        drawer: String,
        /// What it shoots.
        design: String,
        /// The master it was cut from, and where that is kept.
        master: String,
        /// Shrink of the rubber as a share.
        rubber_shrink: Option<Finite>,
        /// Wax, by shelf id.
        wax: Option<EntryId>,
        /// Injection temperature in °C.
        wax_c: Option<Finite>,
        /// Injection pressure in kPa.
        pressure_kpa: Option<Finite>,
        /// Wax of one shot.
        shot: Option<Grams>,
        /// Share of shots that are thrown back.
        reject_share: Option<Finite>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// A sample of a pattern material weighed dry and, held down by a sinker, under water.
    pub struct WaterWeighing {
        /// The material, by shelf id.
        material: Option<EntryId>,
        /// When.
        on: Option<Date>,
        /// The sample alone, dry.
        dry: Option<Grams>,
        /// The sinker alone, hung in water; nought where the sample sinks by itself.
        sinker_in_water: Option<Grams>,
        /// Sample and sinker together, hung in water.
        both_in_water: Option<Grams>,
        /// Temperature of the water in °C.
        water_c: Option<Finite>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// A drum of powder, a bottle of resin.
    pub struct MaterialLot {
        /// Its label.
        label: String,
        /// What it is, by shelf id.
        entry: Option<EntryId>,
        /// When it was opened.
        opened: Option<Date>,
        /// When it is no longer to be used.
        until: Option<Date>,
        /// Gloss-off measured, in min.
        gloss_off_min: Option<Finite>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// Something that wears.
    pub struct Equipment {
        /// Its name or number.
        label: String,
        /// What it is, by shelf id, where it is on the shelf.
        entry: Option<EntryId>,
        /// What kind of thing it is, in a word.
        kind: String,
        /// Its tare.
        tare: Option<Grams>,
        /// The alloy family it serves.
        family: String,
        /// Uses so far.
        uses: u32,
        /// A scale's resolution.
        resolution: Option<Grams>,
        /// A kiln's offset in K: what is there less what the display says.
        offset_k: Option<Finite>,
        /// When it was last checked.
        checked: Option<Date>,
        /// When it is next to be checked.
        next_check: Option<Date>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// A constant learned from the record.
    pub struct Learned {
        /// What it is, by the key of the default it replaces.
        key: String,
        /// The shelf entry it belongs to, where it belongs to one.
        entry: Option<EntryId>,
        /// Its mean, in the default's unit.
        mean: Finite,
        /// Its spread.
        spread: Option<Finite>,
        /// How many jobs it rests on.
        jobs: u32,
        /// When it was accepted.
        accepted: Option<Date>,
    }
}
