//! The tree as it stands in its flask, from the side and from above, to scale: pieces are taken hold of, or moved by keys.

use eframe::egui::{EventFilter, Key, Modifiers, Response, RichText, Sense, Ui, vec2};

use super::place::{direction, hold, place, rounded};
use super::{arrange, change, spot};
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::drawing::{Landed, handled};
use crate::app::widget::{button, heading};
use crate::calc::places::Spot;
use crate::drawing::flask::{Plan, from_above, section};
use crate::drawing::primitive::Point;
use crate::drawing::tree::{Shown, Sight, holds};
use crate::job::{LineId, Tree};
use crate::paper::{Drawn, Look, plan_of_tree};
use crate::quantity::Finite;

/// Degrees and millimetres that an arrow key moves a piece by; a tenth of it with Shift.
const KEY_DEG: f64 = 5.0;
const KEY_MM: f64 = 1.0;
/// Degrees that a key turns a piece, or the whole, by.
const KEY_TURN: f64 = 15.0;
/// Degrees that the whole turns by when it is drawn one point aside.
const DRAG_DEG: f64 = 0.6;

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("trees-standing"), &tokens);
    let report = &cx.computed.report;
    let Some(outline) = report.trees.iter().find(|figures| figures.id == tree.id).map(|figures| &figures.outline) else { return };
    let spots = outline.spots.clone();
    if tree.pieces.is_empty() || spots.is_empty() {
        let what = if tree.pieces.is_empty() { "trees-standing-no-pieces" } else { "trees-standing-no-main" };
        heading::says(ui, &cx.label(what), &tokens);
        return;
    }
    let chosen = cx.view.hung.filter(|piece| spots.iter().any(|spot| (spot.line, spot.number) == *piece));
    let look = Look { turn_deg: cx.view.turn_deg, chosen };
    let drawn = plan_of_tree(&cx.sheet_input(), tree, look);
    let width = ui.available_width();
    let beside = width >= 620.0;
    let wide = if beside { (width - 2.0 * STEP) * 0.56 } else { width.min(460.0) };
    if beside {
        ui.horizontal_top(|ui| {
            ui.vertical(|ui| one_sight(ui, cx, tree, &spots, &drawn, (Sight::Side(look.turn_deg), wide)));
            ui.vertical(|ui| one_sight(ui, cx, tree, &spots, &drawn, (Sight::Above(look.turn_deg), width - wide - 2.0 * STEP)));
        });
    } else {
        one_sight(ui, cx, tree, &spots, &drawn, (Sight::Side(look.turn_deg), wide));
        one_sight(ui, cx, tree, &spots, &drawn, (Sight::Above(look.turn_deg), wide));
    }
    below(ui, cx, &drawn);
    arrange::show(ui, cx, tree, &spots);
    spot::show(ui, cx, tree, &spots, chosen);
}

/// What the drawing leaves open, how it is driven, and a turn to the front.
fn below(ui: &mut Ui, cx: &mut Cx<'_>, drawn: &Drawn) {
    let tokens = cx.tokens;
    let turned = cx.view.turn_deg.abs() > 0.5;
    ui.horizontal_wrapped(|ui| {
        if !turned {
            return;
        }
        let turn = format!("{:.0}", cx.view.turn_deg);
        ui.label(RichText::new(cx.say("trees-turned", &[("degrees", turn.into())])).size(12.0).color(tokens.ink2));
        if button::link(ui, &cx.label("trees-turn-back"), &tokens).clicked() {
            cx.look(|view| view.turn_deg = 0.0);
        }
    });
    heading::says(ui, &cx.label("trees-standing-keys"), &tokens);
    if !drawn.known {
        heading::says(ui, &cx.label("trees-standing-guessed"), &tokens);
    }
    if !drawn.said {
        heading::says(ui, &cx.label("flasks-drawing-spread"), &tokens);
    }
    if drawn.more > 0 {
        heading::says(ui, &cx.say("flasks-drawing-more", &[("count", drawn.more.into())]), &tokens);
    }
}

fn one_sight(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot], drawn: &Drawn, (sight, width): (Sight, f32)) {
    let tokens = cx.tokens;
    let (picture, caption, height, says) = match sight {
        Sight::Side(_) => (section(&drawn.plan), "flasks-section-to-scale", 420.0, "trees-standing-says"),
        Sight::Above(_) => (from_above(&drawn.plan), "flasks-above-to-scale", 300.0, "trees-standing-above-says"),
    };
    ui.label(RichText::new(cx.label(caption)).size(12.0).color(tokens.ink2));
    let says = cx.say(says, &[("count", drawn.plan.pieces.len().into()), ("size", drawn.plan.labels.size.clone().into())]);
    let (response, landed) = handled(ui, &picture, vec2(width, height), &says, &tokens, Sense::click_and_drag());
    if response.has_focus() {
        ui.painter().rect_stroke(response.rect, 3.0, (1.5, tokens.act), eframe::egui::StrokeKind::Outside);
    }
    by_pointer(ui, cx, tree, spots, (&drawn.plan, sight), &response, landed);
    by_keys(ui, cx, tree, spots, &response);
}

/// The piece under a place, the nearest to the eye first.
fn under(plan: &Plan, sight: Sight, at: Point) -> Option<usize> {
    let depth = |piece: &Shown| sight.see(piece.middle()).1;
    let hit = |piece: &Shown| piece.facets.iter().any(|facet| holds(facet.map(|corner| sight.see(corner).0), at));
    let hits = plan.pieces.iter().enumerate().filter(|(_, piece)| hit(piece));
    hits.max_by(|a, b| depth(a.1).total_cmp(&depth(b.1))).map(|(place, _)| place)
}

fn by_pointer(ui: &Ui, cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot], (plan, sight): (&Plan, Sight), response: &Response, landed: Landed) {
    if !(response.clicked() || response.dragged() || response.drag_started()) {
        return;
    }
    if response.clicked() || response.drag_started() {
        response.request_focus();
        let pressed = ui.input(|input| input.pointer.press_origin()).or(response.interact_pointer_pos());
        let taken = pressed.and_then(|at| under(plan, sight, landed.back(at))).and_then(|at| spots.get(at));
        let taken = taken.map(|spot| (spot.line, spot.number));
        cx.view.hung = taken;
        cx.view.held = taken.filter(|_| response.drag_started());
    }
    let Some(now) = response.interact_pointer_pos().filter(|_| response.dragged()) else { return };
    let held = cx.view.held.and_then(|piece| spots.iter().position(|spot| (spot.line, spot.number) == piece));
    let Some(at) = held else {
        cx.view.turn_deg = (cx.view.turn_deg + f64::from(response.drag_delta().x) * DRAG_DEG).rem_euclid(360.0);
        return;
    };
    let moved = moved(spots, at, (plan, sight), landed, (now, response.drag_delta()));
    if let Some((height, around)) = moved {
        move_to(cx, tree, spots, at, (height, around), !response.drag_started());
    }
}

/// Where a piece goes that is drawn along: up and down with the hand in the first sight, and around with it in both.
fn moved(
    spots: &[Spot],
    at: usize,
    (plan, sight): (&Plan, Sight),
    landed: Landed,
    (now, by): (eframe::egui::Pos2, eframe::egui::Vec2),
) -> Option<(f64, f64)> {
    let spot = &spots[at];
    let (to, from) = (landed.back(now), landed.back(now - by));
    let middle = plan.pieces.get(at)?.middle();
    let reach = middle[0].hypot(middle[1]);
    let turned = |to: f64, from: f64| spot.around_deg + to.to_degrees() - from.to_degrees();
    Some(match sight {
        Sight::Side(_) => {
            let length = plan.trunk.map_or(0.0, |trunk| trunk.length_mm);
            let height = (spot.height_mm + to.y - from.y).clamp(0.0, length);
            // Beside the axis the piece follows the hand round the trunk; what it shows to the eye stays in front.
            let (seen, near) = sight.see(middle);
            let angle = |x: f64| (x / reach.max(1e-6)).clamp(-1.0, 1.0).acos();
            let change = angle(seen.x + to.x - from.x) - angle(seen.x);
            (height, spot.around_deg + if near >= 0.0 { change } else { -change }.to_degrees())
        }
        // From above the picture's foot is nearest to the eye.
        Sight::Above(_) => (spot.height_mm, turned((-to.y).atan2(to.x), (-from.y).atan2(from.x))),
    })
}

/// Moves a piece; `on` goes on with the step that was begun.
fn move_to(cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot], at: usize, (height, around): (f64, f64), on: bool) {
    let (spot, spots) = (spots[at], spots.to_vec());
    let (height, around) = (Finite::new(rounded(height, 0.1)), Finite::new(direction(around)));
    let id = tree.id;
    let change = move |tree: &mut Tree| {
        hold(tree, &spots);
        place(tree, (spot.line, spot.number), |placed| {
            placed.around_deg = around;
            if height != Finite::new(rounded(spot.height_mm, 0.1)) {
                (placed.tier, placed.height_mm) = (None, height);
            }
        });
    };
    if on {
        cx.edit_on("edit-trees-move", move |job| job.trees.iter_mut().filter(|tree| tree.id == id).for_each(change.clone()));
    } else {
        self::change(cx, "edit-trees-move", id, change);
    }
}

fn by_keys(ui: &Ui, cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot], response: &Response) {
    if !response.has_focus() {
        return;
    }
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let pressed = |modifiers: Modifiers, key: Key| ui.input_mut(|input| input.consume_key(modifiers, key));
    for (key, by) in [(Key::Comma, -KEY_TURN), (Key::Period, KEY_TURN)] {
        if pressed(Modifiers::NONE, key) {
            cx.view.turn_deg = (cx.view.turn_deg + by).rem_euclid(360.0);
        }
    }
    let at = cx.view.hung.and_then(|piece| spots.iter().position(|spot| (spot.line, spot.number) == piece));
    for (key, by) in [(Key::PageDown, 1), (Key::PageUp, -1)] {
        if pressed(Modifiers::NONE, key) {
            let next = at.map_or(0, |at| (at + spots.len()).saturating_add_signed(by) % spots.len());
            cx.view.hung = spots.get(next).map(|spot| (spot.line, spot.number));
        }
    }
    let Some(at) = at else { return };
    let spot = &spots[at];
    let length = tree.main_sprue.as_ref().and_then(|main| main.length_mm).map_or(f64::INFINITY, Finite::get);
    let arrows =
        [(Key::ArrowLeft, 0.0, -KEY_DEG), (Key::ArrowRight, 0.0, KEY_DEG), (Key::ArrowUp, KEY_MM, 0.0), (Key::ArrowDown, -KEY_MM, 0.0)];
    for (key, up, around) in arrows {
        // With Shift first: without it, Shift would not be looked at.
        let share = if pressed(Modifiers::SHIFT, key) {
            0.2
        } else if pressed(Modifiers::NONE, key) {
            1.0
        } else {
            continue;
        };
        let height = (spot.height_mm + up * share).clamp(0.0, length);
        move_to(cx, tree, spots, at, (height, spot.around_deg + around * share), false);
    }
    if pressed(Modifiers::NONE, Key::T) {
        let (piece, turn) = ((spot.line, spot.number), Finite::new(direction(spot.turn_deg + KEY_TURN)));
        set(cx, tree, piece, "edit-trees-turn", move |placed| placed.turn_deg = turn.filter(|turn| turn.get() != 0.0));
    }
}

/// Changes the place of one piece under a name.
pub(super) fn set(cx: &mut Cx<'_>, tree: &Tree, piece: (LineId, u32), key: &str, with: impl FnOnce(&mut crate::job::Placed) + 'static) {
    change(cx, key, tree.id, move |tree| place(tree, piece, with));
}
