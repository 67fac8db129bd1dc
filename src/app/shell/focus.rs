//! Where the keys are: a page that was come to is gone through from its top, what has the focus is in sight, and a ring stands round it.

use eframe::egui::style::ScrollAnimation;
use eframe::egui::{Align, Context, Id, Rect, Sense, Stroke, StrokeKind, Ui, WidgetInfo, accesskit::Role, vec2};

use crate::app::page::Page;
use crate::app::theme::Tokens;
use crate::app::widget::order;

/// Where the focus was, from one frame to the next.
#[derive(Debug, Default)]
pub struct Seen {
    /// The page that was drawn last; none in the bench view.
    page: Option<Page>,
    /// What had the focus then.
    focused: Option<Id>,
    /// What had it before a question stood before the page.
    before: Option<Id>,
    /// What gets it back.
    back: Option<Id>,
    asked: bool,
}

impl Seen {
    /// Called before anything is drawn: a question takes the focus, and gives it back when it is answered.
    pub fn begin(&mut self, ctx: &Context, asking: bool) {
        if let Some(back) = self.back.take() {
            ctx.memory_mut(|memory| memory.request_focus(back));
        }
        if asking && !self.asked {
            self.before = ctx.memory(|memory| memory.focused());
        } else if self.asked && !asking {
            // For one frame more nothing behind the question may have the focus.
            self.back = Some(self.before.take().unwrap_or_else(top_id));
        }
        self.asked = asking;
    }

    /// Did a question come up, or was one answered, since the last frame began?
    #[must_use]
    pub fn is_stale(&self, asking: bool) -> bool {
        self.asked != asking || self.back.is_some()
    }

    /// The bench view is drawn instead of a page.
    pub fn away(&mut self) {
        self.page = None;
    }

    /// Is this page another than the one before? Then it has the focus, and nothing gets it back.
    pub fn comes_to(&mut self, page: Page, shown: bool) -> bool {
        let came = self.page.replace(page) != Some(page) || shown;
        if came && self.back.is_some() {
            self.back = Some(top_id());
        }
        came
    }
}

fn top_id() -> Id {
    Id::unique("top of the page")
}

/// The top of a page. It takes the focus where the page was just come to, so that the next Tab leads to the page's first field, and comes into
/// sight where something on the page was asked for by its place.
pub fn top(ui: &Ui, title: &str, came: bool, shown: bool) {
    let rect = Rect::from_min_size(ui.cursor().min, vec2(ui.available_width(), 1.0));
    let response = ui.interact(rect, top_id(), Sense::focusable_noninteractive());
    response.widget_info(|| WidgetInfo::labeled(Role::Heading, true, title));
    if came {
        response.request_focus();
    }
    if shown {
        ui.scroll_to_rect_animation(rect, Some(Align::TOP), ScrollAnimation::none());
    }
}

/// Brings what got the focus on this page into sight; to be called at the end of the page, inside what scrolls.
pub fn follow(ui: &Ui, seen: &mut Seen) {
    let focused = ui.memory(|memory| memory.focused());
    if focused == seen.focused {
        return;
    }
    seen.focused = focused;
    let Some(response) = focused.and_then(|id| ui.ctx().read_response(id)) else { return };
    let column = ui.max_rect().x_range();
    let here = response.layer_id == ui.layer_id() && column.contains(response.rect.center().x);
    let sight = ui.clip_rect().y_range();
    if here && !(sight.contains(response.rect.top()) && sight.contains(response.rect.bottom())) {
        ui.scroll_to_rect_animation(response.rect.expand(12.0), None, ScrollAnimation::none());
    }
}

/// A ring round what has the focus; fields draw their own.
pub fn ring(ctx: &Context, tokens: &Tokens) {
    let Some(id) = ctx.memory(|memory| memory.focused()) else { return };
    if id == top_id() || order::is_field(ctx, id) {
        return;
    }
    if let Some(response) = ctx.read_response(id).filter(|response| response.interact_rect.is_positive()) {
        let painter = ctx.layer_painter(response.layer_id).with_clip_rect(response.interact_rect.expand(5.0));
        painter.rect_stroke(response.interact_rect.expand(3.0), 3, Stroke::new(2.0, tokens.act), StrokeKind::Inside);
    }
}
