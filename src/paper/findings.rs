//! Findings on paper: those of one flask and all that is in it, and those of no flask. Stops first; who answers for one, and why.

use std::collections::BTreeSet;

use super::block::{Block, Marked, Sign};
use super::desk::Desk;
use super::words::{finding_sentence, one_line, weight_mark};
use crate::calc::{Cause, Finding, FlaskFigures, Id, Weight};
use crate::job::{BurnoutId, LineId, PatternId, Place};

/// The findings of a flask, its tree, the pieces and patterns there, its load and its melt; then what its figures still wait for.
pub(super) fn of_flask(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let scope = Scope::new(desk, flask);
    let found = desk.input.report.findings.iter().filter(|finding| scope.holds(finding.place));
    let mut lines: Vec<Marked> = found.flat_map(|finding| marked(desk, finding)).collect();
    let missing = missing(desk, flask);
    if !missing.is_empty() {
        lines.push(Marked {
            sign: Sign::Note,
            mark: desk.label("mark-missing"),
            text: desk.say("missing-list", &[("what", missing.join(", ").into())]),
        });
    }
    if lines.is_empty() { Vec::new() } else { vec![desk.heading("sheet-findings"), Block::Marked(lines)] }
}

/// The findings of a kiln load and its stages.
pub(super) fn of_load(desk: &Desk<'_>, load: BurnoutId) -> Vec<Block> {
    let here = |finding: &&Finding| matches!(finding.place, Place::Burnout(id) | Place::Stage(id, _) if id == load);
    let lines: Vec<Marked> = desk.input.report.findings.iter().filter(here).flat_map(|finding| marked(desk, finding)).collect();
    if lines.is_empty() { Vec::new() } else { vec![desk.heading("sheet-findings"), Block::Marked(lines)] }
}

/// The findings that belong to no flask.
pub(super) fn of_no_flask(desk: &Desk<'_>) -> Vec<Block> {
    let scopes: Vec<Scope> = desk.input.report.flasks.iter().map(|flask| Scope::new(desk, flask)).collect();
    let alone = |finding: &&Finding| !scopes.iter().any(|scope| scope.holds(finding.place));
    let lines: Vec<Marked> = desk.input.report.findings.iter().filter(alone).flat_map(|finding| marked(desk, finding)).collect();
    if lines.is_empty() { Vec::new() } else { vec![desk.heading("sheet-findings-batch"), Block::Marked(lines)] }
}

fn sign_of(weight: Weight) -> Sign {
    match weight {
        Weight::Stop => Sign::Stop,
        Weight::Caution => Sign::Caution,
        Weight::Note => Sign::Note,
    }
}

/// A finding and, where somebody answers for it, who and why.
fn marked(desk: &Desk<'_>, finding: &Finding) -> Vec<Marked> {
    let text = finding_sentence(finding, desk.input.book, &desk.words);
    let mut lines = vec![Marked { sign: sign_of(finding.kind.weight), mark: weight_mark(finding.kind.weight, desk.words.texts), text }];
    if let Some(accepted) = finding.accepted.and_then(|index| desk.input.job.accepted.get(index)) {
        let at = accepted.at.map_or_else(|| desk.label("undated"), |at| desk.date(Some(at.date())));
        let args = [("hands", desk.text(&accepted.hands).into()), ("reason", one_line(&accepted.reason).into()), ("on", at.into())];
        lines.push(Marked { sign: Sign::None, mark: String::new(), text: desk.say("finding-accepted", &args) });
    }
    lines
}

/// The places whose findings belong on a flask's page.
struct Scope {
    places: BTreeSet<Place>,
    patterns: BTreeSet<PatternId>,
    lines: BTreeSet<LineId>,
}

impl Scope {
    fn new(desk: &Desk<'_>, flask: &FlaskFigures) -> Self {
        let mut places = BTreeSet::from([Place::Flask(flask.id)]);
        places.extend(flask.tree.map(Place::Tree));
        places.extend(flask.burnout.map(Place::Burnout));
        places.extend(flask.melt.map(Place::Melt));
        let hung = desk.tree(flask.tree).map(|tree| tree.pieces.as_slice()).unwrap_or_default();
        let lines: BTreeSet<LineId> = hung.iter().map(|hung| hung.line).collect();
        let pattern = |id: &LineId| desk.line(*id).and_then(|ordered| ordered.line.pattern);
        let patterns = lines.iter().filter_map(pattern).collect();
        Self { places, patterns, lines }
    }

    fn holds(&self, place: Place) -> bool {
        match place {
            Place::Mix(flask, _) => self.places.contains(&Place::Flask(flask)),
            Place::TreeRow(tree, _) => self.places.contains(&Place::Tree(tree)),
            Place::Stage(load, _) => self.places.contains(&Place::Burnout(load)),
            Place::Line(line) => self.lines.contains(&line),
            Place::Piece(piece) => self.lines.contains(&piece.line),
            Place::Pattern(pattern) => self.patterns.contains(&pattern),
            place => self.places.contains(&place),
        }
    }
}

/// What the flask's figures wait for in the end, each once.
fn missing(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<String> {
    let book = desk.input.book;
    let wanted: [Id; 5] = [flask.metal.on_balance, flask.mix.powder, flask.mix.finish_by, flask.pour.metal, flask.pour.mould];
    let load = desk.input.report.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
    let roots = wanted.into_iter().chain(load.map(|load| load.kiln_start)).flat_map(|id| book.root_causes(id));
    let mut titles: Vec<String> = Vec::new();
    for root in roots {
        // What waits for another figure is no root a caster could do anything about.
        let Some(cause) = book.value(root).cause().filter(|cause| *cause != Cause::Term) else { continue };
        let figure = book.figure(root);
        let title = match figure.rule() {
            Some(rule) => desk.words.texts.rule_title(rule.id),
            None => desk.words.texts.input_title(chosen_by(flask, figure.origin.key(), cause)),
        };
        if !titles.contains(&title) {
            titles.push(title);
        }
    }
    titles
}

/// One choice brings many numbers with it: what is named is the choice.
fn chosen_by<'k>(flask: &FlaskFigures, key: &'k str, cause: Cause) -> &'k str {
    let page = key.split('.').next().unwrap_or(key);
    match (cause, page) {
        (Cause::NotChosen, "powder" | "mix") if flask.powder.is_none() => "powder.density",
        (Cause::NotChosen, "pour" | "alloy") if flask.alloy.is_none() => "flask.alloy-density",
        (Cause::NotChosen, _) if key == "flask.melt-loss" && flask.alloy.is_none() => "flask.alloy-density",
        _ => key,
    }
}
