//! Where each piece of a tree hangs: as its own place, its row or its tier says. What nobody said is spread evenly.

use std::collections::BTreeMap;

use crate::job::{Hung, Line, LineId, PatternId, Placed, Tree};
use crate::quantity::Finite;

/// Pieces to a tier where nobody said otherwise.
const TO_A_TIER: usize = 6;

/// Where one piece hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// Its line.
    pub line: LineId,
    /// Its number within the line.
    pub number: u32,
    /// The row of the tree that it hangs in, from 1.
    pub row: u32,
    /// Its pattern.
    pub pattern: Option<PatternId>,
    /// Its run of feed sprues, by its place in the tree.
    pub run: Option<usize>,
    /// Its tier, from 1 at the button's end; none where its height was said.
    pub tier: Option<u32>,
    /// How high over the dome its sprue is joined, in mm.
    pub height_mm: f64,
    /// Direction around the main sprue, in degrees.
    pub around_deg: f64,
    /// How far it is turned about its sprue, in degrees.
    pub turn_deg: f64,
    /// What of it was said.
    pub said: Said,
}

/// What of a piece's place was said rather than spread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Said {
    /// Its tier, or its height.
    pub height: bool,
    /// Its direction.
    pub around: bool,
    /// Its run of sprues; where there is only one, that is said.
    pub run: bool,
}

impl Said {
    /// Does it hang where somebody said?
    #[must_use]
    pub const fn place(self) -> bool {
        self.height && self.around
    }
}

/// The spots of a tree's pieces in the order of its rows, on a trunk of this length. Cancelled pieces and lines that are not there have none.
pub fn spots<'a>(tree: &Tree, length_mm: f64, line_of: impl Fn(LineId) -> Option<&'a Line>) -> Vec<Spot> {
    let placed: BTreeMap<(LineId, u32), &Placed> = tree.placed.iter().map(|placed| ((placed.line, placed.number), placed)).collect();
    let mut spots = Vec::new();
    for (row, hung) in (1..).zip(&tree.pieces) {
        let Some(line) = line_of(hung.line) else { continue };
        let numbers = numbers(hung, line);
        let single = numbers.len() == 1;
        for number in numbers {
            let pattern = line.exceptions.get(&number).and_then(|exception| exception.pattern).or(line.pattern);
            spots.push(begun(hung, (row, number, pattern), placed.get(&(hung.line, number)).copied(), single));
        }
    }
    runs(tree, &mut spots);
    heights(tree, length_mm, &mut spots);
    directions(&mut spots);
    spots
}

/// The living pieces of a row.
fn numbers(hung: &Hung, line: &Line) -> Vec<u32> {
    let live = |number: &u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
    if hung.numbers.is_empty() { (1..=line.quantity).filter(live).collect() } else { hung.numbers.iter().copied().filter(live).collect() }
}

/// A spot with what was said of it; a height that is not known yet is not a number.
fn begun(hung: &Hung, (row, number, pattern): (u32, u32, Option<PatternId>), own: Option<&Placed>, single: bool) -> Spot {
    let height = own.and_then(|own| own.height_mm);
    let tier = own.and_then(|own| own.tier).or(hung.tier).filter(|_| height.is_none());
    // Several pieces of one row hang around the main sprue; only one of them can hang where its row says.
    let around = own.and_then(|own| own.around_deg).or(hung.around_deg.filter(|_| single));
    let run = own.and_then(|own| own.sprue).or(hung.sprue);
    Spot {
        line: hung.line,
        number,
        row,
        pattern,
        run: run.map(|run| run.saturating_sub(1) as usize),
        tier,
        height_mm: height.map_or(f64::NAN, Finite::get),
        around_deg: around.map_or(f64::NAN, Finite::get),
        turn_deg: own.and_then(|own| own.turn_deg).map_or(0.0, Finite::get),
        said: Said { height: height.is_some() || tier.is_some(), around: around.is_some(), run: run.is_some() },
    }
}

/// Sprues go to pieces in their order where nobody said which is whose; what finds no sprue left hangs on one of the last run.
fn runs(tree: &Tree, spots: &mut [Spot]) {
    let mut left: Vec<u32> = tree.sprues.iter().map(|run| run.count).collect();
    for spot in spots.iter_mut() {
        match spot.run.and_then(|run| left.get_mut(run)) {
            Some(left) => *left = left.saturating_sub(1),
            None => (spot.run, spot.said.run) = (None, false),
        }
    }
    for spot in spots.iter_mut().filter(|spot| spot.run.is_none()) {
        spot.run = left.iter().position(|left| *left > 0).or(left.len().checked_sub(1));
        if let Some(left) = spot.run.and_then(|run| left.get_mut(run)) {
            *left = left.saturating_sub(1);
        }
        spot.said.run = tree.sprues.len() == 1;
    }
}

fn heights(tree: &Tree, length_mm: f64, spots: &mut [Spot]) {
    let mut next = spots.iter().filter_map(|spot| spot.tier).max().unwrap_or(0);
    let free = spots.iter_mut().filter(|spot| !spot.said.height);
    for (at, spot) in free.enumerate() {
        next += u32::from(at % TO_A_TIER == 0);
        spot.tier = Some(next);
    }
    // Tiers without a piece keep their place, so that what is said to be on tier 3 stands on the third.
    let said = u32::try_from(tree.tiers.len()).unwrap_or(u32::MAX);
    let count = next.max(said).max(1);
    for spot in spots {
        let Some(tier) = spot.tier else { continue };
        let own = tree.tiers.get(tier.saturating_sub(1) as usize).and_then(|tier| tier.height_mm);
        spot.height_mm = own.map_or(length_mm * f64::from(tier) / f64::from(count), Finite::get);
    }
}

/// Spreads what has no direction over its tier; every other tier stands in the gaps of the one below.
fn directions(spots: &mut [Spot]) {
    let mut free: BTreeMap<Option<u32>, u32> = BTreeMap::new();
    for spot in spots.iter().filter(|spot| !spot.said.around) {
        *free.entry(spot.tier).or_default() += 1;
    }
    let mut next: BTreeMap<Option<u32>, u32> = BTreeMap::new();
    for spot in spots.iter_mut().filter(|spot| !spot.said.around) {
        let among = f64::from(free.get(&spot.tier).copied().unwrap_or(1).max(1));
        let place = next.entry(spot.tier).or_default();
        let staggered = if spot.tier.unwrap_or(1) % 2 == 0 { 0.5 } else { 0.0 };
        spot.around_deg = 360.0 * (f64::from(*place) + staggered) / among;
        *place += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{SprueRun, Tier};

    fn line(quantity: u32) -> Line {
        Line { id: LineId(1), quantity, pattern: Some(PatternId(1)), ..Line::default() }
    }

    fn tree() -> Tree {
        let run = |count| SprueRun { count, ..SprueRun::default() };
        Tree { pieces: vec![Hung { line: LineId(1), ..Hung::default() }], sprues: vec![run(8), run(2)], ..Tree::default() }
    }

    fn all(tree: &Tree, line: &Line) -> Vec<Spot> {
        spots(tree, 60.0, |_| Some(line))
    }

    #[test]
    fn what_nobody_said_is_spread_evenly() {
        let found = all(&tree(), &line(10));
        let tiers: Vec<Option<u32>> = found.iter().map(|spot| spot.tier).collect();
        assert_eq!(tiers, [[Some(1); 6].as_slice(), &[Some(2); 4]].concat());
        assert!(found[..6].iter().all(|spot| (spot.height_mm - 30.0).abs() < 1e-9));
        assert!((found[9].height_mm - 60.0).abs() < 1e-9);
        let around: Vec<f64> = found.iter().map(|spot| spot.around_deg).collect();
        assert_eq!(around, [0.0, 60.0, 120.0, 180.0, 240.0, 300.0, 45.0, 135.0, 225.0, 315.0]);
        assert_eq!(found.iter().filter(|spot| spot.run == Some(1)).count(), 2);
        assert!(found.iter().all(|spot| !spot.said.place() && !spot.said.run));
    }

    #[test]
    fn a_piece_s_own_place_comes_before_its_row_s() {
        let mut tree = tree();
        tree.pieces[0].tier = Some(2);
        tree.pieces[0].sprue = Some(1);
        tree.tiers = vec![Tier { height_mm: Finite::new(12.0) }, Tier { height_mm: Finite::new(31.0) }];
        let own = Placed {
            line: LineId(1),
            number: 3,
            height_mm: Finite::new(7.5),
            turn_deg: Finite::new(90.0),
            sprue: Some(2),
            ..Placed::default()
        };
        tree.placed = vec![own, Placed { line: LineId(1), number: 1, tier: Some(1), around_deg: Finite::new(10.0), ..Placed::default() }];
        let found = all(&tree, &line(4));
        let heights: Vec<f64> = found.iter().map(|spot| spot.height_mm).collect();
        assert_eq!(heights, [12.0, 31.0, 7.5, 31.0]);
        assert_eq!(found.iter().map(|spot| spot.run).collect::<Vec<_>>(), [Some(0), Some(0), Some(1), Some(0)]);
        assert!(found[0].said.place() && (found[0].around_deg - 10.0).abs() < 1e-12);
        assert!((found[2].turn_deg - 90.0).abs() < 1e-12 && found[2].said.height && !found[2].said.around);
    }

    #[test]
    fn only_a_single_piece_hangs_where_its_row_says() {
        let mut tree = tree();
        tree.pieces[0].around_deg = Finite::new(33.0);
        assert!(all(&tree, &line(2)).iter().all(|spot| !spot.said.around));
        assert!((all(&tree, &line(1))[0].around_deg - 33.0).abs() < 1e-12);
    }

    #[test]
    fn sprues_that_are_not_there_are_nobody_s() {
        let mut tree = tree();
        tree.pieces[0].sprue = Some(7);
        let found = all(&tree, &line(12));
        assert_eq!(found.iter().filter(|spot| spot.run == Some(1)).count(), 4, "the last run takes what is left over");
        tree.sprues.clear();
        assert!(all(&tree, &line(3)).iter().all(|spot| spot.run.is_none() && spot.height_mm.is_finite()));
    }

    #[test]
    fn cancelled_pieces_hang_nowhere() {
        let mut line = line(3);
        line.exceptions.entry(2).or_default().cancelled = true;
        assert_eq!(all(&tree(), &line).iter().map(|spot| spot.number).collect::<Vec<_>>(), [1, 3]);
    }
}
