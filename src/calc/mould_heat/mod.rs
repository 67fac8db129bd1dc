//! What the mould of a flask really feels in the kiln: core, cavities, wall and corner under the programme, from low to high conductivity.
//!
//! [`ask`](HeatAsk) gathers what it is computed from, [`answer`] computes it somewhere with a thread, and the recompute reads figures and
//! findings off the answers that have come in. Equal flasks ask alike and share one answer.

mod answer;
mod ask;
mod cut;
mod figures;
mod findings;
mod log;
mod material;
mod rules;

pub use answer::{Band, DRY_C, HeatAnswer, Mould, answer_all, answers, unknown};
pub use ask::{HeatAsk, Places};
pub use cut::{ByLog, SAFE_C, SCRAP_C, Verdict, by_log, log_ask};
pub use figures::{CRISTOBALITE_C, HeatFigures, HeatOfLoad, MouldHeat, QUARTZ_C, Spread};
pub(in crate::calc) use findings::HELD_WITHIN_K;
pub use log::{LogHeat, poured_at};
pub use material::{Conductivity, materials};
pub use rules::{INPUTS, RULES};
