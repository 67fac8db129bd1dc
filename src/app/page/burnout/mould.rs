//! What the mould of a flask feels under the kiln's curve: core and outermost cavity, from low to high conductivity.

use eframe::egui::{Label, RichText, Ui, vec2};

use crate::app::cx::Cx;
use crate::app::theme::{ROW, STEP};
use crate::app::widget::curve::Under;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::row::LABEL;
use crate::calc::mould_heat::{Conductivity, Mould, Spread};
use crate::calc::{BurnoutFigures, HeatFigures, Id, MouldHeat};
use crate::job::{BurnoutId, FlaskId};
use crate::quantity::Kind;

/// Width of a figure of the table.
const COLUMN: f32 = 118.0;

/// The flask whose mould is shown: the chosen one where it stands in the load, or else the first.
fn chosen<'c>(cx: &Cx<'c>, load: BurnoutId) -> Option<&'c HeatFigures> {
    let of_load = || cx.computed.report.heat.iter().filter(move |one| one.load == load);
    of_load().find(|one| Some(one.flask) == cx.view.flask).or_else(|| of_load().next())
}

/// Its curves over the clock, where they are known.
pub fn under(cx: &Cx<'_>, figures: &BurnoutFigures) -> Option<Under> {
    let heat = chosen(cx, figures.id)?;
    // A log says what was, as far as it goes.
    let logged = heat.log.as_ref().and_then(|log| Some((log.by.as_ref()?.answer.clone(), log.start?)));
    let planned = heat.mould.as_ref().map(|mould| (mould.answer.clone(), figures.kiln_start));
    let (answer, start) = logged.or(planned)?;
    let start = cx.computed.book.number(start)?;
    let [low, likely, high] = Conductivity::ALL.map(|of| answer.mould(of));
    let (low, likely, high) = (low?, likely?, high?);
    let line = |of: &Mould, series: &[f64]| of.times_min.iter().zip(series).map(|(minutes, c)| [start + minutes, *c]).collect();
    Some(Under {
        wall: line(likely, &likely.wall_c),
        core: line(likely, &likely.core_c),
        cavity: line(likely, &likely.cavity_c),
        low: line(low, &low.core_c),
        high: line(high, &high.core_c),
    })
}

/// Which flask, the key of the curves, and the table.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: BurnoutId) {
    let tokens = cx.tokens;
    let Some(heat) = chosen(cx, load) else { return };
    let asked: Vec<FlaskId> = cx.computed.report.heat.iter().filter(|one| one.load == load).map(|one| one.flask).collect();
    heading::group(ui, &cx.label("heat-mould"), &tokens);
    if asked.len() > 1 {
        ui.horizontal_wrapped(|ui| {
            for flask in asked {
                if ui.selectable_label(flask == heat.flask, crate::app::names::flask(cx, flask)).clicked() {
                    cx.look(move |view| view.flask = Some(flask));
                }
            }
        });
    }
    let Some(mould) = &heat.mould else {
        let key = if heat.refused { "heat-mould-refused" } else { "heat-mould-computing" };
        heading::says(ui, &cx.label(key), &tokens);
        return;
    };
    ui.horizontal_wrapped(|ui| {
        let real = heat.log.as_ref().map(|_| ("heat-key-real", tokens.ink));
        let keys = [
            ("heat-key-kiln", tokens.heat),
            ("heat-key-wall", tokens.ink3),
            ("heat-key-core", tokens.core),
            ("heat-key-cavity", tokens.act),
            ("heat-key-bands", tokens.ink2),
        ];
        for (key, colour) in keys.into_iter().chain(real) {
            ui.label(RichText::new(format!("— {}", cx.label(key))).color(colour));
        }
    });
    table(ui, cx, mould);
    heading::says(ui, &cx.label(if heat.is_by_log() { "heat-mould-by-log" } else { "heat-mould-says" }), &tokens);
    ui.add_space(STEP);
}

fn table(ui: &mut Ui, cx: &mut Cx<'_>, mould: &MouldHeat) {
    let ink = cx.tokens.ink2;
    ui.horizontal(|ui| {
        ui.add_space(LABEL + ui.spacing().item_spacing.x);
        for key in ["heat-low", "heat-likely", "heat-high"] {
            ui.allocate_ui(vec2(COLUMN, 18.0), |ui| {
                ui.set_min_width(COLUMN);
                ui.add(Label::new(RichText::new(cx.label(key)).size(12.0).color(ink)).truncate());
            });
        }
    });
    let mut rows: Vec<(&str, Spread)> = vec![
        ("heat-dry", mould.dry),
        ("heat-burnt", mould.burnt),
        ("heat-carbon", mould.carbon),
        ("heat-core-top", mould.top),
        ("heat-core-pour", mould.core_at_pour),
        ("heat-cavity-pour", mould.cavity_at_pour),
    ];
    rows.extend(mould.out_for.map(|out| ("heat-out-for", out)));
    rows.extend([("heat-apart-cristobalite", mould.apart[0]), ("heat-apart-quartz", mould.apart[1]), ("heat-taken-in", mould.heat)]);
    for (key, spread) in rows {
        one_row(ui, cx, key, spread);
    }
}

fn one_row(ui: &mut Ui, cx: &mut Cx<'_>, key: &str, spread: [Id; 3]) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        ui.allocate_ui(vec2(LABEL, ROW), |ui| {
            ui.set_min_width(LABEL);
            ui.add(Label::new(RichText::new(cx.label(key)).color(tokens.ink)).truncate());
        });
        for (place, id) in spread.into_iter().enumerate() {
            // Some things never happen where the mould conducts badly, and on the bench it may last longer than anybody watches.
            let never = cx.computed.book.number(id).is_none();
            if never {
                let words = cx.label(if key == "heat-out-for" { "heat-longer" } else { "heat-never" });
                ui.add_sized(vec2(COLUMN, ROW), Label::new(RichText::new(words).color(tokens.ink2)));
            } else {
                // A day and a time of the clock are long.
                let long = cx.computed.book.kind(id) == Kind::Moment;
                let size = if place == 1 && !long { Look::ROW.size } else { 13.0 };
                figure(ui, cx, id, Look { right: false, size, ..Look::ROW.width(COLUMN) });
            }
        }
    });
}
