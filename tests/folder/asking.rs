//! Searching, last castings and claims against plain loops over the truth.

use std::collections::BTreeMap;

use jiff::civil::{Date, date};
use pourbook::folder::{DateOf, Field, Index, Missing, Query, claims, fold, last_time, taken_by_others};
use pourbook::job::{Event, Flask, FlaskId, From, Job, JobId, Line, LineId, Order, PieceStage, Programme, Size};

use super::Seed;
use super::studio::{ALLOYS, CLIENTS, DEFECTS, KINDS, THINGS, file_of, studio};

/// Entries that count, by looking at every pair.
fn counts(job: &Job, at: usize) -> bool {
    let id = job.record[at].id;
    !matches!(job.record[at].event, Event::Withdrawn { .. })
        && job.record.iter().all(|other| !matches!(other.event, Event::Withdrawn { entry, .. } if entry == id))
}

fn hangs(job: &Job, line: &Line, flask: &Flask) -> bool {
    job.trees.iter().any(|tree| Some(tree.id) == flask.tree && tree.pieces.iter().any(|hung| hung.line == line.id))
}

fn poured(job: &Job, flask: FlaskId) -> Option<Option<Date>> {
    let pours = (0..job.record.len())
        .filter(|at| counts(job, *at) && matches!(job.record[*at].event, Event::Poured { flask: of, .. } if of == flask));
    pours.map(|at| job.record[at].at.map(|at| at.date())).max()
}

type Fields = Vec<(Field, String)>;

fn written(size: &Size) -> String {
    match size {
        Size::Ring { size, .. } | Size::Free(size) => size.clone(),
    }
}

/// What stands in a line's own fields, folded.
fn fields(job: &Job, order: &Order, line: &Line) -> Fields {
    let mut all = vec![(Field::Client, order.client.clone()), (Field::Design, line.design.clone())];
    all.extend(line.alloy.iter().map(|alloy| (Field::Alloy, alloy.to_string())));
    let sizes = line.size.iter().chain(line.exceptions.values().filter_map(|own| own.size.as_ref()));
    all.extend(sizes.map(|size| (Field::Size, written(size))));
    for at in 0..job.record.len() {
        match &job.record[at].event {
            Event::Rejected { piece, defect } if piece.line == line.id && counts(job, at) => all.push((Field::Defect, defect.clone())),
            _ => {}
        }
    }
    for flask in job.flasks.iter().filter(|flask| hangs(job, line, flask)) {
        all.push((Field::Flask, flask.scratch.clone()));
        all.extend(flask.vessel.iter().map(|vessel| (Field::Flask, vessel.to_string())));
        all.extend(flask.alloy.iter().filter(|_| line.alloy.is_none()).map(|alloy| (Field::Alloy, alloy.to_string())));
    }
    all.into_iter().map(|(field, text)| (field, fold(&text))).collect()
}

fn job_fields(job: &Job) -> Fields {
    let mut all = vec![(Field::Job, job.name.clone())];
    all.extend(job.trees.iter().map(|tree| (Field::Tree, tree.name.clone())));
    all.extend(job.flasks.iter().filter_map(|flask| Some((Field::Powder, flask.powder.as_ref()?.to_string()))));
    for load in &job.burnouts {
        all.extend(load.kiln.iter().map(|kiln| (Field::Kiln, kiln.to_string())));
        if let Some(Programme::Table(table)) = &load.programme {
            all.push((Field::Kiln, table.to_string()));
        }
    }
    all.extend(job.melts.iter().flat_map(|melt| &melt.charge).map(|draw| (Field::Lot, draw.lot.to_string())));
    all.into_iter().map(|(field, text)| (field, fold(&text))).collect()
}

fn of_flask(job: &Job, flask: &Flask) -> Vec<(Date, DateOf)> {
    match poured(job, flask.id) {
        Some(date) => date.map(|date| (date, DateOf::Poured)).into_iter().collect(),
        None => {
            let planned = job.burnouts.iter().filter(|load| Some(load.id) == flask.burnout).filter_map(|load| load.pour_at);
            planned.map(|at| (at.date(), DateOf::Planned)).collect()
        }
    }
}

fn dates(job: &Job, order: &Order, line: &Line) -> Vec<(Date, DateOf)> {
    let ordered = order.taken.map(|taken| (taken, DateOf::Ordered));
    ordered.into_iter().chain(job.flasks.iter().filter(|flask| hangs(job, line, flask)).flat_map(|flask| of_flask(job, flask))).collect()
}

fn meets(fields: &Fields, word: &str) -> bool {
    fields.iter().any(|(_, text)| text.split(' ').any(|of| of.starts_with(word)))
}

/// What a query should find, as file and line.
fn plainly(jobs: &[Job], query: &Query) -> Vec<(String, Option<LineId>)> {
    let folded = fold(&query.words);
    let words: Vec<&str> = folded.split_whitespace().collect();
    let narrow = [
        (Field::Client, &query.client),
        (Field::Design, &query.design),
        (Field::Alloy, &query.alloy),
        (Field::Defect, &query.defect),
        (Field::Flask, &query.flask),
    ];
    let narrow: Vec<(Field, String)> =
        narrow.into_iter().filter(|(_, text)| !text.is_empty()).map(|(field, text)| (field, fold(text))).collect();
    let in_days = |dates: &[(Date, DateOf)]| {
        let asked = query.from.is_some() || query.to.is_some();
        !asked || dates.iter().any(|(date, _)| query.from.is_none_or(|from| from <= *date) && query.to.is_none_or(|to| *date <= to))
    };
    let mut found = Vec::new();
    for (number, job) in (0..).zip(jobs) {
        let (of_job, before) = (job_fields(job), found.len());
        let mut all_dates: Vec<(Date, DateOf)> = job.flasks.iter().flat_map(|flask| of_flask(job, flask)).collect();
        for order in &job.orders {
            for line in &order.lines {
                let own = fields(job, order, line);
                let (dates, some) = (dates(job, order, line), words.is_empty() || words.iter().any(|word| meets(&own, word)));
                let all = words.iter().all(|word| meets(&own, word) || meets(&of_job, word));
                if some && all && narrow.iter().all(|one| own.contains(one)) && in_days(&dates) {
                    found.push((file_of(number), Some(line.id)));
                }
                all_dates.extend(dates);
            }
        }
        let whole = !words.is_empty() && narrow.is_empty() && words.iter().all(|word| meets(&of_job, word)) && in_days(&all_dates);
        if found.len() == before && whole {
            found.push((file_of(number), None));
        }
    }
    found.sort();
    found
}

fn asked(seed: &mut Seed) -> Query {
    let mut query = Query { most: usize::MAX, ..Query::default() };
    for _ in 0..seed.below(4) {
        let rest = ["kiln", "S-12", "54", "tree", "76x102", "gypsum"];
        let source = seed.of(&[&THINGS[..], &KINDS[..], &ALLOYS[..], &DEFECTS[..], &CLIENTS[..], &rest[..]]);
        let word = seed.of(source);
        let cut = word.char_indices().nth(1 + seed.below(6)).map_or(word.len(), |(at, _)| at);
        query.words += &format!(" {}", if seed.one_in(2) { &word[..cut] } else { word }.to_uppercase());
    }
    let narrowed = |seed: &mut Seed, from: &[&str]| if seed.one_in(6) { seed.of(from).to_owned() } else { String::new() };
    query.client = narrowed(seed, &CLIENTS);
    query.alloy = narrowed(seed, &ALLOYS);
    query.defect = narrowed(seed, &DEFECTS);
    query.flask = narrowed(seed, &["17", "FLASK-76X102", "3"]);
    if seed.one_in(8) {
        query.design = format!("{} {}", seed.of(&THINGS), seed.of(&KINDS)).to_lowercase();
    }
    query.from = seed.one_in(3).then(|| date(2020 + seed.below(7) as i16, 6, 15));
    query.to = seed.one_in(3).then(|| date(2021 + seed.below(6) as i16, 3, 31));
    query
}

#[test]
fn a_search_finds_what_plain_loops_find() {
    let (jobs, index, _folder) = studio(21, 250);
    let mut seed = Seed(22);
    let mut with_hits = 0;
    for _ in 0..400 {
        let query = asked(&mut seed);
        if query == (Query { most: usize::MAX, ..Query::default() }) {
            continue;
        }
        let found = index.search(&query);
        let name = |path: &std::path::Path| path.file_name().unwrap().to_str().unwrap().to_owned();
        let mut names: Vec<(String, Option<LineId>)> = found.hits.iter().map(|hit| (name(&hit.path), hit.line)).collect();
        names.sort();
        assert_eq!(names, plainly(&jobs, &query), "{query:?}");
        assert_eq!(found.all, found.hits.len());
        with_hits += usize::from(found.all > 0);
        // The best first; fewer of them are the first of them.
        assert!(found.hits.is_sorted_by(|a, b| (b.score, b.date) <= (a.score, a.date)));
        let few = index.search(&Query { most: 3, ..query.clone() });
        assert_eq!((few.hits.as_slice(), few.all), (&found.hits[..found.all.min(3)], found.all));
    }
    assert!(with_hits > 100, "{with_hits}");
}

#[test]
fn a_hit_says_why() {
    let (jobs, index, _folder) = studio(23, 200);
    let ecume = |job: &&Job| job.lines().any(|(_, line)| line.design.starts_with("Écume"));
    let with = jobs.iter().find(ecume).unwrap();
    let found = index.search(&Query { words: "ecume".to_owned(), ..Query::default() });
    let hit = found.hits.iter().find(|hit| hit.job == with.job_id && hit.line.is_some()).unwrap();
    assert!(hit.why.iter().any(|why| why.field == Field::Design && why.text.starts_with("Écume")), "{hit:?}");
    // A whole word before the beginning of one: “A” the client before “Anemone” and “AB”.
    let found = index.search(&Query { words: "a".to_owned(), ..Query::default() });
    assert_eq!(found.hits[0].why[0].text.as_ref(), "A");
    assert!(index.search(&Query { words: "  —".to_owned(), ..Query::default() }).hits.is_empty());
}

#[test]
fn the_last_time_is_what_plain_loops_find() {
    let (jobs, index, _folder) = studio(24, 300);
    let mut some = 0;
    for thing in THINGS {
        for alloy in ALLOYS {
            let design = format!("{thing} {}", KINDS[0]);
            for but in [None, Some(jobs[17].job_id)] {
                let found = last_time(&index, &design.to_uppercase(), alloy, but);
                let found: Vec<_> = found.into_iter().flat_map(|found| [vec![found.newest], found.before].concat()).collect();
                let mut got: Vec<(JobId, LineId, Option<FlaskId>)> =
                    found.iter().map(|one| (one.job, one.line, one.flask.as_ref().map(|flask| flask.0))).collect();
                got.sort_unstable();
                let mut wanted = castings(&jobs, &design, alloy, but);
                wanted.sort_unstable();
                assert_eq!(got, wanted, "{design} in {alloy}");
                assert!(found.is_sorted_by(|a, b| a.at >= b.at));
                some += found.len();
            }
        }
    }
    assert!(some > 20, "{some}");
}

fn castings(jobs: &[Job], design: &str, alloy: &str, but: Option<JobId>) -> Vec<(JobId, LineId, Option<FlaskId>)> {
    let mut all = Vec::new();
    for job in jobs.iter().filter(|job| Some(job.job_id) != but) {
        for (_, line) in job.lines().filter(|(_, line)| line.design == design) {
            let of = |flask: &&Flask| line.alloy.as_ref().or(flask.alloy.as_ref()).is_some_and(|of| of.as_str() == alloy);
            let cast = job.flasks.iter().filter(|flask| hangs(job, line, flask) && poured(job, flask.id).is_some()).filter(of);
            let flasks: Vec<FlaskId> = cast.map(|flask| flask.id).collect();
            let said = (0..job.record.len()).any(|at| {
                let of_line = |pieces: &[pourbook::job::PieceId]| pieces.iter().any(|piece| piece.line == line.id);
                counts(job, at) && matches!(&job.record[at].event, Event::Reached { pieces, stage: PieceStage::Cast } if of_line(pieces))
            });
            if flasks.is_empty() && said && line.alloy.as_ref().is_some_and(|of| of.as_str() == alloy) {
                all.push((job.job_id, line.id, None));
            }
            all.extend(flasks.into_iter().map(|flask| (job.job_id, line.id, Some(flask))));
        }
    }
    all
}

#[test]
fn claims_are_what_plain_loops_find() {
    let (jobs, index, _folder) = studio(25, 300);
    let claims = claims(&index);
    let mut takers: BTreeMap<From, Vec<JobId>> = BTreeMap::new();
    let (mut dangling, mut itself) = (0, 0);
    for job in &jobs {
        for own in job.lines().flat_map(|(_, line)| line.exceptions.values()).filter(|own| !own.cancelled) {
            let Some(from) = own.from else { continue };
            if from.job == job.job_id {
                itself += 1;
                continue;
            }
            takers.entry(from).or_default().push(job.job_id);
            let other = jobs.iter().find(|other| other.job_id == from.job);
            let there = other.and_then(|other| other.lines().map(|(_, line)| line).find(|line| line.id == from.piece.line));
            dangling += usize::from(there.is_none_or(|line| from.piece.number == 0 || from.piece.number > line.quantity));
        }
    }
    assert_eq!(claims.dangling.iter().filter(|one| one.missing == Missing::Itself).count(), itself);
    assert_eq!(claims.dangling.iter().filter(|one| one.missing != Missing::Itself).count(), dangling);
    assert!(dangling > 10 && claims.dangling.iter().any(|one| one.missing == Missing::Line));
    let twice: Vec<_> = takers.iter().filter(|(_, by)| by.len() > 1).map(|(from, by)| (*from, by.len())).collect();
    assert_eq!(claims.twice.iter().map(|twice| (twice.from, twice.by.len())).collect::<Vec<_>>(), twice);
    assert!(twice.len() > 3);
    for job in jobs.iter().map(|job| job.job_id) {
        let left: Vec<_> = claims.left(job).map(|(piece, by)| (piece, by.len())).collect();
        let wanted: Vec<_> = takers.iter().filter(|(from, _)| from.job == job).map(|(from, by)| (from.piece, by.len())).collect();
        assert_eq!(left, wanted);
        let others: BTreeMap<From, usize> = takers
            .iter()
            .map(|(from, by)| (*from, by.iter().filter(|taker| **taker != job).count()))
            .filter(|(_, count)| *count > 0)
            .collect();
        let told = taken_by_others(&index, job).into_iter().filter(|(from, _)| takers.contains_key(from));
        assert_eq!(told.map(|(from, names)| (from, names.len())).collect::<BTreeMap<_, _>>(), others);
    }
}

#[test]
fn a_job_is_found_by_its_file() {
    let (jobs, index, folder) = studio(26, 40);
    for (number, job) in (0..).zip(&jobs) {
        assert_eq!(index.job_at(&folder.path().join(file_of(number))).map(|brief| brief.job_id), Some(job.job_id));
    }
    let nobody: Index = Index::default();
    assert!(nobody.job_at(&folder.path().join(file_of(0))).is_none() && index.job_at(folder.path()).is_none());
}
