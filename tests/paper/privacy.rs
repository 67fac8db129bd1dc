//! Nothing of one client stands on another's paper: not on its pages, not in what the file says of itself.

use std::collections::BTreeMap;

use pourbook::calc::Runs;
use pourbook::job::format::{read_job, read_studio};
use pourbook::job::{Job, Lot, LotId, QuoteState, Receipt, Studio, check};
use pourbook::paper::layout::Format;
use pourbook::paper::{Printed, Sort, as_pages, papers, set};
use pourbook::texts::Texts;
use proptest::test_runner::{Config, TestRunner};

use crate::generate;
use crate::jobs::Ready;
use crate::pages::words;
use crate::world::grams;

/// Gives everything of every client words that stand nowhere else, and the clients metal of their own.
fn told_apart(job: &mut Job, studio: &mut Studio) -> BTreeMap<String, Vec<String>> {
    let mut secrets: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut renamed: BTreeMap<String, String> = BTreeMap::new();
    for order in &mut job.orders {
        let next = renamed.len();
        let client = renamed.entry(order.client.trim().to_owned()).or_insert_with(|| format!("Zq{next}client")).clone();
        let of = secrets.entry(client.clone()).or_insert_with(|| vec![client.clone()]);
        order.client = client;
        order.notes = format!("Zq{}ordered", order.id.0);
        of.push(order.notes.clone());
        for line in &mut order.lines {
            line.design = format!("Zq{}design", line.id.0);
            line.notes = format!("Zq{}noted", line.id.0);
            of.extend([line.design.clone(), line.notes.clone()]);
        }
    }
    for quote in &mut job.quotes {
        // A frozen line says what was written then.
        quote.state = QuoteState::Draft;
        quote.client = renamed.get(quote.client.trim()).cloned().unwrap_or_default();
        quote.orders.clear();
        quote.notes = "Zqnever".into();
    }
    job.quotes.retain(|quote| !quote.client.is_empty());
    studio.lots.clear();
    for (index, (client, of)) in secrets.iter_mut().enumerate() {
        let id = format!("Zq{index}lot");
        of.push(id.clone());
        let receipts = vec![Receipt { grams: grams("12.5"), paper: format!("Zq{index}paper"), ..Receipt::default() }];
        of.push(receipts[0].paper.clone());
        studio.lots.push(Lot { id: LotId(id), owner: client.clone(), metal: "Au".into(), receipts, ..Lot::default() });
    }
    if let Some(tree) = job.trees.first_mut() {
        tree.name = secrets.values().flatten().find(|secret| secret.ends_with("design")).cloned().unwrap_or_default();
    }
    secrets
}

/// Everything a paper says, in words and of itself.
fn everything(printed: &Printed) -> String {
    let laid = as_pages(printed, Format::A4, Texts::english());
    let pages: Vec<String> = laid.leaves.iter().map(words).collect();
    let sections: Vec<&str> = laid.sections.iter().map(|(title, _)| title.as_str()).collect();
    let tags = format!("{:?}", laid.tree);
    [pages.join(" "), sections.join(" "), tags, laid.title, printed.name.clone(), set::set(&printed.paper, Texts::english())].join("\n")
}

/// Looks for everybody's words on everybody else's papers; gives how many papers were looked at.
fn looked_at(job: &Job, studio: &Studio) -> usize {
    let (mut job, mut studio) = (job.clone(), studio.clone());
    let secrets = told_apart(&mut job, &mut studio);
    // The batch may be called by one of them.
    for name in [String::from("Batch"), secrets.keys().next().cloned().unwrap_or_default()] {
        job.name = format!("Castings, {name}");
        let ready = Ready::with_runs(job.clone(), studio.clone(), &Runs::default());
        for sort in [Sort::Quote, Sort::Slip, Sort::Receipt, Sort::Account] {
            for printed in papers(&ready.input(), sort) {
                let text = everything(&printed);
                assert!(text.contains(&printed.client) && !text.contains("Zqnever"), "{sort:?}");
                for (client, of) in secrets.iter().filter(|(client, _)| **client != printed.client) {
                    let told = of.iter().find(|secret| text.contains(secret.as_str()));
                    assert!(told.is_none(), "{sort:?} for {} tells {told:?} of {client}:\n{text}", printed.client);
                }
            }
        }
    }
    let ready = Ready::with_runs(job, studio, &Runs::default());
    [Sort::Quote, Sort::Slip, Sort::Receipt, Sort::Account].into_iter().map(|sort| papers(&ready.input(), sort).len()).sum()
}

#[test]
fn no_sample_tells_one_client_of_another() {
    let studio = read_studio(&std::fs::read("sample-jobs/studio.ron").unwrap()).unwrap().document;
    let mut papers = 0;
    for name in ["first-pour", "mixed-kiln", "workshop-class", "order-book"] {
        let job = read_job(&std::fs::read(format!("sample-jobs/{name}.ron")).unwrap()).unwrap().document;
        papers += looked_at(&job, &studio);
    }
    assert!(papers > 30, "{papers}");
}

#[test]
fn no_job_of_any_kind_tells_one_client_of_another() {
    let mut runner = TestRunner::new(Config { cases: 400, failure_persistence: None, ..Config::default() });
    let papers = std::cell::Cell::new(0);
    runner
        .run(&(generate::job(), generate::studio()), |(job, studio)| {
            papers.set(papers.get() + looked_at(&check::mend(&job).0, &check::mend_studio(&studio).0));
            Ok(())
        })
        .unwrap();
    assert!(papers.get() > 400, "{} papers", papers.get());
}

/// Two clients whose metal is in one melt and whose castings came out of one flask: the account of each tells of the other neither piece nor
/// lot. A parcel goes to a workshop, and says of nobody whose its pieces are.
#[test]
fn an_account_tells_of_one_client_and_a_parcel_of_none() {
    use pourbook::job::{Draw, Entry, Event, Hung, Line, LineId, Order, OrderId, PieceId, RecordId};
    let mut studio = read_studio(&std::fs::read("sample-jobs/studio.ron").unwrap()).unwrap().document;
    let mut job = read_job(&std::fs::read("sample-jobs/own-gold.ron").unwrap()).unwrap().document;
    let metal = Lot { id: LotId("Zqlot".into()), owner: "Zqother".into(), metal: "Au".into(), ..studio.lots[0].clone() };
    studio.lots.push(metal);
    job.melts[0].charge.push(Draw { lot: LotId("Zqlot".into()), grams: grams("1"), notes: "Zqdrawn".into() });
    let line =
        Line { id: LineId(9), design: "Zqdesign".into(), quantity: 1, exceptions: Default::default(), ..job.orders[0].lines[0].clone() };
    job.orders.push(Order { id: OrderId(9), client: "Zqother".into(), lines: vec![line], notes: "Zqnoted".into(), ..Order::default() });
    job.trees[0].pieces.push(Hung { line: LineId(9), ..Hung::default() });
    let piece = PieceId { line: LineId(9), number: 1 };
    let event = Event::PieceWeighed { piece, finished: false, grams: grams("4.44"), after: None };
    job.record.push(Entry { id: RecordId(900), event, ..Entry::default() });
    let ready = Ready::with_runs(job.clone(), studio.clone(), &Runs::default());
    let accounts = papers(&ready.input(), Sort::Account);
    assert_eq!(accounts.iter().map(|one| one.client.as_str()).collect::<Vec<_>>(), ["M", "Zqother"]);
    let [of_m, of_other] = [0, 1].map(|at| everything(&accounts[at]));
    assert!(of_m.contains("Urchin band") && !of_m.contains("Zq"), "{of_m}");
    assert!(of_other.contains("Zqdesign") && of_other.contains("4.44") && !of_other.contains("Urchin"), "{of_other}");
    // The parcel of the sample holds the pieces of its own client alone; now they have a name that stands nowhere else.
    job.orders[0].client = "Zqclient".into();
    let parcels = papers(&Ready::with_runs(job, studio, &Runs::default()).input(), Sort::Parcel);
    let [parcel] = &parcels[..] else { panic!("{} parcels", parcels.len()) };
    let text = everything(parcel);
    assert!(text.contains("Urchin band") && !text.contains("Zq"), "{text}");
}
