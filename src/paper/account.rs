//! The account of a client's own metal: what came in, what was cast of it, what was handed back, what was agreed to be lost, what is left.

use super::block::{Block, Page, Side, Table};
use super::desk::{Desk, Ordered};
use super::words::{metal_name, one_line};
use crate::calc::{AccountOf, AccountRow, ClientAccount};

/// The clients whose metal is accounted for, in the order of their letters.
pub(super) fn owners(desk: &Desk<'_>) -> Vec<String> {
    let mut all: Vec<String> = desk.input.report.client_accounts.iter().map(|account| account.client.clone()).collect();
    all.dedup();
    all
}

/// The page of a client.
pub(super) fn account_page(desk: &Desk<'_>, client: &str) -> Page {
    let mut blocks = Vec::new();
    for account in desk.input.report.client_accounts.iter().filter(|account| account.client == client) {
        blocks.extend(of_metal(desk, account));
    }
    blocks.extend(["account-why", "account-batch"].map(|key| Block::Words(desk.label(key))));
    blocks.push(Block::Sign(["sign-date", "sign-studio", "sign-client"].map(|key| desk.label(key)).into()));
    Page { title: desk.say("account-title", &[("client", desk.text(client).into())]), blocks, ..Page::default() }
}

fn of_metal(desk: &Desk<'_>, account: &ClientAccount) -> Vec<Block> {
    let metal = if account.metal.is_empty() { desk.label("cause-not-known") } else { metal_name(&account.metal, desk.words.texts) };
    let mut blocks = vec![Block::Heading(desk.say("account-metal", &[("metal", metal.into())]))];
    for (key, rows) in [("account-castings", &account.castings), ("account-back", &account.returned)] {
        if !rows.is_empty() {
            blocks.push(Block::Table(table(desk, key, rows)));
        }
    }
    let sums = [
        ("account-deposit", account.deposit),
        ("account-cast", account.cast),
        ("account-returned", account.back),
        ("account-loss", account.loss),
        ("account-balance", account.balance),
    ];
    blocks.push(Block::Fields(sums.into_iter().map(|(key, id)| desk.field(key, desk.grams(id))).collect()));
    if desk.number(account.balance).is_some_and(|balance| balance < 0.0) {
        blocks.push(Block::Words(desk.label("account-owed")));
    }
    blocks
}

fn table(desk: &Desk<'_>, first: &str, rows: &[AccountRow]) -> Table {
    let mut table = desk
        .table(&[
            (first, Side::Left),
            ("column-design", Side::Left),
            ("column-weight", Side::Decimal),
            ("column-fineness", Side::Decimal),
            ("column-fine", Side::Decimal),
        ])
        .across();
    for row in rows {
        let (what, design) = words(desk, &row.of);
        table.row([what, design, desk.grams(row.grams), desk.figure(row.fineness), desk.grams(row.fine)]);
    }
    table
}

/// What a row is, and the design of a casting.
fn words(desk: &Desk<'_>, of: &AccountOf) -> (String, String) {
    match of {
        AccountOf::Piece(piece) => {
            (piece.to_string(), desk.line(piece.line).map_or_else(String::new, |Ordered { line, .. }| desk.text(&line.design)))
        }
        AccountOf::Flask(flask) => (desk.say("account-flask", &[("flask", desk.scratch(*flask).into())]), String::new()),
        AccountOf::Melt(_) => (desk.label("account-sprues"), String::new()),
        AccountOf::Lot(lot) => (desk.say("account-lot", &[("lot", one_line(&lot.to_string()).into())]), String::new()),
        AccountOf::Unsaid => (desk.label("cause-not-known"), String::new()),
    }
}
