//! The median slope of all pairs.

use super::job_mean::median;

/// Points up to which every pair is simply looked at.
const FEW: usize = 64;

/// Pairs looked at to find where the median lies about, and how far to both sides of it is then searched: five standard errors of a sample.
const SAMPLE: u16 = 3000;
const MARGIN: f64 = 5.0 * 0.5 / 54.77;

/// Median of the slopes of all pairs of `(x, y)` with different x, in units of y per unit of x (Theil 1950, Sen 1968); `None` without such a pair.
///
/// Exact. Of 600 points there are 180 000 pairs; a sample brackets the median, and only pairs with slopes inside the bracket are looked at: they
/// are those whose order differs between the lists sorted by `y − low·x` and by `y − high·x`, and an insertion sort meets exactly them (after
/// Matoušek 1991, Randomized optimal algorithm for slope selection). Centre x and y first, for the last digits. All values must be finite.
#[must_use]
pub fn theil_sen(points: &[(f64, f64)]) -> Option<f64> {
    // Adding nought makes a negative nought positive: both are one value here.
    let mut sorted: Vec<(f64, f64)> = points.iter().map(|(x, y)| (x + 0.0, y + 0.0)).collect();
    sorted.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    if sorted.len() > FEW
        && let Some(slope) = selected(&sorted)
    {
        return Some(slope);
    }
    let mut slopes = Vec::with_capacity(pairs_of(sorted.len()));
    for (at, first) in sorted.iter().enumerate() {
        slopes.extend(sorted.iter().skip(at + 1).filter_map(|second| slope(*first, *second)));
    }
    (!slopes.is_empty()).then(|| median(&mut slopes))
}

/// Slope from one point to a later one; `None` where both have one x.
fn slope(first: (f64, f64), second: (f64, f64)) -> Option<f64> {
    let run = second.0 - first.0;
    (run > 0.0).then(|| (second.1 - first.1) / run)
}

fn pairs_of(n: usize) -> usize {
    n * n.saturating_sub(1) / 2
}

/// Pairs of equal neighbours in a sorted list.
fn equal_pairs<T>(sorted: &[T], same: impl Fn(&T, &T) -> bool) -> usize {
    sorted.chunk_by(same).map(|run| pairs_of(run.len())).sum()
}

/// The median by selection; `None` where the bracket missed it.
fn selected(sorted: &[(f64, f64)]) -> Option<f64> {
    let all = pairs_of(sorted.len()) - equal_pairs(sorted, |a, b| a.0.total_cmp(&b.0).is_eq());
    let (first, second) = (all.checked_sub(1)? / 2, all / 2);
    let (low, high, noughts) = bracket(sorted)?;
    if noughts && nought_is_median(sorted, first, second) {
        return Some(0.0);
    }
    if low >= high {
        return None;
    }
    let by_low = order(sorted, low);
    let by_high = order(sorted, high);
    let mut rank = vec![0_usize; sorted.len()];
    for (place, &at) in by_high.iter().enumerate() {
        *rank.get_mut(at)? = place;
    }
    let (slopes, turned_back) = between(sorted, &by_low, &rank)?;
    let below = inversions(&by_low).checked_sub(turned_back)?;
    middle(slopes, first.checked_sub(below)?, second.checked_sub(below)?)
}

/// The mean of the values at two ranks that are equal or neighbours.
fn middle(mut slopes: Vec<f64>, first: usize, second: usize) -> Option<f64> {
    if second >= slopes.len() {
        return None;
    }
    let (_, &mut lower, above) = slopes.select_nth_unstable_by(first, f64::total_cmp);
    let upper = if second > first { above.iter().copied().fold(f64::INFINITY, f64::min) } else { lower };
    Some(lower + 0.5 * (upper - lower))
}

/// Slopes between which the median lies almost surely, and whether many are exactly nought, as they are of values rounded to a coarse step.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss)]
fn bracket(sorted: &[(f64, f64)]) -> Option<(f64, f64, bool)> {
    let mut state = 0x9E37_79B9_7F4A_7C15_u64;
    // A linear congruential generator (Knuth's MMIX constants); its high bits choose. Always the same pairs: the answer does not hang on it.
    let mut pick = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        sorted.get((((state >> 32) * sorted.len() as u64) >> 32) as usize).copied()
    };
    let mut slopes = Vec::with_capacity(usize::from(SAMPLE));
    for _ in 0..SAMPLE {
        let (a, b) = (pick()?, pick()?);
        slopes.extend(slope(a, b).or_else(|| slope(b, a)));
    }
    let noughts = slopes.iter().filter(|slope| **slope == 0.0).count();
    let at = |share: f64| (share * slopes.len() as f64) as usize;
    let (from, to) = (at(0.5 - MARGIN), at(0.5 + MARGIN));
    let many = noughts * 50 > slopes.len();
    let (_, &mut low, above) = if from < slopes.len() { slopes.select_nth_unstable_by(from, f64::total_cmp) } else { return None };
    let rest = to.checked_sub(from + 1)?;
    if rest >= above.len() {
        return None;
    }
    let (_, &mut high, _) = above.select_nth_unstable_by(rest, f64::total_cmp);
    Some((low, high, many))
}

/// True where both middle ranks fall among slopes of exactly nought.
fn nought_is_median(sorted: &[(f64, f64)], first: usize, second: usize) -> bool {
    let falling = inversions(&order(sorted, 0.0));
    let mut heights: Vec<f64> = sorted.iter().map(|point| point.1).collect();
    heights.sort_unstable_by(f64::total_cmp);
    let level = equal_pairs(&heights, |a, b| a.total_cmp(b).is_eq())
        - equal_pairs(sorted, |a, b| a.0.total_cmp(&b.0).is_eq() && a.1.total_cmp(&b.1).is_eq());
    falling <= first && second < falling + level
}

/// The points ordered by `y − slope·x`, ties by their place: a later point that comes to stand before an earlier one has a smaller slope to it.
fn order(sorted: &[(f64, f64)], slope: f64) -> Vec<usize> {
    let mut keyed: Vec<(f64, usize)> = sorted.iter().enumerate().map(|(at, (x, y))| (y - slope * x + 0.0, at)).collect();
    keyed.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    keyed.into_iter().map(|(_, at)| at).collect()
}

/// Pairs that stand in the wrong order in a permutation of 0..n, by a Fenwick tree.
fn inversions(permutation: &[usize]) -> usize {
    let mut tree = vec![0_usize; permutation.len() + 1];
    let mut count = 0;
    for (seen, &at) in permutation.iter().enumerate() {
        let mut smaller = 0;
        let mut node = at;
        while node > 0 {
            smaller += tree.get(node).copied().unwrap_or(0);
            node &= node - 1;
        }
        count += seen - smaller;
        let mut node = at + 1;
        while let Some(cell) = tree.get_mut(node) {
            *cell += 1;
            node += node & node.wrapping_neg();
        }
    }
    count
}

/// Slopes of the pairs that change their order between the two lists, and how many of them changed the wrong way by rounding.
fn between(sorted: &[(f64, f64)], by_low: &[usize], rank: &[usize]) -> Option<(Vec<f64>, usize)> {
    let (mut slopes, mut turned_back) = (Vec::new(), 0);
    // Kept in the order of the second list: each step backwards of the insertion is one pair.
    let mut list: Vec<(usize, usize)> = Vec::with_capacity(by_low.len());
    for &at in by_low {
        let place = (*rank.get(at)?, at);
        let mut to = list.len();
        while let Some(&before) = list.get(to.wrapping_sub(1))
            && before.0 > place.0
        {
            let (early, late) = (before.1.min(at), before.1.max(at));
            turned_back += usize::from(before.1 > at);
            slopes.extend(slope(*sorted.get(early)?, *sorted.get(late)?));
            to -= 1;
        }
        list.insert(to, place);
    }
    Some((slopes, turned_back))
}
