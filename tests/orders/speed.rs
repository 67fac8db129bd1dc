//! A year of orders is read while a person does not notice.

use crate::support::{known, time_at_work};
use pourbook::files::order_table::{guess, preview};
use pourbook::table::{Limits, read};
use std::fmt::Write as _;
use std::time::Duration;

#[test]
fn ten_thousand_rows_in_a_fifth_of_a_second() {
    let mut text = String::from("Order no;Client;Design;Qty;Alloy;Ring size;Due;Order date;Price;Notes;File\r\n");
    for row in 0..10_000 {
        let alloy = ["925", "14k yellow", "18kt rose", "Tin bronze", "Pt950Ru"][row % 5];
        let (day, month) = (1 + row % 28, 1 + row % 12);
        writeln!(
            text,
            "{};C{};Limpet {row};{};{alloy};{};{day:02}.{month:02}.2027;01.02.2026;1.{:03},50;\"x; \"\"y\"\"\";a{row}.stl",
            row / 3,
            row % 40,
            1 + row % 9,
            48 + row % 20,
            row % 1000
        )
        .unwrap();
    }
    let known = known();
    let mut table = None;
    let least = |work: &mut dyn FnMut()| (0..5).map(|_| time_at_work(&mut *work)).min().unwrap();
    let read_in = least(&mut || table = read(text.as_bytes(), &Limits::default()).ok());
    let table = table.unwrap();
    let understood = least(&mut || {
        let preview = preview(&table, &guess(&table, &known), &known);
        assert_eq!(preview.ready().count(), 10_000, "{:?}", preview.bad());
    });
    // The budget is that of a release; a build for tests checks its sums and is optimised for building quickly.
    let budget = Duration::from_millis(if cfg!(debug_assertions) { 1500 } else { 200 });
    assert!(read_in + understood < budget, "{read_in:?} and {understood:?}");
}
