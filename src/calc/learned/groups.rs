//! Rates of defects by alloy, section, programme or powder lot.

use super::clumping::Clump;
use super::{Interval, LEVEL, Rate, RecordError, clopper_pearson, fisher_two_sided, holm};
use std::collections::BTreeMap;

/// Jobs below which a group is shown but not compared: one spoilt flask is no bad lot.
pub const GROUP_JOBS: usize = 3;

/// What one job counted in one group.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tally<J> {
    /// The job.
    pub job: J,
    /// Castings with a defect.
    pub defects: u32,
    /// Castings.
    pub of: u32,
}

/// What can be said of a group against all the others together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Said {
    /// Too few jobs in it, or nothing beside it, to say anything.
    TooFew {
        /// Jobs there are.
        has: usize,
        /// Jobs needed.
        needs: usize,
    },
    /// The difference may be chance.
    NothingCertain,
    /// It has more defects than the rest.
    Worse,
    /// It has fewer defects than the rest.
    Better,
}

/// One line of a table of groups.
#[derive(Debug, Clone, PartialEq)]
pub struct GroupRate<K> {
    /// The group.
    pub key: K,
    /// Its counts, with the interval as if each casting failed by itself.
    pub rate: Rate,
    /// How many castings of one job are worth one independent casting, at least 1: the larger of the whole table's and its own.
    pub clumping: f64,
    /// 95 % interval of its share with counts divided by `clumping` (Korn & Graubard 1998): what can be said with certainty.
    pub certain: Interval,
    /// Fisher's exact chance of such a difference from all other groups, from the plain counts, by itself.
    pub plain_p: f64,
    /// The same from counts divided by clumping, raised by Holm's correction for all groups compared; `None` where too few jobs.
    pub p: Option<f64>,
    /// What may be told as a fact: only where `p` is at most 5 %.
    pub said: Said,
}

/// Counts of one group.
#[derive(Default)]
struct Counted {
    jobs: Vec<(u64, u64)>,
    defects: u64,
    of: u64,
}

/// Rates of groups, the one that is worst for certain first (by the lower end of `certain`, then by share, then by key).
///
/// A job with castings in several groups gives a tally in each; tallies of one job in one group are added; jobs without castings count nothing.
/// Each group of at least [`GROUP_JOBS`] jobs is compared with all the others together. It is a comparison, not a cause: a lot used mostly for
/// one alloy carries that alloy's defects.
///
/// # Errors
/// More defects than castings; the job is named.
pub fn rates_by<K: Ord + Clone, J: Ord + Clone>(
    tallies: impl IntoIterator<Item = (K, Tally<J>)>,
) -> Result<Vec<GroupRate<K>>, RecordError<J>> {
    let groups = counted(tallies)?;
    let pooled = groups.values().map(|group| Clump::of(&group.jobs)).fold(Clump::default(), Clump::and).effect();
    let whole = groups.values().fold((0, 0), |sum, group| (sum.0 + group.defects, sum.1 + group.of));
    let mut rows: Vec<GroupRate<K>> = groups.iter().filter_map(|(key, group)| row(key, group, whole, pooled)).collect();
    correct(&mut rows);
    rows.sort_by(|a, b| {
        let order = b.certain.lower.total_cmp(&a.certain.lower);
        order.then(b.rate.share().total_cmp(&a.rate.share())).then(a.key.cmp(&b.key))
    });
    Ok(rows)
}

fn counted<K: Ord, J: Ord + Clone>(tallies: impl IntoIterator<Item = (K, Tally<J>)>) -> Result<BTreeMap<K, Counted>, RecordError<J>> {
    let mut jobs: BTreeMap<K, BTreeMap<J, (u64, u64)>> = BTreeMap::new();
    for (key, Tally { job, defects, of }) in tallies {
        if defects > of {
            return Err(RecordError::MoreDefectsThanCastings { job, defects, of });
        }
        if of > 0 {
            let sum = jobs.entry(key).or_default().entry(job).or_default();
            *sum = (sum.0 + u64::from(defects), sum.1 + u64::from(of));
        }
    }
    let group = |jobs: BTreeMap<J, (u64, u64)>| {
        let jobs: Vec<(u64, u64)> = jobs.into_values().collect();
        let (defects, of) = jobs.iter().fold((0, 0), |sum, job| (sum.0 + job.0, sum.1 + job.1));
        Counted { jobs, defects, of }
    };
    Ok(jobs.into_iter().map(|(key, jobs)| (key, group(jobs))).collect())
}

/// One group against the rest, uncorrected.
#[allow(clippy::cast_precision_loss)]
fn row<K: Clone>(key: &K, group: &Counted, whole: (u64, u64), pooled: f64) -> Option<GroupRate<K>> {
    let rate = Rate::of(group.defects, group.of, group.jobs.len())?;
    let clumping = Clump::of(&group.jobs).effect().max(pooled);
    let certain = clopper_pearson(group.defects as f64 / clumping, group.of as f64 / clumping, LEVEL)?;
    let rest = (whole.0 - group.defects, whole.1 - group.of);
    let plain_p = fisher_two_sided(group.defects, group.of, rest.0, rest.1);
    let (own, other) = (worth(group.defects, group.of, clumping), worth(rest.0, rest.1, pooled));
    let enough = rate.jobs >= GROUP_JOBS && rest.1 > 0;
    let p = enough.then(|| fisher_two_sided(own.0, own.1, other.0, other.1));
    let more = group.defects as f64 * rest.1 as f64 > rest.0 as f64 * group.of as f64;
    let said = match p {
        None => Said::TooFew { has: rate.jobs, needs: GROUP_JOBS },
        Some(_) if more => Said::Worse,
        Some(_) => Said::Better,
    };
    Some(GroupRate { key: key.clone(), rate, clumping, certain, plain_p, p, said })
}

/// Counts by their worth in independent castings, as whole numbers.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn worth(defects: u64, of: u64, clumping: f64) -> (u64, u64) {
    let whole = |count: u64| (count as f64 / clumping).round() as u64;
    let of = whole(of).max(1);
    (whole(defects).min(of), of)
}

/// Raises the chances for the number of comparisons, and takes back what they do not carry.
fn correct<K>(rows: &mut [GroupRate<K>]) {
    let chances: Vec<f64> = rows.iter().filter_map(|row| row.p).collect();
    // Two groups against each other are one comparison told twice.
    let raised = if rows.len() == 2 { chances } else { holm(&chances) };
    for (row, p) in rows.iter_mut().filter(|row| row.p.is_some()).zip(raised) {
        row.p = Some(p);
        if p > 1.0 - LEVEL {
            row.said = Said::NothingCertain;
        }
    }
}
