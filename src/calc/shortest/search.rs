//! The search for the shortest programme.

use super::bind::Bind;
use super::case::{Case, Halt, Track};
use super::descend::Stand;
use super::draft::Draft;
use super::judge::{Judged, check, judged, manner};
use super::limits::Limits;
use super::load::Load;
use super::model::Model;
use super::outcome::{Outcome, Programme};
use super::path::{Segment, total_min};
use super::start;
use crate::calc::heat::Fineness;
use crate::calc::labour::Labour;

/// Finer than the coarse runs and far quicker than the fine ones: by it the coarse ones learn what they are off.
const CHECK: Fineness = Fineness { radial: 16, axial: 24, grading: 0.1, tolerance_k: 0.1 };
/// Room left besides, in K or minutes, to begin with.
const ROOM: f64 = 0.3;
/// How often a programme is settled, checked and learned from.
const ROUNDS: usize = 5;
/// How often that is gone through where the fine run finds something.
const FINE_ROUNDS: usize = 4;
/// What is broken at so little cost, in minutes, is mended on the way.
const NEARLY: f64 = 15.0;
/// How calm the programmes are that the search begins with: the next where the one before came to nothing.
const CALM: [f64; 2] = [1.0, 2.0];

/// The shortest programme that was found for a load, borne out by a run of [`Fineness::FINE`].
///
/// `table` is a programme in use: where it keeps the limits, what comes out is never longer than it. Where the work is not to go on, the search
/// ends.
#[must_use]
pub fn shortest(load: &Load, limits: &Limits, table: Option<&[Segment]>, labour: &Labour<'_>) -> Outcome {
    shortest_by(load, limits, table, &Fineness::FINE, labour)
}

/// The same, borne out by a run of another fineness: the finest takes longer than the whole search.
#[must_use]
pub fn shortest_by(load: &Load, limits: &Limits, table: Option<&[Segment]>, fineness: &Fineness, labour: &Labour<'_>) -> Outcome {
    let checked = load.check().and_then(|()| limits.check()).and_then(|()| table.map_or(Ok(()), check));
    if let Err(error) = checked {
        return Outcome::Refused(error);
    }
    if let Some((limit, by)) = hopeless(load, limits) {
        return Outcome::Impossible { limit, by, certain: true };
    }
    let mut search = Search { model: Model::new(load, limits, labour), table, fineness: *fineness };
    match search.run() {
        Ok(outcome) => outcome,
        Err(Halt::Stopped) => Outcome::Stopped,
        Err(Halt::Heat(error)) => Outcome::Refused(error),
    }
}

/// What no programme can keep that rises to one top and falls from it.
fn hopeless(load: &Load, limits: &Limits) -> Option<(Bind, f64)> {
    let ceiling = limits.at_most_c(limits.ceiling_c);
    let (hottest, soak) = (ceiling + limits.offset_k, limits.soak_reading_c());
    let over = |c: f64| (c > 0.0).then_some(c);
    if let Some(by) = over(limits.start_c - limits.ceiling_c).or(over(soak - ceiling)) {
        return Some((Bind::Ceiling, by));
    }
    // Nothing heats the core but the kiln: it comes near its heat and never beyond it.
    let asked = load.moulds.iter().map(|mould| &mould.needs).filter(|needs| needs.above_min > 0.0);
    let hottest_start = load.moulds.iter().map(|mould| mould.start_c).fold(f64::NEG_INFINITY, f64::max);
    if let Some(by) = asked.filter_map(|needs| over(needs.above_c - hottest)).reduce(f64::max)
        && hottest_start < hottest
    {
        return Some((Bind::Ceiling, by));
    }
    let lowest = limits.start_c.min(limits.dip_floor_c());
    let never = |within: [f64; 2]| (within[0] - ceiling).max(lowest - within[1]);
    let least = limits.least.iter().enumerate().filter(|(_, least)| least.minutes > 0.0);
    let missed = least.filter(|(_, least)| never(least.within_c) > 0.0).map(|(at, row)| (Bind::SheetLeast { least: at }, row.minutes));
    missed.reduce(|a, b| if b.1 > a.1 { b } else { a })
}

/// A sound programme with its judgement, or what stands in the way and by how much.
type Settled = Result<(Vec<Segment>, Judged), (Bind, f64)>;

/// Why a fine run came to nothing.
enum Amiss {
    Halt(Halt),
    /// A limit is broken.
    Broken(Box<(Case, Track, Judged)>),
}

impl From<Halt> for Amiss {
    fn from(halt: Halt) -> Self {
        Self::Halt(halt)
    }
}

struct Search<'a> {
    model: Model<'a>,
    table: Option<&'a [Segment]>,
    fineness: Fineness,
}

impl Search<'_> {
    fn run(&mut self) -> Result<Outcome, Halt> {
        let (load, limits) = (self.model.load, self.model.limits);
        let mut ways = vec![];
        let kept = |search: &Self, stand: &Stand| search.model.merit(stand, 1.0) - stand.look.total_min < NEARLY;
        for calm in CALM {
            let stand = self.bettered(start::draft(load, limits, calm), start::slowness_min(load).max(20.0) * calm)?;
            let keeps = kept(self, &stand);
            ways.push(stand);
            if keeps {
                break;
            }
        }
        if let Some(draft) = self.table.and_then(|table| Draft::of(table, limits, load.room_c))
            && !ways.last().is_some_and(|stand| kept(self, stand))
        {
            ways.push(self.bettered(draft, 30.0)?);
        }
        self.model.set_done(0.4);
        ways.sort_by(|a, b| self.model.merit(a, 1.0).total_cmp(&self.model.merit(b, 1.0)));
        let mut nearest: Option<(Bind, f64)> = None;
        let mut found = None;
        for stand in ways {
            match self.settled(stand)? {
                Ok(sound) => {
                    found = Some(sound);
                    break;
                }
                Err(broken) => nearest = nearest.or(Some(broken)),
            }
        }
        self.model.set_done(0.9);
        let found = self.beside_the_table(found)?;
        let Some((segments, judged)) = found else {
            let (limit, by) = nearest.unwrap_or((Bind::Segments, 1.0));
            return Ok(Outcome::Impossible { limit, by, certain: false });
        };
        let bound = self.model.held(&segments, &judged)?;
        Ok(Outcome::Found(Box::new(Programme { total_min: total_min(&segments), segments, bound, judged })))
    }

    /// Where it goes from a draft, by the cases that are nearest to their limits at its beginning, and then by those that are at its end.
    fn bettered(&mut self, draft: Draft, reach: f64) -> Result<Stand, Halt> {
        let limits = self.model.limits;
        self.model.awake.fill(false);
        self.model.wake_nearest(&draft.segments(limits))?;
        let stand = self.model.stand(draft)?;
        let stand = self.model.descend(stand, reach, (20, 0.3))?;
        self.model.wake_nearest(&stand.draft.segments(limits))?;
        let stand = self.model.stand(stand.draft)?;
        self.model.descend(stand, 10.0, (8, 1.0))
    }

    /// Learns from a finer run, takes out segments, rounds, and settles until the fine run finds nothing; else the limit that stands in the way.
    fn settled(&mut self, stand: Stand) -> Result<Settled, Halt> {
        self.checked(&stand.draft.segments(self.model.limits), ROOM)?;
        self.model.wake_nearest(&stand.draft.segments(self.model.limits))?;
        let look_again = self.model.stand(stand.draft)?;
        let stand = self.model.descend(look_again, 15.0, (6, 1.0))?;
        let finer = stand.draft.finer(self.model.limits, self.model.load.room_c);
        let stand = self.model.stand(finer)?;
        let stand = self.model.descend(stand, 20.0, (10, 0.3))?;
        let stand = self.model.descend(stand, 4.0, (4, 1.0))?;
        let stand = self.model.thin(stand)?;
        self.model.set_done(0.55);
        let stand = self.model.descend(stand, 6.0, (4, 1.0))?;
        let worst = stand.look.worst().filter(|(_, row)| row.over > 0.0);
        let missing = worst.map(|(case, row)| (row.kind.bind(self.model.cases[case].mould), row.over));
        let sheet = self.model.sheet(&stand.draft).into_iter().enumerate().filter(|(_, short)| *short > 1.0);
        let sheet = sheet.map(|(least, short)| (Bind::SheetLeast { least }, short)).next();
        let segments = self.model.round(stand)?;
        self.until_sound(segments, missing.or(sheet))
    }

    fn until_sound(&mut self, mut segments: Vec<Segment>, missing: Option<(Bind, f64)>) -> Result<Settled, Halt> {
        let mut broken = missing;
        let mut room = ROOM;
        for _ in 0..FINE_ROUNDS {
            let mut sound = false;
            for _ in 0..ROUNDS {
                let (next, look, kept) = self.model.settle(segments)?;
                segments = next;
                if !kept {
                    let worst = look.worst().filter(|(_, row)| row.over > 0.0);
                    broken = broken.or(worst.map(|(case, row)| (row.kind.bind(self.model.cases[case].mould), row.over)));
                    break;
                }
                sound = self.checked(&segments, room)?;
                if sound {
                    break;
                }
            }
            if !sound {
                break;
            }
            room += ROOM;
            let judged = self.fine(&segments, room)?;
            if judged.sound() {
                return Ok(Ok((segments, judged)));
            }
            broken = judged.breaches.first().map(|breach| (breach.limit, breach.by));
        }
        let (load, limits) = (self.model.load, self.model.limits);
        let values = |case: &Case| Ok::<_, Halt>(self.model.run(*case, &segments, &manner(&CHECK))?.values(*case, load));
        let judged = judged(&segments, load, limits, self.model.each(&self.model.cases, values)?);
        // The limit that could not be kept, by what the nearest programme really breaks of it.
        let named = judged.breaches.iter().find(|breach| broken.is_some_and(|(limit, _)| limit == breach.limit));
        let told = named.or(judged.breaches.first()).map(|breach| (breach.limit, breach.by));
        Ok(Err(told.or(broken).unwrap_or((Bind::Segments, 1.0))))
    }

    /// Runs a programme on a finer mesh and learns from it. Whether all is kept with half the room to spare.
    fn checked(&mut self, segments: &[Segment], room: f64) -> Result<bool, Halt> {
        let mut sound = true;
        let finer = self.model.each(&self.model.cases, |case| self.model.run(*case, segments, &manner(&CHECK)))?;
        for (at, finer) in finer.iter().enumerate() {
            let kept = self.model.learn(self.model.cases[at], segments, finer, room)? <= -0.5 * room;
            self.model.awake[at] |= !kept;
            sound &= kept;
        }
        Ok(sound)
    }

    /// The fine run of a programme. Where a mould breaks something there it says no more than that, and the search learns from it.
    fn fine(&mut self, segments: &[Segment], room: f64) -> Result<Judged, Halt> {
        let (load, limits) = (self.model.load, self.model.limits);
        let one = |case: &Case| {
            let track = self.model.run(*case, segments, &manner(&self.fineness))?;
            let values = track.values(*case, load);
            let alone = judged(segments, load, limits, vec![values.clone()]);
            if alone.sound() { Ok(values) } else { Err(Amiss::Broken(Box::new((*case, track, alone)))) }
        };
        match self.model.each(&self.model.nearest_first(), one) {
            Ok(mut values) => {
                values.sort_by_key(|values| (values.mould, values.of));
                Ok(judged(segments, load, limits, values))
            }
            Err(Amiss::Halt(halt)) => Err(halt),
            Err(Amiss::Broken(broken)) => {
                let (case, track, alone) = *broken;
                self.model.learn_beyond(case, segments, &track, room)?;
                let at = self.model.cases.iter().position(|other| *other == case);
                at.into_iter().for_each(|at| self.model.awake[at] = true);
                Ok(alone)
            }
        }
    }

    /// Where the table is shorter than what was found, and sound, it is shortened as it stands; at worst it is the answer itself.
    fn beside_the_table(&mut self, found: Option<(Vec<Segment>, Judged)>) -> Result<Option<(Vec<Segment>, Judged)>, Halt> {
        let Some(table) = self.table else { return Ok(found) };
        let longest = found.as_ref().map_or(f64::INFINITY, |found| total_min(&found.0));
        if total_min(table) >= longest {
            return Ok(found);
        }
        self.checked(table, ROOM)?;
        let judged = self.fine(table, ROOM)?;
        if !judged.sound() {
            return Ok(found);
        }
        let whole = |minutes: f64| minutes.floor().max(0.0);
        let rounded = table.iter().map(|segment| Segment {
            target_c: self.model.limits.nearest_c(segment.target_c),
            ramp_min: whole(segment.ramp_min),
            hold_min: whole(segment.hold_min),
        });
        let shortened = self.until_sound(rounded.collect(), None)?;
        match shortened {
            Ok(better) if total_min(&better.0) <= total_min(table) => Ok(Some(better)),
            _ => Ok(Some((table.to_vec(), judged))),
        }
    }
}
