//! Quotes: what a client was told, and when.

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use super::id::{LineId, OrderId, QuoteId};
use super::serial::document;
use crate::quantity::{Finite, Grams, Money};

document! {
    /// A quote to one client. Once sent, its figures are frozen: later prices do not change what was promised.
    pub struct Quote {
        /// The quote's id.
        id: QuoteId,
        /// The client, by letter code.
        client: String,
        /// The orders it covers; all of the client's where empty.
        orders: Vec<OrderId>,
        /// When it was made.
        made: Option<Date>,
        /// How long it holds.
        valid_until: Option<Date>,
        /// Share of margin on everything but the metal.
        margin: Option<Finite>,
        /// Tax as a share.
        tax: Option<Finite>,
        /// Asked for before the work starts.
        deposit: Option<Money>,
        /// Minutes of work and other sums per line.
        extras: Vec<Extra>,
        /// Terms in words.
        terms: String,
        /// What became of it.
        state: QuoteState,
        /// Remarks that do not go to the client.
        notes: String,
    }
}

document! {
    /// A sum beside the metal.
    pub struct Extra {
        /// The line it belongs to; the whole quote where not said.
        line: Option<LineId>,
        /// What it is for: labour, setting, hallmark, carriage.
        what: String,
        /// Minutes of work, charged at the studio's rate.
        minutes: Option<Finite>,
        /// A fixed sum.
        amount: Option<Money>,
    }
}

/// What became of a quote.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum QuoteState {
    /// Not yet sent: recomputed with the job.
    #[default]
    Draft,
    /// Sent: the figures stand as they were.
    Sent(FrozenQuote),
    /// Accepted by the client.
    Accepted {
        /// When.
        on: Date,
        /// What was sent.
        sent: FrozenQuote,
        /// Grams whose price was fixed by a deposit.
        fixed: Option<Grams>,
    },
    /// Replaced by a later quote.
    Superseded {
        /// That quote.
        by: QuoteId,
        /// What was sent, where it was.
        sent: Option<FrozenQuote>,
    },
    /// Not taken up.
    Declined {
        /// When.
        on: Date,
    },
}

document! {
    /// The figures a client was given.
    pub struct FrozenQuote {
        /// When it was sent.
        on: Option<Date>,
        /// The lines.
        lines: Vec<FrozenLine>,
        /// The metal prices it rests on.
        prices: Vec<FrozenPrice>,
        /// Sums for the whole quote.
        besides: Money,
        /// The total before tax.
        net: Money,
        /// Tax.
        tax: Money,
        /// The total.
        total: Money,
        /// The currency.
        currency: String,
    }
}

document! {
    /// One line as it was quoted.
    pub struct FrozenLine {
        /// The line.
        line: LineId,
        /// What was written.
        text: String,
        /// Pieces.
        quantity: u32,
        /// Rough weight of all pieces.
        grams: Grams,
        /// Price of a gram.
        per_gram: Money,
        /// The metal.
        metal: Money,
        /// Everything else.
        other: Money,
        /// The line's sum.
        sum: Money,
    }
}

document! {
    /// A metal price as it was used.
    pub struct FrozenPrice {
        /// The metal or alloy.
        of: String,
        /// Per gram.
        per_gram: Money,
        /// Of that day.
        on: Option<Date>,
    }
}
