//! Rows to orders, checked against a slow way of saying the same.

use crate::support::{Random, guessed, ready};
use jiff::civil::date;
use pourbook::files::order_table::{OrderRow, group};

#[test]
fn rows_of_one_client_and_reference_are_one_order() {
    let (_, _, preview) = guessed(
        "Order no;Client;Design;Qty;Due\n17;Otter;Limpet;1;2026-05-02\n\
        18;Otter;Whelk;2;2026-05-02\n17;OTTER;Cowrie;3;2026-05-01\n\
        17;Heron;Limpet;4;2026-05-02\n",
    );
    let orders = group(ready(&preview).into_iter().cloned());
    let said: Vec<_> = orders
        .iter()
        .map(|order| (order.client.as_str(), order.reference.as_deref(), order.lines.iter().map(|row| row.line).collect::<Vec<_>>()))
        .collect();
    assert_eq!(said, [("Otter", Some("17"), vec![2, 4]), ("Otter", Some("18"), vec![3]), ("Heron", Some("17"), vec![5])]);
    assert_eq!(orders[0].due, Some(date(2026, 5, 1)));
    assert_eq!(orders[0].lines[0].due, Some(date(2026, 5, 2)));
}

#[test]
fn without_references_the_due_date_parts_orders() {
    let (_, _, preview) = guessed(
        "Client;Design;Qty;Due\nOtter;Limpet;1;2026-05-02\nHeron;Whelk;2;2026-05-02\n\
        Otter;Cowrie;3;2026-05-03\nOtter;Cowrie;3;2026-05-02\n",
    );
    let lines: Vec<Vec<u32>> =
        group(ready(&preview).into_iter().cloned()).iter().map(|order| order.lines.iter().map(|row| row.line).collect()).collect();
    assert_eq!(lines, [vec![2, 5], vec![3], vec![4]]);
}

#[test]
fn grouping_is_that_of_comparing_every_pair() {
    let mut random = Random(7);
    for _ in 0..500 {
        let rows: Vec<OrderRow> = (0..random.below(30) as u32)
            .map(|line| OrderRow {
                line,
                client: random.of(&["Otter", "otter ", "Heron"]).to_owned(),
                reference: random.of(&[None, Some("1"), Some("2")]).map(str::to_owned),
                design: "Limpet".to_owned(),
                quantity: 1,
                alloy: None,
                size: None,
                due: random.of(&[None, Some(date(2026, 5, 1)), Some(date(2026, 5, 2))]),
                taken: None,
                price: None,
                pattern_file: None,
                notes: String::new(),
                cautions: Vec::new(),
            })
            .collect();
        let together = |one: &OrderRow, other: &OrderRow| {
            let client = one.client.trim().eq_ignore_ascii_case(other.client.trim());
            client && one.reference == other.reference && (one.reference.is_some() || one.due == other.due)
        };
        let orders = group(rows.clone());
        let place = |row: &OrderRow| orders.iter().position(|order| order.lines.iter().any(|line| line.line == row.line)).unwrap();
        for one in &rows {
            for other in &rows {
                assert_eq!(place(one) == place(other), together(one, other), "{one:?} {other:?}");
            }
        }
        let firsts: Vec<u32> = orders.iter().map(|order| order.lines[0].line).collect();
        assert!(firsts.is_sorted() && orders.iter().all(|order| order.lines.is_sorted_by_key(|row| row.line)));
    }
}
