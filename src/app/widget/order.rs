//! Fields in the order of the page: Enter goes down from one to the next, whether words are typed in it or one of several is chosen.

use eframe::egui::{Context, Id, LayerId, Rect, Ui};

/// The fields of this frame and of the one before, for moving down from one to the next.
#[derive(Debug, Clone, Default)]
struct Fields {
    frame: u64,
    now: Vec<(Id, Rect, LayerId)>,
    last: Vec<(Id, Rect, LayerId)>,
}

fn fields_id() -> Id {
    Id::unique("fields of this frame")
}

/// Notes a field of this frame.
pub fn register(ui: &Ui, id: Id, rect: Rect) {
    let (frame, layer) = (ui.ctx().cumulative_pass_nr(), ui.layer_id());
    ui.ctx().data_mut(|data| {
        let fields: &mut Fields = data.get_temp_mut_or_default(fields_id());
        if fields.frame != frame {
            fields.frame = frame;
            fields.last = std::mem::take(&mut fields.now);
        }
        fields.now.push((id, rect, layer));
    });
}

/// Gives the focus to the nearest field below, or to the next one where none is.
pub fn move_down(ui: &Ui, id: Id, rect: Rect) {
    let ctx = ui.ctx();
    let fields: Fields = ctx.data(|data| data.get_temp(fields_id())).unwrap_or_default();
    // What lies behind a question is not below its fields.
    let here: Vec<(Id, Rect)> =
        fields.last.iter().filter(|(.., layer)| *layer == ui.layer_id()).map(|(id, rect, _)| (*id, *rect)).collect();
    let below = here.iter().filter(|(other, place)| *other != id && place.top() >= rect.bottom() - 2.0);
    let far = |place: &Rect| {
        let (down, aside) = (place.top() - rect.bottom(), (place.center().x - rect.center().x).abs());
        // The same column first, however far; another column counts as further down.
        down + if aside < rect.width() / 2.0 { 0.0 } else { 400.0 + aside }
    };
    let nearest = below.min_by(|(_, a), (_, b)| far(a).total_cmp(&far(b))).map(|(id, _)| *id);
    let next = || {
        let place = here.iter().position(|(other, _)| *other == id)?;
        here.get(place + 1).map(|(id, _)| *id)
    };
    match nearest.or_else(next) {
        Some(next) => ctx.memory_mut(|memory| memory.request_focus(next)),
        None => ctx.memory_mut(|memory| memory.surrender_focus(id)),
    }
}

/// Gives the focus to a field that is about to be drawn for the first time.
pub fn focus(ctx: &Context, id: Id) {
    ctx.memory_mut(|memory| memory.request_focus(id));
}

/// Is this one of the fields?
#[must_use]
pub fn is_field(ctx: &Context, id: Id) -> bool {
    let fields: Fields = ctx.data(|data| data.get_temp(fields_id())).unwrap_or_default();
    fields.now.iter().chain(&fields.last).any(|(other, ..)| *other == id)
}
