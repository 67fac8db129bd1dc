//! What concerns the job as a whole: pieces on no tree or on two, late pieces, the shelf's changes, unconfirmed defaults, acceptances.

use std::collections::BTreeMap;

use super::Shelves;
use super::book::Origin;
use super::burnout::BurnoutFigures;
use super::by_id::{ById, Ordered};
use super::finding::{self, Arg, Finding, Weight, Worse};
use super::flask::FlaskFigures;
use super::order::due;
use super::pass::Pass;
use super::rule::Given;
use crate::job::{Accepted, Hung, Job, Line, Place, Role};
use crate::stock::OverlayProblem;

impl<'a> Pass<'a> {
    /// Pieces that hang on no tree while the job has trees, and pieces that hang on two.
    pub(super) fn pieces_hung(&mut self, by_id: &ById<'a>) {
        let job: &'a Job = self.job;
        if job.trees.is_empty() {
            return;
        }
        // Nearly every line hangs in one row; those that hang in more are kept apart.
        let mut first: Vec<Option<&Hung>> = vec![None; by_id.line_count()];
        let mut more: Vec<(usize, &Hung)> = Vec::new();
        for piece in job.trees.iter().flat_map(|tree| &tree.pieces) {
            match by_id.line(piece.line) {
                Some((place, _)) if first[place].is_none() => first[place] = Some(piece),
                Some((place, _)) => more.push((place, piece)),
                None => {}
            }
        }
        more.sort_by_key(|(place, _)| *place);
        let of_line = |id| {
            let place = by_id.line(id).map_or(usize::MAX, |(place, _)| place);
            let from = more.partition_point(|(other, _)| *other < place);
            let others = more[from..].iter().take_while(move |(other, _)| *other == place).map(|(_, piece)| *piece);
            first.get(place).copied().flatten().into_iter().chain(others)
        };
        for (order, line) in job.lines() {
            let (missing, twice) = missing_and_twice(line, of_line(line.id));
            let place = Place::Line(line.id);
            let design = || Arg::Text(line.design.clone());
            if missing > 0 {
                let mut found = Finding::new(
                    &finding::PIECES_ON_NO_TREE,
                    place,
                    vec![Arg::Count(u64::from(missing)), design(), Arg::Text(order.client.clone())],
                );
                found.value = Some(f64::from(missing));
                self.findings.push(found);
            }
            if twice > 0 {
                let mut found = Finding::new(&finding::PIECE_TWICE, place, vec![Arg::Count(u64::from(twice)), design()]);
                found.value = Some(f64::from(twice));
                self.findings.push(found);
            }
        }
    }

    /// Pieces that are due before their flask is poured.
    pub(super) fn late(&mut self, flasks: &[FlaskFigures], burnouts: &[BurnoutFigures], by_id: &ById<'a>) {
        let job: &'a Job = self.job;
        for flask in flasks {
            let poured = job.burnouts.iter().find(|load| Some(load.id) == flask.burnout).and_then(|load| load.pour_at);
            debug_assert!(flask.burnout.is_none() || burnouts.iter().any(|load| Some(load.id) == flask.burnout));
            let (Some(poured), Some(tree)) = (poured, job.trees.iter().find(|tree| Some(tree.id) == flask.tree)) else { continue };
            for piece in &tree.pieces {
                let Some((_, Ordered { order, line })) = by_id.line(piece.line) else { continue };
                let told = |found: &Finding| *found.kind == finding::LATE && found.place == Place::Line(line.id);
                if let Some(due) = due(order, line).filter(|due| *due < poured.date())
                    && !self.findings.iter().any(told)
                {
                    let args = vec![Arg::Text(due.to_string()), Arg::Text(line.design.clone()), Arg::Text(order.client.clone())];
                    self.find(&finding::LATE, Place::Line(line.id), args);
                }
            }
        }
    }

    /// Copies the job took that differ from today's shelf, and what does not fit in the studio's own shelf.
    pub(super) fn shelf_changes(&mut self, shelves: &Shelves) {
        let today = &shelves.today;
        for name in &shelves.altered {
            self.find(&finding::COPY_ALTERED, Place::Job, vec![Arg::Text(name.clone())]);
        }
        let job = self.job;
        for copied in &job.shelf {
            let id = copied.entry.id();
            if today.hash_of(id.as_str()).is_some_and(|hash| hash != copied.hash) {
                self.find(&finding::SHELF_DIFFERS, Place::Job, vec![Arg::Text(copied.entry.name().to_owned())]);
            }
        }
        for note in &shelves.notes {
            let problem = match note.problem {
                OverlayProblem::BaseChanged { .. } => "overlay-base-changed",
                OverlayProblem::IdTaken(_) => "overlay-id-taken",
                OverlayProblem::UnknownId => "overlay-unknown-id",
                OverlayProblem::OtherKind { .. } => "overlay-other-kind",
                OverlayProblem::Faulty(_) => "overlay-faulty",
            };
            self.find(&finding::OVERLAY_PROBLEM, Place::Studio, vec![Arg::Text(note.id.to_string()), Arg::Words(vec![problem])]);
        }
    }

    /// Defaults nobody confirmed: one Note a page, with their count.
    pub(super) fn unconfirmed_defaults(&mut self) {
        let mut used: Vec<(&'static Given, u64)> = Vec::new();
        for line in self.book.lines() {
            if let Origin::Default(given) = line.origin {
                match used.iter_mut().find(|(other, _)| std::ptr::eq(*other, given)) {
                    Some((_, count)) => *count += 1,
                    None => used.push((given, 1)),
                }
            }
        }
        let mut pages: BTreeMap<&'static str, (u64, Vec<&'static Given>)> = BTreeMap::new();
        for (given, count) in used {
            let page = pages.entry(page_of(given.key)).or_default();
            page.0 += count;
            page.1.push(given);
        }
        for (page, (count, givens)) in pages {
            self.find(&finding::DEFAULTS, Place::Job, vec![Arg::Words(vec![page]), Arg::Count(count), Arg::Givens(givens)]);
        }
    }

    /// Marks the findings somebody answers for, and sorts all by weight.
    pub(super) fn settle(&mut self) {
        let (job, studio) = (self.job, self.studio);
        for found in &mut self.findings {
            let covering = job.accepted.iter().rposition(|accepted| {
                let role = studio.hands.iter().find(|hand| hand.initials == accepted.hands).map(|hand| hand.role);
                covers(accepted, found, role)
            });
            found.accepted = covering;
        }
        self.findings.sort_by_key(|found| (found.kind.weight, found.place, found.kind.key));
    }
}

/// The catalogue's word for the page a default belongs to.
fn page_of(key: &str) -> &'static str {
    match key.split('.').next() {
        Some("site") => "page-site",
        Some("pattern") => "page-pattern",
        Some("print") => "page-print",
        Some("size") => "page-size",
        Some("mould") => "page-mould",
        Some("pair") => "page-pair",
        Some("weighing") => "page-weighing",
        Some("price") => "page-price",
        Some("quote") => "page-quote",
        Some("tree") => "page-tree",
        Some("flask") => "page-flask",
        Some("studio") => "page-studio",
        Some("mix") => "page-mix",
        Some("base") => "page-base",
        Some("plan") => "page-plan",
        Some("feed") => "page-feed",
        Some("fill") => "page-fill",
        Some("spin") => "page-spin",
        Some("kiln") => "page-kiln",
        Some("quench") => "page-quench",
        Some("work") => "page-work",
        Some("client") => "page-client",
        Some("rework") => "page-rework",
        _ => "page-other",
    }
}

/// How many pieces of a line hang nowhere, and how many hang more than once. A row that names no piece hangs all of them.
fn missing_and_twice<'h>(line: &Line, hung: impl Iterator<Item = &'h Hung> + Clone) -> (u32, u32) {
    let mut times: BTreeMap<u32, u32> = BTreeMap::new();
    let live = |number: &u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
    for number in hung.clone().flat_map(|hung| &hung.numbers).filter(|number| live(number)) {
        *times.entry(*number).or_default() += 1;
    }
    let has = Job::pieces_of(line);
    let count = |many: usize| u32::try_from(many).unwrap_or(u32::MAX);
    match hung.filter(|hung| hung.numbers.is_empty()).count() {
        0 => (has.saturating_sub(count(times.len())), count(times.values().filter(|times| **times > 1).count())),
        1 => (0, count(times.len())),
        _ => (0, has),
    }
}

/// Does an acceptance cover a finding? Worse than accepted raises it again, and only a master signs for a Stop.
fn covers(accepted: &Accepted, found: &Finding, role: Option<Role>) -> bool {
    let same = accepted.finding == found.kind.key && accepted.place == found.place;
    let worse = match (found.kind.worse, accepted.value, found.value) {
        (Worse::Never, ..) => false,
        (Worse::Higher, Some(then), Some(now)) => now.total_cmp(&(then.get() + tolerance(then.get()))).is_gt(),
        (Worse::Lower, Some(then), Some(now)) => now.total_cmp(&(then.get() - tolerance(then.get()))).is_lt(),
        _ => found.value.is_some(),
    };
    let may = found.kind.may_be_signed
        && !accepted.reason.trim().is_empty()
        && match found.kind.weight {
            Weight::Stop => role == Some(Role::Master),
            Weight::Caution => matches!(role, Some(Role::Master | Role::Caster)),
            Weight::Note => true,
        };
    same && !worse && may
}

/// What a value may move by rounding between the moment it was accepted and now.
fn tolerance(value: f64) -> f64 {
    value.abs() * 1e-6 + 1e-9
}
