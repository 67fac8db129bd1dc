//! How a sheet is dressed: paper, language, units, decimal mark. Each sort keeps its own.

use eframe::egui::{Id, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::heading;
use crate::paper::Dress;
use crate::paper::layout::Format;
use crate::texts::Language;

const WIDE: f32 = 140.0;

/// Shows the choices.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let Some(dress) = cx.shown.map(|shown| shown.dress) else { return };
    heading::group(ui, &cx.label("paper-dress"), &cx.tokens.clone());
    let formats = [(Format::A4, cx.label("paper-a4")), (Format::Letter, cx.label("paper-letter"))];
    one(ui, cx, "paper-format", dress.format, &formats, move |format| Dress { format, ..dress });
    let languages = Language::ALL.map(|language| (language, language.name().to_owned()));
    one(ui, cx, "paper-language", dress.language, &languages, move |language| Dress {
        language,
        // The decimal mark goes with the language until it is chosen by itself.
        comma: language.has_comma(),
        ..dress
    });
    let units = [(false, cx.label("paper-metric")), (true, cx.label("paper-trade"))];
    one(ui, cx, "paper-units", dress.trade_units, &units, move |trade_units| Dress { trade_units, ..dress });
    let marks = [(false, cx.label("paper-point")), (true, cx.label("paper-comma"))];
    one(ui, cx, "paper-mark", dress.comma, &marks, move |comma| Dress { comma, ..dress });
}

fn one<T: Copy + PartialEq>(ui: &mut Ui, cx: &mut Cx<'_>, key: &str, now: T, options: &[(T, String)], dress: impl FnOnce(T) -> Dress) {
    let (label, tokens) = (cx.label(key), cx.tokens);
    crate::app::widget::row::row(ui, &label, &tokens, |ui| {
        if let Some(Some(chosen)) = choice(ui, cx, (Id::unique(key.to_owned()), &label, WIDE), Some(&now), options, false) {
            let sort = cx.view.paper.sort;
            cx.act(Action::DressPaper(sort, dress(chosen)));
        }
    });
}
