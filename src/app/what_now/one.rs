//! One card: what comes first, then step by step; beside it what is not done, when help is called, and what the batch knows.

use eframe::egui::{EventFilter, Id, Rect, Response, ScrollArea, Sense, Ui, WidgetInfo, accesskit::Role, vec2};

use super::keys::Asked;
use super::large::Large;
use crate::app::cx::Cx;
use crate::paper::what_now::{Card, Trouble, card};

/// From this width on, two columns stand beside each other.
const TWO: f32 = 880.0;

/// Shows a card; gives what was pressed.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, large: &Large, trouble: Trouble, asked: &Option<Asked>) -> Option<Asked> {
    let card = card(&cx.sheet_input(), trouble);
    let from = ui.cursor().min;
    let wide = ui.available_width();
    large.bold(ui, &card.title, Large::TITLE, large.tokens.stop);
    let title = Rect::from_min_size(from, vec2(wide, ui.cursor().min.y - ui.spacing().item_spacing.y - from.y));
    let top = top(ui, &card.title, title);
    let room = ui.available_height() - 40.0;
    ScrollArea::vertical().id_salt(("card", trouble.key())).max_height(room).auto_shrink([false, false]).show(ui, |ui| {
        if let Some(Asked::Down(by)) = asked {
            ui.scroll_with_delta(vec2(0.0, -by));
        }
        ui.set_max_width(ui.available_width() - 14.0);
        ui.spacing_mut().item_spacing.y = 8.0 * large.scale;
        large.bold(ui, &card.first, Large::FIRST, large.tokens.ink);
        ui.add_space(6.0 * large.scale);
        body(ui, cx, large, &card);
        ui.add_space(6.0 * large.scale);
        for words in [cx.label("sheet-foot"), card.source.clone()] {
            large.plain(ui, &words, Large::ASIDE, large.tokens.ink2);
        }
    });
    foot(ui, cx, large, top)
}

/// The title of the card has the focus, so that it is said what was opened; arrows turn and scroll, and do not lead away from it.
fn top(ui: &Ui, title: &str, rect: Rect) -> Response {
    let response = ui.interact(rect, top_id(), Sense::focusable_noninteractive());
    response.widget_info(|| WidgetInfo::labeled(Role::Heading, true, title));
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(top_id(), filter));
    response
}

fn top_id() -> Id {
    Id::unique("top of the card")
}

fn body(ui: &mut Ui, cx: &Cx<'_>, large: &Large, card: &Card) {
    let wide = ui.available_width();
    if wide < TWO {
        steps(ui, cx, large, card);
        rest(ui, cx, large, card);
        return;
    }
    let gap = 32.0;
    let left = (0.58 * wide).floor();
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        for (width, show) in [(left, steps as fn(&mut Ui, &Cx<'_>, &Large, &Card)), (wide - left - gap, rest)] {
            ui.vertical(|ui| {
                ui.set_width(width);
                show(ui, cx, large, card);
            });
            ui.add_space(gap);
        }
    });
}

fn steps(ui: &mut Ui, cx: &Cx<'_>, large: &Large, card: &Card) {
    large.bold(ui, &cx.label("card-do"), Large::BODY, large.tokens.ink2);
    for (number, step) in (1..).zip(&card.steps) {
        large.beside(ui, &i32::to_string(&number), step, large.tokens.act);
    }
}

fn rest(ui: &mut Ui, cx: &Cx<'_>, large: &Large, card: &Card) {
    if !card.facts.is_empty() {
        large.bold(ui, &cx.label("card-facts"), Large::BODY, large.tokens.ink2);
        for fact in &card.facts {
            if !fact.label.is_empty() {
                large.plain(ui, &fact.label, Large::BODY, large.tokens.ink);
            }
            large.bold(ui, &fact.value, Large::FIRST, large.tokens.heat);
        }
        ui.add_space(6.0 * large.scale);
    }
    large.bold(ui, &cx.label("card-never"), Large::BODY, large.tokens.ink2);
    for never in &card.never {
        large.beside(ui, "×", never, large.tokens.stop);
    }
    ui.add_space(6.0 * large.scale);
    large.bold(ui, &cx.label("card-help"), Large::BODY, large.tokens.ink2);
    large.plain(ui, &card.help, Large::BODY, large.tokens.ink);
}

/// The keys, which may be pressed as well.
fn foot(ui: &mut Ui, cx: &Cx<'_>, large: &Large, top: Response) -> Option<Asked> {
    let mut asked = None;
    let mut all = vec![top];
    ui.horizontal_wrapped(|ui| {
        for (key, does) in [("cards-key-list", Asked::Back), ("cards-key-before", Asked::Turn(-1)), ("cards-key-next", Asked::Turn(1))] {
            let link = large.link(ui, &cx.label(key));
            if link.clicked() {
                asked = Some(does);
            }
            all.push(link);
        }
    });
    super::hold(ui, &all);
    asked
}
