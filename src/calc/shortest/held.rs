//! What holds each segment of a programme.

use std::collections::BTreeMap;

use super::bind::Bind;
use super::case::Halt;
use super::judge::{Judged, heat_slacks};
use super::model::{Look, Model};
use super::outcome::{Bound, Held};
use super::path::{Segment, slacks};
use super::rows::Kind;

/// Limits that would break within so many minutes of each other break together: the one that says the most is named.
const TOGETHER_MIN: f64 = 2.0;
/// A limit that moves less than this with a minute does not move, in its unit.
const STILL: f64 = 1e-3;

impl Model<'_> {
    /// For every ramp and hold what breaks first where it is shorter.
    pub fn held(&mut self, segments: &[Segment], judged: &Judged) -> Result<Vec<Bound>, Halt> {
        self.awake.fill(true);
        let look = self.look(segments)?;
        let mut of_limits: BTreeMap<Bind, f64> = BTreeMap::new();
        let all = judged.values.iter().flat_map(|values| heat_slacks(values, self.load, self.limits));
        for (limit, slack) in all.chain(slacks(segments, self.limits, self.load.room_c)) {
            of_limits.entry(limit).and_modify(|least| *least = least.min(slack)).or_insert(slack);
        }
        let mut bound = Vec::new();
        for (at, segment) in segments.iter().enumerate() {
            let part = |minutes: f64, shorter: Segment| -> Result<Option<Held>, Halt> {
                if minutes <= 0.0 {
                    return Ok(None);
                }
                let mut next = segments.to_vec();
                next[at] = shorter;
                self.first_broken(segments, &look, (&next, at, minutes.min(1.0)), &of_limits)
            };
            let ramp_min = (segment.ramp_min - 1.0).max(0.0);
            let hold_min = (segment.hold_min - 1.0).max(0.0);
            let ramp = part(segment.ramp_min, Segment { ramp_min, ..*segment })?;
            bound.push(Bound { ramp, hold: part(segment.hold_min, Segment { hold_min, ..*segment })? });
        }
        Ok(bound)
    }

    fn first_broken(
        &self,
        segments: &[Segment],
        look: &Look,
        (next, at, by_min): (&[Segment], usize, f64),
        of_limits: &BTreeMap<Bind, f64>,
    ) -> Result<Option<Held>, Halt> {
        let (before, after) = (slacks(segments, self.limits, self.load.room_c), slacks(next, self.limits, self.load.room_c));
        let fixed = before.iter().zip(&after).find(|(before, after)| after.1 < -1e-6 && after.1 < before.1);
        if let Some(((limit, slack), _)) = fixed {
            return Ok(Some(Held { limit: *limit, slack: *slack }));
        }
        // When each limit breaks, in minutes taken off.
        let mut breaks: Vec<(Kind, Bind, f64)> = Vec::new();
        let cases: Vec<usize> = (0..self.cases.len()).collect();
        let changed = self.each(&cases, |case| self.changed(*case, &look.tracks[*case], at, next))?;
        for (case, then) in changed.iter().enumerate() {
            for (now, then) in look.rows[case].iter().zip(then) {
                let moves = (then.over - now.over) / by_min;
                if now.over.is_finite() && moves > STILL {
                    breaks.push((now.kind, now.kind.bind(self.cases[case].mould), (-now.over).max(0.0) / moves));
                }
            }
        }
        let first = breaks.iter().map(|each| each.2).fold(f64::INFINITY, f64::min);
        breaks.retain(|each| each.2 <= first + TOGETHER_MIN);
        breaks.sort_by(|a, b| a.0.cmp(&b.0).then(a.2.total_cmp(&b.2)));
        Ok(breaks.first().map(|each| Held { limit: each.1, slack: of_limits.get(&each.1).copied().unwrap_or(f64::NAN) }))
    }
}
