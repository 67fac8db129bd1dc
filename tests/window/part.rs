//! The shaded view of a pattern under mouse and keys.

use std::sync::Arc;
use std::time::Duration;

use eframe::egui::accesskit::Role;
use eframe::egui::{
    Event, Id, Key, Modifiers, MouseWheelSource, MouseWheelUnit, PointerButton, Pos2, Rect, Theme as EguiTheme, TouchPhase, Ui, vec2,
};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::theme::{self, Tokens};
use pourbook::app::widget::part::{Dress, Part, Shown, part};
use pourbook::mesh::FaultyEdges;
use pourbook::mesh::Unwatched;
use pourbook::mesh::look::{Hit, Model, Palette};
use pourbook::texts::Texts;

use super::hands::words;

const NAME: &str = "Two blocks";

struct Bench {
    model: Arc<Model>,
    paint: Option<Arc<Palette>>,
    edges: Arc<FaultyEdges>,
    clicked: Option<Hit>,
    shown: Option<Shown>,
}

/// A tall block and a small one beside it, so that no two sides are alike.
fn blocks() -> Vec<[[f32; 3]; 3]> {
    let block = |low: [f32; 3], high: [f32; 3]| {
        let at = |k: usize| -> [f32; 3] { std::array::from_fn(|axis| if k >> axis & 1 == 1 { high[axis] } else { low[axis] }) };
        let quads = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
        quads.map(|q: [usize; 4]| [[at(q[0]), at(q[1]), at(q[2])], [at(q[0]), at(q[2]), at(q[3])]]).concat()
    };
    [block([0.0; 3], [8.0, 6.0, 12.0]), block([10.0, 0.0, 0.0], [13.0, 3.0, 4.0])].concat()
}

fn harness() -> Harness<'static, Bench> {
    let edges = FaultyEdges { open: vec![[[8.0, 0.0, 0.0], [8.0, 0.0, 12.0]]], mixed: Vec::new() };
    let model = Arc::new(Model::new(&blocks(), &Unwatched).unwrap());
    let bench = Bench { model, paint: None, edges: Arc::new(edges), clicked: None, shown: None };
    let mut harness = Harness::builder()
        .with_size(vec2(560.0, 460.0))
        .with_theme(EguiTheme::Light)
        .with_max_steps(16)
        .with_context_setup(theme::install)
        .build_ui_state(
            |ui: &mut Ui, bench: &mut Bench| {
                let dress = Dress { tokens: Tokens::of(ui.ctx()), texts: Texts::english(), comma: false };
                let Bench { model, paint, edges, .. } = bench;
                let shown = Part {
                    id: Id::unique("test-part"),
                    model,
                    size: vec2(520.0, 340.0),
                    name: NAME,
                    pins: &[],
                    paint: paint.as_ref(),
                    edges: Some(edges),
                };
                let shown = part(ui, &dress, &shown);
                bench.clicked = shown.clicked.or(bench.clicked);
                bench.shown = Some(shown);
            },
            bench,
        );
    settle(&mut harness);
    harness
}

/// Waits until the fine picture stands.
fn settle(harness: &mut Harness<'static, Bench>) {
    harness.run_steps(3);
    for _ in 0..400 {
        if harness.state().shown.as_ref().unwrap().is_fine {
            return;
        }
        std::thread::sleep(Duration::from_millis(10));
        harness.step();
    }
    panic!("no fine picture came");
}

fn rect(harness: &Harness<'static, Bench>) -> Rect {
    harness.state().shown.as_ref().unwrap().response.rect
}

/// What is seen at places all over the picture, by moving the mouse there: triangles and points, to a thousandth of a mm.
fn seen(harness: &mut Harness<'static, Bench>) -> Vec<Option<(Option<u32>, [i64; 3])>> {
    let rect = rect(harness);
    let mut seen = Vec::new();
    for (x, y) in (1..8).flat_map(|x| (1..6).map(move |y| (x as f32 / 8.0, y as f32 / 6.0))) {
        harness.hover_at(rect.lerp_inside(vec2(x, y)));
        harness.step();
        let hovered = harness.state().shown.as_ref().unwrap().hovered;
        seen.push(hovered.map(|hit| (hit.triangle, hit.point_mm.map(|part| (part * 1000.0).round() as i64))));
    }
    seen
}

fn press(harness: &mut Harness<'static, Bench>, modifiers: Modifiers, key: Key) {
    harness.key_press_modifiers(modifiers, key);
    harness.step();
    settle(harness);
}

fn with_focus() -> Harness<'static, Bench> {
    let mut harness = harness();
    harness.get_by_role_and_label(Role::Canvas, NAME).focus();
    harness.run_steps(2);
    harness
}

fn drag(harness: &mut Harness<'static, Bench>, modifiers: Modifiers, button: PointerButton, by: eframe::egui::Vec2) {
    let from = rect(harness).center();
    let press = |harness: &Harness<'static, Bench>, pos: Pos2, pressed| {
        harness.event_modifiers(Event::PointerButton { pos, button, pressed, modifiers }, modifiers);
    };
    harness.hover_at(from);
    harness.step();
    press(harness, from, true);
    harness.step();
    for part in 1..=4 {
        harness.event_modifiers(Event::PointerMoved(from + by * (part as f32 / 4.0)), modifiers);
        harness.step();
    }
    press(harness, from + by, false);
    harness.step();
    settle(harness);
}

#[test]
fn the_picture_and_every_tool_have_names() {
    let mut harness = harness();
    let picture = harness.get_by_role_and_label(Role::Canvas, NAME);
    assert_eq!(picture.accesskit_node().description().unwrap_or_default(), words("part-how"));
    for key in ["part-front", "part-back", "part-left", "part-right", "part-top", "part-bottom", "part-corner", "part-fit", "part-cut"] {
        assert!(harness.query_by_label(&words(key)).is_some(), "{key}");
    }
    assert!(harness.query_by_label(&words("part-cut-x")).is_none(), "no cut yet");
    harness.get_by_label(&words("part-cut")).click();
    harness.run_steps(2);
    for key in ["part-cut-x", "part-cut-y", "part-cut-z", "part-cut-on", "part-cut-back", "part-cut-round"] {
        assert!(harness.query_by_label(&words(key)).is_some(), "{key}");
    }
}

#[test]
fn keys_turn_move_zoom_and_fit() {
    let mut harness = with_focus();
    let start = seen(&mut harness);
    assert!(start.iter().flatten().count() > 8, "{start:?}");
    for (key, back) in [(Key::ArrowLeft, Key::ArrowRight), (Key::ArrowUp, Key::ArrowDown)] {
        for modifiers in [Modifiers::NONE, Modifiers::SHIFT] {
            press(&mut harness, modifiers, key);
            assert_ne!(seen(&mut harness), start, "{key:?} {modifiers:?}");
            press(&mut harness, modifiers, back);
            assert_eq!(seen(&mut harness), start, "{key:?} {modifiers:?} and back");
        }
    }
    press(&mut harness, Modifiers::NONE, Key::Plus);
    press(&mut harness, Modifiers::SHIFT, Key::ArrowRight);
    assert_ne!(seen(&mut harness), start);
    press(&mut harness, Modifiers::NONE, Key::Num0);
    assert_eq!(seen(&mut harness), start);
    // The sides are told apart, and the last of them is where it began.
    let numbers = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7];
    let mut sides: Vec<_> = Vec::new();
    for key in numbers {
        press(&mut harness, Modifiers::NONE, key);
        sides.push(seen(&mut harness));
    }
    assert_eq!(sides[6], start);
    for (at, side) in sides.iter().enumerate() {
        assert!(!sides[..at].contains(side), "side {at}");
    }
    assert!(harness.get_by_role_and_label(Role::Canvas, NAME).accesskit_node().is_focused(), "no arrow led away");
}

#[test]
fn the_mouse_turns_moves_zooms_and_fits() {
    let mut harness = harness();
    let start = seen(&mut harness);
    for (modifiers, button) in
        [(Modifiers::NONE, PointerButton::Primary), (Modifiers::SHIFT, PointerButton::Primary), (Modifiers::NONE, PointerButton::Secondary)]
    {
        drag(&mut harness, modifiers, button, vec2(60.0, -25.0));
        assert_ne!(seen(&mut harness), start);
        drag(&mut harness, modifiers, button, vec2(-60.0, 25.0));
        let back = seen(&mut harness);
        assert_eq!(back.iter().map(Option::is_some).collect::<Vec<_>>(), start.iter().map(Option::is_some).collect::<Vec<_>>());
    }
    // What is under the pointer stays there while the wheel turns.
    let at = rect(&harness).lerp_inside(vec2(0.45, 0.4));
    let under = |harness: &Harness<'static, Bench>| harness.state().shown.as_ref().unwrap().hovered.unwrap().point_mm;
    harness.hover_at(at);
    harness.run_steps(2);
    let before = under(&harness);
    let (unit, phase, source) = (MouseWheelUnit::Point, TouchPhase::Move, MouseWheelSource::Unknown);
    harness.event(Event::MouseWheel { unit, delta: vec2(0.0, 120.0), phase, source, modifiers: Modifiers::NONE });
    harness.run_steps(12);
    settle(&mut harness);
    let after = under(&harness);
    let apart = (0..3).map(|axis| (before[axis] - after[axis]).powi(2)).sum::<f64>().sqrt();
    assert!(apart < 0.12, "{before:?} {after:?}");
    assert_ne!(seen(&mut harness), start);
    harness.get_by_label(&words("part-fit")).click();
    harness.step();
    harness.get_by_label(&words("part-corner")).click();
    harness.step();
    settle(&mut harness);
    assert_eq!(seen(&mut harness), start);
}

#[test]
fn a_cut_opens_the_part_and_moves() {
    let mut harness = with_focus();
    let start = seen(&mut harness);
    let on_cut = |seen: &[Option<(Option<u32>, [i64; 3])>]| seen.iter().flatten().filter(|(triangle, _)| triangle.is_none()).count();
    assert_eq!(on_cut(&start), 0);
    press(&mut harness, Modifiers::NONE, Key::C);
    let cut = seen(&mut harness);
    // Half of 6 mm deep: the face of the cut lies at y = 3.
    let places: Vec<i64> = cut.iter().flatten().filter(|(triangle, _)| triangle.is_none()).map(|(_, point)| point[1]).collect();
    assert!(places.len() > 2 && places.iter().all(|y| (y - 3000).abs() < 2), "{places:?}");
    press(&mut harness, Modifiers::NONE, Key::PageUp);
    let moved = seen(&mut harness);
    assert!(moved.iter().flatten().any(|(triangle, point)| triangle.is_none() && (point[1] - 3120).abs() < 2), "{moved:?}");
    press(&mut harness, Modifiers::NONE, Key::Comma);
    assert_eq!(seen(&mut harness), cut);
    press(&mut harness, Modifiers::NONE, Key::Z);
    assert!(seen(&mut harness).iter().flatten().any(|(triangle, point)| triangle.is_none() && (point[2] - 6000).abs() < 2));
    press(&mut harness, Modifiers::NONE, Key::C);
    assert_eq!(seen(&mut harness), start);
}

#[test]
fn a_click_and_the_space_bar_pick_a_place() {
    let mut harness = with_focus();
    press(&mut harness, Modifiers::NONE, Key::Num1);
    let at = rect(&harness).center();
    harness.hover_at(at);
    harness.step();
    harness.drag_at(at);
    harness.step();
    harness.drop_at(at);
    harness.run_steps(2);
    let clicked = harness.state_mut().clicked.take().expect("a click hits");
    // From the front: on the face at y = 0, in the middle of what both blocks fill.
    assert!(
        clicked.point_mm[1].abs() < 1e-3 && (clicked.point_mm[0] - 6.5).abs() < 0.1 && (clicked.point_mm[2] - 6.0).abs() < 0.1,
        "{clicked:?}"
    );
    assert!(matches!(clicked.triangle, Some(4 | 5)), "{clicked:?}");
    harness.key_press(Key::Space);
    harness.run_steps(2);
    let picked = harness.state_mut().clicked.take().expect("the middle is picked");
    assert_eq!(picked.triangle, clicked.triangle);
}

#[test]
fn nothing_is_drawn_again_while_nothing_changes() {
    let mut harness = harness();
    harness.run_steps(3);
    let pictures = |harness: &Harness<'static, Bench>| harness.state().shown.as_ref().unwrap().pictures;
    let before = pictures(&harness);
    assert!(before >= 2, "a rough one and a fine one");
    harness.run_steps(5);
    assert_eq!(pictures(&harness), before);
    let many = harness.state().model.triangles().len();
    harness.state_mut().paint = Some(Arc::new(Palette { colours: vec![[20, 90, 60]], of: vec![0; many] }));
    harness.step();
    assert_eq!(pictures(&harness), before + 1, "new paint is seen");
    harness.ctx.set_theme(EguiTheme::Dark);
    harness.run_steps(2);
    assert!(pictures(&harness) > before + 1, "so is the evening");
    settle(&mut harness);
}
