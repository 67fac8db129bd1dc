//! Repeatable random terms from the ranges a small studio meets.

use pourbook::calc::rule::Rule;
use pourbook::quantity::Kind;
use rust_decimal::Decimal;

/// A small generator (SplitMix64) with a seed of its own for each rule, so that a failure repeats.
pub struct Random(u64);

impl Random {
    pub fn of(rule: &Rule) -> Self {
        Self(rule.id.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x100_0000_01b3)))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// From 0 to 1.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A value of a kind within its sensible range; a whole one where it counts things.
    pub fn value(&mut self, kind: Kind) -> f64 {
        let (low, high) = kind.sensible();
        let value = low + (high - low) * self.share();
        if kind == Kind::Count { value.round().max(1.0) } else { value }
    }

    /// The same with at most three decimals.
    pub fn decimal(&mut self, kind: Kind) -> Decimal {
        let thousandths = (self.value(kind) * 1000.0).round();
        let whole = if kind == Kind::Count { (thousandths / 1000.0).round() * 1000.0 } else { thousandths };
        Decimal::new(format!("{:.0}", whole.max(1.0)).parse().unwrap(), 3)
    }

    pub fn values(&mut self, rule: &Rule) -> Vec<f64> {
        rule.terms.iter().map(|term| self.value(term.kind)).collect()
    }

    pub fn decimals(&mut self, rule: &Rule) -> Vec<Decimal> {
        rule.terms.iter().map(|term| self.decimal(term.kind)).collect()
    }
}
