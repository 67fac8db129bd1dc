//! Findings: what a caster must know before metal, flask or person comes to harm. Prose lives in the text catalogue.

use super::book::{Book, Id};
use super::rule::Given;
use crate::job::Place;

/// How much a finding weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Weight {
    /// Someone may be hurt, or metal or a flask is lost.
    Stop,
    /// A defect or a loss is likely.
    Caution,
    /// Worth knowing.
    Note,
}

/// Which way a finding's value gets worse: an acceptance holds no longer once it has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Worse {
    /// A larger value is worse.
    Higher,
    /// A smaller value is worse.
    Lower,
    /// It has no value.
    Never,
}

/// A kind of finding.
#[derive(Debug, PartialEq, Eq)]
pub struct FindingKind {
    /// Its key; the sentence stands in the catalogue under `finding-KEY`.
    pub key: &'static str,
    /// How much it weighs.
    pub weight: Weight,
    /// Which way it gets worse.
    pub worse: Worse,
    /// May anybody answer for it at all?
    pub may_be_signed: bool,
    /// The names of its arguments, in order.
    pub args: &'static [&'static str],
}

/// An argument of a finding's sentence.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// A figure of the book.
    Figure(Id),
    /// Words of the caster or of the shelf.
    Text(String),
    /// A number of things.
    Count(u64),
    /// Words of the catalogue, by their keys.
    Words(Vec<&'static str>),
    /// Defaults that are in use.
    Givens(Vec<&'static Given>),
}

/// A finding.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What kind.
    pub kind: &'static FindingKind,
    /// Where.
    pub place: Place,
    /// What its sentence needs, in the order of the kind's names.
    pub args: Vec<Arg>,
    /// How bad it is, in the unit of the figure it rests on.
    pub value: Option<f64>,
    /// The index of the acceptance that covers it, in the job's list.
    pub accepted: Option<usize>,
}

impl Finding {
    /// A finding without a value.
    #[must_use]
    pub fn new(kind: &'static FindingKind, place: Place, args: Vec<Arg>) -> Self {
        debug_assert_eq!(kind.args.len(), args.len(), "arguments of {}", kind.key);
        Self { kind, place, args, value: None, accepted: None }
    }

    /// The same, resting on a figure.
    #[must_use]
    pub fn resting_on(mut self, book: &Book, figure: Id) -> Self {
        self.value = book.number(figure);
        self
    }

    /// True for a Stop that nobody answers for.
    #[must_use]
    pub fn stands(&self) -> bool {
        self.kind.weight == Weight::Stop && self.accepted.is_none()
    }
}

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident $key:literal $weight:ident $worse:ident $(unsignable $no:literal)? ($($arg:literal),*);)+) => {
        $(
            $(#[$doc])*
            pub static $name: FindingKind = FindingKind {
                key: $key,
                weight: Weight::$weight,
                worse: Worse::$worse,
                may_be_signed: true $(&& !$no)?,
                args: &[$($arg),*],
            };
        )+
        /// Every kind of finding.
        pub static KINDS: &[&FindingKind] = &[$(&$name),+];
    };
}

kinds! {
    /// The tree touches the flask's wall, or does not go in.
    TREE_TOO_WIDE "tree-too-wide" Stop Lower ("clearance", "tree", "flask");
    /// Less room to the wall than the pattern needs.
    WALL_CLEARANCE "wall-clearance" Caution Lower ("clearance", "needed");
    /// The tree stands out of the flask.
    TREE_TOO_HIGH "tree-too-high" Stop Lower ("clearance", "tree", "flask");
    /// The tree is larger than the flask's inside.
    TREE_OVER_FLASK "tree-over-flask" Stop Higher unsignable true ("tree", "flask");
    /// Less investment above the tree than holds the metal.
    TOP_CLEARANCE "top-clearance" Caution Lower ("clearance", "needed");
    /// The base does not close this flask.
    BASE_DOES_NOT_FIT "base-does-not-fit" Caution Never ("base", "flask");
    /// Thicker or thinner than the powder bears.
    RATIO_OUTSIDE "ratio-outside" Caution Never ("ratio", "low", "high");
    /// The slurry for one flask does not go into one bowl.
    SEVERAL_MIXES "several-mixes" Caution Higher ("mixes", "bowl");
    /// The mix cannot be finished before gloss-off.
    MIX_OUTRUNS "mix-outruns" Caution Higher ("clock", "finish");
    /// The powder's lot is not in the studio's register, or is another powder.
    POWDER_LOT_UNKNOWN "powder-lot-unknown" Note Never ("lot");
    /// A scale, a kiln, a pump that should have been checked.
    CHECK_OVERDUE "check-overdue" Note Never ("what", "on");
    /// The powder's lot is past its date.
    POWDER_OLD "powder-old" Caution Never ("lot", "until");
    /// More metal than the crucible holds.
    CRUCIBLE_FULL "crucible-full" Stop Higher ("molten", "usable", "crucible");
    /// The metal is too hot for this crucible, or of a family it must not melt.
    CRUCIBLE_WRONG "crucible-wrong" Stop Never ("crucible", "alloy");
    /// Too little metal for a spin to throw it out cleanly.
    CRUCIBLE_LOW "crucible-low" Caution Lower ("molten", "usable", "crucible");
    /// The button does not go into the base's funnel.
    BUTTON_OVER_FUNNEL "button-over-funnel" Caution Higher ("button", "funnel");
    /// The programme goes over what the powder bears.
    OVER_CEILING "over-ceiling" Stop Higher ("top", "ceiling", "powder");
    /// The programme goes over what is planned for this powder.
    OVER_PLANNED "over-planned" Caution Higher ("top", "ceiling", "powder");
    /// Stones are in the mould and the programme is too hot for them, or for this powder with stones.
    STONES_TOO_HOT "stones-too-hot" Stop Higher unsignable true ("top", "ceiling");
    /// Stones are in a powder they must not be cast in.
    STONES_POWDER "stones-powder" Stop Never unsignable true ("powder");
    /// Stones are cast in place: never quench.
    STONES_NO_QUENCH "stones-no-quench" Caution Never ();
    /// Gypsum must not hold this metal.
    MOULD_REFUSES "mould-refuses" Stop Never unsignable true ("alloy", "powder");
    /// The kiln cannot rise or fall as fast as a stage asks.
    KILN_CANNOT_FOLLOW "kiln-cannot-follow" Caution Higher ("needed", "asked");
    /// The kiln does not go so high.
    KILN_CEILING "kiln-ceiling" Stop Higher ("target", "ceiling", "kiln");
    /// The controller takes fewer segments.
    KILN_SEGMENTS "kiln-segments" Caution Higher ("segments", "most");
    /// More flasks in the load than the kiln has places.
    KILN_FULL "kiln-full" Caution Higher ("flasks", "places");
    /// The table does not say whether its hours include the ramps.
    RAMPS_UNSAID "ramps-unsaid" Caution Never ("with", "without");
    /// A stage's hours do not even cover its ramp.
    STAGE_TOO_SHORT "stage-too-short" Caution Never ("ramp", "stage");
    /// The table has no row for so large a flask.
    TABLE_TOO_SMALL "table-too-small" Caution Never ("flask", "table");
    /// The table is not meant for these patterns or this powder.
    TABLE_NOT_MEANT "table-not-meant" Caution Never ("table", "for");
    /// Too little time hot enough to burn the last carbon.
    CARBON_LEFT "carbon-left" Caution Lower ("time", "needed", "material");
    /// By the heat of its mould a flask is not dry at the pour.
    MOULD_WET "mould-wet" Stop Lower unsignable true ("core");
    /// It may not be dry, where the mould conducts as badly as it may.
    MOULD_WET_PERHAPS "mould-wet-perhaps" Caution Lower ("core");
    /// The kiln is hot for long enough, the core of a mould is not.
    CORE_CARBON_LEFT "core-carbon-left" Caution Lower ("time", "needed", "material");
    /// It may not be.
    CORE_CARBON_PERHAPS "core-carbon-perhaps" Note Lower ("time", "needed", "material");
    /// The core is not at the temperature that the mould is wanted at.
    CORE_NOT_HELD "core-not-held" Caution Never ("core", "wanted");
    /// It may not be.
    CORE_NOT_HELD_PERHAPS "core-not-held-perhaps" Note Never ("core", "wanted");
    /// The schedule is a fast one: hot kiln, wet flasks.
    FAST_BURNOUT "fast-burnout" Caution Never ("table");
    /// A mix is thinner than a fast schedule bears.
    FAST_MIX_THIN "fast-mix-thin" Caution Higher ("mixed", "thick");
    /// The kiln has no vent.
    KILN_UNVENTED "kiln-unvented" Caution Never ("kiln");
    /// Steam is planned for what does not run out by it.
    STEAM_NOT_MEANT "steam-not-meant" Caution Never ("material");
    /// Much of the wax is still in after the steam.
    WAX_LEFT "wax-left" Caution Lower ("out", "wax");
    /// A flask that wants a cooler mould is to be poured before one that wants a hotter.
    TURN_AGAINST_HEAT "turn-against-heat" Caution Never ("wanted", "flask");
    /// By the kiln's log the mould's corner fell through the change of cristobalite.
    MOULD_FELL "mould-fell" Stop Lower ("corner");
    /// It came near.
    MOULD_FELL_NEAR "mould-fell-near" Caution Lower ("corner");
    /// By the kiln's log the powder was hotter than it may ever be.
    LOG_OVER_CEILING "log-over-ceiling" Stop Higher ("top", "ceiling", "powder");
    /// A step of the work before a pour does not fit.
    WORK_DOES_NOT_FIT "work-does-not-fit" Caution Never ("step", "why");
    /// Pouring before the programme could end, were it started now.
    STARTS_IN_PAST "starts-in-past" Caution Never ("start");
    /// A piece is due before its flask is poured.
    LATE "late" Caution Never ("due", "design", "client");
    /// Pieces hang on no tree.
    PIECES_ON_NO_TREE "pieces-on-no-tree" Caution Higher ("pieces", "design", "client");
    /// A piece that was taken on from another job was taken on by a third as well.
    PIECE_TAKEN_TWICE "piece-taken-twice" Caution Never ("design", "piece", "jobs");
    /// A piece hangs on more than one tree.
    PIECE_TWICE "piece-twice" Caution Higher ("pieces", "design");
    /// A tree stands in two flasks.
    TREE_IN_TWO_FLASKS "tree-in-two-flasks" Caution Never ("tree");
    /// A tree stands in no flask.
    TREE_IN_NO_FLASK "tree-in-no-flask" Caution Never ("tree");
    /// Pieces on a tree, or their sprues, touch each other.
    PARTS_TOUCH "parts-touch" Caution Never ("one", "other", "more");
    /// Pieces on a tree, or their sprues, are too near to each other.
    PARTS_NEAR "parts-near" Caution Lower ("one", "other", "room", "needed", "more");
    /// A piece is too near to the main sprue, or touches it.
    PIECE_NEAR_TRUNK "piece-near-trunk" Caution Lower ("piece", "room", "needed", "more");
    /// A tree on the scale weighs something else than its parts should.
    TREE_AGAINST_PARTS "tree-against-parts" Caution Higher ("weighed", "computed", "share");
    /// Pieces of different alloys on one tree.
    TWO_ALLOYS "two-alloys" Stop Never unsignable true ("first", "second");
    /// A melt feeds flasks of different alloys.
    MELT_TWO_ALLOYS "melt-two-alloys" Stop Never unsignable true ("first", "second");
    /// The load's flasks cannot share one mould temperature.
    MOULD_RANGES_APART "mould-ranges-apart" Note Higher ("hottest", "coolest");
    /// A chosen pouring temperature is outside the alloy's range.
    METAL_OUTSIDE "metal-outside" Caution Never ("metal", "low", "high");
    /// A chosen mould temperature is outside the alloy's range.
    MOULD_OUTSIDE "mould-outside" Caution Never ("mould", "low", "high");
    /// A pattern has neither weight nor file.
    PATTERN_UNKNOWN "pattern-unknown" Caution Never ("pattern");
    /// A line has no pattern.
    LINE_WITHOUT_PATTERN "line-without-pattern" Caution Never ("design", "client");
    /// A line has no alloy.
    LINE_WITHOUT_ALLOY "line-without-alloy" Caution Never ("design", "client");
    /// A pattern's file is not there.
    FILE_MISSING "file-missing" Caution Never ("file", "kept");
    /// A pattern's file cannot be read.
    FILE_UNREADABLE "file-unreadable" Caution Never ("file", "reason", "kept");
    /// A pattern's file lies outside the job's folder and is not read before somebody allows it.
    FILE_APART "file-apart" Caution Never ("file", "kept");
    /// A pattern's file is not the one that was looked at.
    FILE_CHANGED "file-changed" Caution Never ("file", "kept", "before", "now");
    /// The file is open: it has no volume.
    FILE_OPEN "file-open" Caution Never ("file", "edges");
    /// The file is wound both ways: it has no volume.
    FILE_MIXED "file-mixed" Caution Never ("file");
    /// A sealed void pours solid.
    SEALED_VOID "sealed-void" Caution Higher ("file", "void");
    /// A void is said to be drained and held.
    DRAINED_VOID "drained-void" Note Never ("file", "void");
    /// Shells overlap and what they share is counted once.
    SHELLS_UNITED "shells-united" Note Never ("file", "union", "sum", "over");
    /// Shells overlap too intricately: the sum counts the overlap twice.
    SHELLS_OVERLAP "shells-overlap" Caution Never ("file");
    /// Solids lie wholly in another, wound the same way.
    SHELLS_NESTED "shells-nested" Caution Never ("file", "inner");
    /// The size is absurd: probably another unit.
    FILE_UNIT "file-unit" Caution Never ("file", "size", "unit");
    /// Something else about the file.
    FILE_REMARK "file-remark" Note Never ("file", "remark");
    /// A wall is thinner than the studio casts without fear.
    WALL_TOO_THIN "wall-too-thin" Caution Lower ("pattern", "thinnest", "least");
    /// A file has so many triangles that its walls are not among the figures.
    WALLS_NOT_MEASURED "walls-not-measured" Note Never ("file");
    /// A print's weight and its file disagree.
    WEIGHT_AGAINST_FILE "weight-against-file" Caution Higher ("pattern", "weighed", "computed");
    /// Both patterns of a pair are for the same side.
    PAIR_SAME_SIDE "pair-same-side" Caution Never ("one", "other");
    /// Two patterns that should be alike are mirror images.
    PAIR_MIRRORED "pair-mirrored" Caution Never ("one", "other");
    /// Two patterns that should make a pair have different shapes.
    PAIR_DIFFERS "pair-differs" Caution Higher ("one", "other", "apart", "tolerance");
    /// The two patterns of a pair differ in weight.
    PAIR_WEIGHTS "pair-weights" Caution Higher ("one", "other", "weight", "other-weight");
    /// A ring size is not on its scale.
    SIZE_OFF_SCALE "size-off-scale" Caution Never ("size", "scale", "range");
    /// A metal price is old.
    PRICE_STALE "price-stale" Caution Higher ("metal", "days", "on");
    /// A metal price is not known.
    PRICE_MISSING "price-missing" Note Never ("metal");
    /// A gross weight without its tare.
    GROSS_WITHOUT_TARE "gross-without-tare" Caution Never ("weight");
    /// A shelf entry is not there.
    NOT_ON_SHELF "not-on-shelf" Caution Never ("entry");
    /// A shelf entry of another kind than belongs there.
    ENTRY_OTHER_KIND "entry-other-kind" Caution Never ("entry");
    /// A copy in the job is not the entry it says it was taken from.
    COPY_ALTERED "copy-altered" Caution Never ("entry");
    /// The shelf's entry is no longer the one the job took.
    SHELF_DIFFERS "shelf-differs" Note Never ("entry");
    /// The studio's own shelf holds something that does not fit.
    OVERLAY_PROBLEM "overlay-problem" Note Never ("entry", "problem");
    /// Less metal drawn than the charge needs.
    CHARGE_SHORT "charge-short" Stop Lower ("drawn", "charge");
    /// The charge's fineness is under the mark.
    UNDER_MARK "under-mark" Stop Lower unsignable true ("fineness", "mark");
    /// The fineness of a lot in a melt that will be marked is not known.
    LOT_FINENESS_UNKNOWN "lot-fineness-unknown" Stop Never unsignable true ("lot");
    /// A piece is to carry a higher mark than its alloy holds.
    MARK_OVER_ALLOY "mark-over-alloy" Stop Higher unsignable true ("mark", "alloy");
    /// Metal for the refiner in a melt.
    LOT_REFINING "lot-refining" Caution Never ("lot");
    /// More returns than the alloy bears.
    RETURNS_OVER "returns-over" Caution Higher ("share", "limit");
    /// More is drawn from a lot than came in.
    LOT_SHORT "lot-short" Caution Higher ("lot", "drawn", "received");
    /// A draw on a lot the studio does not have.
    LOT_UNKNOWN "lot-unknown" Caution Never ("lot");
    /// Metal of a client without their consent.
    CLIENT_METAL "client-metal" Stop Never ("client", "lot");
    /// A repaired piece holds less than its mark, its solder counted.
    REWORK_UNDER_MARK "rework-under-mark" Caution Lower ("piece", "fineness", "mark");
    /// A soldered piece was rejected, and scrap of its batch is in a clean lot.
    SOLDERED_TO_CLEAN "soldered-to-clean" Caution Never ("piece", "lot");
    /// Finished pieces were delivered without the mark the law asks for.
    UNMARKED "unmarked" Caution Higher ("count", "design", "country");
    /// A fineness that the country does not know.
    MARK_NOT_LEGAL "mark-not-legal" Caution Never ("mark", "country");
    /// A lot of another alloy or metal in the melt.
    LOT_OTHER_METAL "lot-other-metal" Caution Never ("lot", "alloy");
    /// Irreplaceable patterns share a flask with others.
    IRREPLACEABLE "irreplaceable" Caution Never ("pattern");
    /// What cannot be made again stands in a flask that is an experiment.
    IRREPLACEABLE_BESIDE_TRIAL "irreplaceable-beside-trial" Caution Never ("pattern");
    /// A pattern names a mould that is not in the studio's register.
    MOULD_UNKNOWN "mould-unknown" Note Never ("mould", "pattern");
    /// A mould's shot weighs less than the pattern that is shot from it.
    SHOT_LIGHT "shot-light" Caution Lower ("shot", "pattern", "weight");
    /// A sample weighed in water is too light for a density that is worth anything.
    SAMPLE_LIGHT "sample-light" Caution Higher ("material", "density", "within");
    /// A density weighed in water is not the shelf's.
    DENSITY_OFF_SHELF "density-off-shelf" Note Higher ("material", "weighed", "shelf");
    /// Defaults that nobody confirmed.
    DEFAULTS "defaults" Note Higher ("page", "count", "which");
    /// What a flask or a load still lacks before its sheet is whole.
    UNFINISHED "unfinished" Note Never ("what");
    /// A melt that no flask is poured from.
    MELT_FEEDS_NOTHING "melt-feeds-nothing" Note Never ();
    /// A kiln load without a flask.
    LOAD_EMPTY "load-empty" Note Never ();
    /// Two flasks with the same number on their faces.
    SCRATCH_TWICE "scratch-twice" Caution Never ("scratch");
    /// A material hangs on a weighed tree and was not weighed.
    PART_NOT_WEIGHED "part-not-weighed" Caution Never ("material");
    /// A segment says its ramp twice, in two ways.
    RAMP_SAID_TWICE "ramp-said-twice" Caution Never ("minutes", "by-rate");
    /// The clocks skip the time of the pour.
    POUR_SKIPPED "pour-skipped" Caution Never ("taken");
    /// The clocks show the time of the pour twice.
    POUR_SHOWN_TWICE "pour-shown-twice" Caution Never ("taken");
    /// A pattern's file lies outside the job's folder.
    FILE_OUTSIDE "file-outside" Note Never ("file");
    /// Somebody answers for a finding there is no such kind of.
    ACCEPTANCE_UNKNOWN "acceptance-unknown" Note Never ("finding");
    /// A number of a shelf is known only roughly and matters here.
    SOLIDUS_UNCERTAIN "solidus-uncertain" Note Never ("alloy", "by");
    /// The studio raised its own limit.
    OWN_LIMIT "own-limit" Note Never ("entry");
    /// A run names a printer the studio does not have.
    PRINTER_UNKNOWN "printer-unknown" Note Never ("printer");
    /// The printer has no setting for the run's resin.
    PRINT_NO_SETTING "print-no-setting" Note Never ("printer", "material");
    /// A part is higher than the printer.
    PRINT_TOO_TALL "print-too-tall" Caution Higher ("pattern", "height", "room");
    /// A part does not lie on the plate.
    PRINT_OVER_PLATE "print-over-plate" Caution Never ("pattern", "x", "y", "plate-x", "plate-y");
    /// Thin walls were longer in solvent than they bear.
    PRINT_WASHED_LONG "print-washed-long" Caution Higher ("washed", "most", "pattern");
    /// Cured too short before the rinse.
    PRINT_CURED_SHORT "print-cured-short" Caution Lower ("cured", "least");
    /// The surface is not clean after the rinse.
    PRINT_NOT_CLEAN "print-not-clean" Caution Never ();
    /// No calibration of the printer with the resin was accepted.
    PRINT_UNCALIBRATED "print-uncalibrated" Note Never ("printer", "material");
    /// The calibration is soon to be measured again.
    RECHECK_DUE "recheck-due" Note Never ("printer", "due");
    /// A feed sprue freezes before, or hardly after, what it feeds.
    FEED_THIN "feed-thin" Caution Lower ("pattern", "diameter", "needed");
    /// A feed sprue is much thicker than what it stands on.
    FEED_THICK "feed-thick" Caution Higher ("pattern", "diameter", "most");
    /// A feed sprue is too long for its thickness.
    FEED_LONG "feed-long" Caution Higher ("pattern", "length", "most");
    /// The main sprue freezes before a feed sprue.
    TRUNK_THIN "trunk-thin" Caution Lower ("trunk", "feed");
    /// The button freezes before the main sprue.
    BUTTON_SMALL "button-small" Caution Lower ("button", "needed");
    /// Somewhere on the tree what should freeze last freezes first.
    FREEZING_ORDER "freezing-order" Note Never ("tree", "parts");
    /// The thinnest wall freezes before the tree is full.
    FREEZES_FIRST "freezes-first" Caution Higher ("filling", "freezing", "wall");
    /// The pressure does not enter a place as thin as the thinnest wall.
    DETAIL_FINE "detail-fine" Caution Lower ("wall", "detail", "pressure");
    /// The arm is somewhat off its balance.
    SPIN_OFF_BALANCE "spin-off-balance" Caution Higher ("set", "needed");
    /// The arm is far off its balance.
    SPIN_UNBALANCED "spin-unbalanced" Stop Higher ("set", "needed");
    /// The machine cannot be given so much counterweight.
    COUNTERWEIGHT_OVER "counterweight-over" Stop Higher ("needed", "most", "machine");
    /// The flask does not go into the cradle.
    CRADLE_SIZE "cradle-size" Stop Never unsignable true ("flask", "machine");
    /// The flask is too heavy for the cradle.
    CRADLE_LOAD "cradle-load" Stop Higher ("load", "most", "machine");
    /// The machine must not turn so fast.
    SPIN_TOO_FAST "spin-too-fast" Stop Higher unsignable true ("speed", "most", "machine");
    /// The studio has no such machine.
    MACHINE_UNKNOWN "machine-unknown" Note Never ("machine");
    /// The calibration should have been measured again.
    RECHECK_PASSED "recheck-passed" Caution Never ("printer", "due");
}
