//! Many comparisons at once.

/// Chances of many comparisons made together, raised so that calling all those below 5 % true errs anywhere at most once in twenty tables
/// (Holm 1979). In the order given; each in 0 to 1.
#[must_use]
#[allow(clippy::cast_precision_loss)]
pub fn holm(chances: &[f64]) -> Vec<f64> {
    let mut order: Vec<(usize, f64)> = chances.iter().copied().enumerate().collect();
    order.sort_by(|a, b| a.1.total_cmp(&b.1));
    let mut raised = vec![1.0; chances.len()];
    let mut highest = 0.0_f64;
    for (place, (at, chance)) in order.iter().enumerate() {
        highest = highest.max(chance * (chances.len() - place) as f64).min(1.0);
        if let Some(cell) = raised.get_mut(*at) {
            *cell = highest;
        }
    }
    raised
}
