//! Takes out segments that a programme can do without.

use super::case::Halt;
use super::descend::Stand;
use super::draft::Draft;
use super::model::Model;
use super::path::Segment;

/// A segment less is worth so many minutes: each is rounded up by half a minute twice over.
const WORTH_MIN: f64 = 1.0;
/// Rounds in which the others take over what a segment did.
const ROUNDS: usize = 4;
/// How far they may move to begin with, in minutes.
const REACH: f64 = 15.0;

impl Model<'_> {
    /// As few segments as cost nothing, and no more than the controller takes, where that can be.
    pub fn thin(&self, mut stand: Stand) -> Result<Stand, Halt> {
        let most = self.limits.most_segments.unwrap_or(usize::MAX).max(1);
        loop {
            let count = stand.draft.knots.len() - usize::from(self.tail_is_idle(&stand));
            let now = self.merit(&stand, 1.0);
            let mut less = self.with_one_less(&stand)?;
            if less.is_empty() {
                return Ok(stand);
            }
            let missed = self.merit(&less[0], 1.0) - now;
            let next = less.swap_remove(0);
            if missed <= WORTH_MIN {
                stand = next;
                continue;
            }
            let next = self.descend(next, REACH, (ROUNDS, 0.3))?;
            let next = self.descend(next, REACH / 4.0, (ROUNDS / 2, 1.0))?;
            if count <= most && self.merit(&next, 1.0) > now + WORTH_MIN {
                return Ok(stand);
            }
            stand = next;
        }
    }

    /// Where the top is the soak itself, one segment does for both.
    fn tail_is_idle(&self, stand: &Stand) -> bool {
        let [.., top, last] = stand.draft.segments(self.limits)[..] else { return false };
        (top.target_c - last.target_c).abs() < 1e-6 && last.ramp_min < 1e-6
    }

    /// Without each of the segments, the one that is missed the least first; top and soak always stay.
    fn with_one_less(&self, stand: &Stand) -> Result<Vec<Stand>, Halt> {
        let draft = &stand.draft;
        let without = |at: usize| {
            let mut less = draft.without(at, self.limits);
            less.in_order(self.limits);
            less
        };
        let drafts: Vec<Draft> = (0..draft.knots.len() - 1).filter(|at| *at != draft.top).map(without).collect();
        let programmes: Vec<Vec<Segment>> = drafts.iter().map(|draft| draft.segments(self.limits)).collect();
        let looks = self.looks(&programmes.iter().map(Vec::as_slice).collect::<Vec<_>>())?;
        let stands = drafts.into_iter().zip(looks).map(|(draft, look)| Stand { draft, look });
        let mut tried: Vec<(f64, Stand)> = stands.map(|stand| (self.merit(&stand, 1.0), stand)).collect();
        tried.sort_by(|a, b| a.0.total_cmp(&b.0));
        Ok(tried.into_iter().map(|each| each.1).collect())
    }
}
