//! The bench sheet.

use crate::jobs::{Ready, order_book, quick_start, studio, three_flasks};
use pourbook::paper::{quotes, sheet};

#[test]
fn print_it() {
    for job in [quick_start(), three_flasks(), order_book()] {
        let ready = Ready::new(job, studio());
        eprintln!("{}", sheet(&ready.input()));
        eprintln!("{}", quotes(&ready.input()));
    }
}
