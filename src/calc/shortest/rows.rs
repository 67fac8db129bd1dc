//! What moulds are held to, as numbers that say how far each limit is broken.

use std::collections::BTreeMap;

use super::bind::Bind;
use super::case::{Case, Track};
use super::limits::Limits;
use super::load::{Load, Needs};
use super::read::{DRY_C, Series};

/// One limit of one mould.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Kind {
    Apart {
        inversion: usize,
        down: bool,
    },
    Carbon,
    /// Too hot at the pour.
    PourHot,
    /// Too cold at the pour.
    PourCold,
    Dry,
}

impl Kind {
    pub fn bind(self, mould: usize) -> Bind {
        match self {
            Self::Apart { inversion, .. } => Bind::Apart { mould, inversion },
            Self::Carbon => Bind::Carbon { mould },
            Self::PourHot | Self::PourCold => Bind::CoreAtPour { mould },
            Self::Dry => Bind::Dry { mould },
        }
    }

    /// What 1 of it costs, in minutes, while a programme is bettered.
    pub fn weight(self) -> f64 {
        match self {
            Self::Apart { .. } | Self::Carbon | Self::Dry => 30.0,
            Self::PourHot | Self::PourCold => 60.0,
        }
    }

    /// A limit this far from being broken is left out of account where there are others.
    pub fn far(self) -> f64 {
        match self {
            Self::Apart { .. } => 25.0,
            Self::Carbon => 30.0,
            Self::Dry => 100.0,
            Self::PourHot | Self::PourCold => 5.0,
        }
    }
}

/// How far a limit is broken; negative where it is kept.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Over {
    pub kind: Kind,
    pub over: f64,
}

/// By how much the core is too cold for its minutes. Told in K and not in minutes, it goes evenly also where a core hardly comes to its heat.
fn carbon(needs: &Needs, whole: &Series) -> Option<Over> {
    (needs.above_min > 0.0).then(|| Over { kind: Kind::Carbon, over: needs.above_c - whole.kept_c(needs.above_min) })
}

fn at_pour(core_c: f64, top_c: f64, limits: &Limits) -> [Over; 3] {
    let soak = &limits.soak;
    [
        Over { kind: Kind::PourHot, over: core_c - soak.mould_c - soak.within_k },
        Over { kind: Kind::PourCold, over: soak.mould_c - core_c - soak.within_k },
        Over { kind: Kind::Dry, over: DRY_C - top_c },
    ]
}

/// All limits of a mould on its way, in an order that hangs on the number of segments alone: how far wall and core are apart is told for
/// parts of every segment.
pub(super) fn on_the_way(case: Case, (load, limits): (&Load, &Limits), series: &[&Series], top: usize) -> Vec<Over> {
    let needs = &case.mould(load).needs;
    let mut whole = Series::default();
    series.iter().for_each(|series| whole.extend(series));
    let mut rows = Vec::with_capacity(series.len() * needs.inversions.len() + 4);
    for (inversion, limit) in needs.inversions.iter().enumerate() {
        rows.extend(series.iter().enumerate().flat_map(|(at, series)| {
            let kind = Kind::Apart { inversion, down: at > top };
            series.too_far(limit).map(|over| Over { kind, over })
        }));
    }
    let top_c = whole.core_top_c();
    rows.extend(carbon(needs, &whole));
    rows.extend(at_pour(whole.core_c.last().copied().unwrap_or(f64::NAN), top_c, limits));
    rows
}

/// Each kind once, by the row that is broken the most.
pub(super) fn worst_of_each(rows: &[Over]) -> BTreeMap<Kind, f64> {
    let mut all = BTreeMap::new();
    for row in rows {
        all.entry(row.kind).and_modify(|worst: &mut f64| *worst = worst.max(row.over)).or_insert(row.over);
    }
    all
}

/// The series of a track up to a segment, and of another from there on.
pub(super) fn joined<'a>(before: &'a Track, first: usize, after: &'a Track) -> Vec<&'a Series> {
    before.series.iter().take(first).chain(&after.series).collect()
}
