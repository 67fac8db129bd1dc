//! What the studio's own record teaches: means, spreads and trends, defects by what they come with, how predictions held; and what taking a
//! number on would change, before it is taken on.

use eframe::egui::{Label, RichText, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::folder;
use crate::app::page::record::words::{finish_key, step_key};
use crate::app::theme::{STEP, size};
use crate::app::widget::row::{cell, fitted};
use crate::app::widget::{button, heading};
use crate::calc::learned::{Judgement, Learned, Offer, Said, Verdict};
use crate::calc::taught::{By, Lesson, Taught};
use crate::quantity::{Kind, print};
use crate::stock::{Alloy, Entry, EntryId, PatternMaterial, Sourced, Trust, put_own};

/// Widths of the columns: what, mean, where the mean lies, jobs.
const WIDE: [f32; 5] = [230.0, 80.0, 150.0, 90.0, 140.0];

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("taught-says"), &tokens);
    let Some(found) = folder::read(ui, cx) else { return };
    let taught = &found.taught;
    heading::says(ui, &cx.say("taught-jobs", &[("count", taught.jobs.into())]), &tokens);
    lessons(ui, cx, taught);
    defects(ui, cx, taught);
    if let Some(metal) = &taught.metal {
        held(ui, cx, metal);
    }
    if button::link(ui, &cx.label("pieces-look-again"), &tokens).clicked() {
        cx.act(Action::ReadFolder);
    }
    ui.add_space(STEP);
}

fn heads(ui: &mut Ui, cx: &Cx<'_>, keys: [&str; 4]) {
    ui.horizontal(|ui| {
        for (key, width) in keys.into_iter().zip(fitted(ui, WIDE, 0.0)) {
            cell(ui, &cx.label(key), width, size::SMALL, cx.tokens.ink2);
        }
    });
}

fn lessons(ui: &mut Ui, cx: &mut Cx<'_>, taught: &Taught) {
    if taught.lessons.is_empty() {
        return;
    }
    heads(ui, cx, ["taught-what", "taught-mean", "taught-between", "taught-of"]);
    for (lesson, learned) in &taught.lessons {
        one(ui, cx, taught, (lesson, learned));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, taught: &Taught, (lesson, learned): (&Lesson, &Learned<String>)) {
    let tokens = cx.tokens;
    let summary = &learned.all;
    let kind = kind_of(lesson);
    let said = |value: f64| print(value, kind, cx.style).to_string();
    let percent = |value: f64| format!("{:.2} %", 100.0 * value);
    let words = |value: f64| if kind == Kind::Ratio { percent(value) } else { said(value) };
    ui.horizontal(|ui| {
        let wide = fitted(ui, WIDE, 0.0);
        cell(ui, &title(cx, lesson), wide[0], size::BODY, tokens.ink);
        cell(ui, &words(summary.mean), wide[1], size::BODY, tokens.ink);
        let between = summary.mean_interval.map_or_else(|| "–".to_owned(), |band| format!("{} – {}", words(band.lower), words(band.upper)));
        cell(ui, &between, wide[2], size::SMALL, tokens.ink2);
        cell(ui, &cx.say("taught-count", &[("count", learned.jobs.into())]), wide[3], size::SMALL, tokens.ink2);
    });
    let mut says = |words: String| drop(ui.add(Label::new(RichText::new(words).size(size::SMALL).color(tokens.ink2)).wrap()));
    if let Some(trend) = summary.trend.filter(|trend| trend.certain && trend.robust_agrees()) {
        let by = words(trend.per_30_days.abs());
        says(cx.say(if trend.per_30_days > 0.0 { "taught-rises" } else { "taught-falls" }, &[("by", by.into())]));
    }
    if !learned.outliers.is_empty() {
        let of = |job: &String| taught.names.get(job).cloned().unwrap_or_else(|| job.clone());
        let jobs: Vec<String> = learned.outliers.iter().map(|one| of(&one.job)).collect();
        let args = [("jobs", jobs.join(", ").into()), ("without", words(learned.without_outliers.mean).into())];
        says(cx.say("taught-apart", &args));
    }
    offer(ui, cx, lesson, learned);
}

/// What the shelf says of it, whether the record says otherwise, what that changes, and the way to take it on.
fn offer(ui: &mut Ui, cx: &mut Cx<'_>, lesson: &Lesson, learned: &Learned<String>) {
    let tokens = cx.tokens;
    let Some((stands, now)) = default_of(cx, lesson) else { return };
    let Ok(offer) = Offer::of(&learned.all, now) else { return };
    let small = |ui: &mut Ui, words: String| drop(ui.add(Label::new(RichText::new(words).size(size::SMALL).color(tokens.ink2)).wrap()));
    match offer {
        Offer::TooFew { has, needs } => small(ui, cx.say("taught-too-few", &[("has", has.into()), ("needs", needs.into())])),
        Offer::Agrees => small(ui, cx.label("taught-agrees")),
        Offer::Differs { learned: mean, .. } => {
            let words = |value: f64| match lesson {
                Lesson::MeltLoss(_) | Lesson::Shrinkage(_) | Lesson::PatternShrink(_) => format!("{:.2} %", 100.0 * value),
                _ => print(value, kind_of(lesson), cx.style).to_string(),
            };
            let effect = lesson.of_100_g(now, mean).map_or_else(String::new, |grams| format!("{grams:.1}"));
            let args = [("now", words(now).into()), ("learned", words(mean).into()), ("effect", effect.into())];
            let key = match lesson {
                Lesson::MeltLoss(_) => "taught-effect-loss",
                Lesson::Density(_) => "taught-effect-density",
                Lesson::Shrinkage(_) => "taught-effect-shrink",
                _ => "taught-effect-none",
            };
            small(ui, cx.say(key, &args));
            let name = format!("{}, {}", cx.label("taught-take"), title(cx, lesson));
            if button::outlined(ui, &cx.label("taught-take"), &tokens, true).accessible_name(name).clicked()
                && let Some(own) = taken_on(cx, lesson, &stands, mean, learned.jobs)
            {
                cx.edit_studio("edit-taught-take", move |studio| put_own(&mut studio.shelf, &stands, own));
            }
        }
    }
}

/// The shelf's entry and the number that stands there, for what can be taken on.
fn default_of(cx: &Cx<'_>, lesson: &Lesson) -> Option<(Entry, f64)> {
    let shelf = &cx.computed.shelves.today;
    let (id, now) = match lesson {
        Lesson::MeltLoss(id) => (id, shelf.get::<Alloy>(id)?.melt_loss.value),
        Lesson::Shrinkage(id) => (id, shelf.get::<Alloy>(id)?.linear_shrink.value),
        Lesson::PatternShrink(id) => (id, shelf.get::<PatternMaterial>(id)?.linear_shrink.value),
        Lesson::Density(id) => (id, shelf.get::<PatternMaterial>(id)?.density_g_cm3.value),
        _ => return None,
    };
    Some((Entry::clone(shelf.entry(id)?), now))
}

/// The entry with the learned number, and where it comes from.
fn taken_on(cx: &Cx<'_>, lesson: &Lesson, stands: &Entry, mean: f64, jobs: usize) -> Option<Entry> {
    let source = cx.say("taught-source", &[("count", jobs.into())]);
    let number = Sourced { value: mean, source, trust: Trust::Studio };
    let mut own = Entry::clone(stands);
    match (&mut own, lesson) {
        (Entry::Alloy(alloy), Lesson::Shrinkage(_)) => alloy.linear_shrink = number,
        (Entry::Alloy(alloy), _) => alloy.melt_loss = number,
        (Entry::PatternMaterial(material), Lesson::PatternShrink(_)) => material.linear_shrink = number,
        (Entry::PatternMaterial(material), _) => material.density_g_cm3 = number,
        _ => return None,
    }
    own.faults().is_empty().then_some(own)
}

fn kind_of(lesson: &Lesson) -> Kind {
    match lesson {
        Lesson::MeltLoss(_) | Lesson::Finishing(_) | Lesson::FinishStep(..) | Lesson::Shrinkage(_) | Lesson::PatternShrink(_) => {
            Kind::Ratio
        }
        Lesson::Density(_) => Kind::Density,
        Lesson::GlossOff(_) | Lesson::Minutes(_) => Kind::Duration,
    }
}

fn title(cx: &Cx<'_>, lesson: &Lesson) -> String {
    let named = |key: &str, id: &str| {
        let name = EntryId::new(id).map_or_else(|| id.to_owned(), |id| entry_name(cx, &id));
        cx.say(key, &[("of", name.into())])
    };
    match lesson {
        Lesson::MeltLoss(id) => named("taught-melt-loss", id),
        Lesson::Finishing(id) => named("taught-finishing", id),
        Lesson::FinishStep(id, step) => {
            let name = EntryId::new(id).map_or_else(|| id.clone(), |id| entry_name(cx, &id));
            cx.say("taught-finish-step", &[("step", cx.label(finish_key(*step)).into()), ("of", name.into())])
        }
        Lesson::Shrinkage(id) => named("taught-shrinkage", id),
        Lesson::PatternShrink(id) => named("taught-pattern-shrink", id),
        Lesson::Density(id) => named("taught-density", id),
        Lesson::GlossOff(id) => named("taught-gloss-off", id),
        Lesson::Minutes(step) => cx.label(step_key(*step)),
    }
}

/// A name of today's shelf, or of the batch's.
fn entry_name(cx: &Cx<'_>, id: &EntryId) -> String {
    let today = cx.computed.shelves.today.entry(id.as_str()).map(|entry| entry.name().to_owned());
    today.unwrap_or_else(|| names::entry(cx, id))
}

fn defects(ui: &mut Ui, cx: &Cx<'_>, taught: &Taught) {
    let tokens = cx.tokens;
    for by in By::ALL {
        let Some(groups) = taught.defects.get(&by).filter(|groups| !groups.is_empty()) else { continue };
        heading::group(ui, &cx.label(by_key(by)), &tokens);
        heads(ui, cx, ["taught-group", "taught-share", "taught-between", "taught-of"]);
        for group in groups {
            ui.horizontal(|ui| {
                let wide = fitted(ui, WIDE, 0.0);
                let name = EntryId::new(&group.key).map_or_else(|| group.key.clone(), |id| entry_name(cx, &id));
                cell(ui, &name, wide[0], size::BODY, tokens.ink);
                cell(ui, &format!("{:.1} %", 100.0 * group.rate.share()), wide[1], size::BODY, tokens.ink);
                let between = format!("{:.1} – {:.1} %", 100.0 * group.certain.lower, 100.0 * group.certain.upper);
                cell(ui, &between, wide[2], size::SMALL, tokens.ink2);
                let of = cx.say("taught-castings", &[("defects", group.rate.defects.into()), ("of", group.rate.of.into())]);
                cell(ui, &of, wide[3], size::SMALL, tokens.ink2);
                let (key, ink) = match group.said {
                    Said::Worse => ("taught-worse", tokens.caution),
                    Said::Better => ("taught-better", tokens.ink2),
                    Said::NothingCertain => ("taught-chance", tokens.ink3),
                    Said::TooFew { .. } => ("taught-few", tokens.ink3),
                };
                cell(ui, &cx.label(key), wide[4], size::SMALL, ink);
            });
        }
    }
}

const fn by_key(by: By) -> &'static str {
    match by {
        By::Alloy => "taught-by-alloy",
        By::Section => "taught-by-section",
        By::Programme => "taught-by-programme",
        By::PowderLot => "taught-by-lot",
    }
}

/// How the metal that was predicted held, by the constants of that time.
fn held(ui: &mut Ui, cx: &Cx<'_>, metal: &Judgement) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("taught-held"), &tokens);
    let args = [
        ("count", metal.count.into()),
        ("within", format!("{:.0}", 100.0 * metal.share()).into()),
        ("bias", print(metal.bias, Kind::Mass, cx.style).to_string().into()),
    ];
    heading::says(ui, &cx.say("taught-held-says", &args), &tokens);
    let key = match metal.verdict {
        Verdict::TooFew { .. } => "taught-held-few",
        Verdict::Holds => "taught-held-holds",
        Verdict::TooNarrow => "taught-held-narrow",
        Verdict::TooWide => "taught-held-wide",
        Verdict::Biased { .. } => "taught-held-biased",
    };
    heading::says(ui, &cx.label(key), &tokens);
}
