//! What the cells of a column say about the way it is written.

use super::{Decimal, Shape, WrittenDate, shape, shortened};

/// What the numbers of a column say about their decimal sign; pairs are for point and comma.
#[derive(Debug, Clone, Default)]
pub struct DecimalEvidence {
    /// Numbers that have this decimal sign for sure.
    pub sure: [usize; 2],
    /// Line of the first of them.
    pub first_sure: [u32; 2],
    /// Line and text of the first number whose sign may part thousands as well.
    pub open: [Option<(u32, String)>; 2],
    /// Numbers without such a sign.
    pub whole: usize,
    /// Those of four digits and more: their writer does not part thousands.
    pub long: usize,
}

impl DecimalEvidence {
    /// Takes one more cell, without unit or currency.
    pub fn take(&mut self, cell: &str, line: u32) {
        match shape(cell) {
            Some(Shape::Whole) => {
                self.whole += 1;
                self.long += usize::from(cell.bytes().take_while(u8::is_ascii_digit).count() > 3);
            }
            Some(Shape::Sure(sign)) => {
                let at = usize::from(sign == Decimal::Comma);
                self.sure[at] += 1;
                if self.sure[at] == 1 {
                    self.first_sure[at] = line;
                }
            }
            Some(Shape::Open(sign)) => {
                self.open[usize::from(sign == Decimal::Comma)].get_or_insert_with(|| (line, shortened(cell)));
            }
            None => {}
        }
    }

    /// The sign that all sure numbers have.
    #[must_use]
    pub fn agreed(&self) -> Option<Decimal> {
        match self.sure {
            [0, 0] => None,
            [_, 0] => Some(Decimal::Point),
            [0, _] => Some(Decimal::Comma),
            _ => None,
        }
    }
}

/// What the dates of a column say about the order of day and month.
#[derive(Debug, Clone, Copy, Default)]
pub struct DayOrderEvidence {
    /// Dates that can only be read with the day first, and only with the month first.
    pub only: [usize; 2],
    /// Some date has dots between its numbers.
    pub dotted: bool,
    /// Some date leaves the order open by its places.
    pub has_open: bool,
}

impl DayOrderEvidence {
    /// Takes one more date.
    pub fn take(&mut self, date: WrittenDate) {
        if date.open().is_none() {
            return;
        }
        self.has_open = true;
        self.dotted |= matches!(date, WrittenDate::Dotted { .. });
        match [true, false].map(|day_first| date.date(day_first)) {
            [Some(_), None] => self.only[0] += 1,
            [None, Some(_)] => self.only[1] += 1,
            _ => {}
        }
    }

    /// Whether the day stands first, where all dates that can be read in one way only say the same.
    #[must_use]
    pub fn agreed(&self) -> Option<bool> {
        match self.only {
            [0, 0] => None,
            [_, 0] => Some(true),
            [0, _] => Some(false),
            _ => None,
        }
    }
}
