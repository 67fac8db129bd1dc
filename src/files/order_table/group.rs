//! Rows to orders.

use super::OrderRow;
use super::letters::{fold, tidy};
use jiff::civil::Date;
use std::collections::HashMap;

/// An order with its lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GroupedOrder {
    /// Who ordered, as first written.
    pub client: String,
    /// Its number or reference.
    pub reference: Option<String>,
    /// When it was taken: the earliest day of its lines.
    pub taken: Option<Date>,
    /// When it is due: the earliest day of its lines, each of which has its own.
    pub due: Option<Date>,
    /// Its lines in the order of the file; at least one.
    pub lines: Vec<OrderRow>,
}

/// What rows of one order have in common: the client, and the reference or, without one, the day it is due.
#[derive(PartialEq, Eq, Hash)]
enum Common {
    Reference(String, String),
    Due(String, Option<Date>),
}

impl Common {
    fn of(row: &OrderRow) -> Self {
        let alike = |text: &str| fold(&tidy(text));
        match &row.reference {
            Some(reference) => Self::Reference(alike(&row.client), alike(reference)),
            None => Self::Due(alike(&row.client), row.due),
        }
    }
}

/// Makes orders of rows: those of one client with one reference or, without references, with one due date. Orders stand where their first
/// row did. Capitals and blanks make no other client.
pub fn group(rows: impl IntoIterator<Item = OrderRow>) -> Vec<GroupedOrder> {
    let mut orders: Vec<GroupedOrder> = Vec::new();
    let mut places: HashMap<Common, usize> = HashMap::new();
    for row in rows {
        let place = *places.entry(Common::of(&row)).or_insert(orders.len());
        if place == orders.len() {
            let (client, reference) = (row.client.clone(), row.reference.clone());
            orders.push(GroupedOrder { client, reference, taken: None, due: None, lines: Vec::new() });
        }
        if let Some(order) = orders.get_mut(place) {
            order.taken = earlier(order.taken, row.taken);
            order.due = earlier(order.due, row.due);
            order.lines.push(row);
        }
    }
    orders
}

fn earlier(one: Option<Date>, other: Option<Date>) -> Option<Date> {
    one.into_iter().chain(other).min()
}
