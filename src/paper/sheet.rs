//! The bench sheet: a page a flask, in the order the work is done, and a last page for the batch as a whole.

use super::block::{Block, Drawing, Page, Paper};
use super::burnout::burnout;
use super::cautions::Hazards;
use super::costs::costs;
use super::desk::{Desk, SheetInput};
use super::findings::{of_flask, of_no_flask};
use super::flask_plan::plan;
use super::metal::metal;
use super::mix::mix;
use super::orders::open_orders;
use super::pieces::{measures, pieces};
use super::pour::{pour, quench};
use super::printed::Sort;
use super::slip::thumbnails;
use crate::calc::FlaskFigures;
use crate::drawing::flask::{Room, section};
use crate::job::OrderId;

/// The bench sheet of a batch. A batch without flasks gives its open orders on one page.
#[must_use]
pub fn bench_sheet(input: &SheetInput<'_>) -> Paper {
    let desk = Desk::new(input);
    let mut paper = desk.paper(desk.label("sheet-foot"));
    paper.title = desk.title(Sort::Bench, "");
    paper.pages = input.report.flasks.iter().map(|flask| flask_page(&desk, flask)).collect();
    paper.pages.extend(batch_page(&desk));
    paper
}

fn flask_page(desk: &Desk<'_>, flask: &FlaskFigures) -> Page {
    let vessel = desk.input.job.flasks.iter().find(|other| other.id == flask.id).and_then(|flask| flask.vessel.as_ref());
    let args = [
        ("flask", flask.id.to_string().into()),
        ("size", desk.vessel(vessel).into()),
        ("alloy", desk.entry(flask.alloy.as_ref()).into()),
        ("scratch", desk.scratch(flask.id).into()),
    ];
    let hazards = Hazards::of(desk, flask);
    let mut blocks = of_flask(desk, flask);
    let steps: [(Vec<Block>, Option<Block>); 6] = [
        (pieces(desk, flask), hazards.at_tree(desk)),
        (mix(desk, flask), hazards.at_mix(desk)),
        (burnout(desk, flask), hazards.at_burnout(desk)),
        (metal(desk, flask), hazards.at_melt(desk)),
        (pour(desk, flask), hazards.at_pour(desk)),
        (quench(desk, flask), hazards.at_quench(desk)),
    ];
    blocks.push(Block::Column);
    for (index, (step, cautions)) in steps.into_iter().enumerate() {
        if index == 3 {
            // What is done the day before stands at the left, what is done at the crucible at the right.
            blocks.push(Block::Column);
            blocks.extend(section_drawing(desk, flask));
        }
        let mut step = step.into_iter();
        blocks.extend(step.next());
        blocks.extend(cautions);
        blocks.extend(step);
    }
    Page {
        title: desk.say("sheet-flask", &args[..3]),
        scratch: desk.scratch(flask.id),
        under: desk.say("sheet-scratch", &args[3..]),
        blocks,
        large: false,
    }
}

/// The tree in its flask, in section and to scale.
fn section_drawing(desk: &Desk<'_>, figures: &FlaskFigures) -> Vec<Block> {
    let document = desk.input.job.flasks.iter().find(|flask| flask.id == figures.id);
    let Some(drawn) = document.and_then(|flask| plan(&desk.input, flask, figures)) else { return Vec::new() };
    let room = |room: &Option<Room>| room.as_ref().map_or_else(|| desk.label("cause-not-known"), |room| room.words.clone());
    let args = [
        ("size", (&drawn.plan.labels.size).into()),
        ("count", drawn.plan.pieces.len().into()),
        ("wall", room(&drawn.plan.wall).into()),
        ("above", room(&drawn.plan.above).into()),
    ];
    let says = desk.say("drawing-says", &args);
    let picture = section(&drawn.plan);
    let hung = desk.tree(figures.tree).map(|tree| tree.pieces.as_slice()).unwrap_or_default();
    let beside = thumbnails(desk, hung.iter().filter_map(|hung| Some(desk.line(hung.line)?.line)));
    let drawing = Drawing { picture, to_scale: true, says, caption: desk.label("drawing-caption"), most_mm: 50.0, beside };
    let mut blocks = vec![desk.heading("sheet-drawing"), Block::Drawing(Box::new(drawing))];
    let key = |(place, id): (usize, &OrderId)| {
        let client = desk.input.job.orders.iter().find(|order| order.id == *id).map_or("", |order| order.client.as_str());
        desk.say("drawing-key", &[("place", (place + 1).into()), ("order", id.to_string().into()), ("client", desk.text(client).into())])
    };
    let keys: Vec<String> = drawn.orders.iter().enumerate().map(key).collect();
    if let Some(tree) = desk.input.report.trees.iter().find(|tree| Some(tree.id) == figures.tree) {
        let mut fields = measures(desk, tree);
        if !keys.is_empty() {
            fields.push(desk.field("drawing-numbers", keys.join(", ")));
        }
        blocks.push(Block::Fields(fields));
    }
    blocks
}

/// Orders where there are no flasks, what belongs to no flask, and what the metal costs.
fn batch_page(desk: &Desk<'_>) -> Option<Page> {
    let book = desk.input.job.flasks.is_empty();
    let mut blocks = if book { open_orders(desk) } else { Vec::new() };
    blocks.extend(of_no_flask(desk));
    blocks.extend(costs(desk));
    let title = desk.label(if book { "sheet-order-book" } else { "sheet-batch" });
    (!blocks.is_empty()).then_some(Page { title, blocks, ..Page::default() })
}
