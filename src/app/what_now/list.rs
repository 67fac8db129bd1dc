//! All cards as large buttons, to be chosen by mouse, by their figure, or by arrows and Enter.

use eframe::egui::text::{LayoutJob, TextFormat};
use eframe::egui::{Button, FontId, Response, ScrollArea, Stroke, Ui, vec2};

use super::keys::Asked;
use super::large::Large;
use crate::app::cx::Cx;
use crate::app::theme::bold;
use crate::paper::what_now::Trouble;

/// Less than this is too narrow for a button.
const LEAST: f32 = 270.0;
/// Height of a button.
const HIGH: f32 = 104.0;
/// Between buttons.
const GAP: f32 = 12.0;

/// Shows the list; gives what was pressed.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, large: &Large) -> Option<Asked> {
    let mut asked = None;
    let mut all = Vec::new();
    large.bold(ui, &cx.label("do-what-now"), Large::TITLE, large.tokens.stop);
    let room = ui.available_height() - 40.0;
    ScrollArea::vertical().id_salt("cards").max_height(room).auto_shrink([false, false]).show(ui, |ui| {
        large.plain(ui, &cx.label("cards-choose"), Large::BODY, large.tokens.ink);
        ui.add_space(GAP);
        (asked, all) = buttons(ui, cx, large);
    });
    let leave = large.link(ui, &cx.label("cards-key-leave"));
    if leave.clicked() {
        asked = Some(Asked::Back);
    }
    all.push(leave);
    super::hold(ui, &all);
    asked
}

fn buttons(ui: &mut Ui, cx: &Cx<'_>, large: &Large) -> (Option<Asked>, Vec<Response>) {
    let wide = ui.available_width() - 14.0;
    let across: u8 = [3, 2].into_iter().find(|across| wide / f32::from(*across) >= LEAST).unwrap_or(1);
    let each = (wide - GAP * f32::from(across - 1)) / f32::from(across);
    let mut asked = None;
    let mut all: Vec<Response> = Vec::new();
    let numbered: Vec<(usize, Trouble)> = (1..).zip(Trouble::ALL).collect();
    ui.spacing_mut().item_spacing = vec2(GAP, GAP);
    for row in numbered.chunks(usize::from(across)) {
        ui.horizontal(|ui| {
            for (number, trouble) in row {
                let response = one(ui, cx, large, (*number, *trouble), each);
                if response.clicked() {
                    asked = Some(Asked::Card(*trouble));
                }
                if response.gained_focus() {
                    response.scroll_to_me(None);
                }
                all.push(response);
            }
        });
    }
    (asked, all)
}

fn one(ui: &mut Ui, cx: &Cx<'_>, large: &Large, (number, trouble): (usize, Trouble), wide: f32) -> Response {
    let title = cx.label(trouble.key());
    let font = FontId::new(Large::BODY * large.scale, bold());
    let mut job = LayoutJob::default();
    job.append(&number.to_string(), 0.0, TextFormat { font_id: font.clone(), color: large.tokens.stop, ..TextFormat::default() });
    job.append(&title, 14.0, TextFormat { font_id: font, color: large.tokens.ink, ..TextFormat::default() });
    let button = Button::new(job).wrap().fill(large.tokens.field).stroke(Stroke::new(1.5, large.tokens.edge));
    ui.add_sized(vec2(wide, HIGH * large.scale), button).accessible_name(title)
}
