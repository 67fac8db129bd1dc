//! What clients brought: how much came in, and how much fine metal that is by its papers.

use super::book::Id;
use super::melt::{LOT_FINENESS, LOT_RECEIVED, RECEIVED};
use super::pass::Pass;
use super::rule::rules;
use crate::job::{LotId, Place};
use num_rational::Ratio;
use num_traits::{CheckedDiv, CheckedMul};

rules! {
    /// Fine metal in what came in.
    LOT_FINE "lot.fine" (received: Mass, fineness: Fineness) -> Mass
        = Exact "received*fineness/1000" { received.checked_mul(&fineness)?.checked_div(&Ratio::from_integer(1000)) };
        Computed "by the lot's papers, not assayed unless an assay is named"
}

/// A lot that belongs to a client.
#[derive(Debug, Clone)]
pub struct ClientLot {
    /// The lot.
    pub lot: LotId,
    /// The client, by letter code.
    pub owner: String,
    /// Each receipt, in the studio's order.
    pub receipts: Vec<Id>,
    /// All that came in.
    pub received: Id,
    /// Fine metal in it, where its fineness is known.
    pub fine: Option<Id>,
}

impl Pass<'_> {
    /// The lots of clients, in the studio's order.
    pub(super) fn client_lots(&mut self) -> Vec<ClientLot> {
        let studio = self.studio;
        let owned = studio.lots.iter().filter(|lot| !lot.owner.trim().is_empty());
        owned
            .map(|lot| {
                let receipts: Vec<Id> = lot.receipts.iter().map(|receipt| self.book.studio_grams(&RECEIVED, receipt.grams)).collect();
                let received = self.book.derive_over(&LOT_RECEIVED, Place::Studio, &receipts);
                let fineness = lot.fineness_permille.map(|permille| self.book.studio(&LOT_FINENESS, permille.get()));
                let fine = fineness.map(|fineness| self.book.derive(&LOT_FINE, Place::Studio, [received, fineness]));
                ClientLot { lot: lot.id.clone(), owner: lot.owner.trim().to_owned(), receipts, received, fine }
            })
            .collect()
    }
}
