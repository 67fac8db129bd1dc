//! What every block of a sheet needs: the documents, the figures, and words for them.

use std::collections::BTreeMap;

use jiff::civil::Date;

use super::block::{BigWeight, Block, Field, Letterhead, Paper, Side, Table};
use super::printed::{Pictures, Sort};
use super::words::{Words, clean, date_words, moment_of, moment_short, one_line, print_figure, shelf_name};
use crate::calc::{Book, Id, LineFigures, Report, Setting, Shelves, Value};
use crate::job::{FlaskId, Job, Line, LineId, Order, Size, Studio, Tree, TreeId};
use crate::quantity::{Kind, Style, THIN, print};
use crate::stock::{EntryId, Flask as Vessel, RingScale};
use crate::texts::{Texts, Word};

/// What paper is made from: the documents, what was computed from them, and how it is to be said.
#[derive(Debug, Clone, Copy)]
pub struct SheetInput<'a> {
    /// The batch, as it was computed with.
    pub job: &'a Job,
    /// The studio.
    pub studio: &'a Studio,
    /// The shelf the batch was computed with.
    pub shelves: &'a Shelves,
    /// Its figures by what they belong to, and its findings.
    pub report: &'a Report,
    /// The figures.
    pub book: &'a Book,
    /// Day and zone.
    pub setting: &'a Setting,
    /// The catalogue of texts.
    pub texts: &'a Texts,
    /// Units and digits.
    pub style: &'a Style,
    /// Hash of the document's content as hexadecimal text; its first digits print as the document's version.
    pub content_hash: &'a str,
    /// Is that how it lies on the disk? What was changed since says so beside its version.
    pub saved: bool,
    /// Hash of the studio's file; it prints where the studio's own document is what is told of.
    pub studio_hash: &'a str,
    /// Pictures of patterns and of the studio.
    pub pictures: &'a Pictures,
}

/// An input with the words made for it, and its lines at hand.
#[derive(Debug, Clone)]
pub(super) struct Desk<'a> {
    pub input: SheetInput<'a>,
    pub words: Words<'a>,
    lines: BTreeMap<LineId, Ordered<'a>>,
}

/// A line, whose it is, and its figures.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ordered<'a> {
    pub order: &'a Order,
    pub line: &'a Line,
    pub figures: Option<&'a LineFigures>,
}

impl<'a> Desk<'a> {
    pub fn new(input: &SheetInput<'a>) -> Self {
        let words = Words { texts: input.texts, style: input.style, zone: &input.setting.zone, currency: &input.studio.money.currency };
        let mut lines: BTreeMap<LineId, Ordered<'a>> =
            input.job.lines().map(|(order, line)| (line.id, Ordered { order, line, figures: None })).collect();
        for figures in &input.report.lines {
            if let Some(ordered) = lines.get_mut(&figures.line) {
                ordered.figures = Some(figures);
            }
        }
        Self { input: *input, words, lines }
    }

    pub fn label(&self, key: &str) -> String {
        self.words.texts.label(key)
    }

    pub fn say(&self, key: &str, args: &[(&str, Word<'_>)]) -> String {
        self.words.texts.say(key, args)
    }

    pub fn heading(&self, key: &str) -> Block {
        Block::Heading(self.label(key))
    }

    pub fn figure(&self, id: Id) -> String {
        print_figure(self.input.book, id, &self.words)
    }

    /// A moment; without its day of the month where a column is narrow.
    pub fn clock(&self, id: Id, whole: bool) -> String {
        if whole {
            return self.figure(id);
        }
        let at = self.number(id).and_then(|minutes| moment_of(minutes, self.words.zone));
        at.map_or_else(|| self.figure(id), |at| moment_short(at, self.words.texts))
    }

    /// A figure in whole grams, for powder and its water.
    pub fn powder(&self, id: Id) -> String {
        let style = self.words.style.for_powder();
        print_figure(self.input.book, id, &Words { style: &style, ..self.words })
    }

    /// A figure in a unit of its own, whatever the studio prints in.
    pub fn in_unit(&self, id: Id, kind: Kind, unit: &str) -> String {
        let units = self.words.style.units.with(kind, unit).unwrap_or(self.words.style.units);
        let style = Style { units, ..*self.words.style };
        print_figure(self.input.book, id, &Words { style: &style, ..self.words })
    }

    pub fn number(&self, id: Id) -> Option<f64> {
        self.input.book.number(id)
    }

    pub fn known(&self, id: Id) -> bool {
        !matches!(self.input.book.value(id), Value::Missing(_))
    }

    /// Low to high, or the words for what is missing.
    pub fn range(&self, [low, high]: [Id; 2]) -> String {
        self.say("range", &[("low", self.figure(low).into()), ("high", self.figure(high).into())])
    }

    /// A table without rows, its columns named by their keys.
    pub fn table(&self, columns: &[(&str, Side)]) -> Table {
        Table::new(columns.iter().map(|(key, side)| (self.label(key), *side)).collect())
    }

    pub fn field(&self, key: &str, value: String) -> Field {
        Field { label: self.label(key), value }
    }

    pub fn figure_field(&self, key: &str, id: Id) -> Field {
        self.field(key, self.figure(id))
    }

    /// A weight to weigh out, in the studio's unit of weight.
    pub fn weight(&self, label: String, id: Id) -> BigWeight {
        BigWeight { label, value: self.figure(id), note: String::new(), unit: self.words.style.units.of(Kind::Mass).symbol, part: false }
    }

    /// A weight of powder or water, in grams.
    pub fn powder_weight(&self, label: String, id: Id) -> BigWeight {
        BigWeight { label, value: self.powder(id), note: String::new(), unit: Kind::Mass.unit(), part: false }
    }

    /// A weight of metal as a client can follow it: to the hundredth of a gram, in grams.
    pub fn grams(&self, id: Id) -> String {
        let Some(grams) = self.number(id) else { return self.figure(id) };
        format!("{}{THIN}{}", print(grams, Kind::Money, self.words.style).number, Kind::Mass.unit())
    }

    /// A fineness in thousandths.
    pub fn fineness(&self, permille: f64) -> String {
        print(permille, Kind::Fineness, self.words.style).to_string()
    }

    pub fn text(&self, text: &str) -> String {
        clean(text, self.words.texts)
    }

    /// The shelf's name for an entry: its id where the shelf does not have it, and that none was chosen.
    pub fn entry(&self, id: Option<&EntryId>) -> String {
        let Some(id) = id else { return self.label("cause-not-chosen") };
        self.input
            .shelves
            .job
            .entry(id.as_str())
            .map_or_else(|| id.to_string(), |entry| self.text(&shelf_name(entry.name(), self.words.texts)))
    }

    pub fn date(&self, date: Option<Date>) -> String {
        date.map_or_else(|| self.label("undated"), |date| date_words(date, self.words.texts))
    }

    /// Ø×H of the steel, in the studio's unit of length.
    pub fn vessel(&self, id: Option<&EntryId>) -> String {
        let Some(vessel) = id.and_then(|id| self.input.shelves.job.get::<Vessel>(id.as_str())) else { return self.entry(id) };
        let unit = self.words.style.units.of(Kind::Length).symbol;
        if unit == Kind::Length.unit() {
            return self.say("flask-size", &[("size", vessel.to_string().into()), ("unit", unit.into())]);
        }
        let print = |mm| crate::quantity::print(mm, Kind::Length, self.words.style).number;
        let size = format!("{}×{}", print(vessel.inner_diameter_mm), print(vessel.height_mm));
        self.say("flask-size", &[("size", size.into()), ("unit", unit.into())])
    }

    pub fn size(&self, size: Option<&Size>) -> String {
        match size {
            None => String::new(),
            Some(Size::Free(words)) => one_line(words),
            Some(Size::Ring { scale, size }) => {
                let name = self.input.shelves.job.get::<RingScale>(scale.as_str()).map_or(scale.as_str(), |scale| &scale.name);
                // What the scale measures stands in brackets behind its name; a column has no room for it.
                let name = shelf_name(name, self.words.texts);
                let name = name.split(" (").next().unwrap_or(&name);
                format!("{} {}", one_line(name), one_line(size))
            }
        }
    }

    pub fn tree(&self, id: Option<TreeId>) -> Option<&'a Tree> {
        self.input.job.trees.iter().find(|tree| Some(tree.id) == id)
    }

    pub fn line(&self, id: LineId) -> Option<Ordered<'a>> {
        self.lines.get(&id).copied()
    }

    /// What is scratched into a flask's face: its own number where the caster chose none.
    pub fn scratch(&self, id: FlaskId) -> String {
        let flask = self.input.job.flasks.iter().find(|flask| flask.id == id);
        flask.map(|flask| one_line(&flask.scratch)).filter(|scratch| !scratch.is_empty()).unwrap_or_else(|| id.to_string())
    }

    /// The studio's face.
    pub fn letterhead(&self) -> Letterhead {
        let studio = self.input.studio;
        let address = studio.address.iter().map(|line| one_line(line)).filter(|line| !line.is_empty()).collect();
        Letterhead { picture: self.input.pictures.letterhead.clone(), name: one_line(&studio.name), address }
    }

    /// What a document is called: its sort, whose it is, and the batch.
    pub fn title(&self, sort: Sort, client: &str) -> String {
        let args = [("sort", self.label(sort.key()).into()), ("batch", self.text(&self.input.job.name).into())];
        match (client.is_empty(), self.tells_of_others(client)) {
            (true, _) => self.say("paper-title", &args),
            (false, true) => self.say("paper-title-client", &[args[0].clone(), ("client", client.into())]),
            (false, false) => {
                let [sort, batch] = args;
                self.say("paper-title-both", &[sort, ("client", client.into()), batch])
            }
        }
    }

    /// Does the batch's name hold another client's code or design?
    pub fn tells_of_others(&self, client: &str) -> bool {
        self.tells(&self.input.job.name, client)
    }

    /// Do these words hold the code or a design of anybody but this client?
    pub fn tells(&self, words: &str, client: &str) -> bool {
        let name = words.to_lowercase();
        let words: Vec<&str> = name.split(|sign: char| !sign.is_alphanumeric()).collect();
        let holds = |text: &str| {
            let text = text.trim().to_lowercase();
            !text.is_empty() && (words.contains(&text.as_str()) || (text.chars().count() > 3 && name.contains(&text)))
        };
        let mut others = self.input.job.orders.iter().filter(|order| order.client.trim() != client.trim());
        let mut quoted = self.input.job.quotes.iter().map(|quote| quote.client.trim()).filter(|other| *other != client.trim());
        let mut owners = self.input.studio.lots.iter().map(|lot| lot.owner.trim()).filter(|other| *other != client.trim());
        let told = |order: &Order| holds(&order.client) || order.lines.iter().any(|line| holds(&line.design));
        others.any(told) || quoted.any(holds) || owners.any(holds)
    }

    /// A paper that a client may see: the batch's name goes where it tells of somebody else.
    pub fn paper_for(&self, client: &str, foot: String) -> Paper {
        let mut paper = self.paper(foot);
        if self.tells_of_others(client) {
            paper.head.iter_mut().skip(1).for_each(|(batch, _)| batch.clear());
        }
        paper
    }

    /// The same for what the studio's own document tells: its version is the one that counts.
    pub fn studio_paper(&self, client: &str, foot: String) -> Paper {
        let desk = Self { input: SheetInput { content_hash: self.input.studio_hash, ..self.input }, ..self.clone() };
        desk.paper_for(client, foot)
    }

    /// The head of every page: studio, batch, version of the document, day.
    pub fn paper(&self, foot: String) -> Paper {
        let input = &self.input;
        let version: String = input.content_hash.chars().filter(char::is_ascii_alphanumeric).take(12).collect();
        let day = self.date(Some(input.setting.at));
        let right = if version.is_empty() {
            String::new()
        } else {
            self.say(if input.saved { "head-version" } else { "head-version-unsaved" }, &[("version", version.into())])
        };
        let batch = self.say("head-batch", &[("batch", self.text(&input.job.name).into())]);
        Paper { head: vec![(one_line(&input.studio.name), day), (batch, right)], foot, ..Paper::default() }
    }
}
