//! A batch plan in words: its flasks, what it leaves out and why, what is proven of it, and what it was reckoned with.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::block::{Side, Table};
use super::set;
use super::words::{Words, clean, shelf_name};
use crate::calc::batch::{Ask, Left, Outcome, Row, Stands, Unknown, WhyLeft};
use crate::job::{Job, LineId, PieceId};
use crate::quantity::{Kind, THIN, print};
use crate::stock::{EntryId, Shelf};
use crate::texts::Word;

/// Columns of a line at most.
const WIDTH: usize = 120;

/// What a plan is put into words with.
#[derive(Debug, Clone, Copy)]
pub struct PlanWords<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its shelf.
    pub shelf: &'a Shelf,
    /// Catalogue and units.
    pub words: Words<'a>,
}

/// Pieces of one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pieces {
    /// What they are.
    pub design: String,
    /// Whose they are.
    pub client: String,
    /// Which: "1–3, 5".
    pub numbers: String,
    /// How many.
    pub count: usize,
}

impl PlanWords<'_> {
    fn label(&self, key: &str) -> String {
        self.words.texts.label(key)
    }

    fn say(&self, key: &str, args: &[(&str, Word<'_>)]) -> String {
        self.words.texts.say(key, args)
    }

    fn number(&self, value: f64, kind: Kind) -> String {
        print(value, kind, self.words.style).to_string()
    }

    /// The name of a shelf entry.
    #[must_use]
    pub fn entry(&self, id: &EntryId) -> String {
        self.shelf.entry(id.as_str()).map_or_else(|| id.to_string(), |entry| shelf_name(entry.name(), self.words.texts))
    }

    /// Pieces line by line, in the order of the job.
    #[must_use]
    pub fn by_line(&self, pieces: &[PieceId]) -> Vec<Pieces> {
        let mut lines: BTreeMap<LineId, Vec<u32>> = BTreeMap::new();
        pieces.iter().for_each(|piece| lines.entry(piece.line).or_default().push(piece.number));
        let of = |(order, line): (&crate::job::Order, &crate::job::Line)| {
            let numbers = lines.get(&line.id)?;
            Some(Pieces {
                design: clean(&line.design, self.words.texts),
                client: clean(&order.client, self.words.texts),
                numbers: ranges(numbers),
                count: numbers.len(),
            })
        };
        self.job.lines().filter_map(of).collect()
    }

    /// Pieces in one phrase.
    #[must_use]
    pub fn pieces(&self, pieces: &[PieceId]) -> String {
        let one = |of: Pieces| {
            let args: [(&str, Word<'_>); 4] =
                [("count", of.count.into()), ("design", of.design.into()), ("client", of.client.into()), ("numbers", of.numbers.into())];
            self.say("plan-pieces", &args)
        };
        self.by_line(pieces).into_iter().map(one).collect::<Vec<_>>().join("; ")
    }

    /// The flask of a row: its size, and which one where it stands already.
    #[must_use]
    pub fn flask(&self, row: &Row) -> String {
        let Some(id) = row.flask else { return row.size.clone() };
        let scratch = self.job.flasks.iter().find(|flask| flask.id == id).map(|flask| flask.scratch.trim().to_owned()).unwrap_or_default();
        let name = if scratch.is_empty() { id.to_string() } else { scratch };
        self.say("plan-flask-of-job", &[("size", row.size.as_str().into()), ("name", name.into())])
    }

    /// The metal of a row's tree.
    #[must_use]
    pub fn metal(&self, row: &Row) -> String {
        self.number(row.metal_g, Kind::Mass)
    }

    /// How full its crucible is.
    #[must_use]
    pub fn fill(&self, row: &Row) -> String {
        row.fill.map_or_else(String::new, percent)
    }

    /// Why pieces are in no flask.
    #[must_use]
    pub fn left(&self, left: &Left) -> String {
        let what = self.pieces(&left.pieces);
        let length = |mm: f64| self.number(mm, Kind::Length);
        let (key, mut args): (&str, Vec<(&str, Word<'_>)>) = match &left.why {
            WhyLeft::Unknown(why) => self.unknown(why),
            WhyLeft::TooLarge { needs_mm: [wide, high], largest } => {
                let largest = largest.clone().unwrap_or_default();
                ("plan-left-too-large", vec![("wide", length(*wide).into()), ("high", length(*high).into()), ("largest", largest.into())])
            }
            WhyLeft::NoneFree => ("plan-left-none-free", Vec::new()),
            WhyLeft::TooMuchMetal { metal_g, most_g, crucible } => {
                let crucible = crucible.as_ref().map(|id| self.entry(id)).unwrap_or_default();
                let [metal, most] = [*metal_g, *most_g].map(|grams| self.number(grams, Kind::Mass));
                ("plan-left-metal", vec![("metal", metal.into()), ("most", most.into()), ("crucible", crucible.into())])
            }
            WhyLeft::NoPlace { largest } => ("plan-left-no-place", vec![("largest", largest.as_str().into())]),
            WhyLeft::TooMany { share, size } => {
                let share = percent(*share);
                ("plan-left-too-many", vec![("count", left.pieces.len().into()), ("share", share.into()), ("size", size.as_str().into())])
            }
            WhyLeft::MouldsApart { least_c, most_c } => {
                let [least, most] = [*least_c, *most_c].map(|c| self.number(f64::from(c), Kind::Temperature));
                ("plan-left-moulds", vec![("least", least.into()), ("most", most.into())])
            }
            WhyLeft::KeptInVain => ("plan-left-kept", Vec::new()),
            WhyLeft::NoRoom { flasks, kiln: Some(kiln) } if *flasks >= *kiln as usize => {
                ("plan-left-kiln", vec![("places", u64::from(*kiln).into())])
            }
            WhyLeft::NoRoom { flasks, .. } => ("plan-left-no-room", vec![("flasks", (*flasks).into())]),
        };
        args.push(("what", what.into()));
        self.say(key, &args)
    }

    fn unknown(&self, why: &Unknown) -> (&'static str, Vec<(&'static str, Word<'static>)>) {
        match why {
            Unknown::NoAlloy => ("plan-left-no-alloy", Vec::new()),
            Unknown::AlloyNotOnShelf(id) => ("plan-left-alloy-gone", vec![("alloy", id.to_string().into())]),
            Unknown::NoPattern => ("plan-left-no-pattern", Vec::new()),
            Unknown::BeingRead => ("plan-left-being-read", Vec::new()),
            Unknown::NoVolume => ("plan-left-no-volume", Vec::new()),
            Unknown::NoSize => ("plan-left-no-size", Vec::new()),
            Unknown::CrucibleWrong { crucible, alloy } => {
                ("plan-left-crucible", vec![("crucible", self.entry(crucible).into()), ("alloy", self.entry(alloy).into())])
            }
        }
    }

    /// The plan in one line.
    #[must_use]
    pub fn total(&self, outcome: &Outcome) -> String {
        let pieces: usize = outcome.rows.iter().map(|row| row.pieces.len()).sum();
        let volume = self.number(outcome.volume_cm3, Kind::Volume);
        self.say("plan-total", &[("pieces", pieces.into()), ("flasks", outcome.rows.len().into()), ("volume", volume.into())])
    }

    /// What is proven of it.
    #[must_use]
    pub fn proof(&self, outcome: &Outcome) -> String {
        let least = u64::from(outcome.least_flasks);
        let volume = self.number(outcome.least_volume_cm3, Kind::Volume);
        let proof = if outcome.proven {
            self.label("plan-proven")
        } else if outcome.least_flasks as usize == outcome.rows.len() {
            self.say("plan-proven-flasks", &[("volume", volume.into())])
        } else {
            self.say("plan-bound", &[("flasks", least.into())])
        };
        if outcome.stopped { format!("{} {proof}", self.label("plan-stopped")) } else { proof }
    }

    /// How its trees stand.
    #[must_use]
    pub fn arranged(&self, outcome: &Outcome) -> Option<String> {
        let new: Vec<&Row> = outcome.rows.iter().filter(|row| !row.pieces.is_empty()).collect();
        let all = !new.is_empty() && new.iter().all(|row| matches!(row.stands, Stands::All(_)));
        all.then(|| self.label("plan-arranged"))
    }

    /// What is to be said of a row's tree.
    #[must_use]
    pub fn stands(&self, row: &Row) -> Option<String> {
        match &row.stands {
            _ if row.pieces.is_empty() => None,
            Stands::NotSeen => Some(self.label("plan-not-arranged")),
            Stands::Short { most, of } => Some(self.say("plan-short", &[("most", (*most).into()), ("of", (*of).into())])),
            Stands::All(tree) => {
                let usual = tree.hangs.iter().map(|(_, hang)| hang.angle_deg).fold(f64::INFINITY, f64::min);
                let steeper = tree.hangs.iter().map(|(_, hang)| hang.angle_deg).fold(0.0, f64::max);
                let angles = [usual, steeper].map(|angle| self.number(angle, Kind::Angle));
                (angles[0] != angles[1]).then(|| {
                    let pieces: Vec<PieceId> =
                        tree.hangs.iter().filter(|(_, hang)| hang.angle_deg > usual).map(|(piece, _)| *piece).collect();
                    let args = [("what", self.pieces(&pieces).into()), ("angle", angles[1].as_str().into())];
                    self.say("plan-straighter", &args)
                })
            }
        }
    }

    /// What the plan was reckoned with, a sentence each.
    #[must_use]
    pub fn reckoned(&self, ask: &Ask, own_flasks: bool) -> Vec<String> {
        let mut said = Vec::new();
        for alloy in &ask.alloys {
            let name = shelf_name(&alloy.name, self.words.texts);
            said.push(match (&alloy.crucible, alloy.heaviest_g) {
                (Some(crucible), Some(heaviest)) => {
                    let heaviest = self.number(heaviest, Kind::Mass);
                    let args = [("alloy", name.into()), ("crucible", self.entry(crucible).into()), ("heaviest", heaviest.into())];
                    self.say("plan-with-crucible", &args)
                }
                _ => self.say("plan-with-no-crucible", &[("alloy", name.into())]),
            });
        }
        let tree = &ask.tree;
        let [main, feed_diameter, feed, gap] =
            [tree.main_mm, tree.feed_diameter_mm, tree.feed_mm, tree.gap_mm].map(|mm| self.number(mm, Kind::Length));
        let angle = self.number(tree.angle_deg, Kind::Angle);
        let args: [(&str, Word<'_>); 5] =
            [("main", main.into()), ("width", feed_diameter.into()), ("feed", feed.into()), ("angle", angle.into()), ("gap", gap.into())];
        said.push(self.say("plan-with-tree", &args));
        said.push(self.label(if own_flasks { "plan-with-own-flasks" } else { "plan-with-shelf" }));
        said.push(match &ask.kiln {
            Some(kiln) => {
                let free = u64::from(kiln.positions.saturating_sub(kiln.taken));
                let args = [
                    ("kiln", shelf_name(&kiln.name, self.words.texts).into()),
                    ("places", u64::from(kiln.positions).into()),
                    ("free", free.into()),
                ];
                self.say("plan-with-kiln", &args)
            }
            None => self.label("plan-with-no-kiln"),
        });
        said
    }

    /// The whole plan as text for a terminal.
    #[must_use]
    pub fn text(&self, ask: &Ask, outcome: &Outcome, own_flasks: bool) -> String {
        let mut text = String::new();
        if ask.pieces.is_empty() && ask.unknown.is_empty() {
            let _ = writeln!(text, "{}", self.label("plan-nothing"));
            return text;
        }
        let heads = [
            ("plan-column-flask", Side::Left),
            ("plan-column-alloy", Side::Left),
            ("plan-column-count", Side::Right),
            ("plan-column-pieces", Side::Left),
            ("plan-column-metal", Side::Decimal),
            ("plan-column-crucible", Side::Right),
        ];
        let mut table = Table::new(heads.map(|(key, side)| (self.label(key), side)).into());
        for row in &outcome.rows {
            // The shelf's names would take two lines of every row.
            let cells = [self.flask(row), row.alloy.to_string(), row.pieces.len().to_string(), self.pieces(&row.pieces)];
            let [flask, alloy, count, pieces] = cells;
            table.row([flask, alloy, count, pieces, self.metal(row), self.fill(row)]);
        }
        if !table.rows.is_empty() {
            let _ = writeln!(text, "{}", set::set_table(&table, WIDTH));
        }
        let _ = writeln!(text, "{}\n{}", self.total(outcome), self.proof(outcome));
        let of_rows = outcome.rows.iter().filter_map(|row| Some(format!("{}: {}", self.flask(row), self.stands(row)?)));
        for said in self.arranged(outcome).into_iter().chain(of_rows) {
            let _ = writeln!(text, "{said}");
        }
        if !outcome.left.is_empty() {
            let _ = writeln!(text, "\n{}", self.label("plan-left-over"));
            for left in &outcome.left {
                let _ = writeln!(text, "  {}", self.left(left));
            }
        }
        let _ = writeln!(text, "\n{}", self.label("plan-with"));
        for said in self.reckoned(ask, own_flasks) {
            let _ = writeln!(text, "  {said}");
        }
        text
    }
}

/// A share in whole hundredths.
fn percent(share: f64) -> String {
    format!("{:.0}{THIN}%", 100.0 * share)
}

/// Numbers in runs: "1–3, 5".
fn ranges(numbers: &[u32]) -> String {
    let mut sorted = numbers.to_vec();
    sorted.sort_unstable();
    let mut runs: Vec<[u32; 2]> = Vec::new();
    for number in sorted {
        match runs.last_mut() {
            Some([_, last]) if number == *last + 1 => *last = number,
            _ => runs.push([number, number]),
        }
    }
    let run = |[first, last]: [u32; 2]| if first == last { first.to_string() } else { format!("{first}–{last}") };
    runs.into_iter().map(run).collect::<Vec<_>>().join(", ")
}
