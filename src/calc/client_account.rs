//! Casting a client's own metal: what came in, less what was cast of it, what was handed back and what was agreed to be lost, is what the
//! studio still holds of it, in fine grams. Of this batch alone: other batches may have cast of the same lots.

use std::collections::BTreeMap;

use num_rational::Ratio;
use num_traits::{CheckedDiv, CheckedMul, CheckedSub};

use super::book::Id;
use super::client_lots::{ClientLot, LOT_FINE};
use super::flask::FlaskFigures;
use super::melt::{LOT_FINENESS, MeltFigures};
use super::pass::Pass;
use super::piece_weights::PieceWeights;
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{Entry, Event, FlaskId, Lot, LotId, MeltId, MetalKind, OrderId, PieceId, Place, pieces_in, standing};
use crate::quantity::Grams;
use crate::stock::Alloy;

inputs! {
    /// A casting of the client's metal, as it was weighed.
    CASTING "client.casting" Mass;
    /// Metal that was handed back.
    HANDED_BACK "client.handed-back" Mass;
    /// Share of the castings that is agreed to be lost.
    AGREED_LOSS "client.agreed-loss" Ratio;
}

givens! {
    /// Nothing is taken for loss that nobody agreed to.
    NO_LOSS_AGREED "client.agreed-loss" Ratio = 0.0; CommonPractice "nothing is taken for loss until it is agreed"
}

rules! {
    /// Fine metal in a casting.
    CASTING_FINE "client.casting-fine" (weight: Mass, fineness: Fineness) -> Mass
        = Exact "weight*fineness/1000" { weight.checked_mul(&fineness)?.checked_div(&Ratio::from_integer(1000)) };
        Computed "by the fineness of its melt, not assayed"
    /// Fine metal in what was handed back.
    HANDED_FINE "client.handed-back-fine" (weight: Mass, fineness: Fineness) -> Mass
        = Exact "weight*fineness/1000" { weight.checked_mul(&fineness)?.checked_div(&Ratio::from_integer(1000)) };
        Computed "by the fineness of its melt or its lot, not assayed"
    /// Fine metal in all castings of an order.
    ORDER_FINE "client.order-fine" (casting: Mass) -> Mass = Sum "sum(casting)"; Computed "all good castings of the order"
    /// Fine metal agreed to be lost with an order.
    ORDER_LOSS "client.order-loss" (castings: Mass, share: Ratio) -> Mass
        = Exact "castings*share" { castings.checked_mul(&share) };
        CommonPractice "a share of what the castings weigh, as agreed with the client"
    /// Fine metal that came in.
    DEPOSIT "client.deposit" (fine: Mass) -> Mass = Sum "sum(fine)"; Computed "all lots of the client"
    /// Fine metal in all castings.
    CASTINGS "client.castings" (castings: Mass) -> Mass = Sum "sum(castings)"; Computed "all orders of the client in this batch"
    /// Fine metal handed back.
    RETURNED "client.returned" (returned: Mass) -> Mass = Sum "sum(returned)"; Computed "sprues and metal as it came"
    /// Fine metal agreed to be lost.
    LOSS "client.loss" (loss: Mass) -> Mass = Sum "sum(loss)"; Computed "all orders of the client in this batch"
    /// What the studio still holds, or is owed where it is below nought.
    BALANCE "client.balance" (deposit: Mass, castings: Mass, returned: Mass, loss: Mass) -> Mass
        = Exact "deposit - castings - returned - loss" { deposit.checked_sub(&castings)?.checked_sub(&returned)?.checked_sub(&loss) };
        Computed "by this batch; other batches may have cast of the same lots"
}

/// What a row of an account is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AccountOf {
    /// A casting.
    Piece(PieceId),
    /// All castings of a flask, weighed together.
    Flask(FlaskId),
    /// Sprues and buttons of a melt.
    Melt(MeltId),
    /// Metal as it came.
    Lot(LotId),
    /// Metal of which nobody said where it was from.
    Unsaid,
}

/// A row of an account.
#[derive(Debug, Clone)]
pub struct AccountRow {
    /// What it is.
    pub of: AccountOf,
    /// What it weighs.
    pub grams: Id,
    /// Its fineness.
    pub fineness: Id,
    /// Fine metal in it.
    pub fine: Id,
}

/// The account of a client, by metal.
#[derive(Debug, Clone)]
pub struct ClientAccount {
    /// The client, by letter code.
    pub client: String,
    /// The metal it is kept in ("Au").
    pub metal: String,
    /// Good castings.
    pub castings: Vec<AccountRow>,
    /// What was handed back.
    pub returned: Vec<AccountRow>,
    /// Fine metal that came in.
    pub deposit: Id,
    /// Fine metal in the castings.
    pub cast: Id,
    /// Fine metal handed back.
    pub back: Id,
    /// Fine metal agreed to be lost.
    pub loss: Id,
    /// What is left.
    pub balance: Id,
}

impl Pass<'_> {
    /// The accounts of clients whose own metal is in the house, by letter and metal.
    pub(super) fn client_accounts(&mut self, lots: &[ClientLot], melts: &[MeltFigures], flasks: &[FlaskFigures]) -> Vec<ClientAccount> {
        if lots.is_empty() {
            return Vec::new();
        }
        let weights = PieceWeights::of(self.job);
        let mut of: BTreeMap<(String, String), Vec<&ClientLot>> = BTreeMap::new();
        for figures in lots {
            let Some(lot) = self.studio.lots.iter().find(|lot| lot.id == figures.lot) else { continue };
            of.entry((figures.owner.clone(), self.metal_of(lot))).or_default().push(figures);
        }
        // Metal of a client whom this batch has nothing to do with is told in other batches.
        of.retain(|(client, _), lots| {
            let ordered = self.job.orders.iter().any(|order| order.client.trim() == client);
            let back = |entry: &Entry| matches!(&entry.event, Event::HandedBack { client: to, .. } if to.trim() == client);
            ordered || melts.iter().any(|melt| self.draws_on(melt, lots)) || standing(&self.job.record).any(back)
        });
        of.into_iter().map(|((client, metal), lots)| self.account(client, metal, &lots, (melts, flasks), &weights)).collect()
    }

    fn account(
        &mut self,
        client: String,
        metal: String,
        lots: &[&ClientLot],
        (melts, flasks): (&[MeltFigures], &[FlaskFigures]),
        weights: &PieceWeights,
    ) -> ClientAccount {
        let place = Place::Job;
        let fine: Vec<Id> = lots
            .iter()
            .map(|lot| {
                lot.fine.unwrap_or_else(|| {
                    let unknown = self.book.absent(&LOT_FINENESS, Place::Studio, Cause::NotSaid);
                    self.book.derive(&LOT_FINE, Place::Studio, [lot.received, unknown])
                })
            })
            .collect();
        let deposit = self.book.derive_over(&DEPOSIT, place, &fine);
        let mut by_order: BTreeMap<OrderId, Vec<AccountRow>> = BTreeMap::new();
        // A melt is accounted for in the metal its castings are marked by, whatever else of the client's went into it.
        let fits = |melt: &MeltFigures| metal.is_empty() || self.melt_metal(melt, flasks).is_none_or(|of| of.is_empty() || of == metal);
        let drawn: Vec<&MeltFigures> = melts.iter().filter(|melt| self.draws_on(melt, lots) && fits(melt)).collect();
        for melt in drawn {
            let fineness = self.fineness_of(melt);
            for flask in flasks.iter().filter(|flask| melt.flasks.contains(&flask.id)) {
                for (order, row) in self.castings(&client, flask.id, fineness, weights) {
                    by_order.entry(order).or_default().push(row);
                }
            }
        }
        let (mut cast, mut losses, mut castings) = (Vec::new(), Vec::new(), Vec::new());
        for (order, rows) in by_order {
            let fine: Vec<Id> = rows.iter().map(|row| row.fine).collect();
            let sum = self.book.derive_over(&ORDER_FINE, Place::Order(order), &fine);
            let agreed = self.job.orders.iter().find(|one| one.id == order).and_then(|one| one.agreed_loss);
            let share = self.book.entered_or(&AGREED_LOSS, Place::Order(order), agreed, &NO_LOSS_AGREED);
            losses.push(self.book.derive(&ORDER_LOSS, Place::Order(order), [sum, share]));
            cast.push(sum);
            castings.extend(rows);
        }
        let returned = self.handed_back(&client, &metal, (melts, flasks));
        let backs: Vec<Id> = returned.iter().map(|row| row.fine).collect();
        let [cast, back, loss] =
            [(&CASTINGS, cast), (&RETURNED, backs), (&LOSS, losses)].map(|(rule, rows)| self.book.derive_over(rule, place, &rows));
        let balance = self.book.derive(&BALANCE, place, [deposit, cast, back, loss]);
        ClientAccount { client, metal, castings, returned, deposit, cast, back, loss, balance }
    }

    /// The metal a lot is accounted in, by its papers or its alloy.
    fn metal_of(&self, lot: &Lot) -> String {
        let by_alloy = || {
            let alloy = self.shelf.get::<Alloy>(lot.alloy.as_ref()?.as_str())?;
            Some(format!("{:?}", alloy.fineness?.metal))
        };
        let said = lot.metal.trim();
        if said.is_empty() { by_alloy().unwrap_or_default() } else { said.to_owned() }
    }

    fn draws_on(&self, melt: &MeltFigures, lots: &[&ClientLot]) -> bool {
        let charge = self.job.melts.iter().filter(|one| Some(one.id) == melt.id).flat_map(|one| &one.charge);
        charge.into_iter().any(|draw| lots.iter().any(|lot| lot.lot == draw.lot))
    }

    fn fineness_of(&mut self, melt: &MeltFigures) -> Id {
        melt.fineness.unwrap_or_else(|| self.book.absent(&LOT_FINENESS, melt.place, Cause::NotSaid))
    }

    /// The client's good castings of a flask that was poured: piece by piece, or together where only all of them were weighed and all are theirs.
    fn castings(&mut self, client: &str, flask: FlaskId, fineness: Id, weights: &PieceWeights) -> Vec<(OrderId, AccountRow)> {
        let job = self.job;
        let poured = standing(&job.record).any(|entry| matches!(&entry.event, Event::Poured { flask: of, .. } if *of == flask));
        if !poured {
            return Vec::new();
        }
        let owner = |piece: &PieceId| job.lines().find(|(_, line)| line.id == piece.line).map(|(order, _)| order);
        let good: Vec<PieceId> = pieces_in(job, flask).filter(|piece| !weights.is_rejected(*piece)).collect();
        let theirs: Vec<(OrderId, PieceId)> = good
            .iter()
            .filter_map(|piece| owner(piece).filter(|order| order.client.trim() == client).map(|order| (order.id, *piece)))
            .collect();
        let Some(first) = theirs.first().copied() else { return Vec::new() };
        if theirs.len() == good.len()
            && theirs.iter().all(|(_, piece)| weights.cast(*piece).is_none())
            && theirs.iter().all(|(order, _)| *order == first.0)
            && !rejected_since(self.job, flask)
            && let Some(together) = together(self.job, flask)
        {
            let grams = self.book.weighed(&CASTING, Place::Flask(flask), together);
            return vec![(first.0, self.row(AccountOf::Flask(flask), &CASTING_FINE, Place::Flask(flask), [grams, fineness]))];
        }
        let mut rows = Vec::new();
        for (order, piece) in theirs {
            let place = Place::Piece(piece);
            let grams = match weights.cast(piece) {
                Some(grams) => self.book.weighed(&CASTING, place, grams),
                None => self.book.absent(&CASTING, place, Cause::NotSaid),
            };
            rows.push((order, self.row(AccountOf::Piece(piece), &CASTING_FINE, place, [grams, fineness])));
        }
        rows
    }

    fn handed_back(&mut self, client: &str, metal: &str, (melts, flasks): (&[MeltFigures], &[FlaskFigures])) -> Vec<AccountRow> {
        let (job, studio) = (self.job, self.studio);
        let mut rows = Vec::new();
        for entry in standing(&job.record) {
            let Event::HandedBack { client: to, melt, lot, grams } = &entry.event else { continue };
            if to.trim() != client {
                continue;
            }
            let lot = lot.as_ref().and_then(|id| studio.lots.iter().find(|lot| lot.id == *id));
            let melt = melts.iter().find(|one| melt.is_some() && one.id == *melt);
            let other = |of: String| !of.is_empty() && of != metal;
            let (of, fineness) = match (melt, lot) {
                (Some(melt), _) if self.melt_metal(melt, flasks).is_some_and(other) => continue,
                (None, Some(lot)) if other(self.metal_of(lot)) => continue,
                (Some(melt), _) => (melt.id.map_or(AccountOf::Unsaid, AccountOf::Melt), self.fineness_of(melt)),
                (None, Some(lot)) => {
                    let fineness = match lot.fineness_permille {
                        Some(permille) => self.book.studio(&LOT_FINENESS, permille.get()),
                        None => self.book.absent(&LOT_FINENESS, Place::Studio, Cause::NotSaid),
                    };
                    (AccountOf::Lot(lot.id.clone()), fineness)
                }
                (None, None) => (AccountOf::Unsaid, self.book.absent(&LOT_FINENESS, Place::Record(entry.id), Cause::NotSaid)),
            };
            let place = Place::Record(entry.id);
            let grams = self.book.weighed(&HANDED_BACK, place, *grams);
            rows.push(self.row(of, &HANDED_FINE, place, [grams, fineness]));
        }
        rows
    }

    /// The metal that the alloy of a melt's flasks is marked by.
    fn melt_metal(&self, melt: &MeltFigures, flasks: &[FlaskFigures]) -> Option<String> {
        let of = flasks.iter().filter(|flask| melt.flasks.contains(&flask.id)).find_map(|flask| flask.alloy.as_ref())?;
        let alloy = self.shelf.get::<Alloy>(of.as_str())?;
        Some(format!("{:?}", alloy.fineness?.metal))
    }

    fn row(&mut self, of: AccountOf, rule: &'static super::rule::Rule, place: Place, [grams, fineness]: [Id; 2]) -> AccountRow {
        AccountRow { of, grams, fineness, fine: self.book.derive(rule, place, [grams, fineness]) }
    }
}

/// Was a piece rejected after the good ones of its flask were weighed together? Then that weight counts too much.
fn rejected_since(job: &crate::job::Job, flask: FlaskId) -> bool {
    let hang: Vec<PieceId> = pieces_in(job, flask).collect();
    let weighed =
        |entry: &&Entry| matches!(&entry.event, Event::Metal { flask: Some(of), what: MetalKind::GoodPieces, .. } if *of == flask);
    standing(&job.record)
        .skip_while(|entry| !weighed(entry))
        .any(|entry| matches!(&entry.event, Event::Rejected { piece, .. } if hang.contains(piece)))
}

/// The good pieces of a flask, where they were weighed together.
fn together(job: &crate::job::Job, flask: FlaskId) -> Option<Grams> {
    let weighed = standing(&job.record).filter_map(|entry| match &entry.event {
        Event::Metal { flask: Some(of), what: MetalKind::GoodPieces, grams, .. } if *of == flask => Some(grams.decimal()),
        _ => None,
    });
    weighed.reduce(|a, b| a.checked_add(b).unwrap_or(a)).and_then(Grams::new)
}
