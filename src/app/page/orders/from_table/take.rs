//! Rows of a table become orders of the batch.

use crate::files::order_table::{Caution, GroupedOrder, OrderRow, Preview, group};
use crate::job::{Job, Line, LineId, Order, OrderId, Size};
use crate::stock::EntryId;

/// Does every cell of the row stand in an earlier one?
pub fn is_repeat(row: &OrderRow) -> bool {
    row.cautions.iter().any(|caution| matches!(caution, Caution::Repeat { .. }))
}

/// The orders that would be made; rows that stand there twice are taken once unless it is said otherwise.
pub fn orders(found: &Preview, with_repeats: bool) -> Vec<GroupedOrder> {
    group(found.ready().filter(|row| with_repeats || !is_repeat(row)).cloned())
}

/// Writes them into a job, behind what stands there.
pub fn take_in(job: &mut Job, orders: &[GroupedOrder]) {
    let mut order_id = job.orders.iter().map(|order| order.id.0).max().unwrap_or(0);
    let mut line_id = job.lines().map(|(_, line)| line.id.0).max().unwrap_or(0);
    for order in orders {
        order_id += 1;
        let mut lines = Vec::new();
        for row in &order.lines {
            line_id += 1;
            lines.push(line(LineId(line_id), row, order));
        }
        job.orders.push(Order {
            id: OrderId(order_id),
            client: order.client.trim().to_owned(),
            taken: order.taken,
            due: order.due,
            lines,
            agreed_loss: None,
            notes: order.reference.clone().unwrap_or_default(),
        });
    }
}

fn line(id: LineId, row: &OrderRow, order: &GroupedOrder) -> Line {
    // What no field of a line takes is kept in its remarks.
    let rest = [Some(row.notes.clone()), row.pattern_file.clone(), row.price.clone()];
    let notes: Vec<String> = rest.into_iter().flatten().filter(|part| !part.trim().is_empty()).collect();
    Line {
        id,
        design: row.design.trim().to_owned(),
        quantity: row.quantity,
        alloy: row.alloy.as_deref().and_then(EntryId::new),
        // On which scale a size is meant, no table says.
        size: row.size.clone().map(Size::Free),
        due: row.due.filter(|due| Some(*due) != order.due),
        notes: notes.join("\n"),
        ..Line::default()
    }
}
