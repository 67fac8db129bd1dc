//! The walls of the chosen pattern's file: how thin, how heavy, how much of it.

use eframe::egui::{Label, RichText, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::bars::{Around, Bar, bars};
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::calc::{FileProblem, LEAST_WALL_MM, PatternMeasure, print_mm, section_of};
use crate::job::Pattern;
use crate::mesh::{Wall, Walls};
use crate::quantity::{Finite, Kind, THIN, print};
use crate::stock::Section;

/// Height of the histogram.
const HIGH: f32 = 84.0;

/// Shows them, as far as they are known.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let tokens = cx.tokens;
    let figures = cx.computed.report.patterns.iter().find(|figures| figures.id == pattern.id).cloned();
    let Some(walls) = figures.and_then(|figures| figures.walls) else {
        by_close_look(ui, cx, pattern);
        return;
    };
    heading::group(ui, &cx.label("patterns-walls"), &tokens);
    for (key, id) in ["patterns-walls-thinnest", "patterns-walls-typical", "patterns-walls-heaviest"].into_iter().zip(walls) {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(190.0)));
    }
    if let Some(found) = cx.inspection.as_ref().and_then(|found| found.walls.clone()) {
        histogram(ui, cx, pattern, &found);
    }
    offer(ui, cx, pattern, cx.computed.book.number(walls[0]));
}

/// The walls of a file whose triangles are too many for the figures, once they were looked at closely.
fn by_close_look(ui: &mut Ui, cx: &Cx<'_>, pattern: &Pattern) {
    let left_out = |measure: &PatternMeasure| measure.problems.contains(&FileProblem::WallsNotMeasured);
    let Some(walls) = cx.inspection.as_ref().and_then(|found| found.walls.clone()) else { return };
    if !cx.measure_of(pattern.id).is_some_and(left_out) {
        return;
    }
    heading::group(ui, &cx.label("patterns-walls"), &cx.tokens);
    let mm = mm_of(pattern);
    let words = |wall: &Option<Wall>| {
        wall.as_ref().map_or_else(String::new, |wall| print(wall.thickness_mm * mm, Kind::Length, cx.style).to_string())
    };
    let args = [("thinnest", &walls.thinnest), ("typical", &walls.typical), ("heaviest", &walls.heaviest)];
    let args = args.map(|(name, wall)| (name, words(wall).into()));
    heading::says(ui, &cx.say("patterns-walls-close", &args), &cx.tokens);
    histogram(ui, cx, pattern, &walls);
}

/// Millimetres of the print in one unit of the file.
pub fn mm_of(pattern: &Pattern) -> f64 {
    pattern.file.as_ref().map_or(1.0, print_mm)
}

/// The thinnest wall cast without fear, in mm.
pub fn least_mm(cx: &Cx<'_>) -> f64 {
    cx.studio.least_wall_mm.map_or(LEAST_WALL_MM, Finite::get)
}

fn histogram(ui: &mut Ui, cx: &Cx<'_>, pattern: &Pattern, walls: &Walls) {
    let (tokens, mm, least) = (cx.tokens, mm_of(pattern), least_mm(cx));
    let drawn: Vec<Bar> =
        walls.histogram.iter().map(|bin| Bar { from: bin.from_mm * mm, to: bin.to_mm * mm, much: bin.area_mm2 * mm * mm }).collect();
    let words = |value: f64| print(value, Kind::Length, cx.style).to_string();
    let ends = [words(0.0), words(drawn.last().map_or(0.0, |bar| bar.to))];
    let says = cx.label("patterns-walls-says");
    bars(ui, &drawn, &Around { least: Some(least), ends: [&ends[0], &ends[1]], says: &says }, HIGH, &tokens);
    let under = walls.under(least / mm);
    let share = per_cent(under.share, cx.style.comma);
    let key = if under.share > 0.0 { "patterns-walls-under" } else { "patterns-walls-none-under" };
    let told = cx.say(key, &[("share", share.into()), ("least", words(least).into())]);
    ui.add(Label::new(RichText::new(told).color(tokens.ink2)).wrap());
}

/// A share in words: whole per cents, and tenths of small ones.
fn per_cent(share: f64, comma: bool) -> String {
    let percent = 100.0 * share;
    let number = if percent < 9.95 { format!("{percent:.1}") } else { format!("{percent:.0}") };
    format!("{}{THIN}%", if comma { number.replace('.', ",") } else { number })
}

/// Offers the section that the thinnest wall makes it, where nobody said one.
fn offer(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern, thinnest: Option<f64>) {
    let Some(thinnest) = thinnest.filter(|_| pattern.section.is_none() && pattern.thinnest_mm.is_none()) else { return };
    let key = match section_of(thinnest) {
        Section::Filigree => "section-filigree",
        Section::Thin => "section-thin",
        Section::Medium => "section-medium",
        Section::Heavy => "section-heavy",
    };
    let words = cx.say("patterns-walls-take", &[("section", cx.label(key).into())]);
    if button::plain(ui, &words, &cx.tokens).clicked() {
        // Two decimals are what a wall is measured to.
        let wall = Finite::new((thinnest * 100.0).round() / 100.0);
        change(cx, "edit-patterns-thinnest", pattern.id, move |pattern| pattern.thinnest_mm = wall);
    }
}
