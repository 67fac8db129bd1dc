//! Units: what one is worth, how it is written, and which words a person may mean two things by.
//!
//! Every factor is a ratio of whole numbers, so that `25.4` and `31.1034768` are what the definition says and not the nearest binary number.
//! The tables stand in `unit_table`.

use num_rational::BigRational;
use num_traits::ToPrimitive;

use super::Kind;
use super::unit_table;

/// One unit of one kind: `value in the kind's unit = number · num/den + zero_num/zero_den`.
#[derive(Debug, PartialEq, Eq)]
pub struct Unit {
    /// As printed behind a number. Empty for plain numbers, counts and money.
    pub symbol: &'static str,
    /// Other ways to write it. A space stands for any or no space; case and the form of raised digits do not matter.
    pub(super) spellings: &'static [&'static str],
    pub(super) num: i64,
    pub(super) den: i64,
    pub(super) zero_num: i64,
    pub(super) zero_den: i64,
}

impl Unit {
    pub(super) const fn new(symbol: &'static str, spellings: &'static [&'static str], num: i64, den: i64) -> Self {
        Self { symbol, spellings, num, den, zero_num: 0, zero_den: 1 }
    }

    pub(super) const fn counted_from(self, zero_num: i64, zero_den: i64) -> Self {
        Self { zero_num, zero_den, ..self }
    }

    /// The value of `number` of this unit, in the unit of the kind.
    #[must_use]
    pub fn to_base(&self, number: f64) -> f64 {
        let scaled = number * self.num as f64 / self.den as f64;
        if self.zero_num == 0 { scaled } else { scaled + self.zero_num as f64 / self.zero_den as f64 }
    }

    /// How many of this unit `value` (in the unit of the kind) is.
    #[must_use]
    pub fn from_base(&self, value: f64) -> f64 {
        let above_zero = if self.zero_num == 0 { value } else { value - self.zero_num as f64 / self.zero_den as f64 };
        above_zero * self.den as f64 / self.num as f64
    }

    /// The exact factor to the unit of the kind.
    pub(super) fn factor(&self) -> BigRational {
        BigRational::new(self.num.into(), self.den.into())
    }

    /// Where this unit counts from, in the unit of the kind: −273.15 for kelvins.
    pub(super) fn zero(&self) -> BigRational {
        BigRational::new(self.zero_num.into(), self.zero_den.into())
    }

    /// The exact number of this unit that `value` is.
    pub(super) fn exact_from_base(&self, value: &BigRational) -> BigRational {
        (value - self.zero()) / self.factor()
    }

    /// The factor as the nearest binary number.
    #[must_use]
    pub fn size(&self) -> f64 {
        self.factor().to_f64().unwrap_or(f64::NAN)
    }

    /// The whole numbers whose ratio is the factor.
    #[must_use]
    pub fn ratio(&self) -> (i64, i64) {
        (self.num, self.den)
    }
}

/// What a word behind a number can mean in a field of some kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Meaning {
    /// One unit.
    Unit(&'static Unit),
    /// Two units go by this word; whoever types it must say which.
    Either([&'static Unit; 2]),
    /// The word belongs to something else that is easily mistaken for this kind.
    Refused(Mistake),
}

/// A word that belongs to another kind and is easily mistaken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mistake {
    /// `ct` where a fineness is asked: stones are weighed in carats, gold is marked in karats.
    CaratForFineness,
    /// `k` where a weight is asked.
    KaratForMass,
    /// A currency sign or code: amounts are in the studio's currency and nothing is changed into it.
    Currency,
}

impl Kind {
    /// The units a person may type for this kind. The first is the unit of stored values.
    #[must_use]
    pub fn units(self) -> &'static [Unit] {
        unit_table::units(self)
    }

    /// The unit of this kind that is printed as `symbol`.
    #[must_use]
    pub fn unit_named(self, symbol: &str) -> Option<&'static Unit> {
        self.units().iter().find(|unit| unit.symbol == symbol)
    }
}

/// The longest word of `kind` at the start of `text`, with its length in bytes.
pub(super) fn word_at(text: &str, kind: Kind) -> Option<(usize, Meaning)> {
    let own = kind.units().iter().flat_map(|unit| {
        let symbol = std::iter::once(unit.symbol).filter(|symbol| !symbol.is_empty());
        symbol.chain(unit.spellings.iter().copied()).map(move |spelling| (spelling, Meaning::Unit(unit)))
    });
    let doubtful =
        unit_table::doubtful(kind).iter().flat_map(|(spellings, meaning)| spellings.iter().map(move |spelling| (*spelling, *meaning)));
    let mut longest: Option<(usize, Meaning)> = None;
    for (spelling, meaning) in own.chain(doubtful) {
        if let Some(length) = matched(text, spelling)
            && longest.is_none_or(|(most, _)| length > most)
        {
            longest = Some((length, meaning));
        }
    }
    longest
}

/// The kind that knows the word `word` in full, for a helpful refusal. Lengths and weights first.
pub(super) fn kind_of_word(word: &str) -> Option<Kind> {
    Kind::ALL.into_iter().find(|kind| word_at(word, *kind).is_some_and(|(length, _)| length == word.len()))
}

/// Bytes of `text` that `spelling` covers, when it stands there as a whole word.
fn matched(text: &str, spelling: &str) -> Option<usize> {
    // Milligram and megagram differ by case alone, and so does nothing else in these tables.
    if spelling == "mg" && text.starts_with('M') {
        return None;
    }
    let mut rest = text;
    let mut last = ' ';
    for wanted in spelling.chars() {
        match wanted {
            ' ' => rest = rest.trim_start(),
            '/' => {
                rest = rest.trim_start().strip_prefix(['/', '\u{2044}', '\u{2215}'])?.trim_start();
            }
            _ => {
                // `cm^3` is `cm³`.
                let raised = rest.strip_prefix('^').filter(|_| matches!(folded(wanted), '2' | '3')).unwrap_or(rest);
                let found = raised.chars().next().filter(|found| folded(*found) == folded(wanted))?;
                rest = &raised[found.len_utf8()..];
            }
        }
        last = wanted;
    }
    let next = rest.chars().next();
    let ends = match next {
        Some(next) if last.is_alphabetic() => !next.is_alphabetic(),
        Some(next) if last.is_numeric() => !next.is_numeric(),
        _ => true,
    };
    ends.then_some(text.len() - rest.len())
}

/// Letters to small ones, raised digits to plain ones, the many marks for degrees, feet and inches to one each.
fn folded(letter: char) -> char {
    match letter {
        '²' => '2',
        '³' => '3',
        'º' | '˚' => '°',
        '″' | '”' | '“' => '"',
        '′' | '’' | '‘' => '\'',
        '\u{212A}' => 'k',
        _ => letter.to_ascii_lowercase(),
    }
}
