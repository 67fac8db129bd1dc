//! The other pattern of a pair, and how the two fit.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::row::row;
use crate::calc::{PAIR_TOLERANCE_MM, PairFigures};
use crate::job::{Pair, PairKind, Pattern, PatternId};

/// Width of a choice.
const WIDE: f32 = 240.0;

/// Chooses the other one, and what the two should be to each other.
pub fn choose(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let others: Vec<(PatternId, String)> =
        cx.job.patterns.iter().filter(|other| other.id != id).map(|other| (other.id, names::pattern(cx, other.id))).collect();
    if others.is_empty() {
        return;
    }
    let now = pattern.pair.clone();
    let label = cx.label("patterns-pair");
    let place = (Id::unique(("pattern-pair", id.0)), label.as_str(), WIDE);
    let with = now.as_ref().map(|pair| pair.with);
    if let Some(with) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, with.as_ref(), &others, true)) {
        change(cx, "edit-patterns-pair", id, move |pattern| {
            let like = pattern.pair.as_ref().map(|pair| pair.like).unwrap_or_default();
            pattern.pair = with.map(|with| Pair { with, like });
        });
    }
    let Some(pair) = now else { return };
    let label = cx.label("patterns-pair-like");
    let options: Vec<(PairKind, String)> = [(PairKind::MirrorImages, "patterns-pair-mirror"), (PairKind::Alike, "patterns-pair-alike")]
        .map(|(like, key)| (like, cx.label(key)))
        .into();
    let place = (Id::unique(("pattern-pair-like", id.0)), label.as_str(), WIDE);
    if let Some(Some(like)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&pair.like), &options, false)) {
        change(cx, "edit-patterns-pair", id, move |pattern| {
            if let Some(pair) = &mut pattern.pair {
                pair.like = like;
            }
        });
    }
}

/// How it fits the other one of its pair, whichever of the two named it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let pairs: Vec<PairFigures> = cx.computed.report.pairs.iter().filter(|pair| pair.patterns.contains(&pattern.id)).copied().collect();
    if pairs.is_empty() {
        return;
    }
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("patterns-pair-title"), &tokens);
    for pair in pairs {
        let [one, other] = pair.patterns;
        let other = if one == pattern.id { other } else { one };
        let key = match pair.like {
            PairKind::MirrorImages => "patterns-pair-mirror-of",
            PairKind::Alike => "patterns-pair-alike-of",
        };
        heading::says(ui, &cx.say(key, &[("other", names::pattern(cx, other).into())]), &tokens);
        heading::says(ui, &fit(cx, &pair), &tokens);
        row(ui, &cx.label("patterns-pair-weights"), &tokens, |ui| figure(ui, cx, pair.weights_apart, Look::ROW.width(190.0)));
    }
}

fn fit(cx: &Cx<'_>, pair: &PairFigures) -> String {
    let Some(apart) = pair.apart else {
        let measured = pair.patterns.iter().all(|id| cx.measure_of(*id).is_some());
        return cx.label(if measured { "patterns-pair-waits" } else { "patterns-pair-no-files" });
    };
    let apart_mm = cx.computed.book.number(apart).unwrap_or(f64::INFINITY);
    let key = match pair.like {
        _ if apart_mm <= PAIR_TOLERANCE_MM => "patterns-pair-fits",
        PairKind::MirrorImages => "patterns-pair-apart-mirrored",
        PairKind::Alike => "patterns-pair-apart",
    };
    let words = crate::quantity::print(apart_mm, crate::quantity::Kind::Length, &cx.style.finer()).to_string();
    cx.say(key, &[("apart", words.into())])
}
