//! The rail: every stage in the order it happens, how far it is, and its worst mark. A map, not a wizard: nothing is locked.

use std::collections::BTreeSet;

use eframe::egui::{self, Align2, FontId, Rect, Sense, Ui, WidgetInfo, accesskit::Role, pos2, vec2};

use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::theme::{bold, size};
use crate::app::widget::figure::printed;
use crate::app::widget::mark;
use crate::calc::Weight;
use crate::job::{Entry, Event, Flask, Job, standing};
use crate::paper::words::weight_words;

/// Shows the rail.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    ui.spacing_mut().item_spacing.y = 0.0;
    ui.add_space(8.0);
    for page in Page::RAIL {
        if page == Page::Record {
            ui.add_space(6.0);
            let y = ui.cursor().top();
            ui.painter().hline(ui.max_rect().x_range().shrink(16.0), y, egui::Stroke::new(1.0, cx.tokens.rule));
            ui.add_space(6.0);
        }
        stage(ui, cx, page);
    }
}

fn stage(ui: &mut Ui, cx: &mut Cx<'_>, page: Page) {
    let (words, about) = (cx.label(page.key()), about(cx, page));
    let worst = worst(cx, page);
    let here = cx.view.page == page && cx.view.bench.is_none();
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 36.0), Sense::click());
    let spoken = match worst {
        Some(weight) => format!("{words}, {about}, {}", weight_words(weight, cx.texts)),
        None => format!("{words}, {about}"),
    };
    response.widget_info(|| WidgetInfo::selected(Role::Tab, true, here, &spoken));
    let tokens = &cx.tokens;
    let painter = ui.painter();
    if here {
        painter.rect_filled(rect, 0, tokens.paper);
        painter.rect_filled(Rect::from_min_size(rect.min, vec2(4.0, rect.height())), 0, tokens.act);
    }
    if response.hovered() || response.has_focus() {
        painter.rect_stroke(rect.shrink(2.0), 3, egui::Stroke::new(1.0, tokens.act), egui::StrokeKind::Inside);
    }
    let font = if here { FontId::new(size::BODY, bold()) } else { FontId::proportional(size::BODY) };
    painter.text(pos2(rect.left() + 18.0, rect.top() + 2.0), Align2::LEFT_TOP, &words, font, tokens.ink);
    let mut job = egui::text::LayoutJob::simple_singleline(about, FontId::proportional(size::SMALL), tokens.ink2);
    job.wrap = egui::text::TextWrapping::truncate_at_width(rect.width() - 46.0);
    let galley = ui.fonts_mut(|fonts| fonts.layout_job(job));
    painter.galley(pos2(rect.left() + 18.0, rect.top() + 19.0), galley, tokens.ink2);
    if let Some(weight) = worst {
        let side = 13.0;
        // Beside the second line, which leaves room for it: the name of a page may be as long as the rail is wide.
        let at = Rect::from_center_size(pos2(rect.right() - 18.0, rect.top() + 26.0), vec2(side, side));
        mark::paint(ui, at, weight, tokens);
    }
    if response.clicked() {
        cx.look(move |view| (view.page, view.bench) = (page, None));
    }
}

/// The heaviest finding of a page that nobody answers for. Notes are told on the page, not in the rail.
fn worst(cx: &Cx<'_>, page: Page) -> Option<Weight> {
    let findings = cx.computed.report.findings.iter();
    let here = findings.filter(|finding| Page::of_finding(finding.kind, finding.place) == page && finding.accepted.is_none());
    here.map(|finding| finding.kind.weight).min().filter(|weight| *weight != Weight::Note)
}

/// How far a stage is, in a few words.
fn about(cx: &Cx<'_>, page: Page) -> String {
    let (job, report) = (cx.job, &cx.computed.report);
    let count = |key: &str, many: usize| cx.say(key, &[("count", many.into())]);
    let nothing = || cx.label("rail-nothing");
    match page {
        Page::Start => cx.label("rail-start"),
        Page::Orders if job.orders.is_empty() => nothing(),
        Page::Orders => {
            let pieces: u64 = job.lines().map(|(_, line)| u64::from(Job::pieces_of(line))).sum();
            let clients: BTreeSet<&str> = job.orders.iter().map(|order| order.client.trim()).collect();
            cx.say("rail-pieces", &[("pieces", pieces.into()), ("clients", clients.len().into())])
        }
        Page::Patterns if !job.patterns.is_empty() => count("rail-patterns", job.patterns.len()),
        Page::Trees if !job.trees.is_empty() => count("rail-trees", job.trees.len()),
        Page::Flasks if !job.flasks.is_empty() => count("rail-flasks", job.flasks.len()),
        Page::Investment => report.flasks.first().map_or_else(nothing, |flask| {
            let (number, unit, known) = printed(cx, flask.mix.powder, true);
            if known { cx.say("rail-powder", &[("what", format!("{number} {unit}").into())]) } else { nothing() }
        }),
        Page::Burnout => report.burnouts.first().map_or_else(nothing, |load| {
            let (at, _, known) = printed(cx, load.pour, false);
            if known { cx.say("rail-pour", &[("at", at.into())]) } else { nothing() }
        }),
        Page::Metal => report.melts.first().map_or_else(nothing, |melt| {
            let (number, unit, known) = printed(cx, melt.charge, false);
            if known { cx.say("rail-charge", &[("what", format!("{number} {unit}").into())]) } else { nothing() }
        }),
        Page::Pour if !job.flasks.is_empty() => {
            let poured =
                |id| crate::job::standing(&job.record).any(|entry| matches!(&entry.event, Event::Poured { flask, .. } if *flask == id));
            let done = job.flasks.iter().filter(|flask| poured(flask.id)).count();
            cx.say("rail-poured", &[("poured", done.into()), ("all", job.flasks.len().into())])
        }
        Page::Finish if !job.flasks.is_empty() => {
            let weighed = |flask: &&Flask| {
                let of = |entry: &Entry| matches!(&entry.event, Event::Metal { flask: Some(of), .. } if *of == flask.id);
                standing(&job.record).any(of)
            };
            let done = job.flasks.iter().filter(weighed).count();
            cx.say("rail-weighed", &[("weighed", done.into()), ("all", job.flasks.len().into())])
        }
        Page::Pieces => cx.label("rail-board"),
        Page::Jobs => cx.label("rail-jobs"),
        Page::Quotes if !report.offers.is_empty() => count("rail-quotes", report.offers.len()),
        Page::Paper => cx.label("rail-paper"),
        Page::Record => count("rail-record", job.record.len()),
        Page::Settings => cx.label("rail-settings"),
        _ => nothing(),
    }
}
