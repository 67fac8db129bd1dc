//! A client's own metal after the pour: what is handed back, and what the studio still holds of it.

use eframe::egui::{Id, Ui};

use super::write;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, grams};
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::calc::{Book, ClientAccount};
use crate::job::{Event, LotId, MeltId, Place};
use crate::paper::words::metal_name;
use crate::quantity::{Grams, Kind};

/// Where metal that is handed back was.
#[derive(Debug, Clone, PartialEq, Eq)]
enum From {
    /// In a melt: sprues and buttons.
    Melt(MeltId),
    /// In a lot, as it came.
    Lot(LotId),
}

/// What is being handed back, until it is.
#[derive(Debug, Clone, Default)]
struct Back {
    client: Option<String>,
    from: Option<From>,
    grams: Option<Grams>,
}

/// Shows it, where clients' own metal is in the house.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, hands: &str) {
    let computed = cx.computed;
    let accounts = &computed.report.client_accounts;
    if accounts.is_empty() {
        return;
    }
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("own-metal"), &tokens);
    heading::says(ui, &cx.label("own-metal-says"), &tokens);
    for account in accounts.iter().filter(|account| counts(&computed.book, account)) {
        one(ui, cx, account);
    }
    cx.folded(ui, "own-metal-back", |ui, cx| hand_back(ui, cx, accounts, hands));
}

/// Does this batch move anything in the account?
fn counts(book: &Book, account: &ClientAccount) -> bool {
    !account.castings.is_empty() || !account.returned.is_empty() || book.number(account.deposit).is_none_or(|fine| fine > 0.0)
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, account: &ClientAccount) {
    let metal = metal_name(&account.metal, cx.texts);
    let args = [("client", account.client.clone().into()), ("metal", metal.into())];
    heading::says(ui, &cx.say("own-metal-of", &args), &cx.tokens.clone());
    let rows = [
        ("own-metal-deposit", account.deposit),
        ("own-metal-cast", account.cast),
        ("own-metal-returned", account.back),
        ("own-metal-loss", account.loss),
        ("own-metal-balance", account.balance),
    ];
    for (key, id) in rows {
        let tokens = cx.tokens;
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(170.0)));
    }
}

fn hand_back(ui: &mut Ui, cx: &mut Cx<'_>, accounts: &[ClientAccount], hands: &str) {
    let tokens = cx.tokens;
    let key = Id::unique(("own-metal-draft", cx.job.job_id.to_string()));
    let mut draft: Back = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let mut clients: Vec<(String, String)> = accounts.iter().map(|one| (one.client.clone(), one.client.clone())).collect();
    clients.dedup();
    draft.client = draft.client.filter(|client| clients.iter().any(|(one, _)| one == client));
    if let [only] = clients.as_slice() {
        draft.client.get_or_insert_with(|| only.0.clone());
    }
    let label = cx.label("own-metal-client");
    let place = (key.with("client"), label.as_str(), 132.0);
    if let Some(said) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, draft.client.as_ref(), &clients, false)) {
        draft.client = said;
    }
    let label = cx.label("own-metal-from");
    let from = places(cx, draft.client.as_deref());
    // Of another client's metal nothing goes to this one.
    draft.from = draft.from.filter(|of| from.iter().any(|(one, _)| one == of));
    let place = (key.with("from"), label.as_str(), 240.0);
    if let Some(said) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, draft.from.as_ref(), &from, false)) {
        draft.from = said;
    }
    let label = cx.label("own-metal-grams");
    let field = Number::new(key.with("grams"), &label, Kind::Mass).now(draft.grams.map(Grams::to_f64));
    if let Some(said) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
        draft.grams = said;
    }
    let ready = draft.client.clone().zip(draft.grams).zip(draft.from.clone());
    if button::outlined(ui, &cx.label("own-metal-do"), &tokens, ready.is_some()).clicked()
        && let Some(((client, grams), from)) = ready
    {
        let (melt, lot) = match from {
            From::Melt(melt) => (Some(melt), None),
            From::Lot(lot) => (None, Some(lot)),
        };
        write(cx, "edit-own-metal", hands, Event::HandedBack { client, melt, lot, grams });
        draft = Back::default();
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
}

/// The melts that drew on the client's metal, and the client's lots.
fn places(cx: &Cx<'_>, client: Option<&str>) -> Vec<(From, String)> {
    let lots: Vec<&LotId> = cx.studio.lots.iter().filter(|lot| Some(lot.owner.trim()) == client).map(|lot| &lot.id).collect();
    let melts = cx.job.melts.iter().filter(|melt| melt.charge.iter().any(|draw| lots.contains(&&draw.lot)));
    let melts = melts.map(|melt| {
        let name = crate::app::names::place(cx, Place::Melt(melt.id));
        (From::Melt(melt.id), cx.say("own-metal-sprues", &[("melt", name.into())]))
    });
    let lots = lots.iter().map(|lot| (From::Lot((*lot).clone()), cx.say("own-metal-lot", &[("lot", lot.to_string().into())])));
    melts.chain(lots).collect()
}
