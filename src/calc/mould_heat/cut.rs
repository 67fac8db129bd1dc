//! How far a mould has come by what the kiln really did: after a power cut, whether its coldest corner fell back through the change of
//! cristobalite, which cracks a mould that was fired.

use std::sync::Arc;

use super::answer::{Band, HeatAnswer, Mould, answers};
use super::ask::HeatAsk;
use crate::calc::labour::Labour;

/// A corner that was this hot is fired, in °C: its cristobalite changed, and changes back on the way down.
const FIRED_C: f64 = 300.0;

/// Above this a fired mould may cool and be heated again, in °C; below [`SCRAP_C`] it has cracked: common practice, no source.
pub const SAFE_C: f64 = 300.0;

/// Less than this is no fall of a corner, in K.
const FALL_K: f64 = 20.0;

/// Where cristobalite has changed back, in °C.
pub const SCRAP_C: f64 = 250.0;

/// What is to be done with a mould.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Its corner was never fired: it may go on, or begin again, slowly.
    NotFired,
    /// Its coldest corner stayed hot: heat it again.
    Reheat,
    /// It came into the change, or may have where it conducts badly.
    Marginal,
    /// Its corner fell through the change.
    Scrap,
}

/// A mould by the kiln's log.
#[derive(Debug, Clone, PartialEq)]
pub struct ByLog {
    /// What is to be done.
    pub verdict: Verdict,
    /// The coldest its corner became after it was fired, in °C.
    pub corner_low_c: Band<f64>,
    /// Corner and core at the end of the log, in °C.
    pub now_c: Band<[f64; 2]>,
    /// The moulds.
    pub answer: Arc<HeatAnswer>,
}

impl ByLog {
    /// What the moulds under a log's curve say.
    #[must_use]
    pub fn of(answer: Arc<HeatAnswer>) -> Self {
        let corner_low_c = answer.band(corner_low);
        let now_c = answer.band(|mould| Some([*mould.corner_c.last()?, *mould.core_c.last()?]));
        Self { verdict: verdict(corner_low_c), corner_low_c, now_c, answer }
    }
}

/// What is asked of a mould under a log: minutes after its first reading and the reading in °C. Nothing where the log is too short for a mould.
#[must_use]
pub fn log_ask(ask: &HeatAsk, log: &[[f64; 2]]) -> Option<HeatAsk> {
    let kiln: Vec<[f64; 2]> = log.iter().map(|[minutes, c]| [*minutes, c + ask.offset_k]).collect();
    (kiln.len() > 1 && kiln.last()?[0] >= 1.0).then(|| HeatAsk { kiln, ..ask.clone() })
}

/// A mould through a log. Nothing where the log is too short for a mould, or the work is not to go on.
#[must_use]
pub fn by_log(ask: &HeatAsk, log: &[[f64; 2]], labour: &Labour<'_>) -> Option<ByLog> {
    Some(ByLog::of(Arc::new(answers(&[&log_ask(ask, log)?], labour)?.pop()?)))
}

/// The coldest a mould's corner became in a fall once it was fired; where it never fell, as hot as it is at the end.
fn corner_low(mould: &Mould) -> Option<f64> {
    let mut peak = f64::NEG_INFINITY;
    let mut low: Option<f64> = None;
    for c in &mould.corner_c {
        peak = peak.max(*c);
        if peak >= FIRED_C && *c < peak - FALL_K {
            low = Some(low.map_or(*c, |low| low.min(*c)));
        }
    }
    low.or_else(|| mould.corner_c.last().copied().filter(|_| peak >= FIRED_C))
}

fn verdict(corner_low_c: Band<f64>) -> Verdict {
    let coldest = corner_low_c.into_iter().flatten().reduce(f64::min);
    match (corner_low_c[1], coldest) {
        (_, None) => Verdict::NotFired,
        (Some(likely), _) if likely < SCRAP_C => Verdict::Scrap,
        (_, Some(coldest)) if coldest < SAFE_C => Verdict::Marginal,
        _ => Verdict::Reheat,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_up_is_no_fall() {
        let of = |corner_c: &[f64]| corner_low(&Mould { corner_c: corner_c.to_vec(), ..Mould::default() });
        assert_eq!(of(&[20.0, 310.0, 730.0, 600.0, 640.0, 500.0]), Some(500.0));
        assert_eq!(of(&[20.0, 310.0, 320.0, 730.0]), Some(730.0));
        assert_eq!(of(&[20.0, 290.0, 100.0]), None);
        assert_eq!(of(&[20.0, 400.0, 240.0, 730.0]), Some(240.0));
    }

    #[test]
    fn verdicts_by_the_band() {
        assert_eq!(verdict([None; 3]), Verdict::NotFired);
        assert_eq!(verdict([Some(420.0), Some(410.0), Some(400.0)]), Verdict::Reheat);
        assert_eq!(verdict([Some(290.0), Some(310.0), Some(320.0)]), Verdict::Marginal);
        assert_eq!(verdict([Some(240.0), Some(251.0), Some(260.0)]), Verdict::Marginal);
        assert_eq!(verdict([Some(260.0), Some(249.0), Some(240.0)]), Verdict::Scrap);
    }
}
