//! The weeks ahead, over every open job.

use eframe::egui::Ui;

use crate::app::cx::Cx;
use crate::app::page::folder;
use crate::app::theme::{ROW, size};
use crate::app::widget::heading;
use crate::app::widget::row::{cell, fitted};
use crate::calc::weeks::ahead;
use crate::job::Job;
use crate::paper::words::date_words;
use crate::quantity::{Kind, print};

/// Widths of the columns: the week, what is due, what of it is not cast, flasks to pour, finishing.
const WIDE: [f32; 5] = [170.0, 100.0, 110.0, 130.0, 130.0];

/// Shows the weeks.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let Some(found) = folder::read(ui, cx) else { return };
    let jobs: Vec<&Job> = std::iter::once(&cx.computed.sound).chain(found.open.iter().map(|other| &other.job)).collect();
    let ahead = ahead(jobs, cx.setting.at);
    let args = [("overdue", ahead.overdue.into()), ("undated", ahead.undated.into())];
    heading::says(ui, &cx.say("jobs-ahead", &args), &tokens);
    if ahead.weeks.is_empty() {
        heading::says(ui, &cx.label("jobs-ahead-none"), &tokens);
        return;
    }
    ui.horizontal(|ui| {
        let heads = ["jobs-week", "jobs-due", "jobs-uncast", "jobs-flasks", "jobs-finishing"];
        for (key, width) in heads.into_iter().zip(fitted(ui, WIDE, 0.0)) {
            cell(ui, &cx.label(key), width, size::SMALL, tokens.ink2);
        }
    });
    for (monday, week) in &ahead.weeks {
        ui.horizontal(|ui| {
            ui.set_height(ROW);
            let wide = fitted(ui, WIDE, 0.0);
            cell(ui, &date_words(*monday, cx.texts), wide[0], size::BODY, tokens.ink);
            for (count, width) in [week.due, week.uncast, week.flasks].into_iter().zip(&wide[1..4]) {
                cell(ui, &count.to_string(), *width, size::BODY, if count == 0 { tokens.ink2 } else { tokens.ink });
            }
            cell(ui, &print(week.finishing_min, Kind::Duration, cx.style).to_string(), wide[4], size::BODY, tokens.ink2);
        });
    }
}
