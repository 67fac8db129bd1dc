//! `pourbook pieces`, `pourbook programme` and `pourbook record`: lists for the terminal, tables for a spreadsheet; and how a table is given away.

use super::args::Listing;
use super::open::Computed;
use super::out::Out;
use super::sheets::{plain_input, write};
use super::{BAD_INPUT, FINE};
use crate::paper::{self, SheetInput};

pub(super) fn pieces(how: &Listing, out: &mut Out) -> u8 {
    print(how, out, if how.csv { paper::csv::pieces } else { paper::list::pieces })
}

pub(super) fn programme(how: &Listing, out: &mut Out) -> u8 {
    print(how, out, if how.csv { paper::csv::programme } else { paper::list::programme })
}

pub(super) fn record(how: &Listing, out: &mut Out) -> u8 {
    print(how, out, if how.csv { paper::csv::record } else { paper::list::record })
}

fn print(how: &Listing, out: &mut Out, text: fn(&SheetInput<'_>) -> String) -> u8 {
    let Some(computed) = Computed::open(&how.job, &how.day, out) else { return BAD_INPUT };
    let text = text(&plain_input(&computed));
    let given = give(text, how, out);
    if computed.faulty || !given { BAD_INPUT } else { FINE }
}

/// Gives the text to the terminal, or writes it into the file that was named; `false` where that could not be done, which was said.
pub(super) fn give(mut text: String, how: &Listing, out: &mut Out) -> bool {
    let Some(output) = &how.output else {
        out.data(&text);
        return true;
    };
    if !text.ends_with('\n') {
        text.push('\n');
    }
    // In a pipe the mark would be a stray sign.
    if how.csv {
        text = paper::marked(text);
    }
    write(output, text.as_bytes(), out)
}
