//! Where the chosen pattern is heaviest, offered for its sprue.

use eframe::egui::{Label, RichText, Ui};

use super::change;
use super::walls::mm_of;
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::job::{Pattern, SpruePoint};
use crate::mesh::{Foot, Heavy};
use crate::quantity::{Finite, Kind, print};

/// Shows the places, as far as they are known.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let tokens = cx.tokens;
    let Some(heavy) = cx.inspection.as_ref().and_then(|found| found.heavy.clone()) else { return };
    if heavy.places.is_empty() {
        return;
    }
    heading::group(ui, &cx.label("patterns-heavy"), &tokens);
    heading::says(ui, &cx.label("patterns-heavy-pins"), &tokens);
    let mm = mm_of(pattern);
    let chosen = pattern.file.as_ref().and_then(|file| file.sprue.clone());
    for (number, place) in (1_u64..).zip(&heavy.places) {
        let words = |value: f64| print(value * mm, Kind::Length, cx.style).to_string();
        let modulus = place.modulus_mm.map_or_else(|| cx.label("patterns-heavy-unknown"), words);
        let told = cx.say(
            "patterns-heavy-place",
            &[("number", number.into()), ("ball", words(place.diameter_mm).into()), ("modulus", modulus.into())],
        );
        ui.add(Label::new(RichText::new(told).color(tokens.ink)).wrap());
        match &place.foot {
            Some(foot) if stands_at(chosen.as_ref(), foot) => {
                heading::says(ui, &cx.label("patterns-heavy-here"), &tokens);
            }
            Some(foot) => {
                if button::plain(ui, &cx.say("patterns-heavy-take", &[("number", number.into())]), &tokens).clicked() {
                    take(cx, pattern, place, foot);
                }
            }
            None => {
                heading::says(ui, &cx.label("patterns-heavy-none"), &tokens);
            }
        }
    }
}

/// Does the chosen sprue stand here?
pub fn stands_at(chosen: Option<&SpruePoint>, foot: &Foot) -> bool {
    chosen.and_then(|point| point.at).is_some_and(|at| (0..3).all(|axis| (at[axis].get() - foot.place_mm[axis]).abs() < 1e-6))
}

fn take(cx: &mut Cx<'_>, pattern: &Pattern, place: &Heavy, foot: &Foot) {
    let [x, y, z] = foot.place_mm.map(Finite::new);
    let at = x.zip(y).zip(z).map(|((x, y), z)| [x, y, z]);
    let point = SpruePoint { at, ball: Finite::new(place.diameter_mm), modulus: place.modulus_mm.and_then(Finite::new) };
    change(cx, "edit-patterns-sprue", pattern.id, move |pattern| {
        if let Some(file) = &mut pattern.file {
            file.sprue = Some(point);
        }
    });
}
