//! What a figure is made by. A [`Rule`] is static data: its terms, its result, how it is worked out, and where it comes from.
//!
//! The text of a formula and the function that computes it stand side by side in one [`rules!`] entry; tests evaluate the text with a
//! general expression crate and hold it against the function, over numbers and over dimensions.

use num_rational::Ratio;
use rust_decimal::Decimal;

use crate::quantity::Kind;
pub use crate::stock::Trust;

/// A term of a rule: the symbol that stands for it in the text, and what it measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    /// The symbol.
    pub symbol: &'static str,
    /// What it measures.
    pub kind: Kind,
}

/// How a rule works out its value.
#[derive(Clone, Copy)]
pub enum How {
    /// A formula over binary numbers.
    Formula {
        /// The formula, in the house grammar: symbols, numbers, `pi`, `+ - * / ^`, `sqrt max min abs exp ceil floor`.
        text: &'static str,
        /// The same as a function; it gets exactly the rule's terms, in order.
        call: fn(&[f64]) -> f64,
    },
    /// A formula over decimals: money and weighed grams. `round2(x)` rounds half up to two decimals, `ceilto(x, step)` up to a step.
    Decimal {
        /// The formula.
        text: &'static str,
        /// The same as a function; `None` on overflow or division by zero.
        call: fn(&[Decimal]) -> Option<Decimal>,
    },
    /// A formula over exact fractions.
    Exact {
        /// The formula.
        text: &'static str,
        /// The same as a function; `None` on overflow or division by zero.
        call: fn(&[Ratio<i128>]) -> Option<Ratio<i128>>,
    },
    /// The sum over any number of rows of the one term.
    Sum,
    /// The largest among any number of rows of the one term.
    Most,
    /// Read off a published table or equation.
    Lookup {
        /// What is read, and how.
        text: &'static str,
        /// The reading.
        call: fn(&[f64]) -> f64,
    },
}

/// A rule.
pub struct Rule {
    /// Its key, `page.name`.
    pub id: &'static str,
    /// What it gives.
    pub result: Kind,
    /// Its terms, in order; one for [`How::Sum`] and [`How::Most`].
    pub terms: &'static [Term],
    /// How it is worked out.
    pub how: How,
    /// Where it comes from.
    pub source: &'static str,
    /// How far to trust it.
    pub trust: Trust,
}

impl Rule {
    /// The formula or reading in words, as printed.
    #[must_use]
    pub fn text(&self) -> String {
        let first = self.terms.first().map_or("x", |term| term.symbol);
        match self.how {
            How::Formula { text, .. } | How::Decimal { text, .. } | How::Exact { text, .. } | How::Lookup { text, .. } => text.to_owned(),
            How::Sum => format!("sum({first})"),
            How::Most => format!("max({first})"),
        }
    }
}

impl std::fmt::Debug for Rule {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Rule({})", self.id)
    }
}

/// Rules compare by what they are, not by their functions.
impl PartialEq for Rule {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other) || self.id == other.id
    }
}

/// A number that is not derived: typed in, read from the shelf, a default or a constant.
#[derive(Debug, PartialEq)]
pub struct Input {
    /// Its key, `page.name`.
    pub key: &'static str,
    /// What it measures.
    pub kind: Kind,
}

/// A number the house supplies where nobody said one, or that never changes.
#[derive(Debug, PartialEq)]
pub struct Given {
    /// Its key.
    pub key: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// The number.
    pub value: f64,
    /// Where it comes from.
    pub source: &'static str,
    /// How far to trust it.
    pub trust: Trust,
}

/// Declares rules, each with its text and its function side by side, and the list `RULES` of all of them.
macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident $id:literal ( $($symbol:ident : $kind:ident),* ) -> $result:ident = $how:ident $text:literal $({ $($body:tt)* })? ; $trust:ident $source:literal)+) => {
        $(
            $(#[$doc])*
            pub static $name: $crate::calc::rule::Rule = $crate::calc::rule::Rule {
                id: $id,
                result: $crate::quantity::Kind::$result,
                terms: &[$($crate::calc::rule::Term { symbol: stringify!($symbol), kind: $crate::quantity::Kind::$kind }),*],
                how: $crate::calc::rule::how!($how $text ($($symbol),*) $({ $($body)* })?),
                source: $source,
                trust: $crate::calc::rule::Trust::$trust,
            };
        )+
        /// The rules of this page.
        pub static RULES: &[&$crate::calc::rule::Rule] = &[$(&$name),+];
    };
}

macro_rules! how {
    (Sum $text:literal ($($symbol:ident),*)) => { $crate::calc::rule::How::Sum };
    (Most $text:literal ($($symbol:ident),*)) => { $crate::calc::rule::How::Most };
    (Formula $text:literal ($($symbol:ident),*) { $($body:tt)* }) => {
        $crate::calc::rule::How::Formula { text: $text, call: |terms| { let &[$($symbol),*] = terms else { return f64::NAN }; $($body)* } }
    };
    (Lookup $text:literal ($($symbol:ident),*) { $($body:tt)* }) => {
        $crate::calc::rule::How::Lookup { text: $text, call: |terms| { let &[$($symbol),*] = terms else { return f64::NAN }; $($body)* } }
    };
    (Decimal $text:literal ($($symbol:ident),*) { $($body:tt)* }) => {
        $crate::calc::rule::How::Decimal { text: $text, call: |terms| { let &[$($symbol),*] = terms else { return None }; $($body)* } }
    };
    (Exact $text:literal ($($symbol:ident),*) { $($body:tt)* }) => {
        $crate::calc::rule::How::Exact { text: $text, call: |terms| { let &[$($symbol),*] = terms else { return None }; $($body)* } }
    };
}

/// Declares inputs, and the list `INPUTS` of all of them.
macro_rules! inputs {
    ($($(#[$doc:meta])* $name:ident $key:literal $kind:ident;)+) => {
        $(
            $(#[$doc])*
            pub static $name: $crate::calc::rule::Input = $crate::calc::rule::Input { key: $key, kind: $crate::quantity::Kind::$kind };
        )+
        /// The inputs of this page.
        pub static INPUTS: &[&$crate::calc::rule::Input] = &[$(&$name),+];
    };
}

/// Declares defaults and constants, and the list `GIVENS` of all of them.
macro_rules! givens {
    ($($(#[$doc:meta])* $name:ident $key:literal $kind:ident = $value:expr; $trust:ident $source:literal)+) => {
        $(
            $(#[$doc])*
            pub static $name: $crate::calc::rule::Given = $crate::calc::rule::Given {
                key: $key,
                kind: $crate::quantity::Kind::$kind,
                value: $value,
                source: $source,
                trust: $crate::calc::rule::Trust::$trust,
            };
        )+
        /// The defaults and constants of this page.
        pub static GIVENS: &[&$crate::calc::rule::Given] = &[$(&$name),+];
    };
}

pub(super) use {givens, how, inputs, rules};
