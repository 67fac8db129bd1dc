//! The pieces of a tree one by one: which is chosen, where it hangs, and how much room it has; the heights of the tiers.

use eframe::egui::{Id, Ui};

use super::standing::set;
use super::{WIDE, change};
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, numbered, rows};
use crate::app::widget::{button, heading};
use crate::calc::Outline;
use crate::calc::places::Spot;
use crate::calc::stand::{Between, Part};
use crate::job::{LineId, Tier, Tree};
use crate::quantity::{Finite, Kind, print};

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot], chosen: Option<(LineId, u32)>) {
    ui.add_space(STEP);
    let outline = cx.computed.report.trees.iter().find(|figures| figures.id == tree.id).map(|figures| &figures.outline);
    let Some(outline) = outline else { return };
    let all = cx.job;
    let name = |spot: &Spot| {
        // The same design may be ordered twice.
        all.lines().find(|(_, line)| line.id == spot.line).map_or_else(String::new, |(order, line)| {
            let client = if order.client.is_empty() { String::new() } else { format!(", {}", order.client) };
            format!("{} {}{client}", line.design, spot.number)
        })
    };
    let mut clicked = None;
    rows(ui, "tree-spots", spots.len(), |ui, at| {
        let spot = &spots[at];
        let here = chosen == Some((spot.line, spot.number));
        if choose(ui, cx, here, &name(spot), &about(cx, outline, spots, at, &name)) {
            clicked = Some((spot.line, spot.number));
        }
    });
    if let Some(piece) = clicked {
        cx.look(move |view| view.hung = Some(piece));
    }
    let at = chosen.and_then(|piece| spots.iter().position(|spot| (spot.line, spot.number) == piece));
    if let Some(at) = at {
        fields(ui, cx, tree, &spots[at], &name(&spots[at]));
    }
    tiers(ui, cx, tree, spots);
}

/// Where a piece hangs and what is near to it, in a line.
fn about(cx: &Cx<'_>, outline: &Outline, spots: &[Spot], at: usize, name: &dyn Fn(&Spot) -> String) -> String {
    let spot = &spots[at];
    let mm = |mm: f64| print(mm, Kind::Length, cx.style).to_string();
    let degrees = format!("{:.0}", spot.around_deg);
    let place = [("height", mm(spot.height_mm).into()), ("degrees", degrees.into())];
    let mut words = cx.say("trees-spot", &place);
    let ours = |near: &&Between| near.parts.iter().any(|part| matches!(part, Part::Piece(of) | Part::Feed(of) if *of == at));
    if let Some(near) = outline.near.iter().find(ours) {
        let other = near.parts.iter().find_map(|part| match part {
            Part::Piece(of) | Part::Feed(of) if *of != at => spots.get(*of).map(name),
            Part::Trunk => Some(cx.label("trees-main")),
            _ => None,
        });
        let args = [("room", mm(near.apart.at_least_mm.max(0.0)).into()), ("other", other.unwrap_or_default().into())];
        words = format!("{words}, {}", cx.say("trees-spot-near", &args));
    }
    words
}

fn fields(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, spot: &Spot, name: &str) {
    let tokens = cx.tokens;
    heading::group(ui, name, &tokens);
    let piece = (spot.line, spot.number);
    let own = tree.placed.iter().find(|placed| (placed.line, placed.number) == piece).cloned().unwrap_or_default();
    let key = |what: &'static str| Id::unique((what, tree.id.0, piece.0.0, piece.1));
    let label = cx.label("trees-tier");
    let named = format!("{name}, {label}");
    let now = own.tier.map(f64::from);
    let field = Number::new(key("spot-tier"), &named, Kind::Count).now(now).default(spot.tier.map(f64::from).filter(|_| now.is_none()));
    if let Some(tier) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        set(cx, tree, piece, "edit-trees-tier", move |placed| {
            (placed.tier, placed.height_mm) = (tier.filter(|tier| *tier > 0), placed.height_mm.filter(|_| tier.is_none()));
        });
    }
    let numbers = [
        ("trees-joint", Kind::Length, own.height_mm, spot.height_mm),
        ("trees-around", Kind::Angle, own.around_deg, spot.around_deg),
        ("trees-piece-turn", Kind::Angle, own.turn_deg, spot.turn_deg),
    ];
    for (label_key, kind, now, shown) in numbers {
        let label = cx.label(label_key);
        let named = format!("{name}, {label}");
        let now = now.map(Finite::get);
        let field = Number::new(key(label_key), &named, kind).now(now).default(Some(shown).filter(|_| now.is_none()));
        if let Some(value) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            set(cx, tree, piece, "edit-trees-move", move |placed| match label_key {
                "trees-joint" => (placed.height_mm, placed.tier) = (value, placed.tier.filter(|_| value.is_none())),
                "trees-around" => placed.around_deg = value,
                _ => placed.turn_deg = value,
            });
        }
    }
    let label = cx.label("trees-piece-sprue");
    let named = format!("{name}, {label}");
    let now = own.sprue.map(f64::from);
    let default = spot.run.and_then(|run| u32::try_from(run + 1).ok()).map(f64::from).filter(|_| now.is_none());
    let field = Number::new(key("spot-sprue"), &named, Kind::Count).now(now).default(default);
    if let Some(sprue) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        set(cx, tree, piece, "edit-trees-piece-sprue", move |placed| placed.sprue = sprue.filter(|sprue| *sprue > 0));
    }
    let said = own.line != LineId::default() || own.number != 0;
    ui.horizontal(|ui| {
        if button::outlined(ui, &cx.label("trees-unplace"), &tokens, said).clicked() {
            set(cx, tree, piece, "edit-trees-unplace", move |placed| {
                *placed = crate::job::Placed { line: piece.0, number: piece.1, ..crate::job::Placed::default() };
            });
        }
        if button::outlined(ui, &cx.label("trees-unplace-all"), &tokens, !tree.placed.is_empty()).clicked() {
            change(cx, "edit-trees-unplace-all", tree.id, |tree| tree.placed.clear());
        }
    });
}

/// The heights of the tiers that pieces hang on.
fn tiers(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot]) {
    let most = spots.iter().filter_map(|spot| spot.tier).max().unwrap_or(0).max(u32::try_from(tree.tiers.len()).unwrap_or(0)).min(24);
    if most == 0 {
        return;
    }
    let heights: Vec<Option<f64>> =
        (1..=most).map(|tier| spots.iter().find(|spot| spot.tier == Some(tier)).map(|spot| spot.height_mm)).collect();
    let (tokens, id) = (cx.tokens, tree.id);
    let said = tree.tiers.clone();
    cx.folded(ui, "trees-tiers", move |ui, cx| {
        heading::says(ui, &cx.label("trees-tiers-what"), &tokens);
        for (at, height) in heights.iter().enumerate() {
            let label = numbered(&cx.label("trees-tier-height"), at);
            let now = said.get(at).and_then(|tier| tier.height_mm).map(Finite::get);
            let field = Number::new(Id::unique(("tier-height", id.0, at)), &label, Kind::Length).width(WIDE / 2.0);
            let field = field.now(now).default(height.filter(|_| now.is_none()));
            if let Some(height) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
                change(cx, "edit-trees-tiers", id, move |tree| {
                    if tree.tiers.len() <= at {
                        tree.tiers.resize(at + 1, Tier::default());
                    }
                    tree.tiers[at].height_mm = height;
                    while tree.tiers.last().is_some_and(|tier| *tier == Tier::default()) {
                        tree.tiers.pop();
                    }
                });
            }
        }
    });
}
