//! The tree as it stands: pieces are pointed out, drawn along and moved by keys, each in one step that can be taken back.

use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers, PointerButton, Pos2, Rect, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::job::{LineId, Place, Placed, Tree, TreeId};
use pourbook::stock::EntryId;

use super::hands::{Hands, Way, words};
use super::shapes::texts;
use super::{Sight, USUAL, on_sample};

const TALL: Sight = Sight { height: 2000.0, ..USUAL };

fn on_trees() -> Harness<'static, Window> {
    let mut harness = on_sample("first-pour.ron", TALL);
    harness.state_mut().workbook.view.page = Page::Trees;
    harness.run();
    harness
}

fn tree(harness: &Harness<'static, Window>) -> Tree {
    harness.state().workbook.job.trees[0].clone()
}

fn placed(harness: &Harness<'static, Window>, piece: (LineId, u32)) -> Option<Placed> {
    tree(harness).placed.into_iter().find(|placed| (placed.line, placed.number) == piece)
}

fn sight(harness: &Harness<'static, Window>, nth: usize) -> Rect {
    let mut images =
        harness.query_all_by_role(Role::Image).map(|node| node.rect()).filter(|rect| rect.height() > 150.0).collect::<Vec<_>>();
    images.sort_by(|a, b| a.left().total_cmp(&b.left()));
    images[nth]
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE }
}

/// A place in a drawing where a piece is, and which one.
fn some_piece(harness: &mut Harness<'static, Window>, rect: Rect) -> (Pos2, (LineId, u32)) {
    for n in 0..400_u16 {
        let at = rect.min + vec2(f32::from(n % 20) + 0.5, f32::from(n / 20) + 0.5) / 20.0 * rect.size();
        harness.hover_at(at);
        harness.event(button(at, true));
        harness.event(button(at, false));
        harness.run();
        if let Some(piece) = harness.state().workbook.view.hung {
            return (at, piece);
        }
    }
    panic!("no piece in {rect:?}");
}

#[test]
fn a_piece_is_drawn_along_in_one_step() {
    for nth in [0, 1] {
        let mut harness = on_trees();
        let before = tree(&harness);
        let rect = sight(&harness, nth);
        let (at, piece) = some_piece(&mut harness, rect);
        assert_eq!(tree(&harness), before, "pointing it out changes nothing");
        harness.hover_at(at);
        harness.event(button(at, true));
        harness.run_steps(1);
        for step in 1..=6_u8 {
            harness.hover_at(at + vec2(3.0, 5.0) * f32::from(step));
            harness.run_steps(1);
        }
        let end = at + vec2(18.0, 30.0);
        harness.event(button(end, false));
        harness.run();
        let own = placed(&harness, piece).expect("it has a place of its own");
        let pieces = before.pieces.len();
        assert!(tree(&harness).placed.len() >= pieces, "the others are held where they were");
        assert!(own.around_deg.is_some());
        if nth == 0 {
            // Thirty points of a flask of 102 mm in some 420: nearly a centimetre.
            assert!(own.height_mm.is_some() && own.tier.is_none(), "{own:?}");
        } else {
            assert!(own.height_mm.is_none(), "from above nothing moves up: {own:?}");
        }
        harness.state_mut().workbook.undo();
        assert_eq!(tree(&harness), before, "one step back");
    }
}

#[test]
fn beside_the_pieces_the_whole_is_turned_and_no_document_changes() {
    let mut harness = on_trees();
    let (before, rect) = (tree(&harness), sight(&harness, 0));
    let at = rect.left_bottom() + vec2(3.0, -3.0);
    harness.hover_at(at);
    harness.event(button(at, true));
    harness.run_steps(1);
    harness.hover_at(at + vec2(40.0, 0.0));
    harness.run_steps(1);
    harness.event(button(at + vec2(40.0, 0.0), false));
    harness.run();
    assert!(harness.state().workbook.view.turn_deg > 10.0);
    assert_eq!(tree(&harness), before);
}

#[test]
fn keys_choose_move_and_turn_a_piece() {
    let mut harness = on_trees();
    harness.state_mut().workbook.view.hung = None;
    let says = harness.query_all_by_role(Role::Image).find(|node| node.rect().height() > 150.0).unwrap();
    says.focus();
    harness.run();
    harness.key_press(Key::PageDown);
    harness.run();
    let piece = harness.state().workbook.view.hung.expect("the first piece");
    for (key, of) in [
        (Key::ArrowUp, (|placed: &Placed| placed.height_mm.is_some()) as fn(&Placed) -> bool),
        (Key::ArrowRight, |placed: &Placed| placed.around_deg.is_some_and(|around| around.get() > 0.0)),
        (Key::T, |placed: &Placed| placed.turn_deg.is_some_and(|turn| (turn.get() - 15.0).abs() < 1e-9)),
    ] {
        harness.key_press(key);
        harness.run();
        let own = placed(&harness, piece);
        assert!(own.as_ref().is_some_and(of), "{key:?}: {own:?}");
    }
    // The focus is still there, and a comma turns the whole.
    harness.key_press(Key::Period);
    harness.run();
    assert!((harness.state().workbook.view.turn_deg - 15.0).abs() < 1e-9);
}

#[test]
fn a_place_is_typed_and_given_up_by_mouse_and_by_keys() {
    for way in [Way::Mouse, Way::Keys] {
        let mut hands = Hands::new(on_sample("first-pour.ron", USUAL), way);
        hands.go(Page::Trees);
        hands.row("Limpet ring 1, A");
        hands.fill(&format!("Limpet ring 1, A, {}", words("trees-joint")), "14.5");
        hands.fill(&format!("Limpet ring 1, A, {}", words("trees-around")), "75");
        hands.fill(&format!("Limpet ring 1, A, {}", words("trees-piece-turn")), "90");
        hands.fill(&format!("Limpet ring 1, A, {}", words("trees-piece-sprue")), "2");
        let number = |number: f64| pourbook::quantity::Finite::new(number);
        let own = placed(&hands.harness, (LineId(1), 1)).unwrap();
        assert_eq!((own.height_mm, own.around_deg, own.turn_deg, own.sprue), (number(14.5), number(75.0), number(90.0), Some(2)));
        hands.unfold(&words("trees-tiers"));
        hands.fill(&format!("{} 2", words("trees-tier-height")), "22");
        assert_eq!(tree(&hands.harness).tiers[1].height_mm, number(22.0));
        hands.press(&words("trees-unplace"));
        assert_eq!(placed(&hands.harness, (LineId(1), 1)), None);
    }
}

/// Waits until the arrangement ends.
fn arranged(hands: &mut Hands) {
    for _ in 0..4000 {
        hands.harness.state_mut().workbook.take_arrangement();
        if hands.harness.state().workbook.arranger.outcome(TreeId(3)).is_some() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    hands.settle();
}

fn says(hands: &Hands, part: &str) -> bool {
    let all: Vec<String> = texts(&hands.harness.output().shapes).into_iter().map(|text| text.words).collect();
    all.join(" ").split_whitespace().collect::<Vec<_>>().join(" ").contains(part)
}

#[test]
fn a_tree_is_arranged_in_one_step_or_the_reason_is_told_with_its_figures() {
    for way in [Way::Mouse, Way::Keys] {
        let mut hands = Hands::new(on_sample("three-trees.ron", TALL), way);
        let small_things = |hands: &Hands| hands.harness.state().workbook.job.trees[2].clone();
        let workbook = &mut hands.harness.state_mut().workbook;
        workbook.view.page = Page::Trees;
        workbook.view.tree = Some(TreeId(3));
        workbook.edit("spread", |job| job.trees[2].placed.clear());
        hands.settle();
        let before = small_things(&hands);
        hands.press(&words("trees-arrange"));
        arranged(&mut hands);
        assert_eq!(small_things(&hands).placed.len(), 24);
        assert!(says(&hands, "All 24 pieces hang"), "what came of it is said");
        let tight = ["parts-touch", "parts-near", "piece-near-trunk", "wall-clearance", "top-clearance"];
        let here = hands.harness.state().report().findings.iter().filter(|found| found.place == Place::Tree(TreeId(3)));
        assert_eq!(here.filter(|found| tight.contains(&found.kind.key)).count(), 0);
        hands.harness.state_mut().workbook.undo();
        assert_eq!(small_things(&hands), before, "one step back");
        // Whelks of 26 mm do not go into a narrow flask, however they are turned.
        hands.harness.state_mut().workbook.edit("narrow", |job| job.flasks[2].vessel = EntryId::new("flask-51x64"));
        hands.settle();
        hands.press(&words("trees-arrange"));
        arranged(&mut hands);
        assert!(small_things(&hands).placed.is_empty());
        assert!(says(&hands, "needs a flask"), "the reason is told");
        assert!(says(&hands, "and this one has"), "with what it has");
    }
}

#[test]
fn a_smaller_flask_is_offered_only_where_it_is_smaller() {
    let mut hands = Hands::new(on_sample("three-trees.ron", TALL), Way::Mouse);
    hands.go(Page::Flasks);
    assert!(!says(&hands, "The smallest that takes"), "the perforated one is as small as the solid one");
    hands.harness.state_mut().workbook.edit("larger", |job| job.flasks[0].vessel = EntryId::new("flask-102x203"));
    hands.settle();
    assert!(says(&hands, "The smallest that takes this tree is 102×152"));
    hands.press(&words("flasks-smallest-take"));
    assert_eq!(hands.harness.state().workbook.job.flasks[0].vessel, EntryId::new("flask-102x152"));
}
