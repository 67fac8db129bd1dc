//! Which sentences stand on which card.

use super::Trouble;

/// The keys of a card's sentences.
#[derive(Debug)]
pub(super) struct Wording {
    pub title: &'static str,
    pub first: &'static str,
    pub steps: &'static [&'static str],
    pub never: &'static [&'static str],
    pub help: &'static str,
    pub source: &'static str,
}

impl Wording {
    /// Those of a trouble's card.
    pub const fn of(trouble: Trouble) -> &'static Self {
        match trouble {
            Trouble::KilnOff => &KILN_OFF,
            Trouble::KilnOver => &KILN_OVER,
            Trouble::PumpDead => &PUMP_DEAD,
            Trouble::FlaskLeak => &FLASK_LEAK,
            Trouble::Crucible => &CRUCIBLE,
            Trouble::Spill => &SPILL,
            Trouble::Spin => &SPIN,
            Trouble::Fume => &FUME,
            Trouble::Burn => &BURN,
        }
    }
}

const KILN_OFF: Wording = Wording {
    title: "card-kiln-off-title",
    first: "card-kiln-off-first",
    steps: &[
        "card-kiln-off-1",
        "card-kiln-off-2",
        "card-kiln-off-3",
        "card-kiln-off-4",
        "card-kiln-off-5",
        "card-kiln-off-6",
        "card-kiln-off-7",
    ],
    never: &["card-kiln-off-never-1", "card-kiln-off-never-2", "card-kiln-off-never-3"],
    help: "card-kiln-off-help",
    source: "card-source-kiln-off",
};

const KILN_OVER: Wording = Wording {
    title: "card-kiln-over-title",
    first: "card-kiln-over-first",
    steps: &[
        "card-kiln-over-1",
        "card-kiln-over-2",
        "card-kiln-over-3",
        "card-kiln-over-4",
        "card-kiln-over-5",
        "card-kiln-over-6",
        "card-kiln-over-7",
    ],
    never: &["card-kiln-over-never-1", "card-kiln-over-never-2"],
    help: "card-kiln-over-help",
    source: "card-source-kiln-over",
};

const PUMP_DEAD: Wording = Wording {
    title: "card-pump-dead-title",
    first: "card-pump-dead-first",
    steps: &[
        "card-pump-dead-1",
        "card-pump-dead-2",
        "card-pump-dead-3",
        "card-pump-dead-4",
        "card-pump-dead-5",
        "card-pump-dead-6",
        "card-pump-dead-7",
    ],
    never: &["card-pump-dead-never-1", "card-pump-dead-never-2", "card-pump-dead-never-3"],
    help: "card-pump-dead-help",
    source: "card-source-trade",
};

const FLASK_LEAK: Wording = Wording {
    title: "card-flask-leak-title",
    first: "card-flask-leak-first",
    steps: &[
        "card-flask-leak-1",
        "card-flask-leak-2",
        "card-flask-leak-3",
        "card-flask-leak-4",
        "card-flask-leak-5",
        "card-flask-leak-6",
        "card-flask-leak-7",
    ],
    never: &["card-flask-leak-never-1", "card-flask-leak-never-2", "card-flask-leak-never-3"],
    help: "card-flask-leak-help",
    source: "card-source-trade",
};

const CRUCIBLE: Wording = Wording {
    title: "card-crucible-title",
    first: "card-crucible-first",
    steps: &[
        "card-crucible-1",
        "card-crucible-2",
        "card-crucible-3",
        "card-crucible-4",
        "card-crucible-5",
        "card-crucible-6",
        "card-crucible-7",
    ],
    never: &["card-crucible-never-1", "card-crucible-never-2", "card-crucible-never-3"],
    help: "card-crucible-help",
    source: "card-source-trade",
};

const SPILL: Wording = Wording {
    title: "card-spill-title",
    first: "card-spill-first",
    steps: &["card-spill-1", "card-spill-2", "card-spill-3", "card-spill-4", "card-spill-5", "card-spill-6", "card-spill-7"],
    never: &["card-spill-never-1", "card-spill-never-2", "card-spill-never-3"],
    help: "card-spill-help",
    source: "card-source-trade",
};

const SPIN: Wording = Wording {
    title: "card-spin-title",
    first: "card-spin-first",
    steps: &["card-spin-1", "card-spin-2", "card-spin-3", "card-spin-4", "card-spin-5", "card-spin-6", "card-spin-7"],
    never: &["card-spin-never-1", "card-spin-never-2", "card-spin-never-3"],
    help: "card-spin-help",
    source: "card-source-trade",
};

const FUME: Wording = Wording {
    title: "card-fume-title",
    first: "card-fume-first",
    steps: &["card-fume-1", "card-fume-2", "card-fume-3", "card-fume-4", "card-fume-5", "card-fume-6", "card-fume-7"],
    never: &["card-fume-never-1", "card-fume-never-2", "card-fume-never-3"],
    help: "card-fume-help",
    source: "card-source-fume",
};

const BURN: Wording = Wording {
    title: "card-burn-title",
    first: "card-burn-first",
    steps: &["card-burn-1", "card-burn-2", "card-burn-3", "card-burn-4", "card-burn-5", "card-burn-6", "card-burn-7"],
    never: &["card-burn-never-1", "card-burn-never-2", "card-burn-never-3"],
    help: "card-burn-help",
    source: "card-source-burn",
};
