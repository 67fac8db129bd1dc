//! The charge: what goes into the crucible, from which lots, and which crucible takes it.

use super::block::{BigWeight, Block, Field, Marked, Sign};
use super::desk::Desk;
use super::words::one_line;
use crate::calc::{FlaskFigures, MeltFigures};
use crate::job::{Job, LotKind, Melt};
use crate::quantity::{Kind, print};
use crate::stock::Base;

/// The melt a flask is poured from; its own where it shares none.
pub(super) fn melt_of<'a>(desk: &Desk<'a>, flask: &FlaskFigures) -> Option<&'a MeltFigures> {
    desk.input.report.melts.iter().find(|melt| melt.flasks.contains(&flask.id))
}

/// The document behind a melt's figures, where the job names it.
pub(super) fn document_of<'a>(job: &'a Job, melt: Option<&MeltFigures>) -> Option<&'a Melt> {
    let id = melt?.id?;
    job.melts.iter().find(|other| other.id == id)
}

/// The charge on the balance, large; the lots drawn; what it is made up of; the crucible.
pub(super) fn metal(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let metal = &flask.metal;
    let melt = melt_of(desk, flask);
    let document = document_of(desk.input.job, melt);
    let mut weights = vec![desk.weight(desk.label("metal-charge"), metal.on_balance)];
    let shared = melt.filter(|melt| melt.flasks.len() > 1);
    weights.extend(shared.map(|melt| desk.weight(shared_label(desk, melt, document), melt.charge)));
    let draws = document.map(|melt| draws(desk, melt)).unwrap_or_default();
    if draws.is_empty() {
        weights.extend(["metal-new", "metal-scrap"].map(|key| unsaid(desk, key)));
    }
    weights.extend(draws);
    let mut fields = vec![
        desk.figure_field("metal-tree", metal.tree),
        desk.figure_field("metal-button", metal.button),
        desk.figure_field("metal-reserve", metal.reserve),
        desk.field("metal-loss", desk.in_unit(metal.loss, Kind::Ratio, "%")),
        desk.figure_field("metal-exact", metal.charge),
    ];
    fields.extend(funnel(desk, flask));
    fields.extend(melt.map(|melt| crucible(desk, melt)).unwrap_or_default());
    let mut blocks = vec![desk.heading("sheet-metal"), Block::Weights(weights), Block::Words(String::new()), Block::Fields(fields)];
    let fineness = melt.and_then(|melt| melt.fineness).map(|id| desk.say("metal-fineness", &[("fineness", desk.figure(id).into())]));
    blocks.extend(fineness.map(|text| Block::Marked(vec![Marked { sign: Sign::Note, mark: desk.label("mark-look"), text }])));
    blocks
}

fn shared_label(desk: &Desk<'_>, melt: &MeltFigures, document: Option<&Melt>) -> String {
    let flasks: Vec<String> = melt.flasks.iter().map(ToString::to_string).collect();
    let name = document.map_or_else(String::new, |melt| desk.text(&melt.name));
    desk.say("metal-shared", &[("melt", name.into()), ("flasks", flasks.join(", ").into())])
}

fn draws(desk: &Desk<'_>, melt: &Melt) -> Vec<BigWeight> {
    let draw = |draw: &crate::job::Draw| {
        let lot = desk.input.studio.lots.iter().find(|lot| lot.id == draw.lot);
        let kind = lot.map_or_else(String::new, |lot| desk.label(lot_key(lot.what)));
        let label = desk.say("metal-draw", &[("lot", one_line(&draw.lot.to_string()).into()), ("kind", kind.into())]);
        let value = print(draw.grams.to_f64(), Kind::Mass, desk.words.style).to_string();
        BigWeight { label, value, note: String::new(), unit: desk.words.style.units.of(Kind::Mass).symbol, part: true }
    };
    melt.charge.iter().map(draw).collect()
}

/// A line to write on where nothing is drawn yet.
fn unsaid(desk: &Desk<'_>, key: &str) -> BigWeight {
    BigWeight {
        label: desk.label(key),
        value: String::new(),
        note: String::new(),
        unit: desk.words.style.units.of(Kind::Mass).symbol,
        part: true,
    }
}

fn lot_key(kind: LotKind) -> &'static str {
    match kind {
        LotKind::NewMetal => "lot-new-metal",
        LotKind::FineMetal => "lot-fine-metal",
        LotKind::MasterAlloy => "lot-master-alloy",
        LotKind::Scrap => "lot-scrap",
        LotKind::Refining => "lot-refining",
    }
}

/// The funnel of the tree's base, beside the button that has to find room in it.
fn funnel(desk: &Desk<'_>, flask: &FlaskFigures) -> Option<Field> {
    let base = desk.tree(flask.tree)?.base.as_ref()?;
    let base = desk.input.shelves.job.get::<Base>(base.as_str())?;
    Some(desk.field("metal-funnel", print(base.funnel_cm3.value, Kind::Volume, desk.words.style).to_string()))
}

fn crucible(desk: &Desk<'_>, melt: &MeltFigures) -> Vec<Field> {
    let mut fields = vec![desk.figure_field("metal-molten", melt.molten)];
    match (&melt.crucible, &melt.smallest) {
        (Some(chosen), _) => fields.push(desk.field("metal-crucible", desk.entry(Some(chosen)))),
        (None, Some(smallest)) => fields.push(desk.field("metal-smallest", desk.entry(Some(smallest)))),
        (None, None) => fields.push(desk.field("metal-crucible", desk.entry(None))),
    }
    fields.extend(melt.fill.map(|fill| desk.field("metal-fill", desk.in_unit(fill, Kind::Ratio, "%"))));
    fields
}
