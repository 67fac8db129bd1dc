//! The pieces on a flask's tree, and what the tree weighs.

use super::block::{Block, Side, Table};
use super::desk::{Desk, Ordered};
use super::words::one_line;
use crate::calc::{FlaskFigures, LineFigures, TreeFigures};
use crate::job::{Hung, Job, Line, Tree};

/// Order by order what hangs on the tree, then what it weighs by material.
pub(super) fn pieces(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let mut blocks = vec![desk.heading("sheet-tree")];
    let Some(tree) = desk.tree(flask.tree) else {
        blocks.push(Block::Words(desk.label("sheet-no-tree")));
        return blocks;
    };
    blocks.push(Block::Fields(vec![desk.field("sheet-tree-name", desk.text(&tree.name)), desk.field("sheet-base", base(desk, tree))]));
    if !tree.pieces.is_empty() {
        blocks.push(Block::Table(hung_table(desk, tree)));
        blocks.extend(remarks(desk, tree).map(Block::Words));
    }
    if let Some(figures) = desk.input.report.trees.iter().find(|figures| figures.id == tree.id) {
        blocks.push(Block::Table(parts(desk, figures)));
    }
    blocks
}

fn base(desk: &Desk<'_>, tree: &Tree) -> String {
    let number = one_line(&tree.base_number);
    let base = desk.entry(tree.base.as_ref());
    if number.is_empty() { base } else { desk.say("base-number", &[("base", base.into()), ("number", number.into())]) }
}

fn hung_table(desk: &Desk<'_>, tree: &Tree) -> Table {
    let mut table = desk.table(&[
        ("column-client", Side::Left),
        ("column-design", Side::Left),
        ("column-size", Side::Left),
        ("column-bore", Side::Decimal),
        ("column-pieces", Side::Right),
        ("column-numbers", Side::Left),
        ("column-rough-each", Side::Decimal),
    ]);
    for hung in &tree.pieces {
        let Some(Ordered { order, line, figures }) = desk.line(hung.line) else { continue };
        table.row([
            desk.text(&order.client),
            desk.text(&line.design),
            desk.size(line.size.as_ref()),
            figures.map_or_else(String::new, |figures| bore(desk, figures)),
            count(hung, line).to_string(),
            numbers(hung),
            figures.map_or_else(String::new, |figures| desk.figure(figures.rough)),
        ]);
    }
    table
}

/// The bore of the ring size asked for.
pub(super) fn bore(desk: &Desk<'_>, figures: &LineFigures) -> String {
    figures.bore().map_or_else(String::new, |bore| desk.figure(bore))
}

/// How many pieces of a line hang there; cancelled ones never do.
pub(super) fn count(hung: &Hung, line: &Line) -> u32 {
    if hung.numbers.is_empty() {
        return Job::pieces_of(line);
    }
    let wanted = |number: &&u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
    u32::try_from(hung.numbers.iter().filter(wanted).count()).unwrap_or(u32::MAX)
}

/// Piece numbers in runs: `1–3, 5`; empty where all pieces of the line hang there.
fn numbers(hung: &Hung) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for number in &hung.numbers {
        match runs.last_mut() {
            Some((_, last)) if last.checked_add(1) == Some(*number) => *last = *number,
            _ => runs.push((*number, *number)),
        }
    }
    let words = runs.iter().map(|(first, last)| if first == last { first.to_string() } else { format!("{first}–{last}") });
    words.collect::<Vec<_>>().join(", ")
}

/// What is different about single pieces, and what must be watched with their patterns.
fn remarks<'d>(desk: &'d Desk<'_>, tree: &'d Tree) -> impl Iterator<Item = String> + 'd {
    tree.pieces.iter().filter_map(|hung| Some((hung, desk.line(hung.line)?.line))).flat_map(move |(hung, line)| {
        let here = move |number: &u32| hung.numbers.is_empty() || hung.numbers.contains(number);
        let own_size = line.exceptions.iter().filter(move |(number, exception)| here(number) && !exception.cancelled);
        let sizes = own_size.filter_map(move |(number, exception)| {
            let size = desk.size(Some(exception.size.as_ref()?));
            let args = [("number", number.to_string().into()), ("design", desk.text(&line.design).into()), ("size", size.into())];
            Some(desk.say("piece-own-size", &args))
        });
        let pattern = desk.input.job.patterns.iter().find(|pattern| Some(pattern.id) == line.pattern);
        let named = move |key: &'static str| desk.say(key, &[("design", desk.text(&line.design).into())]);
        let stones = pattern.filter(|pattern| pattern.stones).map(|_| named("piece-stones"));
        let only = pattern.filter(|pattern| pattern.irreplaceable).map(|_| named("piece-irreplaceable"));
        sizes.chain(stones).chain(only)
    })
}

fn parts(desk: &Desk<'_>, figures: &TreeFigures) -> Table {
    let mut table = desk.table(&[("column-material", Side::Left), ("column-weight", Side::Decimal), ("column-volume", Side::Decimal)]);
    for part in &figures.parts {
        table.row([
            desk.entry(part.material.as_ref()),
            part.weight.map_or_else(|| desk.label("not-weighed"), |weight| desk.figure(weight)),
            desk.figure(part.volume),
        ]);
    }
    table.row([desk.label("whole-tree"), String::new(), desk.figure(figures.volume)]);
    table
}

/// How wide and how high the tree is.
pub(super) fn measures(desk: &Desk<'_>, figures: &TreeFigures) -> Vec<super::block::Field> {
    let diameter = figures.outline.diameter.map(|id| desk.figure_field("tree-diameter", id));
    let height = figures.outline.height.map(|id| desk.figure_field("tree-height", id));
    diameter.into_iter().chain(height).collect()
}
