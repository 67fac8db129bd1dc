//! How closed shells lie to each other: apart, one inside another, or through each other.

use super::contact::{Contact, contact};
use super::inside::{Place, place};
use super::shells::is_flat;
use super::soup::Triangle;
use super::sums::Sums;
use super::tree::Tree;

/// Pairs of boxes looked at before giving up.
const MOST_PAIRS: usize = 2_000_000;
/// Pairs of tree nodes and triangles compared before giving up: some seconds.
const MOST_WORK: u64 = 60_000_000;

/// What was found. Shells are named by their place.
#[derive(Debug, Clone, Default)]
pub(super) struct Nesting {
    /// The shells each shell lies in.
    pub holders: Vec<Vec<u32>>,
    /// The pairs that pass through each other.
    pub crossing: Vec<(u32, u32)>,
    /// True when the work allowed was used up.
    pub unsettled: bool,
}

/// Compares all shells whose boxes meet. `surfaces` gives the triangles of a shell.
pub(super) fn nest(sums: &[Sums], surfaces: &dyn Fn(usize) -> Vec<Triangle>) -> Nesting {
    let mut nesting = Nesting { holders: vec![Vec::new(); sums.len()], ..Nesting::default() };
    let Some(pairs) = meeting_boxes(sums) else {
        nesting.unsettled = true;
        return nesting;
    };
    let mut trees: Vec<Option<Tree>> = vec![None; sums.len()];
    let mut work = MOST_WORK;
    for (a, b) in pairs {
        for at in [a, b] {
            trees[at].get_or_insert_with(|| Tree::new(surfaces(at)));
        }
        let (Some(one), Some(other)) = (&trees[a], &trees[b]) else { continue };
        match relation(one, other, &sums[a], &sums[b], &mut work) {
            Relation::Apart => {}
            Relation::FirstInSecond => nesting.holders[a].push(b as u32),
            Relation::SecondInFirst => nesting.holders[b].push(a as u32),
            Relation::Crossing => nesting.crossing.push((a as u32, b as u32)),
            Relation::Unsettled => {
                nesting.unsettled = true;
                return nesting;
            }
        }
    }
    nesting
}

/// Pairs of shells whose boxes meet, by a sweep along x. Nothing when there are too many.
fn meeting_boxes(sums: &[Sums]) -> Option<Vec<(usize, usize)>> {
    let mut order: Vec<usize> = (0..sums.len()).collect();
    order.sort_by(|&a, &b| sums[a].span.low[0].total_cmp(&sums[b].span.low[0]).then(a.cmp(&b)));
    let mut open: Vec<usize> = Vec::new();
    let mut pairs = Vec::new();
    let mut looked = 0;
    for &at in &order {
        open.retain(|&other| sums[other].span.high[0] >= sums[at].span.low[0]);
        looked += open.len();
        pairs.extend(open.iter().filter(|&&other| sums[other].span.meets(&sums[at].span)).map(|&other| (other.min(at), other.max(at))));
        if looked > 100 * MOST_PAIRS || pairs.len() > MOST_PAIRS {
            return None;
        }
        open.push(at);
    }
    pairs.sort_unstable();
    Some(pairs)
}

enum Relation {
    Apart,
    FirstInSecond,
    SecondInFirst,
    Crossing,
    Unsettled,
}

/// The share of the smaller volume two boxes must have in common for an overlap to matter: less is the rounding of touching parts.
const OVERLAP_SHARE: f64 = 1e-7;

fn relation(one: &Tree, other: &Tree, first: &Sums, second: &Sums, work: &mut u64) -> Relation {
    let common: f64 = (0..3)
        .map(|axis| {
            let low = first.span.low[axis].max(second.span.low[axis]);
            let high = first.span.high[axis].min(second.span.high[axis]);
            f64::from(high) - f64::from(low)
        })
        .product();
    if is_flat(first) || is_flat(second) || common <= OVERLAP_SHARE * first.volume_mm3().abs().min(second.volume_mm3().abs()) {
        return Relation::Apart;
    }
    let (first_may, second_may) = (second.span.holds(&first.span), first.span.holds(&second.span));
    match contact(one, other, work) {
        Contact::Cross => Relation::Crossing,
        Contact::Unsettled => Relation::Unsettled,
        Contact::Apart => {
            if first_may && decide(other, one, &[]) == Some(true) {
                Relation::FirstInSecond
            } else if second_may && decide(one, other, &[]) == Some(true) {
                Relation::SecondInFirst
            } else {
                Relation::Apart
            }
        }
        Contact::Touch { ours, theirs } => match (decide(other, one, &ours), decide(one, other, &theirs)) {
            (None, _) | (_, None) => Relation::Crossing,
            // Each wholly in the other: the same body twice.
            (Some(true), Some(true)) => Relation::Crossing,
            (Some(true), _) => Relation::FirstInSecond,
            (_, Some(true)) => Relation::SecondInFirst,
            (Some(false), Some(false)) => Relation::Apart,
        },
    }
}

/// Places in a triangle, as shares of its corners: the middle, near each corner, near the middle of each side. Wherever a surface cuts a
/// triangle in two, some of them lie on either side, unless the cut grazes it.
const PLACES: [[f64; 3]; 7] = [
    [0.34, 0.33, 0.33],
    [0.96, 0.023, 0.017],
    [0.017, 0.96, 0.023],
    [0.023, 0.017, 0.96],
    [0.487, 0.491, 0.022],
    [0.022, 0.487, 0.491],
    [0.491, 0.022, 0.487],
];

/// Whether a surface lies in the holder: yes, no, or nothing where parts of it lie on both sides.
///
/// A surface that does not touch the holder is told by any one point. Otherwise the touching triangles and some others are looked at; points
/// on the holder's surface say nothing.
fn decide(holder: &Tree, surface: &Tree, touching: &[Triangle]) -> Option<bool> {
    let sample = if touching.is_empty() { 1 } else { 16 };
    let step = (surface.triangles.len() / sample).max(1);
    let (mut inside, mut outside) = (false, false);
    for triangle in touching.iter().chain(surface.triangles.iter().step_by(step)) {
        let corners = triangle.map(|corner| corner.map(f64::from));
        for share in PLACES {
            let point = std::array::from_fn(|axis| (0..3).map(|k| share[k] * corners[k][axis]).sum());
            match place(holder, point) {
                Place::Inside => inside = true,
                Place::Outside => outside = true,
                Place::On => {}
            }
            if inside && outside {
                return None;
            }
            if touching.is_empty() && (inside || outside) {
                return Some(inside);
            }
        }
    }
    // With every point on the holder, it is the holder over again.
    Some(!outside)
}
