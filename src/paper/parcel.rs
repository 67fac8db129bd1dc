//! What lies in a parcel that leaves the house: the pieces with their weights, what for, when they are promised back; where marks are to be
//! struck, also what the law asks and in which order the work is done.

use super::block::{Block, Field, Page, Side, Table};
use super::desk::{Desk, Ordered};
use super::words::{metal_name, one_line, out_for_words, shelf_name};
use crate::calc::PieceWeights;
use crate::calc::marking::{MarkAsked, asked, law_of};
use crate::job::{Entry, Event, OutFor, PieceId, SentOut, TreeId, Weighing, standing};
use crate::quantity::{Grams, Kind, print};
use crate::stock::{Alloy, Element, MarkingLaw, sources};
use crate::texts::Language;

/// A parcel: the entry that tells of it, and what lies in it.
pub(super) struct Parcel<'a> {
    pub entry: &'a Entry,
    pub pieces: &'a [PieceId],
    pub sent: &'a SentOut,
}

/// Every parcel that nobody withdrew, in the order of the record.
pub(super) fn parcels<'a>(desk: &Desk<'a>) -> Vec<Parcel<'a>> {
    let of = |entry: &'a Entry| match &entry.event {
        Event::SentOut { pieces, sent } => Some(Parcel { entry, pieces, sent }),
        _ => None,
    };
    standing(&desk.input.job.record).filter_map(of).collect()
}

/// The page of a parcel.
pub(super) fn parcel_page(desk: &Desk<'_>, parcel: &Parcel<'_>) -> Page {
    let sent = parcel.sent;
    let purpose = out_for_words(sent.what_for, desk.words.texts);
    let title = desk.say("parcel-title", &[("to", desk.text(&sent.to).into()), ("purpose", purpose.into())]);
    let weights = PieceWeights::before(desk.input.job, parcel.entry.id);
    let law = (sent.what_for == OutFor::Hallmark).then(|| law_of(desk.input.studio, &desk.input.shelves.today)).flatten();
    let mut blocks = vec![Block::Fields(fields(desk, parcel, &weights)), desk.heading("parcel-pieces")];
    blocks.push(Block::Table(pieces(desk, parcel, &weights, law)));
    if sent.what_for == OutFor::Hallmark {
        blocks.extend(marks(desk, law));
    }
    if sent.what_for == OutFor::Casting {
        let trees = trees(desk, parcel);
        if !trees.is_empty() {
            blocks.extend([desk.heading("parcel-trees"), Block::Fields(trees)]);
        }
    }
    blocks.extend(came_back(desk, parcel));
    if !parcel.entry.photos.is_empty() {
        let photos: Vec<String> = parcel.entry.photos.iter().map(|photo| one_line(photo)).collect();
        blocks.push(Block::Words(desk.say("parcel-photos", &[("photos", photos.join(", ").into())])));
    }
    blocks.push(Block::Sign(["sign-date", "parcel-handed-over", "parcel-received"].map(|key| desk.label(key)).into()));
    Page { title, blocks, ..Page::default() }
}

fn grams(desk: &Desk<'_>, grams: Grams) -> String {
    print(grams.to_f64(), Kind::Mass, desk.words.style).to_string()
}

/// What all pieces weighed when they went, where every one was weighed.
fn together(parcel: &Parcel<'_>, weights: &PieceWeights) -> Option<Grams> {
    let all = parcel.pieces.iter().map(|piece| weights.now(*piece).map(Grams::decimal)).collect::<Option<Vec<_>>>()?;
    all.into_iter().try_fold(rust_decimal::Decimal::ZERO, rust_decimal::Decimal::checked_add).and_then(Grams::new)
}

fn fields(desk: &Desk<'_>, parcel: &Parcel<'_>, weights: &PieceWeights) -> Vec<Field> {
    let sent = parcel.sent;
    let mut fields = vec![desk.field("parcel-sent", desk.date(parcel.entry.at.map(jiff::civil::DateTime::date)))];
    if !sent.carrier.trim().is_empty() {
        fields.push(desk.field("parcel-carrier", one_line(&sent.carrier)));
    }
    fields.push(desk.field("parcel-promised", desk.date(sent.promised)));
    fields.push(desk.field("column-pieces", parcel.pieces.len().to_string()));
    if let Some(weight) = sent.weight.or_else(|| together(parcel, weights)) {
        fields.push(desk.field("parcel-weight", grams(desk, weight)));
    }
    fields
}

fn pieces(desk: &Desk<'_>, parcel: &Parcel<'_>, weights: &PieceWeights, law: Option<&MarkingLaw>) -> Table {
    let mut columns = vec![
        ("column-code", Side::Left),
        ("column-design", Side::Left),
        ("column-alloy", Side::Left),
        ("column-mark", Side::Left),
        ("column-size", Side::Left),
        ("column-weight", Side::Decimal),
    ];
    if law.is_some() {
        columns.push(("parcel-law", Side::Left));
    }
    let mut table = desk.table(&columns).across();
    for piece in parcel.pieces {
        let Some(Ordered { line, .. }) = desk.line(piece.line) else { continue };
        let sized =
            standing(&desk.input.job.record).take_while(|entry| entry.id != parcel.entry.id).filter_map(|entry| match &entry.event {
                Event::Reworked { piece: of, rework } if of == piece => rework.size.as_ref(),
                _ => None,
            });
        let sized = sized.last();
        let own = line.exceptions.get(&piece.number).and_then(|own| own.size.as_ref());
        let alloy = line.alloy.as_ref().and_then(|id| desk.input.shelves.job.get::<Alloy>(id.as_str()));
        let mark = line.mark_permille.map(|mark| mark.get()).or_else(|| Some(alloy?.fineness?.permille.get()));
        let mut row = vec![
            piece.to_string(),
            desk.text(&line.design),
            desk.entry(line.alloy.as_ref()),
            mark.map_or_else(String::new, |mark| desk.fineness(mark)),
            desk.size(sized.or(own).or(line.size.as_ref())),
            weights.now(*piece).map_or_else(String::new, |weight| grams(desk, weight)),
        ];
        if let Some(law) = law {
            let metal = alloy.and_then(|alloy| alloy.fineness).map(|mark| mark.metal);
            row.push(desk.label(asked_key(asked(law, metal, weights.now(*piece).map(Grams::to_f64)))));
        }
        table.rows.push(row);
    }
    table
}

const fn asked_key(asked: MarkAsked) -> &'static str {
    match asked {
        MarkAsked::Needed => "mark-needed",
        MarkAsked::Exempt => "mark-exempt",
        MarkAsked::NotWeighed => "mark-not-weighed",
        MarkAsked::Nothing => "mark-nothing",
    }
}

/// What the law asks, metal by metal, and in which order the work is done.
fn marks(desk: &Desk<'_>, law: Option<&MarkingLaw>) -> Vec<Block> {
    let mut blocks = vec![desk.heading("parcel-law-heading")];
    match law {
        None => blocks.push(Block::Words(desk.label("parcel-no-law"))),
        Some(law) => {
            let mut table =
                desk.table(&[("column-metal", Side::Left), ("parcel-exempt", Side::Left), ("parcel-legal", Side::Left)]).across();
            for metal in [Element::Au, Element::Ag, Element::Pt, Element::Pd] {
                table.row([metal_name(&format!("{metal:?}"), desk.words.texts), exempt(desk, law, metal), legal(desk, law, metal)]);
            }
            let title = sources().get(law.origin.source()).map_or_else(|| law.origin.source().to_owned(), |source| source.title.clone());
            let country = shelf_name(&law.name, desk.words.texts);
            // The shelf's remarks are in English.
            let notes = if desk.words.texts.language() == Language::English { one_line(&law.notes) } else { String::new() };
            let notes = if notes.is_empty() { notes } else { format!("{notes} ") };
            let args = [("country", country.into()), ("source", title.into()), ("notes", notes.into())];
            blocks.extend([Block::Table(table), Block::Words(desk.say("parcel-law-source", &args))]);
        }
    }
    blocks.push(desk.heading("parcel-order"));
    let steps = ["parcel-step-shape", "parcel-step-weigh", "parcel-step-mark", "parcel-step-set", "parcel-step-later"];
    blocks.push(Block::Steps(steps.map(|key| desk.label(key)).into()));
    blocks
}

fn exempt(desk: &Desk<'_>, law: &MarkingLaw, metal: Element) -> String {
    match law.exemption(metal) {
        _ if !law.asks(metal) => desk.label("mark-nothing"),
        None => desk.label("parcel-none-exempt"),
        Some(light) => {
            let weight = print(light.below_g.value, Kind::Mass, desk.words.style).to_string();
            desk.say(if light.up_to { "parcel-up-to" } else { "parcel-below" }, &[("weight", weight.into())])
        }
    }
}

fn legal(desk: &Desk<'_>, law: &MarkingLaw, metal: Element) -> String {
    let of = law.legal.iter().find(|one| one.metal == metal);
    let all: Option<Vec<String>> = of.map(|one| one.permille.iter().map(ToString::to_string).collect());
    all.map_or_else(|| desk.label("cause-not-known"), |all| all.join(" "))
}

/// The trees that lie in it, with what they weighed.
fn trees(desk: &Desk<'_>, parcel: &Parcel<'_>) -> Vec<Field> {
    let hangs = |id: TreeId| {
        let rows = desk.input.job.trees.iter().filter(|tree| tree.id == id).flat_map(|tree| &tree.pieces);
        rows.into_iter()
            .any(|hung| desk.line(hung.line).is_some_and(|found| hung.pieces(found.line).any(|one| parcel.pieces.contains(&one))))
    };
    let mut fields = Vec::new();
    for tree in desk.input.job.trees.iter().filter(|tree| hangs(tree.id)) {
        let weighed = standing(&desk.input.job.record).filter_map(|entry| match &entry.event {
            Event::TreeWeighed { tree: of, weight } if *of == tree.id => weight.as_ref(),
            _ => None,
        });
        let net = weighed.last().and_then(|weight| match weight {
            Weighing::Net(grams) => Some(*grams),
            Weighing::Gross { weight, tare } => Grams::new(weight.decimal().checked_sub((*tare)?.decimal())?),
        });
        let value = net.map_or_else(|| desk.label("parcel-not-weighed"), |net| grams(desk, net));
        fields.push(Field { label: if tree.name.trim().is_empty() { tree.id.to_string() } else { one_line(&tree.name) }, value });
    }
    fields
}

/// What came back of it.
fn came_back(desk: &Desk<'_>, parcel: &Parcel<'_>) -> Vec<Block> {
    let mut blocks = Vec::new();
    for entry in standing(&desk.input.job.record) {
        let Event::CameBack { sent, pieces, back } = &entry.event else { continue };
        if *sent != parcel.entry.id {
            continue;
        }
        if blocks.is_empty() {
            blocks.push(desk.heading("parcel-back"));
        }
        let failed: Vec<String> = back.failed.iter().map(ToString::to_string).collect();
        let mut fields = vec![
            desk.field("parcel-back-on", desk.date(entry.at.map(jiff::civil::DateTime::date))),
            desk.field("column-pieces", pieces.len().to_string()),
        ];
        fields.extend(back.weight.map(|weight| desk.field("parcel-weight", grams(desk, weight))));
        fields.push(desk.field("parcel-failed", if failed.is_empty() { desk.label("parcel-none-failed") } else { failed.join(", ") }));
        blocks.push(Block::Fields(fields));
    }
    blocks
}
