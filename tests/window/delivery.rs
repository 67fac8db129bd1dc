//! One batch from the order to the client: mixed, fired and poured at the bench view, weighed, marked, repaired, handed over; once by mouse, once by
//! keys alone.

use eframe::egui::{Key, Modifiers};
use pourbook::app::page::Page;
use pourbook::job::{Event, FinishStep, FlaskId, OutFor, PieceStage, follow, standing};
use pourbook::paper::{Sort, papers};
use pourbook::quantity::Style;
use pourbook::texts::Texts;

use egui_kittest::kittest::{NodeT, Queryable};

use super::hands::{Hands, Way, words};
use super::{USUAL, on_sample};

fn job(hands: &Hands) -> pourbook::job::Job {
    pourbook::job::Job::clone(&hands.harness.state().workbook.job)
}

/// Every step at the bench, one after the other, until the view closes by itself.
fn bench(hands: &mut Hands) -> usize {
    hands.key(Modifiers::NONE, Key::F5);
    let mut steps = 0;
    while hands.harness.state().workbook.view.bench.is_some() {
        match hands.way {
            Way::Keys => hands.key(Modifiers::NONE, Key::Space),
            Way::Mouse => hands.press(&words("bench-key-done")),
        }
        steps += 1;
        assert!(steps < 40, "it comes to its end");
    }
    steps
}

/// The pieces of the batch as the board tells of them.
fn all(hands: &Hands) -> Vec<String> {
    let boxes = hands.harness.query_all_by_role(eframe::egui::accesskit::Role::CheckBox);
    let names = boxes.filter_map(|node| node.accesskit_node().label());
    names.filter(|name| name.matches(", ").count() >= 4).collect()
}

fn tick_all(hands: &mut Hands) -> usize {
    let names = all(hands);
    for name in &names {
        hands.tick(name);
    }
    names.len()
}

fn reached(hands: &mut Hands, stage: &str) {
    hands.choose(&words("pieces-reached"), &words(stage));
    hands.press(&words("pieces-reached-do"));
}

fn deliver(way: Way) {
    let mut hands = Hands::new(on_sample("first-pour.ron", USUAL), way);
    let steps = bench(&mut hands);
    assert!(steps >= 9, "{steps}: weighed, mixed, vacuumed, rested, fired, charged, poured, quenched");
    hands.go(Page::Investment);
    hands.fill(&words("invest-really-lot"), "P-07");
    hands.press(&words("invest-mark"));
    hands.go(Page::Burnout);
    hands.press(&words("heat-went-in"));
    hands.press(&words("heat-came-out"));
    hands.go(Page::Pour);
    hands.fill(&words("pour-really-metal"), "1000");
    hands.fill(&words("pour-really-charge"), "51.0");
    hands.press(&words("pour-mark"));
    assert!(follow(&job(&hands)).iter().all(|one| one.stage == Some(PieceStage::Cast)), "a flask moves its pieces");
    hands.go(Page::Finish);
    hands.fill(&words("finish-good"), "33.4");
    hands.fill(&words("finish-sprues"), "16.9");
    hands.go(Page::Pieces);
    let many = tick_all(&mut hands);
    reached(&mut hands, "reached-cut-off");
    // One is followed closely: weighed, sized, weighed again.
    let one = all(&hands)[0].clone();
    hands.tick(&one);
    hands.unfold(&words("pieces-weigh"));
    hands.fill(&words("pieces-weighs"), "4.30");
    let one = all(&hands)[0].clone();
    hands.tick(&one);
    hands.unfold(&words("pieces-rework"));
    hands.fill(&words("pieces-rework-added"), "0.12");
    hands.fill(&words("pieces-rework-size"), "55");
    hands.press(&words("pieces-rework-do"));
    let one = all(&hands)[0].clone();
    assert!(one.contains(", 55"), "its size is the new one: {one}");
    hands.tick(&one);
    hands.choose(&words("pieces-weigh-after"), &words("finish-step-polished"));
    hands.fill(&words("pieces-weighs"), "4.12");
    // Out to be marked, with a slip, and back.
    assert_eq!(tick_all(&mut hands), many);
    hands.unfold(&words("pieces-send"));
    hands.fill(&words("pieces-out-whom"), "assay office");
    hands.press(&words("pieces-send-do"));
    assert!(follow(&job(&hands)).iter().all(|one| one.stage == Some(PieceStage::Out)));
    slip(&hands, "assay office");
    tick_all(&mut hands);
    hands.press(&words("pieces-back-do"));
    assert_eq!(tick_all(&mut hands), many);
    reached(&mut hands, "reached-delivered");
    let job = job(&hands);
    assert!(follow(&job).iter().all(|one| one.stage == Some(PieceStage::Delivered)), "all is with the clients");
    let told: Vec<&Event> = standing(&job.record).map(|entry| &entry.event).collect();
    let is = |wanted: fn(&Event) -> bool| told.iter().any(|event| wanted(event));
    assert!(is(
        |event| matches!(event, Event::Invested { flask: FlaskId(1), plan, done } if done.lot == "P-07" && !plan.figures.is_empty())
    ));
    assert!(is(|event| matches!(event, Event::Poured { plan, .. } if !plan.figures.is_empty())), "the plan is frozen with it");
    assert!(is(|event| matches!(event, Event::PieceWeighed { finished: true, after: Some(FinishStep::Polished), .. })));
    assert!(is(|event| matches!(event, Event::SentOut { sent, .. } if sent.what_for == OutFor::Hallmark)));
}

/// The slip of the parcel names what lies in it.
fn slip(hands: &Hands, to: &str) {
    let workbook = &hands.harness.state().workbook;
    let input = workbook.computed.sheet_input(&workbook.setting, Texts::english(), &Style::METRIC);
    let slips = papers(&input, Sort::Parcel);
    assert_eq!(slips.len(), 1);
    let text = pourbook::paper::as_text(&slips, Sort::Parcel, Texts::english());
    assert!(text.contains(to) && text.contains("Limpet ring") && text.contains("4.12"), "{text}");
}

#[test]
fn from_the_order_to_the_client_by_keys_alone() {
    deliver(Way::Keys);
}

#[test]
fn from_the_order_to_the_client_by_mouse() {
    deliver(Way::Mouse);
}
