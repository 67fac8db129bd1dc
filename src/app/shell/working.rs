//! The working pane: how the chosen figure comes about, in words, in symbols and in numbers; where it comes from; what rests on it; where it
//! fails; and what it would be with other numbers, without touching the batch.

use eframe::egui::{Align, FontId, Id as UiId, Label, Layout, RichText, ScrollArea, Sense, Ui, WidgetInfo, accesskit::Role};
use rust_decimal::Decimal;

use crate::app::cx::Cx;
use crate::app::theme::{bold, size};
use crate::app::widget::figure::printed;
use crate::app::widget::heading;
use crate::app::widget::number::{Number, signed};
use crate::calc::rule::{How, Rule};
use crate::calc::{Id, Origin, Value};
use crate::paper::words::{cause_words, figure_title, print_value, trust_words};
use crate::quantity::Finite;
use crate::stock::sources;

/// Shows the pane.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    ui.add_space(8.0);
    let title = heading::group(ui, &cx.label("working-title"), &tokens);
    let top = ui.interact(title.rect, UiId::unique("top of the working pane"), Sense::focusable_noninteractive());
    top.widget_info(|| WidgetInfo::labeled(Role::Heading, true, cx.label("working-title")));
    if std::mem::take(&mut cx.view.to_working) {
        top.request_focus();
    }
    let Some(id) = cx.view.chosen.and_then(|chosen| chosen.find(&cx.computed.book)) else {
        heading::says(ui, &cx.label("working-none"), &tokens);
        return;
    };
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        ui.set_max_width(ui.available_width() - 4.0);
        let figure = cx.computed.book.figure(id);
        let title = figure_title(&figure, cx.texts);
        ui.add(Label::new(RichText::new(title).font(FontId::new(17.0, bold()))).wrap());
        let place = crate::app::names::place(cx, figure.place);
        ui.label(RichText::new(place).size(size::SMALL).color(tokens.ink2));
        let (number, unit, known) = printed(cx, id, false);
        let value = format!("{number} {unit}");
        let ink = if known { tokens.act } else { tokens.ink2 };
        let font = if known { FontId::new(size::FIGURE, bold()) } else { FontId::proportional(size::BODY) };
        ui.add(Label::new(RichText::new(value.trim_end()).font(font).color(ink)).wrap());
        match figure.origin {
            Origin::Derived(rule) => derived(ui, cx, id, rule),
            origin => given(ui, cx, origin),
        }
        missing(ui, cx, id);
        used_by(ui, cx, id);
    });
}

fn derived(ui: &mut Ui, cx: &mut Cx<'_>, id: Id, rule: &'static Rule) {
    let tokens = cx.tokens;
    ui.add(Label::new(cx.texts.rule_why(rule.id)).wrap());
    heading::group(ui, &cx.label("working-rule"), &tokens);
    ui.add(Label::new(RichText::new(rule.text()).color(tokens.ink)).wrap());
    let terms = cx.computed.book.figure(id).terms.to_vec();
    if !matches!(rule.how, How::Sum | How::Most) {
        heading::group(ui, &cx.label("working-numbers"), &tokens);
        ui.add(Label::new(RichText::new(in_numbers(cx, rule, &terms)).color(tokens.ink)).wrap());
    }
    heading::group(ui, &cx.label("working-terms"), &tokens);
    const SHOWN: usize = 24;
    for (place, term) in terms.iter().take(SHOWN).enumerate() {
        term_row(ui, cx, rule, place, *term);
    }
    if terms.len() > SHOWN {
        ui.label(RichText::new(cx.say("working-more", &[("count", (terms.len() - SHOWN).into())])).color(tokens.ink2));
    }
    heading::group(ui, &cx.label("working-source"), &tokens);
    ui.add(Label::new(format!("{} ({})", rule.source, trust_words(rule.trust, cx.texts))).wrap());
    what_if(ui, cx, rule, &terms);
}

fn term_row(ui: &mut Ui, cx: &mut Cx<'_>, rule: &'static Rule, place: usize, term: Id) {
    let tokens = cx.tokens;
    let symbol = rule.terms.get(place).or(rule.terms.first()).map_or("", |term| term.symbol);
    let title = figure_title(&cx.computed.book.figure(term), cx.texts);
    let (number, unit, _) = printed(cx, term, false);
    ui.horizontal(|ui| {
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.label(RichText::new(unit).size(12.0).color(tokens.ink3));
            ui.label(RichText::new(number).color(tokens.ink));
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                let words = if symbol.is_empty() || rule.terms.len() < 2 { title } else { format!("{symbol}  {title}") };
                let link = eframe::egui::Button::new(RichText::new(words).color(tokens.act).size(13.0)).frame(false).truncate();
                if ui.add(link).clicked() {
                    cx.choose(term, true);
                }
            });
        });
    });
}

/// The rule's text with numbers for its symbols.
fn in_numbers(cx: &Cx<'_>, rule: &Rule, terms: &[Id]) -> String {
    let text = rule.text();
    let mut out = String::with_capacity(text.len() + 32);
    let mut word = String::new();
    let is_name = |sign: char| sign.is_ascii_alphanumeric() || sign == '_';
    for sign in text.chars().chain(['\n']) {
        if is_name(sign) || (sign == '.' && word.starts_with(|first: char| first.is_ascii_digit())) {
            word.push(sign);
            continue;
        }
        let term = rule.terms.iter().position(|term| term.symbol == word).and_then(|place| terms.get(place));
        match term {
            Some(term) => {
                let (number, unit, known) = printed(cx, *term, false);
                out.push_str(&if known { format!("{number} {unit}").trim_end().to_owned() } else { format!("[{word}]") });
            }
            None => out.push_str(&word),
        }
        word.clear();
        if sign != '\n' {
            out.push(sign);
        }
    }
    out
}

fn given(ui: &mut Ui, cx: &mut Cx<'_>, origin: Origin) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("working-source"), &tokens);
    let words = match origin {
        Origin::Entered(_) => cx.label("working-entered"),
        Origin::Studio(_) => cx.label("working-studio"),
        Origin::Measured(_) => cx.label("working-measured"),
        Origin::LaidOut(_) => cx.label("working-laid-out"),
        Origin::Run(_) => cx.label("working-run"),
        Origin::Default(given) => format!("{} {} ({})", cx.label("working-default"), given.source, trust_words(given.trust, cx.texts)),
        Origin::Constant(given) => format!("{} {} ({})", cx.label("working-constant"), given.source, trust_words(given.trust, cx.texts)),
        Origin::Absent(_) => cx.label("working-absent"),
        Origin::Shelf(_, index) => match cx.computed.book.shelf_term(index) {
            Some(term) => {
                let name = cx
                    .computed
                    .shelves
                    .job
                    .entry(term.entry.as_str())
                    .map_or_else(|| term.entry.to_string(), |entry| entry.name().to_owned());
                let source = sources().get(&term.source).map_or_else(|| term.source.clone(), |source| source.title.clone());
                format!("{} {source} ({})", cx.say("working-shelf", &[("entry", name.into())]), trust_words(term.trust, cx.texts))
            }
            None => String::new(),
        },
        Origin::Derived(_) => String::new(),
    };
    ui.add(Label::new(words).wrap());
}

/// Where a missing figure fails first.
fn missing(ui: &mut Ui, cx: &mut Cx<'_>, id: Id) {
    let causes = cx.computed.book.root_causes(id);
    if causes.is_empty() {
        return;
    }
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("working-fails"), &tokens);
    for cause in causes {
        let figure = cx.computed.book.figure(cause);
        let why = figure.value.cause().map_or_else(String::new, |cause| cause_words(cause, cx.texts));
        let words = format!("{}, {why}", figure_title(&figure, cx.texts));
        if ui.add(eframe::egui::Button::new(RichText::new(words).color(tokens.act)).frame(false).wrap()).clicked() {
            let place = figure.place;
            cx.choose(cause, true);
            cx.act(crate::app::action::Action::Show(place));
        }
    }
}

fn used_by(ui: &mut Ui, cx: &mut Cx<'_>, id: Id) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("working-used-by"), &tokens);
    let users: Vec<Id> = cx.computed.book.figures().filter(|figure| figure.terms.contains(&id)).map(|figure| figure.id).take(12).collect();
    if users.is_empty() {
        heading::says(ui, &cx.label("working-used-by-none"), &tokens);
    }
    for user in users {
        let figure = cx.computed.book.figure(user);
        let title = figure_title(&figure, cx.texts);
        // Several figures of one kind may rest on it, each somewhere else.
        let here = figure.place == cx.computed.book.figure(id).place;
        let words = if here { title } else { format!("{title}, {}", crate::app::names::place(cx, figure.place)) };
        if ui.add(eframe::egui::Button::new(RichText::new(words).color(tokens.act)).frame(false).wrap()).clicked() {
            cx.choose(user, true);
        }
    }
}

/// Other numbers for the terms, and what the figure would be. Nothing of it is kept.
fn what_if(ui: &mut Ui, cx: &mut Cx<'_>, rule: &'static Rule, terms: &[Id]) {
    if matches!(rule.how, How::Sum | How::Most) || terms.len() > 8 {
        return;
    }
    let key = "working-what-if";
    cx.folded(ui, key, |ui, cx| {
        let tokens = cx.tokens;
        heading::says(ui, &cx.label("working-what-if-hint"), &tokens);
        cx.view.what_if.resize(terms.len(), None);
        for (place, (term, of)) in rule.terms.iter().zip(terms).enumerate() {
            let now = cx.computed.book.number(*of);
            let name = format!("{} {}", cx.label(key), term.symbol);
            ui.horizontal(|ui| {
                ui.label(RichText::new(term.symbol).color(tokens.ink2));
                let field = Number::new(UiId::unique((key, rule.id, place)), &name, term.kind)
                    .now(cx.view.what_if[place])
                    .default(now)
                    .width(110.0);
                if let Some(other) = signed(ui, cx, &field, true) {
                    cx.view.what_if[place] = other.map(Finite::get);
                }
            });
        }
        let numbers: Option<Vec<f64>> =
            cx.view.what_if.iter().zip(terms).map(|(other, term)| other.or(cx.computed.book.number(*term))).collect();
        let would = numbers.map_or(Value::Missing(crate::calc::Cause::Term), |numbers| with_other_numbers(rule, &numbers));
        let words = print_value(would, rule.result, &cx.words());
        ui.label(RichText::new(format!("{} {words}", cx.label("working-would-be"))).family(bold()).color(tokens.act));
    });
}

/// A rule on other numbers.
fn with_other_numbers(rule: &Rule, numbers: &[f64]) -> Value {
    let value = match rule.how {
        How::Formula { call, .. } | How::Lookup { call, .. } => Some(call(numbers)),
        How::Decimal { call, .. } => {
            let decimals: Option<Vec<Decimal>> = numbers.iter().map(|number| Decimal::try_from(*number).ok()).collect();
            decimals.and_then(|decimals| call(&decimals)).and_then(|decimal| decimal.try_into().ok())
        }
        How::Exact { .. } | How::Sum | How::Most => None,
    };
    value.map_or(Value::Missing(crate::calc::Cause::NotFinite), finite)
}

fn finite(number: f64) -> Value {
    Finite::new(number).map_or(Value::Missing(crate::calc::Cause::NotFinite), |number| Value::Number(number.get()))
}
