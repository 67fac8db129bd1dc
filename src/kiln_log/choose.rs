//! Choosing the columns of time and temperature.

use super::behind::without_unit;
use super::class::Class;
use super::cut::cut;
use super::header::Header;
use super::layout::Layout;
use super::meaning::Role;
use super::records::Record;
use super::{Column, Decimal, LogError, Options};
use crate::table::{Shape, number, shape};

/// Where the time stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum TimeSource {
    /// Date and time in one column.
    Moment(usize),
    /// Date and clock in two.
    Split { date: usize, clock: usize },
    /// A clock, or a time passed in the form of one.
    Clock(usize),
    /// A plain number.
    Number(usize),
}

impl TimeSource {
    pub fn columns(self) -> Vec<usize> {
        match self {
            Self::Moment(at) | Self::Clock(at) | Self::Number(at) => vec![at],
            Self::Split { date, clock } => vec![date, clock],
        }
    }
}

/// The chosen columns.
pub(super) struct Choice {
    pub time: TimeSource,
    pub temperature: usize,
    /// Other columns that may be temperatures, likelier ones first.
    pub others: Vec<usize>,
}

/// Numbers of the sample, a list a column; NaN where there is none.
struct Sample {
    columns: Vec<Vec<f64>>,
}

pub(super) fn choose(records: &[Record<'_>], layout: &Layout, header: &Header, options: &Options) -> Result<Choice, LogError> {
    let sample = Sample::take(records, layout);
    let line = header.line.unwrap_or(records[layout.first].line);
    let no_such = |at: usize| LogError::NoSuchColumn { column: at + 1, there: layout.width() };
    let time = match options.time_column {
        Some(at) => asked_time(layout, header, at).ok_or_else(|| no_such(at))?,
        None => time(layout, header, &sample).ok_or(LogError::NoTime { line })?,
    };
    let mut ranked = temperatures(layout, header, &sample, &time.columns());
    if let Some(at) = options.temperature_column {
        let usable = matches!(layout.classes.get(at), Some(Class::Number)) && !time.columns().contains(&at);
        if !usable {
            return Err(no_such(at));
        }
        ranked.retain(|&other| other != at);
        ranked.insert(0, at);
    }
    let (&temperature, others) = ranked.split_first().ok_or(LogError::NoTemperature { line })?;
    Ok(Choice { time, temperature, others: others.to_vec() })
}

/// The columns by the names of their header.
pub(super) fn named(header: &Header, columns: &[usize]) -> Vec<Column> {
    columns.iter().map(|&index| Column { index, name: header.names[index].clone() }).collect()
}

fn asked_time(layout: &Layout, header: &Header, at: usize) -> Option<TimeSource> {
    match layout.classes.get(at)? {
        Class::Moment => Some(TimeSource::Moment(at)),
        Class::Date => clock_for(layout, header, at).map(|clock| TimeSource::Split { date: at, clock }),
        Class::Clock => Some(TimeSource::Clock(at)),
        Class::Number => Some(TimeSource::Number(at)),
        _ => None,
    }
}

/// The clock that belongs to a column of dates: the next one after it, else the first.
fn clock_for(layout: &Layout, header: &Header, date: usize) -> Option<usize> {
    let is_clock = |at: &usize| layout.classes[*at] == Class::Clock && !header.meanings[*at].elapsed;
    (date..layout.width()).find(is_clock).or_else(|| (0..date).find(is_clock))
}

/// The time: date and clock where there are both, else what the header calls a time, else a column that only rises or only falls.
fn time(layout: &Layout, header: &Header, sample: &Sample) -> Option<TimeSource> {
    let first = |class: Class| (0..layout.width()).find(|&at| layout.classes[at] == class);
    if let Some(at) = first(Class::Moment) {
        return Some(TimeSource::Moment(at));
    }
    if let Some(date) = first(Class::Date)
        && let Some(clock) = clock_for(layout, header, date)
    {
        return Some(TimeSource::Split { date, clock });
    }
    let numbers = || (0..layout.width()).filter(|&at| layout.classes[at] == Class::Number);
    let role = |at: usize| header.meanings[at].role;
    let with_unit = numbers().find(|&at| role(at) == Role::Time && header.meanings[at].time_unit.is_some());
    let named = || numbers().find(|&at| role(at) == Role::Time);
    let may_be = |at: &usize| matches!(role(*at), Role::Unknown) && sample.is_monotone(*at);
    // A running number is a poor clock, and better than none only where it has another name.
    with_unit
        .map(TimeSource::Number)
        .or_else(|| first(Class::Clock).map(TimeSource::Clock))
        .or_else(|| named().map(TimeSource::Number))
        .or_else(|| {
            let mut rising = numbers().filter(may_be);
            let (first, second) = (rising.next()?, rising.next());
            // Behind a running number from 1 on, a column from 0 on is the time, if a third one is left.
            let counted = second.filter(|&at| sample.counts_rows(first) && sample.numbers(at).next() == Some(0.0) && numbers().count() > 2);
            Some(TimeSource::Number(counted.unwrap_or(first)))
        })
}

/// Columns that may be temperatures, the likeliest first.
fn temperatures(layout: &Layout, header: &Header, sample: &Sample, taken: &[usize]) -> Vec<usize> {
    let usable = |at: &usize| layout.classes[*at] == Class::Number && !taken.contains(at);
    let mut ranked: Vec<usize> = (0..layout.width()).filter(usable).collect();
    let widest = ranked.iter().map(|&at| sample.width(at)).fold(0.0, f64::max);
    let rank = |at: usize| -> u8 {
        match header.meanings[at].role {
            Role::Actual => 0,
            Role::Temperature => 1,
            // Without a name a column must move as a kiln does; a set point moves in straight lines.
            Role::Unknown if sample.width(at) < 0.5 * widest => 5,
            Role::Unknown if sample.is_drawn_by_ruler(at) => 3,
            Role::Unknown => 2,
            Role::SetPoint => 4,
            Role::Number | Role::Other | Role::Time => 6,
        }
    };
    let sure = ranked.iter().any(|&at| rank(at) < 6);
    // What the header calls something else is none, unless nothing else is there and it does not call it a time either.
    ranked.retain(|&at| rank(at) < 6 || (!sure && header.meanings[at].role == Role::Other && header.meanings[at].unit.is_some()));
    ranked.sort_by_key(|&at| rank(at));
    ranked
}

impl Sample {
    fn take(records: &[Record<'_>], layout: &Layout) -> Self {
        let decimal = Self::decimal(records, layout);
        let mut columns = vec![Vec::with_capacity(layout.sample.len()); layout.width()];
        let mut cells = Vec::new();
        for &at in &layout.sample {
            cut(records[at].text, layout.separator, &mut cells);
            for (column, cell) in columns.iter_mut().zip(&cells) {
                column.push(number(without_unit(cell).0, decimal).unwrap_or(f64::NAN));
            }
        }
        Self { columns }
    }

    /// A first guess, which only decides what is monotone.
    fn decimal(records: &[Record<'_>], layout: &Layout) -> Decimal {
        let (mut cells, mut commas, mut points) = (Vec::new(), 0_usize, 0_usize);
        for &at in &layout.sample {
            cut(records[at].text, layout.separator, &mut cells);
            for cell in &cells {
                match shape(without_unit(cell).0) {
                    Some(Shape::Sure(Decimal::Comma)) => commas += 1,
                    Some(Shape::Sure(Decimal::Point)) => points += 1,
                    _ => {}
                }
            }
        }
        if commas > points { Decimal::Comma } else { Decimal::Point }
    }

    fn numbers(&self, at: usize) -> impl Iterator<Item = f64> + Clone {
        self.columns[at].iter().copied().filter(|number| number.is_finite())
    }

    fn width(&self, at: usize) -> f64 {
        let within = self.numbers(at).filter(|number| (-60.0..3000.0).contains(number));
        let (least, most) = within.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), number| (least.min(number), most.max(number)));
        (most - least).max(0.0)
    }

    /// True where nearly all steps go one way.
    fn is_monotone(&self, at: usize) -> bool {
        let (mut up, mut down, mut level) = (0_usize, 0_usize, 0_usize);
        for (one, next) in self.numbers(at).zip(self.numbers(at).skip(1)) {
            match next.total_cmp(&one) {
                std::cmp::Ordering::Greater => up += 1,
                std::cmp::Ordering::Less => down += 1,
                std::cmp::Ordering::Equal => level += 1,
            }
        }
        let (more, fewer) = (up.max(down), up.min(down));
        more > 0 && 20 * fewer <= more && 2 * level <= more
    }

    /// True for 1, 2, 3 …, as far as the sample has neighbours.
    fn counts_rows(&self, at: usize) -> bool {
        self.numbers(at).zip(1_u32..).take(20).all(|(number, row)| (number - f64::from(row)).abs() < 1e-9)
    }

    /// True where most points lie on a straight line with their neighbours: nothing measured does.
    fn is_drawn_by_ruler(&self, at: usize) -> bool {
        let numbers: Vec<f64> = self.numbers(at).collect();
        let straight = numbers.windows(3).filter(|three| (three[0] - 2.0 * three[1] + three[2]).abs() < 1e-6).count();
        numbers.len() > 4 && 10 * straight > 6 * (numbers.len() - 2)
    }
}
