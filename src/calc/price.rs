//! Metal prices of the day, and what a gram of each alloy costs by them.

use super::book::Id;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{Place, Price, PriceUnit};
use crate::quantity::half_up;
use crate::stock::{Alloy, EntryId};
use jiff::civil::Date;
use rust_decimal::Decimal;

inputs! {
    /// The price as it was written down.
    PRICE "price.read" Money;
    /// Price of a gram of an alloy, where none was written down.
    ALLOY_PRICE "price.of-alloy" PricePerGram;
    /// The mass that price is for.
    PRICE_FOR "price.for" Mass;
    /// The fineness that is paid for.
    PRICE_FINENESS "price.fineness" Fineness;
    /// The studio's premium on metal.
    PREMIUM "price.premium" Ratio;
}

givens! {
    /// No premium until the studio says one.
    NO_PREMIUM "price.premium" Ratio = 0.0; CommonPractice "none until the studio enters one"
}

rules! {
    /// Price of a gram, from a price for any mass.
    PER_GRAM "price.per-gram" (price: Money, mass: Mass) -> PricePerGram
        = Decimal "round4(price/mass)" { round4(price.checked_div(mass)?) };
        Standard "troy ounce 31.1034768 g exactly (international yard and pound agreement, 1959)"
    /// Price of a gram of an alloy by its fineness.
    ALLOY_PER_GRAM "price.alloy-per-gram" (fine: PricePerGram, fineness: Fineness, premium: Ratio) -> PricePerGram
        = Decimal "round4(fine*fineness/1000*(1 + premium))" {
            round4(fine.checked_mul(fineness)?.checked_div(Decimal::ONE_THOUSAND)?.checked_mul(Decimal::ONE.checked_add(premium)?)?)
        };
        Computed "the fine metal in a gram, rounded to a ten-thousandth before anything is multiplied by it"
    /// Price of a gram of an alloy that has a price of its own.
    OWN_PER_GRAM "price.own-per-gram" (price: PricePerGram, premium: Ratio) -> PricePerGram
        = Decimal "round4(price*(1 + premium))" { round4(price.checked_mul(Decimal::ONE.checked_add(premium)?)?) };
        Computed "rounded to a ten-thousandth before anything is multiplied by it"
}

fn round4(number: Decimal) -> Option<Decimal> {
    Some(half_up(number, 4))
}

/// What a gram of one alloy costs.
#[derive(Debug, Clone)]
pub struct AlloyPrice {
    /// The alloy.
    pub alloy: EntryId,
    /// The price of a gram.
    pub per_gram: Id,
    /// Of which day.
    pub on: Option<Date>,
    /// Written down for what ("Ag", or the alloy).
    pub of: String,
}

/// How many days a price holds where the studio does not say.
pub const PRICE_DAYS: u32 = 7;

impl<'a> Pass<'a> {
    /// Prices of every alloy that a line or flask of the job names.
    pub(super) fn prices(&mut self) -> Vec<AlloyPrice> {
        let mut alloys: Vec<&'a EntryId> = Vec::new();
        let named = self.job.lines().filter_map(|(_, line)| line.alloy.as_ref());
        for id in named.chain(self.job.flasks.iter().filter_map(|flask| flask.alloy.as_ref())) {
            if !alloys.contains(&id) {
                alloys.push(id);
            }
        }
        let premium = match self.studio.money.metal_premium {
            Some(share) => self.book.studio(&PREMIUM, share.get()),
            None => self.book.assumed(&NO_PREMIUM, Place::Studio),
        };
        alloys.into_iter().filter_map(|id| self.alloy_price(id, premium)).collect()
    }

    fn alloy_price(&mut self, id: &EntryId, premium: Id) -> Option<AlloyPrice> {
        let alloy = self.shelf.get::<Alloy>(id.as_str())?;
        let metal = alloy.fineness.map(|mark| format!("{:?}", mark.metal));
        let studio = self.studio;
        let at = self.setting.at;
        // A price of a later day was not known on this one.
        let newest = |of: &str| {
            studio.prices.iter().filter(|price| price.of == of && price.on.is_none_or(|on| on <= at)).max_by_key(|price| price.on)
        };
        if let Some(price) = newest(id.as_str()) {
            let per_gram = self.price_per_gram(price);
            let per_gram = self.book.derive(&OWN_PER_GRAM, Place::Studio, [per_gram, premium]);
            return Some(self.dated(id, price, per_gram));
        }
        let fine = metal.as_deref().and_then(newest);
        let (Some(price), Some(mark)) = (fine, alloy.fineness) else {
            self.find(&finding::PRICE_MISSING, Place::Studio, vec![Arg::Text(alloy.name.clone())]);
            let per_gram = self.book.absent(&ALLOY_PRICE, Place::Studio, Cause::NotSaid);
            return Some(AlloyPrice { alloy: id.clone(), per_gram, on: None, of: String::new() });
        };
        let fine = self.price_per_gram(price);
        let trust = super::rule::Trust::Standard;
        let fineness = self.book.shelf_number(&PRICE_FINENESS, id, mark.permille.get(), "the alloy's mark", trust);
        let per_gram = self.book.derive(&ALLOY_PER_GRAM, Place::Studio, [fine, fineness, premium]);
        Some(self.dated(id, price, per_gram))
    }

    fn price_per_gram(&mut self, price: &Price) -> Id {
        let amount = self.book.studio_money(&PRICE, price.amount);
        let grams = match price.per {
            PriceUnit::Gram => 1.0,
            PriceUnit::TroyOunce => 31.103_476_8,
            PriceUnit::Kilogram => 1000.0,
        };
        let mass = self.book.studio(&PRICE_FOR, grams);
        self.book.derive(&PER_GRAM, Place::Studio, [amount, mass])
    }

    /// An old price is money lost: it is a finding once per metal.
    fn dated(&mut self, id: &EntryId, price: &Price, per_gram: Id) -> AlloyPrice {
        let days = price.on.and_then(|on| self.setting.at.since(on).ok()).map_or(i32::MAX, |span| span.get_days());
        let holds = self.studio.money.price_days.unwrap_or(PRICE_DAYS);
        let told = |finding: &finding::Finding| {
            *finding.kind == finding::PRICE_STALE && finding.args.first() == Some(&Arg::Text(price.of.clone()))
        };
        if i64::from(days) > i64::from(holds) && !self.findings.iter().any(told) {
            let on = price.on.map_or_else(String::new, |on| on.to_string());
            let age = u64::try_from(days).unwrap_or_default();
            let mut finding = finding::Finding::new(
                &finding::PRICE_STALE,
                Place::Studio,
                vec![Arg::Text(price.of.clone()), Arg::Count(age), Arg::Text(on)],
            );
            finding.value = Some(f64::from(days));
            self.findings.push(finding);
        }
        AlloyPrice { alloy: id.clone(), per_gram, on: price.on, of: price.of.clone() }
    }
}
