//! Betters all numbers of a draft at once: each limit is taken as straight near where it is, the linear programme that makes is solved within
//! a small reach, and what it says is tried; the reach grows where it spoke true and shrinks where it did not.

use super::case::Halt;
use super::draft::{Draft, Number};
use super::model::{Look, Model};
use super::path::{readings, short_of, total_min};
use super::rows::{Kind, Over};
use super::simplex::{Row, solve};

/// Reach below which nothing is worth the while, in minutes.
const LEAST_REACH: f64 = 0.4;
/// Set points reach so many K for each minute of the times.
const K_A_MINUTE: f64 = 1.0;
/// What order costs: set points never go out of it.
const ORDER: f64 = 1e5;
/// What a minute less than the sheet asks for costs, in minutes.
const SHEET: f64 = 30.0;
/// Most cases by whose slopes each kind of limit is taken.
const RULING: usize = 1;

/// Where a descent stands.
pub(super) struct Stand {
    pub draft: Draft,
    pub look: Look,
}

/// How far each limit moves with each number.
struct Slopes {
    numbers: Vec<Number>,
    total: Vec<f64>,
    sheet: Vec<Vec<f64>>,
    /// By case, row and number; empty for a case that does not rule.
    rows: Vec<Vec<Vec<f64>>>,
}

impl Model<'_> {
    pub fn stand(&self, draft: Draft) -> Result<Stand, Halt> {
        let look = self.look(&draft.segments(self.limits))?;
        Ok(Stand { draft, look })
    }

    /// Length with what is broken, the sheet included.
    pub fn merit(&self, stand: &Stand, times: f64) -> f64 {
        let sheet: f64 = self.sheet(&stand.draft).iter().map(|short| SHEET * short.max(0.0)).sum();
        stand.look.merit(times) + times * sheet
    }

    pub fn sheet(&self, draft: &Draft) -> Vec<f64> {
        let points = readings(&draft.segments(self.limits), self.limits);
        self.limits.least.iter().map(|least| short_of(least, &points)).collect()
    }

    /// Betters a draft in at most so many rounds. What is broken costs so many times its weight.
    pub fn descend(&self, mut stand: Stand, mut reach: f64, (rounds, times): (usize, f64)) -> Result<Stand, Halt> {
        let mut slopes: Option<Slopes> = None;
        let mut tries = 0;
        let mut round = 0;
        while round < rounds && reach >= LEAST_REACH && tries < 3 * rounds {
            tries += 1;
            let known = match slopes.take() {
                Some(known) => known,
                None => {
                    round += 1;
                    self.slopes(&stand, reach)?
                }
            };
            let (next, foreseen) = self.proposed(&stand, &known, (reach, times));
            let now = self.merit(&stand, times);
            if now - foreseen < 0.2 {
                // Nothing to gain within reach: a shorter one has even less.
                break;
            }
            let next = self.stand(next)?;
            let share = (now - self.merit(&next, times)) / (now - foreseen);
            if share > 0.1 {
                stand = next;
                reach *= if share > 0.6 { 1.5 } else { 0.8 };
            } else {
                reach *= 0.4;
                slopes = Some(known);
            }
        }
        Ok(stand)
    }

    /// Cases whose limits are near, for each kind the nearest few.
    fn ruling(&self, look: &Look) -> Vec<bool> {
        let mut near: Vec<(Kind, f64, usize)> = Vec::new();
        for (case, rows) in look.rows.iter().enumerate() {
            near.extend(rows.iter().filter(|row| row.over > -row.kind.far()).map(|row| (row.kind, row.over, case)));
        }
        near.sort_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)));
        let mut ruling = vec![false; look.rows.len()];
        for kind in near.chunk_by(|a, b| a.0 == b.0) {
            let mut cases: Vec<usize> = kind.iter().map(|row| row.2).collect();
            let mut seen = Vec::new();
            cases.retain(|case| {
                !seen.contains(case) && seen.len() < RULING && {
                    seen.push(*case);
                    true
                }
            });
            cases.iter().for_each(|case| ruling[*case] = true);
        }
        ruling
    }

    fn slopes(&self, stand: &Stand, reach: f64) -> Result<Slopes, Halt> {
        let Stand { draft, look } = stand;
        let numbers = draft.numbers();
        let ruling = self.ruling(look);
        let rows =
            look.rows.iter().zip(&ruling).map(|(rows, rules)| if *rules { vec![vec![0.0; numbers.len()]; rows.len()] } else { Vec::new() });
        let sheet = self.sheet(draft);
        let mut slopes = Slopes { total: Vec::new(), sheet: vec![vec![0.0; numbers.len()]; sheet.len()], rows: rows.collect(), numbers };
        let mut asked = Vec::new();
        for at in 0..slopes.numbers.len() {
            let number = slopes.numbers[at];
            let mut changed = draft.clone();
            let (value, [_, high]) = draft.read(number, self.limits);
            let step = (reach / 4.0).clamp(1.0, 8.0);
            let by = if value + step > high { -step } else { step };
            changed.add(number, by);
            let segments = changed.segments(self.limits);
            slopes.total.push((total_min(&segments) - look.total_min) / by);
            for ((slope, now), then) in slopes.sheet.iter_mut().zip(&sheet).zip(self.sheet(&changed)) {
                slope[at] = (then - now) / by;
            }
            asked.extend((0..ruling.len()).filter(|case| ruling[*case]).map(|case| (at, case, by, segments.clone())));
        }
        let found =
            self.each(&asked, |(at, case, _, segments)| self.changed(*case, &look.tracks[*case], slopes.numbers[*at].segment(), segments))?;
        for ((at, case, by, _), then) in asked.into_iter().zip(found) {
            for ((slope, now), then) in slopes.rows[case].iter_mut().zip(&look.rows[case]).zip(&then) {
                let known = now.over.is_finite() && then.over.is_finite();
                slope[at] = if known { (then.over - now.over) / by } else { 0.0 };
            }
        }
        Ok(slopes)
    }

    /// What the linear programme says, and the merit it foresees.
    fn proposed(&self, stand: &Stand, slopes: &Slopes, (reach, times): (f64, f64)) -> (Draft, f64) {
        let Stand { draft, look } = stand;
        let numbers = &slopes.numbers;
        let mut rows: Vec<Row> = order(draft, numbers, self.limits.start_c);
        let ordered = rows.len();
        for (slope, short) in slopes.sheet.iter().zip(self.sheet(draft)) {
            rows.push(Row { coefficients: slope.clone(), most: -short, weight: times * SHEET });
        }
        let mut fixed = 0.0;
        for (slope, known) in slopes.rows.iter().zip(&look.rows) {
            if slope.is_empty() {
                fixed += times * known.iter().map(super::model::cost).sum::<f64>();
                continue;
            }
            let within = |row: &&(&Vec<f64>, &Over)| row.1.over.is_finite();
            for (slope, row) in slope.iter().zip(known).filter(|row| within(&row)) {
                rows.push(Row { coefficients: slope.clone(), most: -row.over, weight: times * row.kind.weight() });
            }
        }
        let bounds: Vec<[f64; 2]> = numbers.iter().map(|number| room(draft.read(*number, self.limits), *number, reach)).collect();
        let by = solve(&slopes.total, &rows, &bounds);
        let mut next = draft.clone();
        numbers.iter().zip(&by).for_each(|(number, by)| next.add(*number, *by));
        next.in_order(self.limits);
        let dot = |a: &[f64]| a.iter().zip(&by).map(|(a, b)| a * b).sum::<f64>();
        let broken: f64 = rows[ordered..].iter().map(|row| row.weight * (dot(&row.coefficients) - row.most).max(0.0)).sum();
        (next, look.total_min + dot(&slopes.total) + broken + fixed)
    }
}

/// How far a number may move within a reach.
fn room((value, [low, high]): (f64, [f64; 2]), number: Number, reach: f64) -> [f64; 2] {
    let reach = if matches!(number, Number::Target(_)) { reach * K_A_MINUTE } else { reach };
    [(low - value).max(-reach).min(0.0), (high - value).min(reach).max(0.0)]
}

/// Set points rise to the top and fall from it; the last may rise again from a dip.
fn order(draft: &Draft, numbers: &[Number], start_c: f64) -> Vec<Row> {
    let place = |at: usize| numbers.iter().position(|number| *number == Number::Target(at));
    let mut rows = Vec::new();
    for at in 0..draft.knots.len() - 1 {
        let up = if at <= draft.top { 1.0 } else { -1.0 };
        let before = at.checked_sub(1);
        let from = before.map_or(start_c, |before| draft.knots[before].target_c);
        let mut coefficients = vec![0.0; numbers.len()];
        let places = [(place(at), -up), (before.and_then(place), up)];
        if places.iter().all(|(place, _)| place.is_none()) {
            continue;
        }
        for (place, sign) in places {
            if let Some(place) = place {
                coefficients[place] = sign;
            }
        }
        rows.push(Row { coefficients, most: up * (draft.knots[at].target_c - from), weight: ORDER });
    }
    rows
}
