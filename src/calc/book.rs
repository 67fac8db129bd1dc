//! The book of figures. [`Book::derive`] is the only door by which a figure comes to be: it calls the rule on the very terms it
//! stores, so that the working shown and the arithmetic done are one.

use num_rational::Ratio;
use rust_decimal::Decimal;

use super::rule::{Given, How, Input, Rule, Trust};
use super::value::{Cause, Value};
use crate::job::Place;
use crate::quantity::{Finite, Grams, Kind, Money};
use crate::stock::{EntryId, Sourced};

/// A line of the book: a figure, or a term that is not derived.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(u32);

impl Id {
    /// Its place in the book, from 0.
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// Where the value of a line comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Origin {
    /// Made by a rule.
    Derived(&'static Rule),
    /// Typed in the job.
    Entered(&'static Input),
    /// Said in the studio's file.
    Studio(&'static Input),
    /// Measured from a file.
    Measured(&'static Input),
    /// Found by laying things out, as parts on a plate.
    LaidOut(&'static Input),
    /// Read off a long run, as of a mould's heat.
    Run(&'static Input),
    /// Read from the shelf; the index is into [`Book::shelf_terms`].
    Shelf(&'static Input, u32),
    /// A default of the house that nobody confirmed.
    Default(&'static Given),
    /// Never changes.
    Constant(&'static Given),
    /// Should be there and is not.
    Absent(&'static Input),
}

/// What stands behind a number from the shelf.
#[derive(Debug, Clone, PartialEq)]
pub struct ShelfTerm {
    /// The entry.
    pub entry: EntryId,
    /// Its source.
    pub source: String,
    /// How far to trust it.
    pub trust: Trust,
}

#[derive(Debug, Clone, Copy)]
struct Row {
    origin: Origin,
    place: Place,
    value: Value,
    first_term: u32,
    terms: u32,
}

/// All figures of one recompute with their terms.
#[derive(Debug, Default)]
pub struct Book {
    rows: Vec<Row>,
    terms: Vec<Id>,
    shelf_terms: Vec<ShelfTerm>,
}

/// A line of the book, to be read.
#[derive(Debug, Clone, Copy)]
pub struct Figure<'a> {
    /// Its id.
    pub id: Id,
    /// Where its value comes from.
    pub origin: Origin,
    /// Where it stands.
    pub place: Place,
    /// Its value.
    pub value: Value,
    /// Its terms, in the order of the rule's.
    pub terms: &'a [Id],
}

impl Origin {
    /// The key of the rule, input or default.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Derived(rule) => rule.id,
            Self::Entered(input)
            | Self::Studio(input)
            | Self::Measured(input)
            | Self::LaidOut(input)
            | Self::Run(input)
            | Self::Shelf(input, _)
            | Self::Absent(input) => input.key,
            Self::Default(given) | Self::Constant(given) => given.key,
        }
    }

    /// What it measures.
    #[must_use]
    pub fn kind(self) -> Kind {
        match self {
            Self::Derived(rule) => rule.result,
            Self::Entered(input)
            | Self::Studio(input)
            | Self::Measured(input)
            | Self::LaidOut(input)
            | Self::Run(input)
            | Self::Shelf(input, _)
            | Self::Absent(input) => input.kind,
            Self::Default(given) | Self::Constant(given) => given.kind,
        }
    }
}

impl Figure<'_> {
    /// The rule that made it, where one did.
    #[must_use]
    pub fn rule(&self) -> Option<&'static Rule> {
        match self.origin {
            Origin::Derived(rule) => Some(rule),
            _ => None,
        }
    }
}

impl Book {
    /// Empties the book and keeps its memory.
    pub fn clear(&mut self) {
        self.rows.clear();
        self.terms.clear();
        self.shelf_terms.clear();
    }

    /// How many lines it has, terms included.
    #[must_use]
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// True before anything was computed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    fn row(&mut self, origin: Origin, place: Place, value: Value, terms: &[Id]) -> Id {
        // A job is bounded long before four thousand million lines: its files are.
        let id = Id(u32::try_from(self.rows.len()).unwrap_or(u32::MAX));
        let first_term = u32::try_from(self.terms.len()).unwrap_or(u32::MAX);
        self.terms.extend_from_slice(terms);
        self.rows.push(Row { origin, place, value, first_term, terms: u32::try_from(terms.len()).unwrap_or(u32::MAX) });
        id
    }

    /// Makes a figure: calls the rule on the terms and stores both. A missing term gives a missing figure.
    ///
    /// # Panics
    /// Where `terms` are not as many as the rule's: a slip in the program, found by any test that reaches the rule.
    pub fn derive<const N: usize>(&mut self, rule: &'static Rule, place: Place, terms: [Id; N]) -> Id {
        assert_eq!(rule.terms.len(), N, "{} takes {} terms", rule.id, rule.terms.len());
        self.debug_check_kinds(rule, &terms);
        let value = match rule.how {
            How::Formula { call, .. } | How::Lookup { call, .. } => self.with_numbers(&terms, |numbers| Value::finite(call(numbers))),
            How::Decimal { call, .. } => {
                let mut decimals = [Decimal::ZERO; N];
                match self.fill(&terms, &mut decimals, Value::decimal) {
                    Some(missing) => missing,
                    None => Value::from_decimal(call(&decimals), rule.result),
                }
            }
            How::Exact { call, .. } => {
                let mut fractions = [Ratio::from_integer(0_i128); N];
                match self.fill(&terms, &mut fractions, |value| value.decimal().and_then(fraction)) {
                    Some(missing) => missing,
                    None => call(&fractions).and_then(from_fraction).map_or(Value::Missing(Cause::NotFinite), Value::finite),
                }
            }
            How::Sum | How::Most => self.over_rows(rule, &terms),
        };
        self.row(Origin::Derived(rule), place, value, &terms)
    }

    /// Makes a figure over any number of rows, for rules that sum or pick the largest. No rows give a missing largest and a sum of zero.
    pub fn derive_over(&mut self, rule: &'static Rule, place: Place, rows: &[Id]) -> Id {
        debug_assert!(matches!(rule.how, How::Sum | How::Most), "{} is not over rows", rule.id);
        debug_assert!(rows.iter().all(|id| self.kind(*id) == rule.terms[0].kind), "{} over rows of another kind", rule.id);
        let value = self.over_rows(rule, rows);
        self.row(Origin::Derived(rule), place, value, rows)
    }

    fn over_rows(&self, rule: &'static Rule, rows: &[Id]) -> Value {
        if let Some(missing) = rows.iter().find_map(|id| self.rows[id.0 as usize].value.cause()) {
            return Value::Missing(if missing == Cause::Pending { Cause::Pending } else { Cause::Term });
        }
        let values = || rows.iter().map(|id| self.rows[id.0 as usize].value);
        match rule.how {
            How::Most => values().filter_map(Value::number).reduce(f64::max).map_or(Value::Missing(Cause::NotSaid), Value::finite),
            _ if matches!(rule.result, Kind::Money | Kind::PricePerGram)
                || (!rows.is_empty() && values().all(|value| matches!(value, Value::Grams(_)))) =>
            {
                let sum = values().try_fold(Decimal::ZERO, |sum, value| sum.checked_add(value.decimal()?));
                Value::from_decimal(sum, rule.result)
            }
            _ => Value::finite(values().filter_map(Value::number).sum()),
        }
    }

    fn with_numbers<const N: usize>(&self, terms: &[Id; N], call: impl FnOnce(&[f64]) -> Value) -> Value {
        let mut numbers = [0.0; N];
        self.fill(terms, &mut numbers, Value::number).unwrap_or_else(|| call(&numbers))
    }

    /// Reads the terms into `into`; `Some` is the missing value where one of them is missing.
    fn fill<T, const N: usize>(&self, terms: &[Id; N], into: &mut [T; N], read: impl Fn(Value) -> Option<T>) -> Option<Value> {
        for (slot, id) in into.iter_mut().zip(terms) {
            let value = self.rows[id.0 as usize].value;
            match read(value) {
                Some(number) => *slot = number,
                None => return Some(Value::Missing(if value.cause() == Some(Cause::Pending) { Cause::Pending } else { Cause::Term })),
            }
        }
        None
    }

    fn debug_check_kinds(&self, rule: &Rule, terms: &[Id]) {
        if cfg!(debug_assertions) && !matches!(rule.how, How::Sum | How::Most) {
            for (term, id) in rule.terms.iter().zip(terms) {
                assert_eq!(self.kind(*id), term.kind, "{}: {} is given {}", rule.id, term.symbol, self.rows[id.0 as usize].origin.key());
            }
        }
    }

    /// A number typed in the job, or the default where it was not.
    pub fn entered(&mut self, input: &'static Input, place: Place, number: f64) -> Id {
        self.row(Origin::Entered(input), place, Value::finite(number), &[])
    }

    /// Weighed grams typed in the job.
    pub fn weighed(&mut self, input: &'static Input, place: Place, grams: Grams) -> Id {
        self.row(Origin::Entered(input), place, Value::Grams(grams), &[])
    }

    /// Money typed in the job.
    pub fn money(&mut self, input: &'static Input, place: Place, amount: Money) -> Id {
        self.row(Origin::Entered(input), place, Value::Money(amount), &[])
    }

    /// What was typed, or else the house's default.
    pub fn entered_or(&mut self, input: &'static Input, place: Place, number: Option<Finite>, default: &'static Given) -> Id {
        match number {
            Some(number) => self.entered(input, place, number.get()),
            None => self.assumed(default, place),
        }
    }

    /// A default of the house.
    pub fn assumed(&mut self, given: &'static Given, place: Place) -> Id {
        self.row(Origin::Default(given), place, Value::finite(given.value), &[])
    }

    /// A constant.
    pub fn constant(&mut self, given: &'static Given) -> Id {
        self.row(Origin::Constant(given), Place::Job, Value::finite(given.value), &[])
    }

    /// A number of the studio's file.
    pub fn studio(&mut self, input: &'static Input, number: f64) -> Id {
        self.row(Origin::Studio(input), Place::Studio, Value::finite(number), &[])
    }

    /// Money of the studio's file.
    pub fn studio_money(&mut self, input: &'static Input, amount: Money) -> Id {
        self.row(Origin::Studio(input), Place::Studio, Value::Money(amount), &[])
    }

    /// Grams of the studio's file.
    pub fn studio_grams(&mut self, input: &'static Input, grams: Grams) -> Id {
        self.row(Origin::Studio(input), Place::Studio, Value::Grams(grams), &[])
    }

    /// A number measured from a file.
    pub fn measured(&mut self, input: &'static Input, place: Place, number: f64) -> Id {
        self.row(Origin::Measured(input), place, Value::finite(number), &[])
    }

    /// A number read off a long run.
    pub fn run(&mut self, input: &'static Input, place: Place, number: f64) -> Id {
        self.row(Origin::Run(input), place, Value::finite(number), &[])
    }

    /// A number found by laying things out.
    pub fn laid_out(&mut self, input: &'static Input, place: Place, number: f64) -> Id {
        self.row(Origin::LaidOut(input), place, Value::finite(number), &[])
    }

    /// A number of a shelf entry.
    pub fn shelf(&mut self, input: &'static Input, entry: &EntryId, number: &Sourced) -> Id {
        self.shelf_number(input, entry, number.value, &number.source, number.trust)
    }

    /// A number of a shelf entry whose source stands apart.
    pub fn shelf_number(&mut self, input: &'static Input, entry: &EntryId, number: f64, source: &str, trust: Trust) -> Id {
        let index = u32::try_from(self.shelf_terms.len()).unwrap_or(u32::MAX);
        self.shelf_terms.push(ShelfTerm { entry: entry.clone(), source: source.to_owned(), trust });
        self.row(Origin::Shelf(input, index), Place::Job, Value::finite(number), &[])
    }

    /// A term that should be there and is not.
    pub fn absent(&mut self, input: &'static Input, place: Place, cause: Cause) -> Id {
        self.row(Origin::Absent(input), place, Value::Missing(cause), &[])
    }

    /// The value of a line.
    #[must_use]
    pub fn value(&self, id: Id) -> Value {
        self.rows[id.0 as usize].value
    }

    /// The number of a line, where it has one.
    #[must_use]
    pub fn number(&self, id: Id) -> Option<f64> {
        self.value(id).number()
    }

    /// What a line measures.
    #[must_use]
    pub fn kind(&self, id: Id) -> Kind {
        self.rows[id.0 as usize].origin.kind()
    }

    /// A line.
    #[must_use]
    pub fn figure(&self, id: Id) -> Figure<'_> {
        let row = &self.rows[id.0 as usize];
        let terms = &self.terms[row.first_term as usize..(row.first_term + row.terms) as usize];
        Figure { id, origin: row.origin, place: row.place, value: row.value, terms }
    }

    /// Every line, in the order of making.
    pub fn lines(&self) -> impl Iterator<Item = Figure<'_>> {
        (0..self.rows.len()).map(|index| self.figure(Id(u32::try_from(index).unwrap_or(u32::MAX))))
    }

    /// Every derived figure, in the order of making.
    pub fn figures(&self) -> impl Iterator<Item = Figure<'_>> {
        self.lines().filter(|figure| matches!(figure.origin, Origin::Derived(_)))
    }

    /// What stands behind a number from the shelf.
    #[must_use]
    pub fn shelf_term(&self, index: u32) -> Option<&ShelfTerm> {
        self.shelf_terms.get(index as usize)
    }

    /// The lines at which a missing figure fails first, each once, in the order of making; empty for a figure that has a value.
    #[must_use]
    pub fn root_causes(&self, id: Id) -> Vec<Id> {
        let mut causes = Vec::new();
        let mut open = vec![id];
        while let Some(id) = open.pop() {
            let figure = self.figure(id);
            let Some(cause) = figure.value.cause() else { continue };
            let missing_terms = || figure.terms.iter().copied().filter(|term| self.value(*term).cause().is_some());
            if missing_terms().next().is_none() || !matches!(cause, Cause::Term | Cause::Pending) {
                causes.push(id);
            } else {
                open.extend(missing_terms());
            }
        }
        causes.sort_unstable();
        causes.dedup();
        causes
    }
}

/// A decimal as an exact fraction; `None` where it does not fit.
fn fraction(decimal: Decimal) -> Option<Ratio<i128>> {
    let denominator = 10_i128.checked_pow(decimal.scale())?;
    Some(Ratio::new(decimal.mantissa(), denominator))
}

fn from_fraction(fraction: Ratio<i128>) -> Option<f64> {
    num_traits::ToPrimitive::to_f64(&fraction)
}
