//! The bench sheet: a page a flask, in the order the work is done, and a last page for the batch as a whole.

use super::block::{Block, Page, Paper};
use super::burnout::burnout;
use super::cautions::Hazards;
use super::costs::costs;
use super::desk::{Desk, SheetInput};
use super::findings::{of_flask, of_no_flask};
use super::metal::metal;
use super::mix::mix;
use super::orders::open_orders;
use super::pieces::pieces;
use super::pour::{pour, quench};
use crate::calc::FlaskFigures;

/// The bench sheet of a batch. A batch without flasks gives its open orders on one page.
#[must_use]
pub fn bench_sheet(input: &SheetInput<'_>) -> Paper {
    let desk = Desk::new(input);
    let mut paper = desk.paper(desk.label("sheet-foot"));
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
    let mut blocks = vec![Block::Words(desk.say("sheet-scratch", &args[3..]))];
    blocks.extend(of_flask(desk, flask));
    let steps: [(Vec<Block>, Option<Block>); 6] = [
        (pieces(desk, flask), hazards.at_tree(desk)),
        (mix(desk, flask), hazards.at_mix(desk)),
        (burnout(desk, flask), hazards.at_burnout(desk)),
        (metal(desk, flask), hazards.at_melt(desk)),
        (pour(desk, flask), hazards.at_pour(desk)),
        (quench(desk, flask), hazards.at_quench(desk)),
    ];
    for (step, cautions) in steps {
        let mut step = step.into_iter();
        blocks.extend(step.next());
        blocks.extend(cautions);
        blocks.extend(step);
    }
    Page { title: desk.say("sheet-flask", &args[..3]), blocks }
}

/// Orders where there are no flasks, what belongs to no flask, and what the metal costs.
fn batch_page(desk: &Desk<'_>) -> Option<Page> {
    let book = desk.input.job.flasks.is_empty();
    let mut blocks = if book { open_orders(desk) } else { Vec::new() };
    blocks.extend(of_no_flask(desk));
    blocks.extend(costs(desk));
    let title = desk.label(if book { "sheet-order-book" } else { "sheet-batch" });
    (!blocks.is_empty()).then_some(Page { title, blocks })
}
