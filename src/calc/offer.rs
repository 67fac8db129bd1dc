//! What clients are offered: work beside the metal, line sums, tax, totals. Every sum is a figure; one that is not known leaves its totals
//! missing.

use std::collections::BTreeMap;

use super::book::Id;
use super::order::{LineFigures, round2};
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{Extra, FrozenQuote, Line, LineId, Order, Place, Quote, QuoteId, QuoteState};
use crate::quantity::Finite;
use rust_decimal::Decimal;

inputs! {
    /// Minutes of work that are charged.
    MINUTES "quote.minutes" Count;
    /// Price of an hour's work.
    HOUR "quote.hour" Money;
    /// A fixed sum.
    AMOUNT "quote.amount" Money;
    /// Margin on everything but the metal.
    MARGIN "quote.margin" Ratio;
    /// Tax as a share.
    TAX_SHARE "quote.tax-share" Ratio;
    /// Asked for before the work starts.
    DEPOSIT "quote.deposit" Money;
    /// The total as it was sent.
    SENT_TOTAL "quote.sent-total" Money;
}

givens! {
    /// No fixed sum.
    NO_AMOUNT "quote.amount" Money = 0.0; Computed "none is entered"
    /// No minutes.
    NO_MINUTES "quote.minutes" Count = 0.0; Computed "none are entered"
    /// No margin.
    NO_MARGIN "quote.margin" Ratio = 0.0; Computed "none is entered"
    /// No tax.
    NO_TAX "quote.tax-share" Ratio = 0.0; Computed "none is entered"
}

rules! {
    /// Minutes on all pieces of a line.
    MINUTES_ALL "quote.minutes-all" (each: Count, pieces: Count) -> Count
        = Formula "each*pieces" { each * pieces };
        Computed "minutes of one piece times the pieces"
    /// Work and fixed sums with the margin, to the cent.
    WORK "quote.work" (minutes: Count, hour: Money, amount: Money, margin: Ratio) -> Money
        = Decimal "round2((minutes*hour/60 + amount)*(1 + margin))" {
            let time = minutes.checked_mul(hour)?.checked_div(Decimal::from(60))?;
            round2(time.checked_add(amount)?.checked_mul(Decimal::ONE.checked_add(margin)?)?)
        };
        Computed "minutes at the price of an hour, and what is asked for beside them"
    /// Everything on a line beside its metal.
    LINE_OTHER "quote.line-other" (work: Money) -> Money = Sum "sum(work)"; Computed "all work on the line"
    /// A line's sum.
    LINE_SUM "quote.line-sum" (metal: Money, other: Money) -> Money
        = Decimal "metal + other" { metal.checked_add(other) };
        Computed "metal and work"
    /// What is asked for beside the lines.
    BESIDES "quote.besides" (work: Money) -> Money = Sum "sum(work)"; Computed "all that belongs to no line"
    /// Before tax.
    NET "quote.net" (sum: Money) -> Money = Sum "sum(sum)"; Computed "all lines, and what is asked for beside them"
    /// Tax, at the total and to the cent.
    TAX "quote.tax" (net: Money, share: Ratio) -> Money
        = Decimal "round2(net*share)" { round2(net.checked_mul(share)?) };
        Computed "rounded once, on the whole quote"
    /// What is to be paid.
    TOTAL "quote.total" (net: Money, tax: Money) -> Money
        = Decimal "net + tax" { net.checked_add(tax) };
        Computed "with tax"
    /// What is left after the deposit.
    REST "quote.rest" (total: Money, deposit: Money) -> Money
        = Decimal "total - round2(deposit)" { total.checked_sub(round2(deposit)?) };
        Computed "the total less what was paid before"
}

/// What a sum beside the metal is for.
#[derive(Debug, Clone, PartialEq)]
pub enum WorkFor {
    /// An extra of the quote, in the caster's words.
    Extra(String),
    /// Finishing the pieces.
    Finishing,
    /// Making the patterns.
    Making,
}

/// One line of an offer.
#[derive(Debug, Clone)]
pub struct OfferLineFigures {
    /// The line.
    pub line: LineId,
    /// Its place among the report's lines.
    pub index: usize,
    /// Sums beside the metal.
    pub work: Vec<(WorkFor, Id)>,
    /// All of them, where there are any.
    pub other: Option<Id>,
    /// Metal and work.
    pub sum: Id,
}

/// Sums that stand as they were sent, or as they are worked out today.
#[derive(Debug, Clone)]
pub struct OfferFigures {
    /// The quote; a client without one is offered all their orders.
    pub quote: Option<QuoteId>,
    /// The client.
    pub client: String,
    /// The lines; none for what was sent.
    pub lines: Vec<OfferLineFigures>,
    /// Sums for the whole quote.
    pub besides: Vec<(WorkFor, Id)>,
    /// All of them, where there are any.
    pub besides_all: Option<Id>,
    /// Before tax, tax, total; none for what was sent.
    pub sums: Option<[Id; 3]>,
    /// What is left after the deposit, where one is asked for.
    pub rest: Option<Id>,
}

type Covered<'a> = (&'a Order, &'a Line, usize);

impl<'a> Pass<'a> {
    /// Every offer that stands, client by client: their quotes, or all their orders where nothing was quoted yet.
    pub(super) fn offers(&mut self, lines: &[LineFigures]) -> Vec<OfferFigures> {
        let job = self.job;
        let mut clients: BTreeMap<&'a str, (Vec<Covered<'a>>, Vec<&'a Quote>)> = BTreeMap::new();
        let mut index = 0;
        for order in job.orders.iter().filter(|order| !order.lines.is_empty()) {
            let covered = &mut clients.entry(order.client.trim()).or_default().0;
            covered.extend(order.lines.iter().zip(index..).map(|(line, index)| (order, line, index)));
            index += order.lines.len();
        }
        for quote in &job.quotes {
            clients.entry(quote.client.trim()).or_default().1.push(quote);
        }
        let whole = Quote::default();
        let mut offers = Vec::new();
        for (client, (covered, quotes)) in clients {
            if quotes.is_empty() {
                // Nobody gave it a number: it stands where the client's first order stands.
                let Some(place) = covered.first().map(|(order, ..)| Place::Order(order.id)) else { continue };
                offers.push(self.draft(&whole, None, client, place, &covered, lines));
            }
            for quote in quotes {
                let place = Place::Quote(quote.id);
                match &quote.state {
                    QuoteState::Draft => offers.push(self.draft(quote, Some(quote.id), client, place, &covered, lines)),
                    QuoteState::Sent(sent) | QuoteState::Accepted { sent, .. } => offers.push(self.sent(quote, client, sent)),
                    QuoteState::Superseded { .. } | QuoteState::Declined { .. } => {}
                }
            }
        }
        offers
    }

    fn sent(&mut self, quote: &'a Quote, client: &str, sent: &FrozenQuote) -> OfferFigures {
        let place = Place::Quote(quote.id);
        let rest = quote.deposit.map(|deposit| {
            let total = self.book.money(&SENT_TOTAL, place, sent.total);
            let deposit = self.book.money(&DEPOSIT, place, deposit);
            self.book.derive(&REST, place, [total, deposit])
        });
        OfferFigures {
            quote: Some(quote.id),
            client: client.to_owned(),
            lines: Vec::new(),
            besides: Vec::new(),
            besides_all: None,
            sums: None,
            rest,
        }
    }

    fn draft(
        &mut self,
        quote: &Quote,
        id: Option<QuoteId>,
        client: &str,
        place: Place,
        covered: &[Covered<'a>],
        figures: &[LineFigures],
    ) -> OfferFigures {
        let margin = self.share(quote.margin, self.studio.money.margin, (&MARGIN, &NO_MARGIN), place);
        let chosen = |order: &Order| quote.orders.is_empty() || quote.orders.contains(&order.id);
        let mut lines: Vec<OfferLineFigures> = Vec::with_capacity(covered.len());
        for (order, line, index) in covered {
            if !chosen(order) || crate::job::Job::charged_pieces_of(line) == 0 {
                continue;
            }
            let mut work = self.work_of_line(line, margin);
            for extra in quote.extras.iter().filter(|extra| extra.line == Some(line.id)) {
                work.push(self.extra(extra, margin, Place::Line(line.id)));
            }
            let cost = figures[*index].cost;
            let (other, sum) = if work.is_empty() { (None, cost) } else { self.line_sum(line.id, &work, cost) };
            lines.push(OfferLineFigures { line: line.id, index: *index, work, other, sum });
        }
        // What names a line that is not in the quote is still owed: it counts for the whole.
        let own = |extra: &&Extra| extra.line.is_none_or(|id| lines.iter().all(|line| line.line != id));
        let besides: Vec<(WorkFor, Id)> = quote.extras.iter().filter(own).map(|extra| self.extra(extra, margin, place)).collect();
        let sums: Vec<Id> = besides.iter().map(|(_, sum)| *sum).collect();
        let besides_all = (!sums.is_empty()).then(|| self.book.derive_over(&BESIDES, place, &sums));
        let all: Vec<Id> = lines.iter().map(|line| line.sum).chain(besides_all).collect();
        let net = self.book.derive_over(&NET, place, &all);
        let share = self.share(quote.tax, self.studio.money.tax, (&TAX_SHARE, &NO_TAX), place);
        let tax = self.book.derive(&TAX, place, [net, share]);
        let total = self.book.derive(&TOTAL, place, [net, tax]);
        let rest = quote.deposit.map(|deposit| {
            let deposit = self.book.money(&DEPOSIT, place, deposit);
            self.book.derive(&REST, place, [total, deposit])
        });
        OfferFigures { quote: id, client: client.to_owned(), lines, besides, besides_all, sums: Some([net, tax, total]), rest }
    }

    fn line_sum(&mut self, line: LineId, work: &[(WorkFor, Id)], cost: Id) -> (Option<Id>, Id) {
        let place = Place::Line(line);
        let sums: Vec<Id> = work.iter().map(|(_, sum)| *sum).collect();
        let other = self.book.derive_over(&LINE_OTHER, place, &sums);
        (Some(other), self.book.derive(&LINE_SUM, place, [cost, other]))
    }

    /// Finishing and making, where their minutes are said.
    fn work_of_line(&mut self, line: &'a Line, margin: Id) -> Vec<(WorkFor, Id)> {
        let job = self.job;
        let mut minutes: Vec<(WorkFor, Finite)> = line.finishing_min.map(|minutes| (WorkFor::Finishing, minutes)).into_iter().collect();
        let making = || job.patterns.iter().find(|pattern| Some(pattern.id) == line.pattern)?.making.as_ref()?.labour_min;
        if self.any_making {
            minutes.extend(making().map(|minutes| (WorkFor::Making, minutes)));
        }
        let place = Place::Line(line.id);
        let mut work = Vec::new();
        for (what, each) in minutes.into_iter().filter(|(_, each)| each.get() > 0.0) {
            let each = self.book.entered(&MINUTES, place, each.get());
            let pieces = self.book.entered(&super::order::PIECES, place, f64::from(crate::job::Job::charged_pieces_of(line)));
            let minutes = self.book.derive(&MINUTES_ALL, place, [each, pieces]);
            let (hour, amount) = (self.hour(place), self.book.constant(&NO_AMOUNT));
            work.push((what, self.book.derive(&WORK, place, [minutes, hour, amount, margin])));
        }
        work
    }

    fn extra(&mut self, extra: &Extra, margin: Id, place: Place) -> (WorkFor, Id) {
        let amount = match extra.amount {
            Some(amount) => self.book.money(&AMOUNT, place, amount),
            None => self.book.constant(&NO_AMOUNT),
        };
        // A fixed sum needs no price of an hour.
        let (minutes, hour) = match extra.minutes {
            Some(minutes) => (self.book.entered(&MINUTES, place, minutes.get()), self.hour(place)),
            None => (self.book.constant(&NO_MINUTES), self.book.constant(&NO_AMOUNT)),
        };
        (WorkFor::Extra(extra.what.clone()), self.book.derive(&WORK, place, [minutes, hour, amount, margin]))
    }

    fn hour(&mut self, place: Place) -> Id {
        match self.studio.money.hour {
            Some(hour) => self.book.studio_money(&HOUR, hour),
            None => self.book.absent(&HOUR, place, Cause::NotSaid),
        }
    }

    fn share(
        &mut self,
        quote: Option<Finite>,
        studio: Option<Finite>,
        (input, none): (&'static super::rule::Input, &'static super::rule::Given),
        place: Place,
    ) -> Id {
        match (quote, studio) {
            (Some(share), _) => self.book.entered(input, place, share.get()),
            (None, Some(share)) => self.book.studio(input, share.get()),
            (None, None) => self.book.constant(none),
        }
    }
}
