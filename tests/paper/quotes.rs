//! Quotes: sums to the cent, what was sent, and nothing of another client.

use std::collections::BTreeSet;
use std::path::Path;

use jiff::civil::date;
use pourbook::job::{Extra, Job, LineId, Order, Quote, QuoteId, QuoteState};
use pourbook::paper::{frozen_quote, quote_papers, quotes, set::set};
use pourbook::quantity::{Finite, Money, Style};
use pourbook::texts::Texts;
use proptest::prelude::*;
use rust_decimal::Decimal;

use crate::jobs::{Ready, TODAY, order, order_book, studio, three_flasks};
use crate::sheet::{sound, unwrapped};
use crate::world::{line, money, said};

/// Each client's text.
fn by_client(ready: &Ready) -> Vec<(String, String)> {
    let papers = quote_papers(&ready.input());
    papers.into_iter().map(|client| (client.client.clone(), set(&client.paper, Texts::english()))).collect()
}

fn of<'t>(texts: &'t [(String, String)], client: &str) -> &'t str {
    &texts.iter().find(|(other, _)| other == client).unwrap_or_else(|| panic!("no quote for {client}")).1
}

/// Amounts of the table of sums, with what they are for.
fn sums(text: &str) -> Vec<(String, Decimal)> {
    let table = text.split("── Sums").nth(1).unwrap().split("\n── ").next().unwrap();
    let amount = |line: &str| -> Option<(String, Decimal)> {
        let (what, amount) = line.strip_suffix(" EUR")?.trim_end().rsplit_once("  ")?;
        Some((what.trim().to_owned(), amount.replace(' ', "").replace('−', "-").parse().ok()?))
    };
    table.lines().filter_map(amount).collect()
}

/// 4 × 6.56 g and 6 × 6.56 g at 0.8510; 100 minutes at 48 an hour, 7.20 and 9.50, all three with a quarter on top; 23 % tax; 60 down.
/// Worked by hand.
#[test]
fn a_quote_worked_by_hand() {
    let ready = Ready::new(order_book(), studio());
    let texts = by_client(&ready);
    let text = of(&texts, "KM");
    let expected = [
        ("4 × limpet ring, Sterling silver 925", "122.33"),
        ("6 × limpet stud, Sterling silver 925", "42.50"),
        ("Carriage", "11.88"),
        ("Before tax", "176.71"),
        ("Tax, 23 %", "40.64"),
        ("Total", "217.35"),
        ("Deposit, before work begins", "60.00"),
        ("Left after the deposit", "157.35"),
    ];
    let expected: Vec<(String, Decimal)> = expected.iter().map(|(what, amount)| ((*what).to_owned(), amount.parse().unwrap())).collect();
    assert_eq!(sums(text), expected, "{text}");
    let words = unwrapped(text);
    for said in [
        "± 3 %",
        "0.8510 EUR/g fine silver 23 Nov 2026",
        "Valid until 1 Dec 2026",
        "6.56 g 26.24 g 0.8510 22.33 100.00 122.33",
        "– Posts 9.00",
        "Half on order, the rest on collection.",
        "Signature ____",
        "page 1 of 1",
        "2 Slip Lane",
    ] {
        assert!(words.contains(said), "{said} is not in\n{text}");
    }
    sound(text);
}

#[test]
fn a_missing_price_gives_no_total_and_says_so() {
    let ready = Ready::new(three_flasks(), studio());
    let texts = by_client(&ready);
    let platinum = unwrapped(of(&texts, "ODA"));
    assert!(platinum.contains("Platinum 950 (ruthenium) no price yet"), "{platinum}");
    assert!(platinum.contains("so there is no total") && !platinum.contains("Total") && !platinum.contains("Signature"));
    assert!(unwrapped(of(&texts, "KM")).contains("Total 22.99 EUR"));
}

#[test]
fn minutes_without_a_rate_give_no_total() {
    let mut studio = studio();
    studio.money.hour = None;
    let ready = Ready::new(order_book(), studio);
    assert!(unwrapped(of(&by_client(&ready), "KM")).contains("so there is no total"));
    assert_eq!(frozen_quote(&ready.input(), QuoteId(1)), None);
}

#[test]
fn what_was_sent_stands_whatever_becomes_of_prices() {
    let ready = Ready::new(order_book(), studio());
    let sent = frozen_quote(&ready.input(), QuoteId(1)).unwrap();
    assert_eq!((sent.net, sent.tax, sent.total), (money("176.71"), money("40.64"), money("217.35")));
    assert_eq!(sent.on, Some(TODAY));
    for accepted in [false, true] {
        let mut job = order_book();
        let state = if accepted {
            QuoteState::Accepted { on: date(2026, 11, 25), sent: sent.clone(), fixed: None }
        } else {
            QuoteState::Sent(sent.clone())
        };
        job.quotes[0].state = state;
        job.orders[0].lines[0].quantity = 40;
        let mut dear = studio();
        dear.prices[0].amount = money("9.2");
        dear.money.hour = Some(money("480"));
        dear.money.currency = "GBP".into();
        let ready = Ready::new(job, dear);
        let text = by_client(&ready);
        let words = unwrapped(of(&text, "KM"));
        for kept in [
            "Total 217.35 EUR",
            "4 × limpet ring",
            "Besides the pieces 11.88 EUR",
            "0.8510 EUR/g",
            "by the price of fine silver",
            "Sent 24 Nov 2026",
        ] {
            assert!(words.contains(kept), "{kept} is not in\n{words}");
        }
        assert!(!words.contains("GBP") && !words.contains("8.51"), "{words}");
        assert_eq!(words.contains("Accepted 25 Nov 2026"), accepted);
        assert_eq!(frozen_quote(&ready.input(), QuoteId(1)), None, "what was sent is not frozen anew");
    }
}

#[test]
fn declined_and_replaced_quotes_do_not_print() {
    let mut job = order_book();
    job.quotes[0].state = QuoteState::Declined { on: TODAY };
    assert!(by_client(&Ready::new(job.clone(), studio())).iter().all(|(client, _)| client != "KM"));
    job.quotes[0].state = QuoteState::Superseded { by: QuoteId(2), sent: None };
    job.quotes.push(Quote { id: QuoteId(2), client: "KM".into(), ..Quote::default() });
    let texts = by_client(&Ready::new(job, studio()));
    assert!(of(&texts, "KM").contains("Quote 2 for KM"));
}

#[test]
fn a_quote_covers_the_orders_it_names() {
    let mut job = order_book();
    job.orders.push(order(9, "KM", vec![line(9, "cuff", 1, "silver-925", 1)]));
    job.quotes[0].orders = vec![job.orders[0].id];
    let texts = by_client(&Ready::new(job, studio()));
    assert!(!of(&texts, "KM").contains("cuff"));
}

#[test]
fn a_batch_called_by_another_client_is_not_named() {
    for name in ["for ODA and JJ", "Heron Figure again"] {
        let job = Job { name: name.into(), ..order_book() };
        let texts = by_client(&Ready::new(job, studio()));
        assert!(!of(&texts, "KM").contains(name));
    }
    let texts = by_client(&Ready::new(order_book(), studio()));
    assert!(of(&texts, "KM").contains("Batch Winter orders"));
}

#[test]
fn nothing_to_quote_is_said() {
    assert_eq!(quotes(&Ready::new(Job::default(), studio()).input()), "No order, so nothing to quote.\n");
}

#[test]
fn weights_stay_in_grams_so_that_a_client_can_follow() {
    let ready = Ready { style: Style::TRADE, ..Ready::new(order_book(), studio()) };
    let texts = by_client(&ready);
    assert!(unwrapped(of(&texts, "KM")).contains("6.56 g 26.24 g 0.8510 22.33"));
}

/// Words that name one client and nobody else.
fn own_words(job: &Job, client: &str) -> BTreeSet<String> {
    let orders = job.orders.iter().filter(|order| order.client == client);
    let quotes = job.quotes.iter().filter(|quote| quote.client == client);
    let designs = orders.flat_map(|order| order.lines.iter().map(|line| line.design.clone()));
    let extras = quotes.flat_map(|quote| quote.extras.iter().map(|extra| extra.what.clone()));
    designs.chain(extras).chain([format!("for {client}\n")]).filter(|word| !word.is_empty()).collect()
}

fn nothing_of_others(ready: &Ready) {
    let texts = by_client(ready);
    let clients: BTreeSet<&String> = texts.iter().map(|(client, _)| client).collect();
    for (client, text) in &texts {
        let mine = own_words(&ready.job, client);
        for other in clients.iter().filter(|other| **other != client) {
            for word in own_words(&ready.job, other).difference(&mine) {
                assert!(!text.contains(word.as_str()), "{word} of {other} stands on the paper of {client}");
            }
        }
    }
}

/// The sample jobs, with their pattern files measured.
#[test]
fn samples_leak_nothing() {
    use pourbook::files::{batch::Batch, disk::RealDisk, outside::Allowed, pattern_runs::measure_patterns};
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs");
    let mut seen = 0;
    for entry in std::fs::read_dir(&folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|extension| extension != "ron") || path.ends_with("studio.ron") {
            continue;
        }
        let batch = Batch::open(&RealDisk, &path).unwrap();
        let runs = measure_patterns(&RealDisk, batch.folder(), &batch.sound, &Allowed::None, &pourbook::mesh::Limits::default());
        let ready = Ready::with_runs(batch.sound.clone(), batch.studio.clone(), &runs);
        nothing_of_others(&ready);
        sound(&quotes(&ready.input()));
        sound(&pourbook::paper::sheet(&ready.input()));
        seen += 1;
    }
    assert!(seen > 0);
}

fn amount() -> impl Strategy<Value = Option<Money>> {
    proptest::option::of((-5000_i64..500_000, 0_u32..=4).prop_map(|(units, scale)| Money::new(Decimal::new(units, scale)).unwrap()))
}

fn share() -> impl Strategy<Value = Option<Finite>> {
    proptest::option::of((0_u32..4000).prop_map(|parts| Finite::new(f64::from(parts) / 10_000.0).unwrap()))
}

prop_compose! {
    fn extra()(line in proptest::option::of(1_u32..9), what in "[a-z]{3}", minutes in proptest::option::of(0_u32..600), amount in amount()) -> Extra {
        Extra { line: line.map(LineId), what, minutes: minutes.and_then(|minutes| said(f64::from(minutes) / 7.0)), amount }
    }
}

prop_compose! {
    /// A job of up to four clients; designs and sums beside the metal are marked with their client's letter.
    fn job()(
        lines in proptest::collection::vec((0_usize..4, 1_u32..30, 0_usize..3, 1_u32..4), 1..9),
        extras in proptest::collection::vec((0_usize..4, extra()), 0..6),
        (margin, tax, deposit) in (share(), share(), amount()),
    ) -> Job {
        let clients = ["WAX", "QIX", "ZUG", "VEX"];
        let alloys = ["silver-925", "gold-18k-yellow", "brass-yellow"];
        let mut job = order_book();
        job.patterns[2].file = None;
        job.patterns[2].weighed = job.patterns[0].weighed;
        job.orders.clear();
        for (number, (client, pieces, alloy, pattern)) in (1..).zip(lines) {
            let design = format!("{}{number}", ["whelk", "quahog", "zebra", "vole"][client]);
            job.orders.push(order(number, clients[client], vec![line(number, &design, pieces, alloys[alloy], pattern)]));
        }
        job.quotes = (1..).zip(clients).map(|(id, client)| Quote { id: QuoteId(id), client: client.into(), margin, tax, deposit, ..Quote::default() }).collect();
        for (client, extra) in extras {
            let what = format!("{}-{}", ["wash", "quench", "zinc", "vent"][client], extra.what);
            job.quotes[client].extras.push(Extra { what, ..extra });
        }
        let ordered: BTreeSet<String> = job.orders.iter().map(|order| order.client.clone()).collect();
        job.quotes.retain(|quote| ordered.contains(&quote.client));
        job
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    /// The printed sums, read back, add up exactly.
    #[test]
    fn printed_sums_agree_to_the_cent(job in job()) {
        let ready = Ready::new(job, studio());
        for (client, text) in by_client(&ready) {
            sound(&text);
            let sums = sums(&text);
            let ends = ["Before tax", "Total", "Deposit, before work begins", "Left after the deposit"];
            let get = |what: &str| sums.iter().find(|(other, _)| other == what).map(|(_, amount)| *amount);
            let tax = sums.iter().find(|(what, _)| what.starts_with("Tax")).map_or(Decimal::ZERO, |(_, amount)| *amount);
            let parts: Decimal = sums.iter().filter(|(what, _)| !ends.contains(&what.as_str()) && !what.starts_with("Tax")).map(|(_, amount)| *amount).sum();
            let total = get("Total").unwrap_or_else(|| panic!("no total for {client} in\n{text}"));
            prop_assert_eq!(get("Before tax").unwrap_or(total), parts, "{}", text);
            prop_assert_eq!(parts + tax, total, "{}", text);
            if let (Some(deposit), Some(rest)) = (get("Deposit, before work begins"), get("Left after the deposit")) {
                prop_assert_eq!(deposit + rest, total);
            }
            // What is frozen is what is printed.
            let quote = ready.job.quotes.iter().find(|quote| quote.client == client).unwrap();
            prop_assert_eq!(frozen_quote(&ready.input(), quote.id).unwrap().total.decimal(), total);
        }
    }

    /// One client's paper says the same, to the letter, whatever others order.
    #[test]
    fn a_client_s_paper_does_not_change_with_the_others(job in job()) {
        let whole = Ready::new(job, studio());
        nothing_of_others(&whole);
        for (client, text) in by_client(&whole) {
            let mut alone = whole.job.clone();
            alone.orders.retain(|order: &Order| order.client == client);
            alone.quotes.retain(|quote| quote.client == client);
            let alone = by_client(&Ready::new(alone, studio()));
            prop_assert_eq!(of(&alone, &client), text);
        }
    }
}
