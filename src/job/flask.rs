//! Filled flasks, kiln loads and melts: the plan of the batch.

use std::collections::BTreeMap;

use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

use super::id::{BurnoutId, FlaskId, LotId, MeltId, TreeId};
use super::serial::document;
use super::spin::Spin;
use super::tree::ButtonWish;
use crate::quantity::{Finite, Grams};
use crate::stock::{EntryId, Section};

document! {
    /// One filled flask: the steel, the tree in it, the mix around it, and how it is to be poured.
    pub struct Flask {
        /// The flask's id.
        id: FlaskId,
        /// Number to scratch into its face: paper burns.
        scratch: String,
        /// The steel cylinder, by shelf id.
        vessel: Option<EntryId>,
        /// The tree in it.
        tree: Option<TreeId>,
        /// The alloy, where no piece on the tree says it.
        alloy: Option<EntryId>,
        /// The section that rules the temperatures, where the lightest piece is not to.
        section: Option<Section>,
        /// Height of a collar on top, in mm.
        collar_mm: Option<Finite>,
        /// The powder, by shelf id.
        powder: Option<EntryId>,
        /// The powder's lot in the studio's register.
        powder_lot: String,
        /// Water (or liquid) to powder by weight: 0.40 for 40 per 100.
        ratio: Option<Finite>,
        /// Slurry mixed beyond what the flask needs, as a share.
        spill_share: Option<Finite>,
        /// The mixing bowl's volume, in cm³.
        bowl_cm3: Option<Finite>,
        /// Temperature of the mixing water in °C.
        water_c: Option<Finite>,
        /// The kiln load it burns out in.
        burnout: Option<BurnoutId>,
        /// Where in the kiln it stands.
        kiln_position: String,
        /// The melt it is poured from; its own where not said.
        melt: Option<MeltId>,
        /// Its place in the order of pouring, from 1.
        turn: Option<u32>,
        /// How the metal is driven.
        drive: Drive,
        /// What the vacuum gauge reads at the pour, in kPa.
        vacuum_kpa: Option<Finite>,
        /// How it is spun.
        spin: Spin,
        /// The button.
        button: ButtonWish,
        /// Metal kept in reserve, in grams.
        reserve: Option<Grams>,
        /// Melt loss as a share, where the alloy's own is not to rule.
        melt_loss: Option<Finite>,
        /// The metal's temperature when poured, in °C.
        metal_c: Option<Finite>,
        /// The mould's temperature when poured, in °C.
        mould_c: Option<Finite>,
        /// What the flask weighed when it went into the steam, in grams.
        before_dewax: Option<Grams>,
        /// What it weighed when it came out.
        after_dewax: Option<Grams>,
        /// Its middle on the kiln's floor in mm, from the front left corner to the right and to the back, where a hand put it.
        floor_mm: Option<[Finite; 2]>,
        /// An experiment: a powder, a programme, an alloy or a resin that is tried for the first time.
        trial: bool,
        /// Remarks.
        notes: String,
    }
}

/// How the metal is driven into the mould.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Drive {
    /// By its own weight.
    Gravity,
    /// Air drawn out through the mould.
    #[default]
    Vacuum,
    /// Spun.
    Centrifugal,
}

document! {
    /// A kiln load: which kiln, which programme, when it is to be poured.
    pub struct Burnout {
        /// The load's id.
        id: BurnoutId,
        /// What the caster calls it.
        name: String,
        /// The kiln, by shelf id.
        kiln: Option<EntryId>,
        /// What the programme starts from.
        programme: Option<Programme>,
        /// Do the hours of the table include the ramps? Asked where its source does not say.
        hours_include_ramps: Option<bool>,
        /// Minutes of steam dewaxing before the kiln.
        dewax_min: Option<Finite>,
        /// When the first flask is to be poured, by the clock on the wall.
        pour_at: Option<DateTime>,
        /// The kiln's temperature when it is loaded, in °C.
        start_c: Option<Finite>,
        /// What the pattern's data sheet asks of the kiln, where the caster wrote it down.
        sheet: Vec<SheetHours>,
        /// Steps of the work that were put at a time by hand, each at its start.
        pins: BTreeMap<WorkStep, DateTime>,
        /// Minutes of the steps, where they are not what they usually are.
        step_minutes: BTreeMap<WorkStep, Finite>,
        /// The controller starts the kiln by itself; nobody need be there.
        starts_itself: bool,
        /// What the kiln really did.
        log: Option<KilnReadings>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// A line of a data sheet: the kiln stays between two temperatures for so long at least.
    pub struct SheetHours {
        /// From this, in °C.
        from_c: Finite,
        /// To this, in °C.
        to_c: Finite,
        /// For so many minutes.
        minutes: Finite,
    }
}

/// The steps of the work before a pour, from the first to the last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum WorkStep {
    /// The patterns are printed.
    Printing,
    /// They are washed, dried and cured.
    Washing,
    /// They are put on the tree and the tree into its flask.
    Tree,
    /// The powder is mixed and the flasks are filled.
    Investing,
    /// The investment sets.
    Setting,
    /// Wax is steamed out.
    Dewax,
    /// The flasks go into the kiln.
    Loading,
    /// The kiln runs its programme.
    Burnout,
}

impl WorkStep {
    /// All of them in their order.
    pub const ALL: [Self; 8] =
        [Self::Printing, Self::Washing, Self::Tree, Self::Investing, Self::Setting, Self::Dewax, Self::Loading, Self::Burnout];
}

document! {
    /// What a kiln's log says, made light.
    pub struct KilnReadings {
        /// The file it was read from.
        file: String,
        /// When its first reading was, by the clock on the wall; as planned where not said.
        start: Option<DateTime>,
        /// Minutes after the first reading, and what was read in °C.
        points: Vec<(Finite, Finite)>,
        /// Remarks.
        notes: String,
    }
}

/// Where a programme comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Programme {
    /// A stage table of the shelf, read at the load's largest flask.
    Table(EntryId),
    /// Segments of the studio's own.
    Segments(Vec<Segment>),
}

document! {
    /// One segment of a programme.
    pub struct Segment {
        /// The temperature it goes to, in °C; the mould's pouring temperature where not said.
        target_c: Option<Finite>,
        /// How fast, in K/h; as fast as the kiln goes where neither this nor `ramp_min` is said.
        ramp_k_h: Option<Finite>,
        /// How long the ramp takes, in min.
        ramp_min: Option<Finite>,
        /// How long the temperature is then held, in min.
        hold_min: Finite,
    }
}

document! {
    /// One crucible of metal.
    pub struct Melt {
        /// The melt's id.
        id: MeltId,
        /// What the caster calls it.
        name: String,
        /// The crucible, by shelf id.
        crucible: Option<EntryId>,
        /// The fineness it is to reach, in thousandths, where it is not the alloy's own.
        target_permille: Option<Finite>,
        /// What goes in. A draw on a lot is written here and nowhere else.
        charge: Vec<Draw>,
        /// Clients whose metal may be blended, with where they agreed to it in writing.
        consents: Vec<Consent>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// Metal drawn from a lot of the studio.
    pub struct Draw {
        /// The lot.
        lot: LotId,
        /// How much.
        grams: Grams,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// A client's written consent to blend their metal.
    pub struct Consent {
        /// The client, by letter code.
        client: String,
        /// Where the writing is kept.
        paper: String,
    }
}
