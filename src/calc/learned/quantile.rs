//! Tails and quantiles of Student's t and the beta distribution.
//!
//! The incomplete beta function is summed here and not taken ready-made, because the ready one stops after 140 terms: too soon for ten thousand
//! castings. Only ln Γ is borrowed.

use statrs::function::gamma::ln_gamma;

/// `I_x(a, b)` and `1 − I_x(a, b)`, the regularised incomplete beta function and its complement, `y = 1 − x` given beside `x` for its digits.
///
/// Continued fraction by Lentz's method (DLMF 8.17.22; Press et al., Numerical Recipes 6.4). `a` and `b` above nought, `x` in 0 to 1.
pub(crate) fn beta_tails(a: f64, b: f64, x: f64, y: f64) -> (f64, f64) {
    if x <= 0.0 {
        return (0.0, 1.0);
    }
    if y <= 0.0 {
        return (1.0, 0.0);
    }
    let front = (ln_gamma(a + b) - ln_gamma(a) - ln_gamma(b) + a * x.ln() + b * y.ln()).exp();
    if x < (a + 1.0) / (a + b + 2.0) {
        let lower = (front * fraction(a, b, x) / a).min(1.0);
        (lower, 1.0 - lower)
    } else {
        let upper = (front * fraction(b, a, y) / b).min(1.0);
        (1.0 - upper, upper)
    }
}

/// The continued fraction of the incomplete beta function. Converges in about √max(a, b) terms.
fn fraction(a: f64, b: f64, x: f64) -> f64 {
    const TINY: f64 = 1e-300;
    let kept = |value: f64| if value.abs() < TINY { TINY } else { value };
    let (mut above, mut below) = (1.0, 1.0 / kept(1.0 - (a + b) * x / (a + 1.0)));
    let mut product = below;
    for term in 1..20_000 {
        let m = f64::from(term);
        let even = m * (b - m) * x / ((a - 1.0 + 2.0 * m) * (a + 2.0 * m));
        below = 1.0 / kept(1.0 + even * below);
        above = kept(1.0 + even / above);
        product *= below * above;
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 1.0 + 2.0 * m));
        below = 1.0 / kept(1.0 + odd * below);
        above = kept(1.0 + odd / above);
        let factor = below * above;
        product *= factor;
        if (factor - 1.0).abs() < 4.0 * f64::EPSILON {
            break;
        }
    }
    product
}

/// The chance that Student's t with `freedom` degrees of freedom lies further from nought than `t`, on both sides together.
pub(crate) fn t_two_sided(t: f64, freedom: f64) -> f64 {
    if t.is_infinite() {
        return 0.0;
    }
    let whole = freedom + t * t;
    beta_tails(0.5 * freedom, 0.5, freedom / whole, t * t / whole).0
}

/// The `t` that Student's t with `freedom` degrees of freedom stays within with the chance `level`; `freedom` at least 1.
///
/// Newton's method from nought: the tail is convex in t > 0, so no step overshoots.
pub(crate) fn t_within(level: f64, freedom: f64) -> f64 {
    let ln_scale = ln_gamma(0.5 * (freedom + 1.0)) - ln_gamma(0.5 * freedom) - 0.5 * (freedom * std::f64::consts::PI).ln();
    let mut t = 0.0_f64;
    for _ in 0..100 {
        let density = (ln_scale - 0.5 * (freedom + 1.0) * (t * t / freedom).ln_1p()).exp();
        let step = (t_two_sided(t, freedom) - (1.0 - level)) / (2.0 * density);
        t += step;
        if step.abs() <= 1e-14 * t {
            break;
        }
    }
    t
}

/// The `x` with `I_x(a, b) = chance`: the quantile of the beta distribution. Newton's method kept inside a bracket by halving.
pub(crate) fn beta_quantile(chance: f64, a: f64, b: f64) -> f64 {
    let ln_scale = ln_gamma(a + b) - ln_gamma(a) - ln_gamma(b);
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    let mut x = a / (a + b);
    for _ in 0..600 {
        let (lower, upper) = beta_tails(a, b, x, 1.0 - x);
        // The smaller tail carries the digits.
        let excess = if chance < 0.5 { lower - chance } else { (1.0 - chance) - upper };
        if excess > 0.0 {
            high = x;
        } else {
            low = x;
        }
        let density = (ln_scale + (a - 1.0) * x.ln() + (b - 1.0) * (-x).ln_1p()).exp();
        let newton = x - excess / density;
        let next = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
        let step = (next - x).abs();
        x = next;
        if step <= 2e-15 * x {
            break;
        }
    }
    x
}
