//! The files as documents.

use std::collections::BTreeMap;

use pourbook::calc::all_rules;
use pourbook::files::batch::Batch;
use pourbook::job::format::{read_job, read_studio, write_job, write_studio};
use pourbook::job::{Job, LotKind, carry};
use pourbook::stock::{Overlay, OverlayItem, Shelf};

use crate::support::{JOBS, computed, open, path, planned};

#[test]
fn nothing_in_them_is_at_fault() {
    for file in JOBS {
        let batch = open(file);
        assert_eq!(batch.faults, [], "{file}");
        assert!(!batch.read_only, "{file}");
    }
}

#[test]
fn saving_gives_the_same_bytes() {
    for file in JOBS {
        let bytes = std::fs::read(path(file)).expect("the sample is there");
        let job = read_job(&bytes).unwrap_or_else(|error| panic!("{file}: {error}")).document;
        assert_eq!(write_job(&job).expect("it can be written").into_bytes(), bytes, "{file}: run the tool canonical");
    }
    let bytes = std::fs::read(path("studio.ron")).expect("the studio is there");
    let studio = read_studio(&bytes).unwrap_or_else(|error| panic!("studio.ron: {error}")).document;
    assert_eq!(write_studio(&studio).expect("it can be written").into_bytes(), bytes, "studio.ron: run the tool canonical");
}

#[test]
fn every_job_carries_the_shelf_entries_it_names() {
    for file in JOBS {
        let Batch { job, studio, .. } = open(file);
        let (shelf, notes) = Shelf::with_overlay(&Overlay(studio.shelf));
        assert_eq!(notes, [], "the studio's own shelf");
        let mut fresh = Job { shelf: Vec::new(), ..job.clone() };
        carry::take_copies(&mut fresh, &shelf);
        let differing: Vec<_> = fresh.shelf.iter().filter(|copied| !job.shelf.contains(copied)).map(|copied| copied.entry.id()).collect();
        assert_eq!(differing, Vec::<&pourbook::stock::EntryId>::new(), "{file}: run the tool canonical with --retake");
        assert_eq!(fresh.shelf.len(), job.shelf.len(), "{file}");
    }
}

#[test]
fn the_studio_has_an_entry_of_its_own_that_a_job_uses() {
    let Batch { job, studio, .. } = open("first-pour.ron");
    let own: Vec<_> = studio.shelf.iter().filter(|item| matches!(item, OverlayItem::Add(_))).map(OverlayItem::id).collect();
    let named = carry::named_entries(&job);
    assert!(own.iter().any(|id| named.contains(id)), "{own:?}");
}

#[test]
fn pieces_taken_on_stand_in_the_job_they_come_from() {
    let jobs: BTreeMap<_, Job> = JOBS.iter().map(|file| open(file).job).map(|job| (job.job_id, job)).collect();
    assert_eq!(jobs.len(), JOBS.len(), "every job has an id of its own");
    let mut taken = Vec::new();
    for (id, job) in &jobs {
        for (order, line) in job.lines() {
            for from in line.exceptions.values().filter_map(|exception| exception.from) {
                assert_ne!(from.job, *id, "a piece does not come from its own job");
                let other = &jobs[&from.job];
                let (from_order, from_line) = other.lines().find(|(_, line)| line.id == from.piece.line).expect("the line is there");
                assert!((1..=from_line.quantity).contains(&from.piece.number), "{from:?}");
                let cancelled = from_line.exceptions.get(&from.piece.number).is_some_and(|exception| exception.cancelled);
                assert!(!cancelled, "{from:?}");
                assert_eq!((&from_order.client, &from_line.design, &from_line.alloy), (&order.client, &line.design, &line.alloy));
                taken.push(from.piece);
            }
        }
    }
    assert_eq!(taken.len(), 8);
    taken.sort();
    taken.dedup();
    assert_eq!(taken.len(), 8, "no piece is taken on twice");
}

#[test]
fn no_lot_is_drawn_beyond_what_came_in() {
    let studio = open("first-pour.ron").studio;
    let mut left: BTreeMap<_, _> = BTreeMap::new();
    for lot in &studio.lots {
        left.insert(lot.id.clone(), lot.receipts.iter().map(|receipt| receipt.grams.decimal()).sum::<rust_decimal::Decimal>());
        assert!(lot.owner.is_empty() || lot.receipts.iter().all(|receipt| !receipt.paper.is_empty()), "a client's metal has a receipt");
        assert!(lot.what != LotKind::Scrap || lot.melts > 0 || !lot.owner.is_empty(), "scrap of our own was melted before");
    }
    for draw in JOBS.iter().flat_map(|file| open(file).job.melts).flat_map(|melt| melt.charge) {
        // The class draws on a lot that nobody has: that is one of its findings.
        if let Some(left) = left.get_mut(&draw.lot) {
            *left -= draw.grams.decimal();
        }
    }
    // The class drew a little of H's gold after H's own ring had all of it: its own finding, and the only overdrawn lot.
    let overdrawn: Vec<_> = left.iter().filter(|(_, grams)| grams.is_sign_negative()).map(|(lot, _)| lot.to_string()).collect();
    assert_eq!(overdrawn, ["H-1"]);
}

#[test]
fn a_quote_that_was_sent_adds_up() {
    let job = open("order-book.ron").job;
    let mut sent_quotes = 0;
    for quote in &job.quotes {
        let pourbook::job::QuoteState::Sent(sent) = &quote.state else { continue };
        sent_quotes += 1;
        let money = |money: pourbook::quantity::Money| money.decimal();
        for line in &sent.lines {
            assert_eq!(money(line.metal), (line.grams.decimal() * money(line.per_gram)).round_dp(2), "{}", line.text);
            assert_eq!(money(line.sum), money(line.metal) + money(line.other), "{}", line.text);
        }
        assert_eq!(money(sent.net), sent.lines.iter().map(|line| money(line.sum)).sum());
        assert_eq!(money(sent.total), money(sent.net) + money(sent.tax));
    }
    assert_eq!(sent_quotes, 1);
}

#[test]
fn together_they_reach_every_rule() {
    let mut missing: Vec<&str> = all_rules().iter().map(|rule| rule.id).collect();
    for file in JOBS {
        let batch = open(file);
        let (_, book) = computed(&batch, &batch.sound);
        missing.retain(|rule| book.figures().all(|figure| figure.origin.key() != *rule));
    }
    let planned = planned("fair.ron");
    missing.retain(|rule| planned.figures().all(|figure| figure.origin.key() != *rule));
    assert_eq!(missing, Vec::<&str>::new());
}
