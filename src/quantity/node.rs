//! The tree an entry is read into.

use std::ops::Range;

use num_rational::BigRational;

use super::number::Literal;
use super::unit::Meaning;

/// A part of an entry and the bytes it covers.
#[derive(Debug, Clone)]
pub(super) struct Node {
    pub(super) what: What,
    pub(super) at: Range<usize>,
}

/// What a part of an entry is.
#[derive(Debug, Clone)]
pub(super) enum What {
    /// A number as typed.
    Number(Literal),
    /// A fraction, a mixed number, a clock time.
    Constant(BigRational),
    /// `1-1/2`: the whole number, the fraction, and the place of the dash.
    Dashed(BigRational, BigRational, Range<usize>),
    /// A number of a unit, and the bytes of the unit's word.
    Amount(Box<Node>, Meaning, Range<usize>),
    /// The negative of a part.
    Negative(Box<Node>),
    /// A sum or difference.
    Sum { left: Box<Node>, right: Box<Node>, minus: bool },
    /// A product or quotient.
    Product { left: Box<Node>, right: Box<Node>, over: bool },
}

impl Node {
    /// Whether a unit stands anywhere within.
    pub(super) fn has_unit(&self) -> bool {
        match &self.what {
            What::Number(_) | What::Constant(_) | What::Dashed(..) => false,
            What::Amount(..) => true,
            What::Negative(inner) => inner.has_unit(),
            What::Sum { left, right, .. } | What::Product { left, right, .. } => left.has_unit() || right.has_unit(),
        }
    }

    /// Calls `seen` with this part and every part within, from left to right.
    pub(super) fn visit<'a>(&'a self, seen: &mut impl FnMut(&'a Self)) {
        seen(self);
        match &self.what {
            What::Number(_) | What::Constant(_) | What::Dashed(..) => {}
            What::Amount(inner, ..) | What::Negative(inner) => inner.visit(seen),
            What::Sum { left, right, .. } | What::Product { left, right, .. } => {
                left.visit(seen);
                right.visit(seen);
            }
        }
    }
}

/// Parts from left to right; where `shares` and only the last part has a unit, right at its end, the whole takes it.
pub(super) fn join(mut parts: Vec<(bool, Node)>, shares: bool, two: impl Fn(Box<Node>, Box<Node>, bool) -> What) -> Node {
    let mut shared = None;
    if shares
        && parts.len() > 1
        && parts[..parts.len() - 1].iter().all(|(_, part)| !part.has_unit())
        && let Some((flag, last)) = parts.pop()
    {
        let last = match last.what {
            What::Amount(inner, meaning, word) if word.end == last.at.end && !word.is_empty() => {
                shared = Some((meaning, word));
                *inner
            }
            what => Node { what, at: last.at },
        };
        parts.push((flag, last));
    }
    let whole = parts.into_iter().reduce(|(_, left), (flag, right)| {
        let at = left.at.start..right.at.end;
        (false, Node { what: two(Box::new(left), Box::new(right), flag), at })
    });
    let node = whole.expect("a sum or product has at least one part").1;
    match shared {
        None => node,
        Some((meaning, word)) => {
            let at = node.at.start..word.end;
            Node { what: What::Amount(Box::new(node), meaning, word), at }
        }
    }
}
