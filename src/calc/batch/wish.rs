//! The wish itself: groups with the places they take, what hangs already, what is kept.

use std::ops::RangeInclusive;

use super::make::{Hung, Maker, milligrams_down};
use super::open::{NO_DATE, Piece, Unknown, together};
use super::places::{Inside, places};
use super::sizes::{Candidate, Done, kiln_of, open_load};
use super::trees::{self, Trees};
use super::{Ask, GroupOf, Kept, LockOf};
use crate::calc::arrange::wanted_of;
use crate::calc::book::Book;
use crate::calc::plan::{Company, Group, Lock, Size, Wish};
use crate::calc::pour::pour_range;
use crate::job::{FlaskId, PieceId};
use crate::stock::Section;

/// Parts of a square millimetre that the places of a tree are counted in, so that shares of it are hardly rounded.
const PARTS_A_MM2: f64 = 20.0;

impl<'a> Maker<'_, 'a> {
    pub(super) fn wish(
        mut self,
        pieces: Vec<Piece>,
        unknown: Vec<(PieceId, Unknown)>,
        candidates: Vec<Candidate<'a>>,
        hung: &[Hung<'a>],
        done: &Done,
    ) -> Ask {
        let job = self.pass.job;
        let all_mg: u64 = pieces.iter().map(|piece| piece.metal_mg).chain(hung.iter().map(|hung| hung.metal_mg)).sum();
        let alloys = self.alloys.len();
        let metal: Vec<Vec<(f64, Option<f64>)>> =
            candidates.iter().map(|one| (0..alloys).map(|alloy| self.metal_in(one, alloy)).collect()).collect();
        let size = |(one, metal): (&Candidate<'_>, &Vec<(f64, Option<f64>)>)| Size {
            // Without a crucible there is no end of metal: as much as there is to cast.
            metal_mg: metal.iter().map(|(_, left)| left.map_or(all_mg, milligrams_down)).collect(),
            places: parts(one),
            volume_mm3: whole(one.vessel.volume_cm3() * 1000.0),
            stock: one.size.free,
        };
        let sizes: Vec<Size> = candidates.iter().zip(&metal).map(size).collect();
        let together = together(job, &pieces);
        let tree = self.usual.tree;
        let mut groups: Vec<Group> = together
            .iter()
            .map(|places| {
                let of: Vec<&Piece> = places.iter().map(|at| &pieces[*at]).collect();
                self.group(&of, &candidates)
            })
            .collect();
        let mut what: Vec<GroupOf> = together.into_iter().map(GroupOf::Open).collect();
        let mut locks: Vec<(Lock, LockOf)> = Vec::new();
        for one in hung {
            let Some(size) = candidates.iter().position(|candidate| Some(&candidate.vessel.id) == one.flask.vessel.as_ref()) else {
                continue;
            };
            groups.push(self.hung_group(one, (size, &candidates[size].size.inside), &sizes));
            what.push(GroupOf::Hung(one.flask.id));
            locks.push((Lock { size, groups: vec![groups.len() - 1] }, LockOf::Flask(one.flask.id)));
        }
        locks.extend(self.kept(&pieces, &what, &candidates));
        let trees = self.trees(&pieces, &what, hung, &candidates);
        let load = open_load(job, done);
        let locked: Vec<FlaskId> = hung.iter().map(|hung| hung.flask.id).collect();
        let kiln = kiln_of(self.pass, &self.options.kiln, load, &locked);
        let most_flasks = kiln.as_ref().map(|kiln| kiln.positions.saturating_sub(kiln.taken));
        let (locks, lock_of) = locks.into_iter().unzip();
        let wish = Wish { alloys, sizes, groups, locks, most_flasks };
        Ask {
            wish,
            pieces,
            groups: what,
            locks: lock_of,
            alloys: self.alloys.into_iter().map(|(of, _)| of).collect(),
            roomiest: candidates.last().map(|one| one.size.clone()),
            sizes: candidates.into_iter().map(|one| one.size).collect(),
            unknown,
            kiln,
            load: load.map(|load| load.id),
            tree,
            trees,
            book: Book::default(),
            trunks_g: metal.into_iter().map(|row| row.into_iter().map(|(trunk, _)| trunk).collect()).collect(),
        }
        .without_useless_sizes()
    }

    /// What the flasks are arranged with.
    fn trees(&mut self, pieces: &[Piece], what: &[GroupOf], hung: &[Hung<'_>], candidates: &[Candidate<'a>]) -> Trees {
        let usual = self.usual.tree;
        let mut trees = Trees::default();
        for one in candidates {
            let length = self.trunk_length(one);
            let length_mm = self.pass.book.number(length).unwrap_or_default();
            trees.sizes.push(trees::inside(&usual, &one.size.inside, length_mm));
        }
        let feed = [usual.feed_diameter_mm, usual.feed_mm, usual.angle_deg];
        let mut of = |piece: &Piece| {
            let form = || wanted_of(self.pass.job, self.report, self.pass.book, piece.pattern, feed);
            Some((piece.id, trees.kind(piece.pattern, &piece.body, form)?))
        };
        let groups = what.iter().map(|group| match group {
            GroupOf::Open(places) => places.iter().map(|at| of(&pieces[*at])).collect(),
            GroupOf::Hung(id) => hung.iter().find(|one| one.flask.id == *id)?.pieces.iter().map(&mut of).collect(),
        });
        trees.groups = groups.collect();
        trees
    }

    /// Planned flasks that the caster keeps, as far as their pieces are still open.
    fn kept(&self, pieces: &[Piece], what: &[GroupOf], candidates: &[Candidate<'_>]) -> Vec<(Lock, LockOf)> {
        let lock = |kept: &Kept| {
            let held =
                |group: &GroupOf| matches!(group, GroupOf::Open(places) if places.iter().any(|at| kept.pieces.contains(&pieces[*at].id)));
            let groups: Vec<usize> = what.iter().enumerate().filter(|(_, group)| held(group)).map(|(at, _)| at).collect();
            let size = candidates.iter().position(|candidate| candidate.vessel.id == kept.vessel)?;
            (!groups.is_empty()).then_some((Lock { size, groups }, LockOf::Kept))
        };
        self.options.kept.iter().filter_map(lock).collect()
    }

    fn group(&self, pieces: &[&Piece], candidates: &[Candidate<'_>]) -> Group {
        let alloy = pieces[0].alloy;
        let many = |at: usize| -> Vec<u32> {
            pieces.iter().map(|piece| places(&self.usual.tree, &candidates[at].size.inside, &piece.body)).collect()
        };
        let here: Vec<Vec<u32>> = (0..candidates.len()).map(many).collect();
        // A piece takes the share of a tree that is one over how many of it the tree takes.
        let taken = |(one, many): (&Candidate<'_>, &Vec<u32>)| many.iter().map(|many| parts(one) / (*many).max(1)).sum();
        let spans = pieces.iter().map(|piece| self.mould_c(alloy, piece.section));
        Group {
            alloy,
            metal_mg: pieces.iter().map(|piece| piece.metal_mg).sum(),
            places: candidates.iter().zip(&here).map(taken).collect(),
            fits: here.iter().map(|many| many.iter().all(|many| *many > 0)).collect(),
            mould_c: spans.reduce(|a, b| *a.start().max(b.start())..=*a.end().min(b.end())).unwrap_or(0..=2000),
            company: if pieces.iter().any(|piece| piece.irreplaceable) { Company::Irreplaceable } else { Company::Any },
            due: pieces.iter().map(|piece| piece.due).min().unwrap_or(NO_DATE),
        }
    }

    /// What hangs in a flask of the job. It is there already: it takes what it takes, and at most all there is.
    fn hung_group(&self, hung: &Hung<'_>, (size, inside): (usize, &Inside), sizes: &[Size]) -> Group {
        let alloy = hung.pieces[0].alloy;
        let share = |piece: &Piece| 1.0 / f64::from(places(&self.usual.tree, inside, &piece.body).max(1));
        let share = hung.pieces.iter().map(share).sum::<f64>().min(1.0);
        let chosen = hung.flask.mould_c.map(|at| whole_c(at.get())..=whole_c(at.get()));
        let spans = hung.pieces.iter().map(|piece| self.mould_c(alloy, piece.section));
        let common = spans.reduce(|a, b| *a.start().max(b.start())..=*a.end().min(b.end())).filter(|span| !span.is_empty());
        // Poured as its lightest pieces need it, where no temperature suits all.
        let lightest = || self.mould_c(alloy, hung.pieces.iter().filter_map(|piece| piece.section).min());
        Group {
            alloy,
            metal_mg: hung.metal_mg.min(sizes[size].metal_mg[alloy]),
            places: sizes.iter().map(|size| (f64::from(size.places) * share).floor() as u32).collect(),
            fits: (0..sizes.len()).map(|at| at == size).collect(),
            mould_c: chosen.or(common).unwrap_or_else(lightest),
            company: if hung.flask.trial {
                Company::Trial
            } else if hung.pieces.iter().any(|piece| piece.irreplaceable) {
                Company::Irreplaceable
            } else {
                Company::Any
            },
            due: hung.pieces.iter().map(|piece| piece.due).min().unwrap_or(NO_DATE),
        }
    }

    /// Whole degrees within the range of the alloy for a section; anything where the shelf has none.
    fn mould_c(&self, alloy: usize, section: Option<Section>) -> RangeInclusive<i32> {
        let range = pour_range(&self.alloys[alloy].1.alloy.pour, section.unwrap_or(Section::Medium));
        range.map_or(0..=2000, |range| whole_c(range.mould_c.low.ceil())..=whole_c(range.mould_c.high.floor()))
    }
}

/// The places of a size: parts of the mantle that its pieces stand on.
fn parts(one: &Candidate<'_>) -> u32 {
    let inside = &one.size.inside;
    let high_mm = (inside.height_mm - inside.dome_mm - inside.top_mm).max(1.0);
    (std::f64::consts::PI * inside.diameter_mm * high_mm * PARTS_A_MM2).clamp(1.0, 1e9) as u32
}

fn whole(number: f64) -> u64 {
    number.clamp(0.0, 1e15).round() as u64
}

fn whole_c(number: f64) -> i32 {
    number.clamp(-1e4, 1e4).round() as i32
}
