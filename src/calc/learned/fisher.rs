//! Two shares compared.

/// The chance of a table at least as uneven as this, if both groups had one share of defects (Fisher's exact test, two-sided: all tables with the
/// same margins that are no likelier than this one).
///
/// `defects` of `of` castings in one group, `other_defects` of `other_of` in the other. 1 where a group is empty or nothing, or all, is defect.
/// Defects beyond the castings count as all of them.
#[must_use]
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub fn fisher_two_sided(defects: u64, of: u64, other_defects: u64, other_of: u64) -> f64 {
    // Tables equally likely but for rounding are equally likely.
    const TIE: f64 = 1.0 + 1e-7;
    let (defects, other_defects) = (defects.min(of), other_defects.min(other_of));
    let bad = defects.saturating_add(other_defects);
    let (least, most) = (bad.saturating_sub(other_of), bad.min(of));
    if least == most {
        return 1.0;
    }
    // Weights relative to the likeliest table, walked away from it, so that nothing overflows and no factorial is needed.
    let (defect, here, there) = (bad as f64, of as f64, other_of as f64);
    let peak = (((defect + 1.0) * (here + 1.0) / (here + there + 2.0)) as u64).clamp(least, most);
    // Weight of k + 1 over weight of k.
    let up = |k: f64| (defect - k) * (here - k) / ((k + 1.0) * (there - defect + k + 1.0));
    let rising = (peak..most).scan(1.0, |weight, k| {
        *weight *= up(k as f64);
        Some((k + 1, *weight))
    });
    let falling = (least..peak).rev().scan(1.0, |weight, k| {
        *weight /= up(k as f64);
        Some((k, *weight))
    });
    let tables: Vec<(u64, f64)> = std::iter::once((peak, 1.0)).chain(rising).chain(falling).collect();
    let own = tables.iter().find(|(k, _)| *k == defects).map_or(0.0, |(_, weight)| *weight);
    let total: f64 = tables.iter().map(|(_, weight)| weight).sum();
    let uneven: f64 = tables.iter().map(|(_, weight)| *weight).filter(|weight| *weight <= own * TIE).sum();
    (uneven / total).min(1.0)
}
