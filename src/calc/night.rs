//! The shortest night of a load by heat alone: what is asked of [`shortest`](super::shortest), and the answer beside the programme as it stands.
//!
//! Nothing harsher is sought than what the studio already does: ramps and the difference between wall and core at the inversions are held to
//! those of the programme as it stands. Char burns on air and time: the hours of the pattern's data sheet are never gone under.

use super::book::Book;
use super::burnout::HOT_C;
use super::burnout::kiln_offset_k;
use super::flask::FlaskFigures;
use super::heat::{Fineness, HeatError};
use super::labour::Labour;
use super::mould_heat::{CRISTOBALITE_C, HELD_WITHIN_K, HeatAsk, Places, QUARTZ_C};
use super::shortest::{
    Bind, Breach, Inversion, Judged, Kept, KilnBand, Least, Limits, Load, Mould, Needs, Outcome, RampCap, Segment, Soak, judge, readings,
    shortest_by,
};
use super::{HeatFigures, Report};
use crate::job::{BurnoutId, Job, Studio};
use crate::stock::{Kiln, PatternMaterial, Powder, Shelf};

/// Where a sheet says nothing: wax runs out between these for so many minutes, and what does not run out softens and swells there for longer.
/// Common practice, no source.
const WAX_OUT_C: [f64; 2] = [120.0, 320.0];
const WAX_OUT_MIN: f64 = 90.0;
const RESIN_OUT_MIN: f64 = 180.0;
/// The last hold, where the programme holds longer: flasks of a load are poured one after the other. Common practice: an hour at least.
const SOAK_MIN: f64 = 60.0;
/// Wall and core may always be so far apart at an inversion, in K: less than any ordinary night has. Common practice, no source.
const ALWAYS_K: f64 = 40.0;
/// Ramps are compared within these, in °C.
const PARTS_C: [[f64; 2]; 3] = [[-50.0, 300.0], [300.0, 600.0], [600.0, 1500.0]];
/// Set points are multiples of this.
const STEP_C: f64 = 5.0;

/// What is asked for a load.
#[derive(Debug, Clone, PartialEq)]
pub struct Night {
    /// The load.
    pub load: BurnoutId,
    /// Its moulds; how far wall and core may be apart is found when it is answered.
    pub moulds: Load,
    /// What binds.
    pub limits: Limits,
    /// The programme as it stands.
    pub now: Vec<Segment>,
    /// No hours of a data sheet were written down.
    pub no_sheet: bool,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct NightFound {
    /// What was asked, with the differences between wall and core as they were held to.
    pub night: Night,
    /// The programme as it stands, held against the same limits.
    pub now: Judged,
    /// The shortest, sought within a little less than the limits.
    pub outcome: Outcome,
    /// It, held against the limits by an independent finer run.
    pub checked: Option<Judged>,
}

/// The runs of the search, and the finer one that what was found is held against.
const SOUGHT: Fineness = Fineness { radial: 14, axial: 20, grading: 0.1, tolerance_k: 0.1 };
const CHECKED: Fineness = Fineness { radial: 22, axial: 34, grading: 0.0, tolerance_k: 0.05 };
/// What is left to spare in the search: kelvins at an inversion and at the pour, minutes of carbon.
const SPARE_K: f64 = 1.0;
const SPARE_AT_POUR_K: f64 = 0.5;
const SPARE_MIN: f64 = 1.0;
/// So often it is sought within less, where the finer run finds more than was spared.
const ROUNDS: u32 = 3;

/// Asks for a load; nothing where kiln, programme or a mould is not known.
#[must_use]
pub fn night(job: &Job, studio: &Studio, shelf: &Shelf, report: &Report, book: &Book, load: BurnoutId) -> Option<Night> {
    let figures = report.burnouts.iter().find(|figures| figures.id == load)?;
    let document = job.burnouts.iter().find(|burnout| burnout.id == load)?;
    let kiln = shelf.get::<Kiln>(document.kiln.as_ref()?.as_str())?;
    let flasks: Vec<&FlaskFigures> = report.flasks.iter().filter(|flask| flask.burnout == Some(load)).collect();
    let heat: Vec<&HeatFigures> = report.heat.iter().filter(|one| one.load == load).collect();
    if heat.is_empty() || heat.len() < flasks.len() {
        return None;
    }
    let mut now = Vec::new();
    for stage in &figures.stages {
        let (minutes, hold) = (book.number(stage.minutes)?, book.number(stage.hold)?);
        now.push(Segment { target_c: book.number(stage.target)?, ramp_min: (minutes - hold).max(0.0), hold_min: hold });
    }
    let start_c = book.number(figures.start_c)?;
    let offset_k = kiln_offset_k(studio, kiln);
    let moulds = moulds(&heat, &flasks, shelf);
    let room_c = heat.first()?.ask.room_c;
    let mut limits = Limits {
        start_c,
        bands: kiln.bands.iter().map(|band| KilnBand { up_to_c: band.up_to_c, rise_k_h: band.rise_k_h, fall_k_h: band.fall_k_h }).collect(),
        offset_k,
        ceiling_c: ceiling(&flasks, shelf, kiln, offset_k),
        caps: Vec::new(),
        least: least(document, &flasks, shelf, start_c),
        soak: Soak {
            mould_c: now.last()?.target_c,
            least_min: now.last().map_or(SOAK_MIN, |last| last.hold_min.min(SOAK_MIN)),
            within_k: HELD_WITHIN_K,
            dip_k: 0.0,
        },
        most_segments: kiln.segments.map(|most| most as usize),
        step_c: STEP_C,
    };
    limits.caps = caps(&now, &limits);
    let no_sheet = document.sheet.is_empty();
    Some(Night { load, moulds: Load { moulds, room_c, kept: Kept::WholeBand }, limits, now, no_sheet })
}

/// Finds it.
///
/// # Errors
/// Where a number of the question makes no sense.
pub fn answer(mut night: Night, labour: &Labour<'_>) -> Result<NightFound, HeatError> {
    let held = |segments: &[Segment], night: &Night, fineness: &Fineness, share: f64| {
        let of_it = Labour { go_on: &|_| (labour.go_on)(share), ..*labour };
        judge(segments, &night.moulds, &night.limits, fineness, &of_it)
    };
    let first = held(&night.now, &night, &SOUGHT, 0.0)?;
    // A ramp that the programme itself does not keep to is held to the kiln alone.
    for breach in &first.breaches {
        if let Bind::RampCap { cap } = breach.limit
            && let Some(cap) = night.limits.caps.get_mut(cap)
        {
            (cap.rise_k_h, cap.fall_k_h) = (None, None);
        }
    }
    for (at, mould) in night.moulds.moulds.iter_mut().enumerate() {
        for (which, inversion) in mould.needs.inversions.iter_mut().enumerate() {
            let of = first.values.iter().filter(|values| values.mould == at).filter_map(|values| values.apart.get(which));
            let apart = of.map(|apart| apart.up_k.max(apart.down_k)).fold(0.0, f64::max);
            // To the next whole five above, with room for what is spared and for the finer run.
            inversion.most_k = (((apart + 2.0 * SPARE_K) / 5.0).ceil() * 5.0).max(ALWAYS_K);
        }
    }
    let now = held(&night.now, &night, &SOUGHT, 0.02)?;
    let (mut moulds, mut limits) = spared(&night);
    let mut round = 1;
    loop {
        // The first search is nearly all of the work.
        let of_all = |share: f64| (labour.go_on)(if round == 1 { 0.9 * share } else { 0.9 + 0.09 * share });
        let outcome = shortest_by(&moulds, &limits, Some(&night.now), &SOUGHT, &Labour { go_on: &of_all, ..*labour });
        let checked = match &outcome {
            Outcome::Found(found) => Some(held(&found.segments, &night, &CHECKED, 0.99)?),
            _ => None,
        };
        let broken = checked.as_ref().map_or(&[][..], |checked| &checked.breaches);
        if round == ROUNDS || !narrowed(&mut moulds, &mut limits, broken) {
            return Ok(NightFound { night, now, outcome, checked });
        }
        round += 1;
    }
}

/// Less to seek within, where the finer run found more broken than was spared. False where nothing is to be narrowed.
fn narrowed(load: &mut Load, limits: &mut Limits, broken: &[Breach]) -> bool {
    let mut any = false;
    for breach in broken {
        match breach.limit {
            Bind::Apart { mould, inversion } => {
                let inversions = load.moulds.get_mut(mould).map(|mould| &mut mould.needs.inversions);
                if let Some(inversion) = inversions.and_then(|inversions| inversions.get_mut(inversion)) {
                    inversion.most_k -= breach.by + SPARE_K;
                    any = true;
                }
            }
            Bind::Carbon { mould } => {
                if let Some(mould) = load.moulds.get_mut(mould) {
                    mould.needs.above_min += breach.by + SPARE_MIN;
                    any = true;
                }
            }
            Bind::CoreAtPour { .. } => {
                limits.soak.within_k = (limits.soak.within_k - breach.by - SPARE_AT_POUR_K).max(SPARE_AT_POUR_K);
                any = true;
            }
            // What the kiln, the sheet and the controller allow, a finer run of the mould does not change.
            _ => {}
        }
    }
    any
}

/// What is sought within: a little less than the limits, so that a finer run finds them kept.
fn spared(night: &Night) -> (Load, Limits) {
    let (mut moulds, mut limits) = (night.moulds.clone(), night.limits.clone());
    for needs in moulds.moulds.iter_mut().map(|mould| &mut mould.needs) {
        needs.inversions.iter_mut().for_each(|inversion| inversion.most_k -= SPARE_K);
        if needs.above_min > 0.0 {
            needs.above_min += SPARE_MIN;
        }
    }
    limits.soak.within_k -= SPARE_AT_POUR_K;
    (moulds, limits)
}

/// Distinct moulds of the load, each with what its patterns need.
fn moulds(heat: &[&HeatFigures], flasks: &[&FlaskFigures], shelf: &Shelf) -> Vec<Mould> {
    let mut all: Vec<Mould> = Vec::new();
    for one in heat {
        let flask = flasks.iter().find(|flask| flask.id == one.flask);
        let needs = flask.map_or(0.0, |flask| carbon_min(flask, shelf));
        let mould = mould(&one.ask, needs);
        if !all.contains(&mould) {
            all.push(mould);
        }
    }
    all
}

fn mould(ask: &HeatAsk, above_min: f64) -> Mould {
    let inversions = [CRISTOBALITE_C, QUARTZ_C].map(|within_c| Inversion { within_c, most_k: 3000.0 }).to_vec();
    Mould {
        flask: ask.flask,
        materials: ask.materials.clone(),
        surfaces: ask.surfaces,
        // Nothing is asked of the outermost cavity: moulds that differ in it alone are one.
        places: Places { cavity_m: ask.places.corner_m, wall_m: ask.places.wall_m, corner_m: ask.places.corner_m },
        start_c: ask.room_c,
        needs: Needs { above_c: HOT_C, above_min, inversions },
    }
}

/// Minutes at which the last carbon burns, by what hangs in a flask; nought with stones in it.
fn carbon_min(flask: &FlaskFigures, shelf: &Shelf) -> f64 {
    let materials = flask.materials.iter().filter_map(|id| shelf.get::<PatternMaterial>(id.as_str()));
    let most = materials.map(|material| material.burnout.above_700_h.low * 60.0).fold(0.0, f64::max);
    if flask.stones { 0.0 } else { most }
}

/// The highest reading that no powder, no stone and not the kiln forbids.
fn ceiling(flasks: &[&FlaskFigures], shelf: &Shelf, kiln: &Kiln, offset_k: f64) -> f64 {
    let mut lowest = kiln.ceiling_c.value;
    for flask in flasks {
        let Some(powder) = flask.powder.as_ref().and_then(|id| shelf.get::<Powder>(id.as_str())) else { continue };
        let hottest = offset_k + kiln.hot_zone_k.value;
        lowest = lowest.min(powder.planned_ceiling_c.value).min(powder.stop_ceiling_c.value - hottest);
        if let Some(stones) = powder.stones_ceiling_c.as_ref().filter(|_| flask.stones) {
            lowest = lowest.min(stones.value - hottest);
        }
    }
    lowest
}

/// No ramp is steeper than the programme as it stands has in that part, up or down.
fn caps(now: &[Segment], limits: &Limits) -> Vec<RampCap> {
    let mut steepest = [[0.0_f64; 2]; PARTS_C.len()];
    for pair in readings(now, limits).windows(2) {
        let ([from_min, from_c], [to_min, to_c]) = (pair[0], pair[1]);
        let rate = (to_c - from_c) / (to_min - from_min).max(1e-6) * 60.0;
        for (part, [least, most]) in steepest.iter_mut().zip(PARTS_C) {
            if from_c.max(to_c) > least && from_c.min(to_c) < most {
                let way = usize::from(rate < 0.0);
                part[way] = part[way].max(rate.abs());
            }
        }
    }
    // A hair, so that the programme itself is within it.
    let cap = |rate: f64| (rate > 0.0 && rate < 1e5).then_some(rate * 1.001);
    PARTS_C
        .iter()
        .zip(steepest)
        .map(|(within_c, [rise, fall])| RampCap { within_c: *within_c, rise_k_h: cap(rise), fall_k_h: cap(fall) })
        .collect()
}

/// The hours of the data sheet as they were written down, or what is usual.
fn least(document: &crate::job::Burnout, flasks: &[&FlaskFigures], shelf: &Shelf, start_c: f64) -> Vec<Least> {
    if !document.sheet.is_empty() {
        let of = |line: &crate::job::SheetHours| Least { within_c: [line.from_c.get(), line.to_c.get()], minutes: line.minutes.get() };
        return document.sheet.iter().map(of).filter(|line| line.within_c[0] <= line.within_c[1]).collect();
    }
    let materials = flasks.iter().flat_map(|flask| &flask.materials).filter_map(|id| shelf.get::<PatternMaterial>(id.as_str()));
    let stays = materials.into_iter().any(|material| !material.burnout.melts_out);
    // A kiln that is loaded hot never stands there.
    if start_c > WAX_OUT_C[0] {
        return Vec::new();
    }
    let minutes = if stays { RESIN_OUT_MIN } else { WAX_OUT_MIN };
    vec![Least { within_c: WAX_OUT_C, minutes }]
}
