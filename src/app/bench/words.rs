//! What a step is called, what is done in it, and the figures it needs.

use super::steps::Step;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::record::words::step_key;
use crate::calc::{FlaskFigures, Id, MeltFigures};
use crate::job::{BenchStep, FlaskId, WorkStep};
use crate::stock::{Liquid, Powder};

/// A figure of a step.
#[derive(Debug, Clone, Copy)]
pub struct Shown {
    /// The key of its label.
    pub key: &'static str,
    /// The figure.
    pub id: Id,
    /// Weights of powder are whole grams.
    pub powder: bool,
}

fn shown(key: &'static str, id: Id) -> Shown {
    Shown { key, id, powder: false }
}

/// What the step belongs to, and its number there.
pub fn head(cx: &Cx<'_>, step: &Step) -> String {
    let (what, key) = match step.what {
        BenchStep::Steam | BenchStep::Kiln => (load(cx, step.of), "bench-head-kiln"),
        BenchStep::Charge => (cx.computed.report.melts.get(step.of).map_or_else(String::new, |of| melt(cx, of)), "bench-head-melt"),
        BenchStep::Pour | BenchStep::Quench => (flask(cx, step), "bench-head-pour"),
        _ => (flask(cx, step), "bench-head-investment"),
    };
    let (number, all) = (step.number.0.to_string(), step.number.1.to_string());
    cx.say(key, &[("what", what.into()), ("number", number.into()), ("all", all.into())])
}

fn flask(cx: &Cx<'_>, step: &Step) -> String {
    figures(cx, step).map_or_else(String::new, |figures| names::flask(cx, figures.id))
}

fn figures<'a>(cx: &Cx<'a>, step: &Step) -> Option<&'a FlaskFigures> {
    let report = &cx.computed.report;
    report.flasks.get(step.of)
}

fn load(cx: &Cx<'_>, of: usize) -> String {
    let Some(id) = cx.computed.report.burnouts.get(of).map(|load| load.id) else { return String::new() };
    let name = cx.job.burnouts.iter().find(|load| load.id == id).map(|load| load.name.trim().to_owned()).unwrap_or_default();
    if name.is_empty() { cx.say("bench-load", &[("name", id.to_string().into())]) } else { name }
}

/// A melt by its name, or by the flask whose own it is.
pub fn melt(cx: &Cx<'_>, melt: &MeltFigures) -> String {
    let Some(id) = melt.id else {
        let flask = melt.flasks.first().map_or_else(String::new, |id| names::flask(cx, *id));
        return cx.say("melt-own", &[("flask", flask.into())]);
    };
    let name = cx.job.melts.iter().find(|other| other.id == id).map(|melt| melt.name.trim().to_owned()).unwrap_or_default();
    cx.say("melt-named", &[("name", if name.is_empty() { id.to_string() } else { name }.into())])
}

/// The step in three or four words.
pub fn title(cx: &Cx<'_>, step: &Step) -> String {
    let never = figures(cx, step).is_some_and(|figures| figures.pour.never_quench);
    cx.label(if step.what == BenchStep::Quench && never { "bench-cool" } else { step_key(step.what) })
}

/// The step and what it is done with, for what comes next.
pub fn next(cx: &Cx<'_>, step: &Step) -> String {
    let of = match step.what {
        BenchStep::Steam | BenchStep::Kiln => load(cx, step.of),
        BenchStep::Charge => cx.computed.report.melts.get(step.of).map_or_else(String::new, |of| melt(cx, of)),
        _ => flask(cx, step),
    };
    cx.say("bench-next-what", &[("what", title(cx, step).into()), ("of", of.into())])
}

/// What to do, in one line.
pub fn line(cx: &Cx<'_>, step: &Step) -> String {
    let done = match step.what {
        BenchStep::Weigh => cx.label("bench-do-weigh"),
        BenchStep::Mix => cx.label("bench-do-mix"),
        BenchStep::Bowl => cx.label("bench-do-bowl"),
        BenchStep::Fill => cx.label("bench-do-fill"),
        BenchStep::Vacuum => cx.label("bench-do-vacuum"),
        BenchStep::Rest => cx.label("bench-do-rest"),
        BenchStep::Steam => cx.label("bench-do-steam"),
        BenchStep::Kiln => cx.label("bench-do-kiln"),
        BenchStep::Charge => charge_line(cx, step),
        BenchStep::Pour => cx.label("bench-do-pour"),
        BenchStep::Quench => return quench_line(cx, step),
    };
    match step.mix {
        Some((number, all)) => {
            let args = [("number", number.to_string().into()), ("all", all.to_string().into()), ("line", done.into())];
            cx.say("bench-mix-of", &args)
        }
        None => done,
    }
}

/// The lots that go into the crucible, where any were drawn.
fn charge_line(cx: &Cx<'_>, step: &Step) -> String {
    let id = cx.computed.report.melts.get(step.of).and_then(|melt| melt.id);
    let document = cx.job.melts.iter().find(|melt| Some(melt.id) == id);
    let draws = document.map(|melt| melt.charge.as_slice()).unwrap_or_default();
    if draws.is_empty() {
        return cx.label("bench-do-charge");
    }
    let words = |draw: &crate::job::Draw| {
        let grams = crate::quantity::print(draw.grams.to_f64(), crate::quantity::Kind::Mass, cx.style).to_string();
        cx.say("bench-draw", &[("lot", draw.lot.to_string().into()), ("grams", grams.into())])
    };
    let lots: Vec<String> = draws.iter().map(words).collect();
    cx.say("bench-do-charge-lots", &[("lots", lots.join(", ").into())])
}

fn quench_line(cx: &Cx<'_>, step: &Step) -> String {
    let Some(pour) = figures(cx, step).map(|figures| figures.pour) else { return String::new() };
    cx.label(match (pour.never_quench, pour.quench) {
        (true, _) => "quench-never",
        (false, Some(_)) => "bench-do-quench",
        (false, None) => "quench-unknown",
    })
}

/// The key of the caution that belongs to the step.
pub fn caution(step: &Step) -> Option<&'static str> {
    match step.what {
        BenchStep::Weigh | BenchStep::Mix => Some("caution-silica-mix"),
        BenchStep::Bowl | BenchStep::Vacuum => Some("caution-bell-jar"),
        BenchStep::Steam => Some("caution-dewax-steam"),
        BenchStep::Kiln => Some("caution-burnout-fume"),
        BenchStep::Charge => Some("caution-damp-charge"),
        BenchStep::Pour => Some("caution-molten-metal"),
        BenchStep::Quench => Some("caution-quench-steam"),
        BenchStep::Fill | BenchStep::Rest => None,
    }
}

/// The one or two figures of the step.
pub fn numbers(cx: &Cx<'_>, step: &Step) -> Vec<Shown> {
    let report = &cx.computed.report;
    match step.what {
        BenchStep::Steam | BenchStep::Kiln => {
            let Some(load) = report.burnouts.get(step.of) else { return Vec::new() };
            match (step.what, load.dewax_start) {
                (BenchStep::Steam, Some(steam)) => vec![shown("bench-at", steam), shown("bench-kiln-then", load.kiln_start)],
                _ => vec![shown("bench-at", load.kiln_start), shown("bench-takes", load.total)],
            }
        }
        BenchStep::Charge => {
            let Some(melt) = report.melts.get(step.of) else { return Vec::new() };
            let metal = melt.flasks.first().and_then(|id| report.flasks.iter().find(|flask| flask.id == *id)).map(|flask| flask.pour.metal);
            let metal = metal.map(|id| shown("bench-metal-at", id));
            std::iter::once(shown("bench-in-all", melt.charge)).chain(metal).collect()
        }
        _ => figures(cx, step).map(|figures| of_flask(cx, step, figures)).unwrap_or_default(),
    }
}

/// What the powder is mixed with.
fn liquid(cx: &Cx<'_>, flask: &FlaskFigures) -> &'static str {
    let powder = flask.powder.as_ref().and_then(|id| cx.computed.shelves.job.get::<Powder>(id.as_str()));
    if powder.is_some_and(|powder| powder.liquid == Liquid::SpecialLiquid) { "bench-liquid" } else { "bench-water" }
}

fn of_flask(cx: &Cx<'_>, step: &Step, flask: &FlaskFigures) -> Vec<Shown> {
    let mix = &flask.mix;
    let powder = |key, id| Shown { key, id, powder: true };
    match step.what {
        BenchStep::Weigh if step.mix.is_some() => {
            vec![powder("bench-powder", mix.powder_of_mix), powder(liquid(cx, flask), mix.water_of_mix)]
        }
        BenchStep::Weigh => vec![powder("bench-powder", mix.powder), powder(liquid(cx, flask), mix.water)],
        BenchStep::Mix => vec![shown("bench-takes", mix.steps[0])],
        BenchStep::Bowl | BenchStep::Vacuum => vec![shown("bench-gauge", mix.gauge)],
        BenchStep::Fill => vec![shown("bench-takes", mix.steps[2])],
        BenchStep::Rest => vec![shown("bench-rest-by", mix.finish_by)],
        BenchStep::Pour => vec![shown("bench-metal-at", flask.pour.metal), shown("bench-mould-at", flask.pour.mould)],
        BenchStep::Quench => {
            let window = flask.pour.quench.filter(|_| !flask.pour.never_quench);
            window.map(|[from, until]| vec![shown("bench-quench-from", from), shown("bench-quench-until", until)]).unwrap_or_default()
        }
        _ => Vec::new(),
    }
}

/// The minutes a step takes, where it runs by the clock: the outer `None` is a step without a clock.
pub fn minutes(cx: &Cx<'_>, step: &Step) -> Option<Option<f64>> {
    let figures = figures(cx, step);
    let of_mix = |place: usize| Some(figures.and_then(|figures| cx.computed.book.number(figures.mix.steps[place])));
    match step.what {
        BenchStep::Mix => of_mix(0),
        BenchStep::Bowl => of_mix(1),
        BenchStep::Fill => of_mix(2),
        BenchStep::Vacuum => of_mix(3),
        BenchStep::Rest => Some(figures.and_then(|figures| setting_min(cx, figures.id))),
        BenchStep::Quench => {
            let window = figures.and_then(|figures| figures.pour.quench.filter(|_| !figures.pour.never_quench));
            Some(window.and_then(|[_, until]| cx.computed.book.number(until)))
        }
        _ => None,
    }
}

/// How long the investment of a flask's load sets before anything is done with it.
fn setting_min(cx: &Cx<'_>, flask: FlaskId) -> Option<f64> {
    let load = cx.job.flasks.iter().find(|one| one.id == flask)?.burnout?;
    let work = cx.computed.report.work.iter().find(|work| work.load == load)?;
    let row = work.rows.iter().find(|row| row.step == WorkStep::Setting)?;
    cx.computed.book.number(row.minutes)
}

/// Does the clock since the first powder in the water run in this step?
pub fn since_powder(step: &Step) -> bool {
    matches!(step.what, BenchStep::Mix | BenchStep::Bowl | BenchStep::Fill | BenchStep::Vacuum | BenchStep::Rest)
}
