//! Quotes: what each client is offered, and what they were told. Everything of one client stands apart from every other.

mod draft;
mod extras;
mod figures;
mod sent;

use eframe::egui::{Id, RichText, Ui};

use super::Page;
use super::settings::kept::{keep, kept};
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::{STEP, bold};
use crate::app::widget::{button, finding, heading};
use crate::job::{Job, Place, Quote, QuoteId, QuoteState};

/// What is looked at.
#[derive(Debug, Clone, PartialEq)]
enum Chosen {
    /// A quote.
    Quote(QuoteId),
    /// All orders of a client who was quoted nothing yet.
    Client(String),
}

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-quotes"), "", &tokens);
    if cx.job.quotes.is_empty() && cx.computed.report.offers.is_empty() {
        empty(ui, cx);
        return;
    }
    let chosen = chosen(ui, cx);
    chooser(ui, cx, chosen.as_ref());
    ui.add_space(2.0 * STEP);
    match &chosen {
        Some(Chosen::Quote(id)) => quote(ui, cx, *id),
        Some(Chosen::Client(client)) => client_without(ui, cx, client),
        None => {}
    }
    ui.add_space(3.0 * STEP);
    // Findings of this quote alone: another client's have no place in this section.
    let here = match chosen {
        Some(Chosen::Quote(id)) => Some(Place::Quote(id)),
        _ => None,
    };
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Quotes && Some(found.place) == here);
}

fn empty(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::empty(ui, &cx.label("quotes-empty"), &cx.label("quotes-first"), &tokens);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("quotes-to-orders"), &tokens).clicked() {
            cx.act(Action::Go(Page::Orders));
        }
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
    });
}

fn client_id() -> Id {
    Id::unique("quotes-client")
}

fn seen_id() -> Id {
    Id::unique("quotes-seen")
}

/// A quote, unless a client without one was chosen since.
fn chosen(ui: &Ui, cx: &Cx<'_>) -> Option<Chosen> {
    let client = kept(ui, client_id());
    let without = |client: &str| cx.computed.report.offers.iter().any(|offer| offer.quote.is_none() && offer.client == client);
    let seen: Option<QuoteId> = ui.data(|data| data.get_temp::<Option<u32>>(seen_id())).flatten().map(QuoteId);
    let quote = cx.view.quote.filter(|id| cx.job.quotes.iter().any(|quote| quote.id == *id));
    let client = Some(client).filter(|client| seen == quote && without(client));
    client.map(Chosen::Client).or(quote.map(Chosen::Quote)).or_else(|| {
        let offer = cx.computed.report.offers.first()?;
        Some(offer.quote.map_or_else(|| Chosen::Client(offer.client.clone()), Chosen::Quote))
    })
}

/// Every quote by its client, and every client who has none.
fn chooser(ui: &mut Ui, cx: &mut Cx<'_>, chosen: Option<&Chosen>) {
    let quotes = cx.job.quotes.iter().map(|quote| {
        let args = [
            ("client", client_words(cx, &quote.client).into()),
            ("number", quote.id.to_string().into()),
            ("state", cx.label(state_key(&quote.state)).into()),
        ];
        (Chosen::Quote(quote.id), cx.say("quotes-one", &args))
    });
    let without = cx.computed.report.offers.iter().filter(|offer| offer.quote.is_none()).map(|offer| {
        let words = cx.say("quotes-none-yet", &[("client", client_words(cx, &offer.client).into())]);
        (Chosen::Client(offer.client.clone()), words)
    });
    let mut all: Vec<(Chosen, String)> = quotes.chain(without).collect();
    all.sort_by(|one, other| one.1.cmp(&other.1));
    ui.horizontal_wrapped(|ui| {
        for (one, words) in all {
            if ui.selectable_label(chosen == Some(&one), words).clicked() {
                choose(ui, cx, one);
            }
        }
    });
}

fn choose(ui: &Ui, cx: &mut Cx<'_>, chosen: Chosen) {
    match chosen {
        Chosen::Quote(id) => {
            cx.look(move |view| view.quote = Some(id));
            keep(ui, client_id(), String::new());
            ui.data_mut(|data| data.insert_temp::<Option<u32>>(seen_id(), None));
        }
        Chosen::Client(client) => {
            keep(ui, client_id(), client);
            let seen = cx.view.quote.map(|id| id.0);
            ui.data_mut(|data| data.insert_temp::<Option<u32>>(seen_id(), seen));
        }
    }
}

fn client_words(cx: &Cx<'_>, client: &str) -> String {
    crate::paper::words::clean(client, cx.texts)
}

fn state_key(state: &QuoteState) -> &'static str {
    match state {
        QuoteState::Draft => "quote-state-draft",
        QuoteState::Sent(_) => "quote-state-sent",
        QuoteState::Accepted { .. } => "quote-state-accepted",
        QuoteState::Superseded { .. } => "quote-state-superseded",
        QuoteState::Declined { .. } => "quote-state-declined",
    }
}

/// The next quote's id.
fn next_id(job: &Job) -> QuoteId {
    QuoteId(job.quotes.iter().map(|quote| quote.id.0).max().unwrap_or(0) + 1)
}

/// What a client without a quote would be offered, and the way to a quote.
fn client_without(ui: &mut Ui, cx: &mut Cx<'_>, client: &str) {
    let tokens = cx.tokens;
    ui.label(RichText::new(client_words(cx, client)).family(bold()).color(tokens.ink));
    heading::says(ui, &cx.label("quotes-without-says"), &tokens);
    ui.add_space(STEP);
    if button::main(ui, &cx.label("quotes-make"), &tokens).clicked() {
        let (client, made, id) = (client.to_owned(), Some(cx.setting.at), next_id(cx.job));
        cx.edit("edit-quote-make", move |job| {
            let id = QuoteId(id.0.max(next_id(job).0));
            job.quotes.push(Quote { id, client, made, ..Quote::default() });
        });
        choose(ui, cx, Chosen::Quote(id));
    }
    let offer = cx.computed.report.offers.iter().find(|offer| offer.quote.is_none() && offer.client == client).cloned();
    if let Some(offer) = offer {
        figures::show(ui, cx, &offer);
    }
}

/// A quote, in whatever state it is.
fn quote(ui: &mut Ui, cx: &mut Cx<'_>, id: QuoteId) {
    let tokens = cx.tokens;
    let Some(quote) = cx.job.quotes.iter().find(|quote| quote.id == id).cloned() else { return };
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(client_words(cx, &quote.client)).family(bold()).color(tokens.ink));
        ui.label(RichText::new(cx.label(state_key(&quote.state))).color(tokens.ink2));
        if let Some(made) = quote.made {
            let made = crate::paper::words::date_words(made, cx.texts);
            ui.label(RichText::new(cx.say("quote-made", &[("on", made.into())])).color(tokens.ink2));
        }
    });
    match &quote.state {
        QuoteState::Draft => draft::show(ui, cx, &quote),
        _ => sent::show(ui, cx, &quote),
    }
}
