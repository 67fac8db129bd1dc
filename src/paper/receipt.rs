//! The receipt for metal that a client brought: what it weighed, what its papers say, and that it stays theirs.

use super::block::{Block, Page, Side, Table};
use super::desk::Desk;
use super::words::{metal_name, one_line};
use crate::calc::ClientLot;
use crate::job::{Lot, LotKind};

/// The clients whose metal is in the house, in the order of their letters.
pub(super) fn owners(desk: &Desk<'_>) -> Vec<String> {
    let all: std::collections::BTreeSet<&str> = desk.input.report.client_lots.iter().map(|lot| lot.owner.as_str()).collect();
    all.into_iter().map(str::to_owned).collect()
}

/// The page of a client.
pub(super) fn receipt_page(desk: &Desk<'_>, client: &str) -> Page {
    let of_client = |lot: &&ClientLot| lot.owner == client;
    let document = |lot: &ClientLot| desk.input.studio.lots.iter().find(|other| other.id == lot.lot && other.owner.trim() == client);
    let figures = desk.input.report.client_lots.iter().filter(of_client);
    let lots: Vec<(&ClientLot, &Lot)> = figures.filter_map(|lot| Some((lot, document(lot)?))).collect();
    let mut blocks = vec![desk.heading("receipt-metal"), Block::Table(came_in(desk, &lots)), desk.heading("receipt-fine")];
    blocks.extend([Block::Table(fine(desk, &lots)), Block::Words(desk.label("receipt-fine-why"))]);
    blocks.push(desk.heading("receipt-terms"));
    blocks.extend(["receipt-yours", "receipt-apart", "receipt-weighed"].map(|key| Block::Words(desk.label(key))));
    blocks.push(Block::Sign(["sign-date", "sign-studio", "sign-client"].map(|key| desk.label(key)).into()));
    Page { title: desk.say("receipt-title", &[("client", desk.text(client).into())]), blocks, ..Page::default() }
}

/// Every receipt of the client's lots.
fn came_in(desk: &Desk<'_>, lots: &[(&ClientLot, &Lot)]) -> Table {
    let mut table = desk
        .table(&[
            ("column-on", Side::Left),
            ("column-lot", Side::Left),
            ("column-metal", Side::Left),
            ("column-paper", Side::Left),
            ("column-weight", Side::Decimal),
        ])
        .across();
    for (figures, lot) in lots {
        for (receipt, grams) in lot.receipts.iter().zip(&figures.receipts) {
            table.row([
                desk.date(receipt.on),
                one_line(&lot.id.to_string()),
                what(desk, lot),
                one_line(&receipt.paper),
                desk.grams(*grams),
            ]);
        }
    }
    table
}

/// What a lot is, as its label says.
fn what(desk: &Desk<'_>, lot: &Lot) -> String {
    let kind = desk.label(match lot.what {
        LotKind::NewMetal => "lot-new-metal",
        LotKind::FineMetal => "lot-fine-metal",
        LotKind::MasterAlloy => "lot-master-alloy",
        // To its owner it is no scrap of the house.
        LotKind::Scrap => "receipt-brought",
        LotKind::Refining => "lot-refining",
    });
    let alloy = lot.alloy.as_ref().map(|alloy| desk.entry(Some(alloy)));
    let metal = (!lot.metal.trim().is_empty()).then(|| metal_name(&lot.metal, desk.words.texts));
    match alloy.or(metal) {
        Some(of) => format!("{kind}, {of}"),
        None => kind,
    }
}

/// By lot: all that came in, its fineness and by what paper, and the fine metal in it.
fn fine(desk: &Desk<'_>, lots: &[(&ClientLot, &Lot)]) -> Table {
    let mut table = desk
        .table(&[
            ("column-lot", Side::Left),
            ("column-in-all", Side::Decimal),
            ("column-fineness", Side::Decimal),
            ("column-by", Side::Left),
            ("column-fine", Side::Decimal),
        ])
        .across();
    for (figures, lot) in lots {
        let assay = one_line(&lot.assay);
        let by = if assay.is_empty() { desk.label("receipt-not-assayed") } else { assay };
        table.row([
            one_line(&lot.id.to_string()),
            desk.grams(figures.received),
            lot.fineness_permille.map_or_else(|| desk.label("cause-not-known"), |fineness| desk.fineness(fineness.get())),
            by,
            figures.fine.map_or_else(|| desk.label("cause-not-known"), |fine| desk.grams(fine)),
        ]);
    }
    table
}
