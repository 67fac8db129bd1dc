//! A batch once more: the same pieces, trees, flasks and programme, with nothing of what happened to the first.

use jiff::civil::Date;

use super::{Entry, Job, JobId};

impl Job {
    /// The same batch to be cast again. Dates, draws on lots, consents, weighings of trees, kiln logs, quotes, answers to findings and the
    /// record stay behind: they belong to what was done then. Pieces that were taken on or made again are ordinary pieces now.
    #[must_use]
    pub fn again(&self, id: JobId, today: Date) -> Self {
        let mut job = Self { job_id: id, made: Some(today), quotes: Vec::new(), accepted: Vec::new(), ..self.clone() };
        job.record = Vec::<Entry>::new();
        for order in &mut job.orders {
            (order.taken, order.due) = (Some(today), None);
            for line in &mut order.lines {
                line.due = None;
                // A remake was one piece more; what it stood for is made at the first go now.
                let remade = line.exceptions.values().filter(|own| own.remake_of.is_some() && !own.cancelled).count();
                line.quantity = line.quantity.saturating_sub(u32::try_from(remade).unwrap_or(u32::MAX));
                line.exceptions.retain(|_, own| own.remake_of.is_none());
                line.exceptions.values_mut().for_each(|own| own.from = None);
                line.exceptions.retain(|_, own| *own != super::PieceException::default());
            }
        }
        let quantity: std::collections::BTreeMap<_, _> =
            job.orders.iter().flat_map(|order| &order.lines).map(|line| (line.id, line.quantity)).collect();
        for tree in &mut job.trees {
            (tree.weighed, tree.envelope) = (Vec::new(), None);
            for row in &mut tree.pieces {
                let most = quantity.get(&row.line).copied().unwrap_or(0);
                let named = !row.numbers.is_empty();
                row.numbers.retain(|number| *number <= most);
                if named && row.numbers.is_empty() {
                    row.line = super::LineId::default();
                }
            }
            tree.pieces.retain(|row| quantity.contains_key(&row.line));
        }
        for flask in &mut job.flasks {
            flask.powder_lot.clear();
        }
        for load in &mut job.burnouts {
            (load.pour_at, load.log) = (None, None);
            load.pins.clear();
        }
        for melt in &mut job.melts {
            (melt.charge, melt.consents) = (Vec::new(), Vec::new());
        }
        for run in &mut job.prints {
            (run.washed_min, run.cured_before_rinse_min, run.rinsed, run.surface_clean) = (None, None, false, None);
        }
        job
    }
}
