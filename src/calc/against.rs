//! What was done beside what was planned then: the plan as it was frozen in the record, not as it stands now.

use super::book::{Book, Id};
use super::{FlaskFigures, Report};
use crate::job::{FlaskId, Frozen, InvestedAs, PouredAs};
use crate::quantity::{Finite, Grams, Kind};

/// One thing that was measured, and what was planned of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Against {
    /// The catalogue's key of what it is.
    pub label: &'static str,
    /// What kind of quantity it is.
    pub kind: Kind,
    /// As it was planned when it was done, in the quantity's unit; nothing where the plan did not say.
    pub planned: Option<f64>,
    /// As it was done.
    pub done: f64,
    /// Further off than work at a bench usually is.
    pub unusual: bool,
}

/// How far off is usual. Common practice, no source.
#[derive(Debug, Clone, Copy)]
enum Usual {
    /// A share of what was planned.
    Share(f64),
    /// So much in the quantity's unit.
    Within(f64),
    /// Anything.
    Any,
}

/// How a flask was invested beside its plan.
#[must_use]
pub fn invested(report: &Report, book: &Book, flask: FlaskId, plan: &Frozen, done: &InvestedAs) -> Vec<Against> {
    let Some(figures) = find(report, flask) else { return Vec::new() };
    let mix = &figures.mix;
    let grams = |grams: Option<Grams>| grams.map(Grams::to_f64);
    let ratio = done.powder.zip(done.water).map(|(powder, water)| water.to_f64() / powder.to_f64()).filter(|ratio| ratio.is_finite());
    let was = |id: Option<Id>| id.and_then(|id| then(plan, book, id));
    let rows = [
        ("done-powder", Kind::Mass, Some(mix.powder), grams(done.powder), Usual::Share(0.03)),
        ("done-water", Kind::Mass, Some(mix.water), grams(done.water), Usual::Share(0.03)),
        // A part in a hundred of powder more or less changes setting time and strength.
        ("done-ratio", Kind::Ratio, Some(mix.ratio), ratio, Usual::Within(0.01)),
        ("done-water-c", Kind::Temperature, Some(mix.water_c), done.water_c.map(Finite::get), Usual::Within(3.0)),
        ("done-room", Kind::Temperature, Some(report.site.room), done.room_c.map(Finite::get), Usual::Within(5.0)),
        ("done-vacuum", Kind::Vacuum, Some(mix.gauge), done.vacuum_kpa.map(Finite::get), Usual::Within(4.0)),
        ("done-gloss-off", Kind::Duration, None, done.gloss_off_min.map(Finite::get), Usual::Any),
    ];
    rows.into_iter().filter_map(|(label, kind, id, done, usual)| Some(against(label, kind, was(id), done?, usual))).collect()
}

/// How a flask was poured beside its plan.
#[must_use]
pub fn poured(report: &Report, book: &Book, flask: FlaskId, plan: &Frozen, done: &PouredAs) -> Vec<Against> {
    let Some(figures) = find(report, flask) else { return Vec::new() };
    let quench = figures.pour.quench.map(|[from, _]| from);
    let was = |id: Option<Id>| id.and_then(|id| then(plan, book, id));
    let rows = [
        ("done-metal", Kind::Temperature, Some(figures.pour.metal), done.metal_c.map(Finite::get), Usual::Within(25.0)),
        ("done-mould", Kind::Temperature, Some(figures.pour.mould), done.mould_c.map(Finite::get), Usual::Within(25.0)),
        ("done-charge", Kind::Mass, Some(figures.metal.on_balance), done.charge.map(Grams::to_f64), Usual::Share(0.03)),
        ("done-quench", Kind::Duration, quench, done.quench_min.map(Finite::get), Usual::Any),
    ];
    rows.into_iter().filter_map(|(label, kind, id, done, usual)| Some(against(label, kind, was(id), done?, usual))).collect()
}

fn find(report: &Report, flask: FlaskId) -> Option<&FlaskFigures> {
    report.flasks.iter().find(|figures| figures.id == flask)
}

/// A figure as it stood in a frozen plan.
#[must_use]
pub fn then(plan: &Frozen, book: &Book, id: Id) -> Option<f64> {
    let now = book.figure(id);
    let was = plan.figures.iter().find(|frozen| frozen.rule == now.origin.key() && frozen.place == now.place)?;
    Some(was.value.get())
}

fn against(label: &'static str, kind: Kind, planned: Option<f64>, done: f64, usual: Usual) -> Against {
    let off = planned.map_or(0.0, |planned| (done - planned).abs());
    let unusual = match usual {
        Usual::Share(share) => off > share * planned.unwrap_or(0.0).abs() + 1e-9,
        Usual::Within(most) => off > most + 1e-9,
        Usual::Any => false,
    };
    Against { label, kind, planned, done, unusual }
}
