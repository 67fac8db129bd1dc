//! Asking for words, and narrowing what is looked through.

use std::cmp::Reverse;
use std::path::Path;
use std::sync::Arc;

use jiff::civil::Date;

use super::rows::{Cell, Row};
use super::texts::Answer;
use super::{DateOf, Field, fold};
use crate::folder::index::Index;
use crate::job::{JobId, LineId};

/// Words of a query that are looked for; more are passed over.
const MOST_WORDS: usize = 32;

/// What is looked for. What is left empty asks for nothing; a query that asks for nothing at all finds nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Query {
    /// Every word must be the beginning of a word in some field of a line or of its job. Case, accents and signs do not count.
    pub words: String,
    /// Only lines of this client.
    pub client: String,
    /// Only lines of this design, the whole of it.
    pub design: String,
    /// Only lines in this alloy, by its whole shelf id.
    pub alloy: String,
    /// Only lines of which a piece was rejected for this defect, by its whole key.
    pub defect: String,
    /// Only lines that hang in a flask with this scratched in, or in this steel, by its whole shelf id.
    pub flask: String,
    /// Only lines poured, planned to be poured, or ordered on this day or later.
    pub from: Option<Date>,
    /// The same for this day or earlier.
    pub to: Option<Date>,
    /// So many hits are given, the best ones.
    pub most: usize,
}

impl Default for Query {
    fn default() -> Self {
        let [words, client, design, alloy, defect, flask] = [const { String::new() }; 6];
        Self { words, client, design, alloy, defect, flask, from: None, to: None, most: 200 }
    }
}

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Found {
    /// The best, in order: where the words matter more, then the newest, then by path and line.
    pub hits: Vec<Hit>,
    /// How many there are in all.
    pub all: usize,
}

/// One line that was found, or one job where all was found in what belongs to the job as a whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hit {
    /// The job's file.
    pub path: Arc<Path>,
    /// The job.
    pub job: JobId,
    /// What the caster calls the job.
    pub name: String,
    /// The line; `None` for the job as a whole.
    pub line: Option<LineId>,
    /// Where each word and each narrowing was met, in the order they were asked for; words first.
    pub why: Vec<Why>,
    /// The newest date of the line that lies in the days asked for.
    pub date: Option<(Date, DateOf)>,
    /// How well it answers; only for comparing.
    pub score: u32,
}

/// Why a line was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Why {
    /// Where.
    pub field: Field,
    /// What stands there.
    pub text: Arc<str>,
}

/// A query made ready.
struct Asked {
    words: u32,
    narrowings: Vec<Field>,
    from: Option<Date>,
    to: Option<Date>,
    answers: Vec<Answer>,
}

/// A line that answers, before its words are gathered.
#[derive(Clone, Copy)]
struct Candidate {
    score: u32,
    date: Option<(Date, DateOf)>,
    file: usize,
    /// The number of the line's row; `None` for the job.
    row: Option<usize>,
}

impl Index {
    /// Looks through every job that could be read.
    #[must_use]
    pub fn search(&self, query: &Query) -> Found {
        let Some(asked) = self.asked(query) else { return Found::default() };
        let mut found: Vec<Candidate> = Vec::new();
        for file in 0..self.files().len() {
            asked.look_through(self, file, &mut found);
        }
        let order = |one: &Candidate| (Reverse(one.score), Reverse(one.date), one.file, one.row);
        let all = found.len();
        if all > query.most && query.most > 0 {
            found.select_nth_unstable_by_key(query.most - 1, order);
        }
        found.truncate(query.most);
        found.sort_unstable_by_key(order);
        Found { hits: found.iter().filter_map(|one| asked.hit(self, one)).collect(), all }
    }

    fn asked(&self, query: &Query) -> Option<Asked> {
        let folded = fold(&query.words);
        let words: Vec<String> = folded.split(' ').filter(|word| !word.is_empty()).take(MOST_WORDS).map(str::to_owned).collect();
        let narrowings = [
            (Field::Client, &query.client),
            (Field::Design, &query.design),
            (Field::Alloy, &query.alloy),
            (Field::Defect, &query.defect),
            (Field::Flask, &query.flask),
        ];
        let (fields, narrowings): (Vec<Field>, Vec<String>) =
            narrowings.into_iter().filter(|(_, text)| !text.trim().is_empty()).map(|(field, text)| (field, fold(text))).unzip();
        if words.is_empty() && fields.is_empty() && query.from.is_none() && query.to.is_none() {
            return None;
        }
        let answers = self.texts().answers(&words, &narrowings);
        let all = u32::try_from((1_u64 << words.len()) - 1).unwrap_or(u32::MAX);
        Some(Asked { words: all, narrowings: fields, from: query.from, to: query.to, answers })
    }
}

impl Asked {
    fn look_through(&self, index: &Index, file: usize, found: &mut Vec<Candidate>) {
        let Some(rows) = index.rows(file) else { return };
        let job = rows.job();
        let (job_words, job_narrowed) = self.met(job);
        let (before, mut job_worths, mut without_lines) = (found.len(), None, true);
        for (place, row) in rows.lines().enumerate() {
            without_lines = false;
            let (words, narrowed) = self.met(row);
            // A line answers where a word was met in it; what was met in its job alone is the job's answer.
            let answers = words | job_words == self.words && (words != 0 || self.words == 0) && self.all_narrowed(narrowed);
            if answers && let Some(date) = self.date_of(row) {
                let mut worths = *job_worths.get_or_insert_with(|| self.worths(job, [0; MOST_WORDS]));
                worths = self.worths(row, worths);
                found.push(Candidate { score: worths.iter().sum(), date, file, row: Some(place) });
            }
        }
        let job_answers = job_words == self.words && (self.words != 0 || without_lines) && self.all_narrowed(job_narrowed);
        if found.len() == before
            && job_answers
            && let Some(date) = self.date_of(job)
        {
            found.push(Candidate { score: self.worths(job, [0; MOST_WORDS]).iter().sum(), date, file, row: None });
        }
    }

    fn answer(&self, cell: Cell) -> Answer {
        self.answers.get(cell.text() as usize).copied().unwrap_or_default()
    }

    /// The words and the narrowings that a row meets.
    fn met(&self, row: Row<'_>) -> (u32, u32) {
        let mut met = (0, 0);
        for cell in row.cells {
            let answer = self.answer(*cell);
            met.0 |= answer.begins;
            if answer.narrowed != 0 {
                met.1 |= answer.narrowed & self.narrowings_of(cell.field());
            }
        }
        met
    }

    fn narrowings_of(&self, field: Field) -> u32 {
        self.narrowings.iter().enumerate().fold(0, |bits, (bit, narrowing)| bits | u32::from(*narrowing == field) << bit)
    }

    fn all_narrowed(&self, met: u32) -> bool {
        met.count_ones() as usize == self.narrowings.len()
    }

    /// The newest date in the days asked for; `None` where there is none and days were asked for.
    #[expect(clippy::option_option, reason = "outer: does the row answer at all; inner: has it a date")]
    fn date_of(&self, row: Row<'_>) -> Option<Option<(Date, DateOf)>> {
        let fits = |date: Date| self.from.is_none_or(|from| from <= date) && self.to.is_none_or(|to| date <= to);
        let date = row.dates.iter().find(|(date, _)| fits(*date)).copied();
        (date.is_some() || (self.from.is_none() && self.to.is_none())).then_some(date)
    }

    /// What each word is worth by the best place it was met in, here or where `worths` come from.
    fn worths(&self, row: Row<'_>, mut worths: [u32; MOST_WORDS]) -> [u32; MOST_WORDS] {
        for cell in row.cells {
            let answer = self.answer(*cell);
            let mut begins = answer.begins;
            while begins != 0 {
                let bit = begins.trailing_zeros();
                begins &= begins - 1;
                if let Some(worth) = worths.get_mut(bit as usize) {
                    *worth = worth_of(*cell, answer, bit).max(*worth);
                }
            }
        }
        worths
    }

    /// The best place a word was met in: the first of equals, so that the answer does not depend on the order of looking.
    fn best(&self, rows: &[Row<'_>], bit: u32) -> Option<Cell> {
        let cells = rows.iter().flat_map(|row| row.cells.iter().copied());
        let worths = cells.map(|cell| (worth_of(cell, self.answer(cell), bit), cell)).filter(|(worth, _)| *worth > 0);
        worths.reduce(|best, next| if next.0 > best.0 { next } else { best }).map(|(_, cell)| cell)
    }

    fn hit(&self, index: &Index, one: &Candidate) -> Option<Hit> {
        let (listed, rows) = (index.files().get(one.file)?, index.rows(one.file)?);
        let job = listed.job.as_ref().ok()?;
        let row = one.row.and_then(|place| rows.line(place));
        let looked: Vec<Row<'_>> = row.into_iter().chain([rows.job()]).collect();
        let words = (0..self.words.count_ones()).filter_map(|bit| self.best(&looked, bit));
        let narrowed = self.narrowings.iter().enumerate().filter_map(|(bit, field)| {
            let answers = |cell: Cell| cell.field() == *field && self.answer(cell).narrowed >> bit & 1 == 1;
            looked.first()?.cells.iter().copied().find(|cell| answers(*cell))
        });
        let why = words.chain(narrowed);
        let why = why.filter_map(|cell| Some(Why { field: cell.field(), text: Arc::clone(index.texts().text(cell.text())?) }));
        Some(Hit {
            path: Arc::clone(&listed.path),
            job: job.job_id,
            name: job.name.clone(),
            line: row.map(|row| row.line),
            why: why.collect(),
            date: one.date,
            score: one.score,
        })
    }
}

/// A word counts by where it was met, and double where it is a whole word there; nothing where it was not met.
fn worth_of(cell: Cell, answer: Answer, bit: u32) -> u32 {
    (answer.begins >> bit & 1) * cell.field().weight() * (1 + (answer.whole >> bit & 1))
}
