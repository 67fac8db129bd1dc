//! From signs to a small tree: sums, products, amounts with units.
//!
//! Three rules say what a unit belongs to. Behind a number it belongs to that number. Behind the last number of a product, or of a sum,
//! in which nothing else has a unit, it belongs to the whole: `6 / 2 in` is three inches and `4.2*6 + 1.1 dwt` all pennyweights. Amounts
//! set side by side from larger to smaller unit are added: `1 lb 4 oz av`, `1 h 30`.

use num_rational::BigRational;
use num_traits::ToPrimitive;

use super::Kind;
use super::entry_error::{EntryError, EntryErrorKind};
use super::node::{Node, What, join};
use super::number::Literal;
use super::token::{Placed, Token};
use super::unit::{Meaning, Unit};

/// Brackets within brackets that are still read.
const DEEPEST: usize = 20;

/// The tree of an entry whose signs are `tokens`; `end` is its length in bytes.
pub(super) fn expression(tokens: &[Placed], kind: Kind, end: usize) -> Result<Node, EntryError> {
    let mut reader = Reader { tokens, next: 0, kind, end, depth: 0 };
    let node = reader.sum()?;
    match reader.peek() {
        None => Ok(node),
        Some(placed) => Err(reader.unexpected(placed)),
    }
}

struct Reader<'a> {
    tokens: &'a [Placed],
    next: usize,
    kind: Kind,
    end: usize,
    depth: usize,
}

impl<'a> Reader<'a> {
    fn peek(&self) -> Option<&'a Placed> {
        self.tokens.get(self.next)
    }

    fn ahead(&self, count: usize) -> Option<&'a Placed> {
        self.tokens.get(self.next + count)
    }

    /// The fault in finding `placed` where the entry should go on differently.
    fn unexpected(&self, placed: &Placed) -> EntryError {
        let why = match &placed.token {
            Token::Wrong(error) => return error.clone(),
            Token::Number(_) | Token::Open => EntryErrorKind::TwoNumbers,
            Token::Word(Meaning::Refused(mistake)) => EntryErrorKind::Mistaken(*mistake),
            Token::Word(_) => EntryErrorKind::TwoUnits,
            Token::Close => EntryErrorKind::Bracket,
            Token::Colon => EntryErrorKind::UnknownSign(':'),
            Token::Plus | Token::Minus | Token::Times | Token::Over => EntryErrorKind::MissingNumber,
        };
        EntryError::new(why, placed.at.clone())
    }

    fn sum(&mut self) -> Result<Node, EntryError> {
        let mut parts = vec![(false, self.product()?)];
        while let Some(placed) = self.peek() {
            let minus = match placed.token {
                Token::Plus => false,
                Token::Minus => true,
                _ => break,
            };
            self.next += 1;
            parts.push((minus, self.product()?));
        }
        // Kelvins at the end may be a step on the temperatures before it: that is decided with the meaning of the bare numbers.
        let may_be_step = self.kind == Kind::Temperature
            && parts.last().is_some_and(|(_, last)| matches!(&last.what, What::Amount(_, Meaning::Unit(unit), _) if unit.symbol == "K"));
        Ok(join(parts, !may_be_step, |left, right, minus| What::Sum { left, right, minus }))
    }

    fn product(&mut self) -> Result<Node, EntryError> {
        let mut parts = vec![(false, self.signed()?)];
        while let Some(placed) = self.peek() {
            let over = match placed.token {
                Token::Times => false,
                Token::Over => true,
                _ => break,
            };
            self.next += 1;
            parts.push((over, self.signed()?));
        }
        Ok(join(parts, true, |left, right, over| What::Product { left, right, over }))
    }

    fn signed(&mut self) -> Result<Node, EntryError> {
        let mut negative = false;
        let mut start = None;
        while let Some(placed) = self.peek() {
            match placed.token {
                Token::Minus => negative = !negative,
                Token::Plus => {}
                _ => break,
            }
            start.get_or_insert(placed.at.start);
            self.next += 1;
        }
        let node = self.primary()?;
        if !negative {
            return Ok(node);
        }
        let at = start.unwrap_or(node.at.start)..node.at.end;
        // The sign belongs to the number and not to the temperature: −10 °C is not the opposite of 10 °C.
        Ok(match node.what {
            What::Amount(inner, meaning, word) if !inner.has_unit() => {
                let inner = Node { at: at.start..inner.at.end, what: What::Negative(inner) };
                Node { what: What::Amount(Box::new(inner), meaning, word), at }
            }
            _ => Node { what: What::Negative(Box::new(node)), at },
        })
    }

    fn primary(&mut self) -> Result<Node, EntryError> {
        let Some(placed) = self.peek() else {
            return Err(EntryError::new(EntryErrorKind::MissingNumber, self.end..self.end));
        };
        match &placed.token {
            Token::Open => {
                let inner = self.bracket(placed)?;
                self.unit_behind(inner)
            }
            Token::Number(literal) => {
                if self.kind == Kind::Duration && matches!(self.ahead(1), Some(Placed { token: Token::Colon, .. })) {
                    return self.clock();
                }
                let number = self.number(literal, true);
                let amount = self.unit_behind(number)?;
                self.compound(amount)
            }
            Token::Word(meaning) if !matches!(meaning, Meaning::Refused(_)) => {
                Err(EntryError::new(EntryErrorKind::MissingNumber, placed.at.clone()))
            }
            _ => Err(self.unexpected(placed)),
        }
    }

    fn bracket(&mut self, open: &Placed) -> Result<Node, EntryError> {
        if self.depth == DEEPEST {
            return Err(EntryError::new(EntryErrorKind::TooDeep, open.at.clone()));
        }
        self.depth += 1;
        self.next += 1;
        let inner = self.sum()?;
        self.depth -= 1;
        match self.peek() {
            Some(Placed { token: Token::Close, at }) => {
                self.next += 1;
                Ok(Node { what: inner.what, at: open.at.start..at.end })
            }
            Some(placed) => Err(self.unexpected(placed)),
            None => Err(EntryError::new(EntryErrorKind::Bracket, open.at.clone())),
        }
    }

    /// The number at hand with the fraction that belongs to it: `1 1/2`, `1½`, `1-1/2`; `3/4` stays a quotient unless `within` a compound.
    fn number(&mut self, literal: &Literal, first: bool) -> Node {
        let start = literal.at.start;
        self.next += 1;
        if literal.whole {
            if let Some(Token::Number(fraction)) = self.peek().map(|placed| &placed.token)
                && fraction.vulgar
            {
                self.next += 1;
                return Node { what: What::Constant(&literal.value + &fraction.value), at: start..fraction.at.end };
            }
            if let Some((fraction, end)) = self.fraction(self.next) {
                self.next += 3;
                return Node { what: What::Constant(&literal.value + fraction), at: start..end };
            }
            if !first && let Some((fraction, end)) = self.fraction(self.next - 1) {
                self.next += 2;
                return Node { what: What::Constant(fraction), at: start..end };
            }
            if self.kind == Kind::Length
                && let Some(Placed { token: Token::Minus, at: dash }) = self.peek()
                && dash.start == literal.at.end
                && let Some((fraction, end)) = self.fraction(self.next + 1)
                && self.tokens[self.next + 1].at.start == dash.end
            {
                self.next += 4;
                return Node { what: What::Dashed(literal.value.clone(), fraction, dash.clone()), at: start..end };
            }
        }
        Node { what: What::Number(literal.clone()), at: literal.at.clone() }
    }

    /// The proper fraction of whole numbers, without spaces, whose numerator is token `index`; with its end.
    fn fraction(&self, index: usize) -> Option<(BigRational, usize)> {
        let [Placed { token: Token::Number(above), .. }, Placed { token: Token::Over, at }, Placed { token: Token::Number(below), .. }] =
            self.tokens.get(index..index + 3)?
        else {
            return None;
        };
        let tight = above.at.end == at.start && at.end == below.at.start;
        let proper = above.whole && below.whole && above.value < below.value;
        (tight && proper).then(|| (&above.value / &below.value, below.at.end))
    }

    fn unit_behind(&mut self, number: Node) -> Result<Node, EntryError> {
        let Some(Placed { token: Token::Word(meaning), at }) = self.peek() else {
            return Ok(number);
        };
        if let Meaning::Refused(mistake) = meaning {
            return Err(EntryError::new(EntryErrorKind::Mistaken(*mistake), at.clone()));
        }
        if number.has_unit() {
            return Err(EntryError::new(EntryErrorKind::TwoUnits, at.clone()));
        }
        self.next += 1;
        let whole = number.at.start..at.end;
        Ok(Node { what: What::Amount(Box::new(number), *meaning, at.clone()), at: whole })
    }

    /// Amounts set side by side.
    fn compound(&mut self, first: Node) -> Result<Node, EntryError> {
        let mut whole = first;
        let What::Amount(_, mut larger, _) = whole.what else {
            return Ok(whole);
        };
        if !matches!(self.kind, Kind::Length | Kind::Altitude | Kind::Mass | Kind::Volume | Kind::Duration) {
            return Ok(whole);
        }
        while let Some(Placed { token: Token::Number(literal), at }) = self.peek() {
            let number = self.number(literal, false);
            let part = match self.unit_behind(number)? {
                amount @ Node { what: What::Amount(..), .. } => amount,
                bare if larger == Meaning::Unit(hour()) => {
                    let at = bare.at.clone();
                    Node { what: What::Amount(Box::new(bare), Meaning::Unit(minute()), at.end..at.end), at }
                }
                _ => return Err(EntryError::new(EntryErrorKind::TwoNumbers, at.clone())),
            };
            let What::Amount(_, smaller, _) = part.what else {
                return Err(EntryError::new(EntryErrorKind::TwoNumbers, at.clone()));
            };
            if size(smaller) >= size(larger) {
                return Err(EntryError::new(EntryErrorKind::CompoundOrder, part.at));
            }
            larger = smaller;
            let at = whole.at.start..part.at.end;
            whole = Node { what: What::Sum { left: Box::new(whole), right: Box::new(part), minus: false }, at };
        }
        Ok(whole)
    }

    /// `1:30` and `1:30:15`: hours, minutes, seconds.
    fn clock(&mut self) -> Result<Node, EntryError> {
        let mut parts = Vec::new();
        let start = self.peek().map_or(self.end, |placed| placed.at.start);
        let mut end = start;
        let bad = |end: usize| EntryError::new(EntryErrorKind::BadClock, start..end);
        loop {
            let Some(Placed { token: Token::Number(literal), at }) = self.peek() else {
                return Err(bad(self.peek().map_or(self.end, |placed| placed.at.end)));
            };
            end = at.end.max(end);
            self.next += 1;
            let sixty = literal.value.to_f64().is_some_and(|number| number < 60.0);
            if !literal.whole || parts.len() == 3 || (!parts.is_empty() && !sixty) {
                return Err(bad(end));
            }
            parts.push(literal.value.clone());
            if !matches!(self.peek(), Some(Placed { token: Token::Colon, .. })) {
                break;
            }
            self.next += 1;
        }
        match self.peek() {
            Some(Placed { token: Token::Word(Meaning::Unit(unit)), at }) if **unit == *hour() => {
                end = at.end;
                self.next += 1;
            }
            Some(Placed { token: Token::Word(_), at }) => return Err(bad(at.end)),
            _ => {}
        }
        let sixty = BigRational::from_integer(60.into());
        let seconds = parts.get(2).map_or_else(|| BigRational::from_integer(0.into()), |seconds| seconds / &sixty);
        let minutes = &parts[0] * &sixty + &parts[1] + seconds;
        let constant = Node { what: What::Constant(minutes), at: start..end };
        Ok(Node { what: What::Amount(Box::new(constant), Meaning::Unit(minute()), end..end), at: start..end })
    }
}

fn minute() -> &'static Unit {
    &Kind::Duration.units()[0]
}

fn hour() -> &'static Unit {
    &Kind::Duration.units()[1]
}

fn size(meaning: Meaning) -> f64 {
    match meaning {
        Meaning::Unit(unit) | Meaning::Either([unit, _]) => unit.size(),
        Meaning::Refused(_) => f64::NAN,
    }
}
