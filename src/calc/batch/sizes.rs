//! The flasks a plan may take: those of the studio, or every size of the shelf.

use std::collections::BTreeSet;

use super::places::Inside;
use super::rules::DOME_DEFAULT;
use super::{Places, SizeOf};
use crate::calc::book::Id;
use crate::calc::clearance::{SMALL_FLASK_MM, TOP_NEEDED_LARGE, TOP_NEEDED_SMALL};
use crate::calc::outline::DOME_HEIGHT;
use crate::calc::pass::Pass;
use crate::job::{Burnout, Event, Flask, FlaskId, Job, Place, standing};
use crate::stock::{Base, EntryId, Flask as Vessel, FlaskWall, Kiln};

/// A size with the lines of the book its inside stands in.
pub(super) struct Candidate<'a> {
    pub vessel: &'a Vessel,
    pub size: SizeOf,
    /// Height, dome and room above.
    pub heights: [Id; 3],
}

/// Flasks by what the record says of them.
pub(super) struct Done {
    /// Invested or poured: nothing joins them.
    pub closed: BTreeSet<FlaskId>,
    /// Poured: their steel is free again.
    pub poured: BTreeSet<FlaskId>,
}

impl Done {
    pub fn of(job: &Job) -> Self {
        let mut done = Self { closed: BTreeSet::new(), poured: BTreeSet::new() };
        for entry in standing(&job.record) {
            match &entry.event {
                Event::Invested { flask, .. } => drop(done.closed.insert(*flask)),
                Event::Poured { flask, .. } => {
                    done.closed.insert(*flask);
                    done.poured.insert(*flask);
                }
                Event::TreeWeighed { tree, .. } => {
                    done.closed.extend(job.flasks.iter().filter(|flask| flask.tree == Some(*tree)).map(|flask| flask.id));
                }
                _ => {}
            }
        }
        done
    }
}

/// The load that flasks may still go into: the last one none of whose flasks is closed.
pub(super) fn open_load<'a>(job: &'a Job, done: &Done) -> Option<&'a Burnout> {
    let shut = |load: &Burnout| job.flasks.iter().any(|flask| flask.burnout == Some(load.id) && done.poured.contains(&flask.id));
    job.burnouts.iter().rev().find(|load| !shut(load))
}

/// The kiln whose places count, and how many flasks that the plan does not touch stand in it.
pub(super) fn kiln_of<'a>(pass: &Pass<'a>, places: &Places, load: Option<&Burnout>, locked: &[FlaskId]) -> Option<super::KilnOf> {
    let id = match places {
        Places::NoMatter => return None,
        Places::Of(id) => id,
        Places::OfLoad => load?.kiln.as_ref()?,
    };
    let kiln = pass.shelf.get::<Kiln>(id.as_str())?;
    // Another kiln than the load's is empty.
    let here = load.filter(|load| load.kiln.as_ref() == Some(id)).map(|load| load.id);
    let stands = |flask: &&Flask| here.is_some() && flask.burnout == here && !locked.contains(&flask.id);
    let taken = pass.job.flasks.iter().filter(stands).count();
    Some(super::KilnOf {
        id: id.clone(),
        name: kiln.name.clone(),
        positions: kiln.positions,
        taken: u32::try_from(taken).unwrap_or(u32::MAX),
    })
}

/// The sizes with how many are free, in the order of their volume. `locked` flasks of the job are part of the plan and count as free.
pub(super) fn candidates<'a>(pass: &mut Pass<'a>, locked: &[FlaskId], done: &Done) -> Vec<Candidate<'a>> {
    let job = pass.job;
    let in_use = |id: &EntryId| {
        let uses = |flask: &&Flask| flask.vessel.as_ref() == Some(id) && !locked.contains(&flask.id) && !done.poured.contains(&flask.id);
        u32::try_from(job.flasks.iter().filter(uses).count()).unwrap_or(u32::MAX)
    };
    let mut found: Vec<(&'a Vessel, Option<u32>)> = if pass.studio.flasks.is_empty() { of_shelf(pass) } else { of_studio(pass) };
    for (vessel, free) in &mut found {
        *free = free.map(|has| has.saturating_sub(in_use(&vessel.id)));
    }
    // What a flask of the job stands in is there, whatever the register says; but no more of it.
    for flask in job.flasks.iter().filter(|flask| locked.contains(&flask.id)) {
        let Some(vessel) = flask.vessel.as_ref().and_then(|id| pass.shelf.get::<Vessel>(id.as_str())) else { continue };
        let of_size = |other: &&Flask| other.vessel == flask.vessel && locked.contains(&other.id);
        let many = u32::try_from(job.flasks.iter().filter(of_size).count()).unwrap_or(u32::MAX);
        match found.iter_mut().find(|(other, _)| other.id == vessel.id) {
            Some((_, free)) => *free = free.map(|free| free.max(many)),
            None => found.push((vessel, Some(many))),
        }
    }
    found.sort_by(|(a, _), (b, _)| a.volume_cm3().total_cmp(&b.volume_cm3()).then_with(|| a.id.cmp(&b.id)));
    found.into_iter().filter_map(|(vessel, free)| candidate(pass, vessel, free)).collect()
}

/// The studio's register, each size once.
fn of_studio<'a>(pass: &Pass<'a>) -> Vec<(&'a Vessel, Option<u32>)> {
    let mut found: Vec<(&'a Vessel, Option<u32>)> = Vec::new();
    for stock in &pass.studio.flasks {
        let Some(vessel) = stock.entry.as_ref().and_then(|id| pass.shelf.get::<Vessel>(id.as_str())) else { continue };
        match found.iter_mut().find(|(other, _)| other.id == vessel.id) {
            Some((_, count)) => *count = count.zip(stock.count).map(|(one, other)| one.saturating_add(other)),
            None => found.push((vessel, stock.count)),
        }
    }
    found
}

/// Every size of the shelf without end; of two that differ by their wall alone, the one like the last flask of the job, or the solid one.
fn of_shelf<'a>(pass: &Pass<'a>) -> Vec<(&'a Vessel, Option<u32>)> {
    let last = pass.job.flasks.iter().rev().find_map(|flask| pass.shelf.get::<Vessel>(flask.vessel.as_ref()?.as_str()));
    let wall = last.map_or(FlaskWall::Solid, |vessel| vessel.wall);
    let mut found: Vec<(&'a Vessel, Option<u32>)> = Vec::new();
    for vessel in pass.shelf.all::<Vessel>() {
        let like = |other: &Vessel| {
            (other.inner_diameter_mm - vessel.inner_diameter_mm).abs() < 0.05 && (other.height_mm - vessel.height_mm).abs() < 0.05
        };
        match found.iter_mut().find(|(other, _)| like(other)) {
            Some(twin) if vessel.wall == wall && twin.0.wall != wall => twin.0 = vessel,
            Some(_) => {}
            None => found.push((vessel, None)),
        }
    }
    found
}

fn candidate<'a>(pass: &mut Pass<'a>, vessel: &'a Vessel, free: Option<u32>) -> Option<Candidate<'a>> {
    let base = base_for(pass, vessel);
    let (diameter, height) = pass.vessel_size(Some(vessel), Place::Job);
    let dome = match base {
        Some(base) => pass.shelf_term(&DOME_HEIGHT, &base.id, &base.dome_height_mm),
        None => pass.book.assumed(&DOME_DEFAULT, Place::Job),
    };
    let top = pass.book.assumed(if vessel.height_mm <= SMALL_FLASK_MM { &TOP_NEEDED_SMALL } else { &TOP_NEEDED_LARGE }, Place::Job);
    let number = |id: Id| pass.book.number(id);
    let inside = Inside { diameter_mm: number(diameter)?, height_mm: number(height)?, dome_mm: number(dome)?, top_mm: number(top)? };
    let size = SizeOf { vessel: vessel.id.clone(), words: vessel.to_string(), base: base.map(|base| base.id.clone()), inside, free };
    Some(Candidate { vessel, size, heights: [height, dome, top] })
}

/// The base of the last tree where it closes this flask, or the first of the shelf that does.
fn base_for<'a>(pass: &Pass<'a>, vessel: &Vessel) -> Option<&'a Base> {
    let last = pass.job.trees.iter().rev().find_map(|tree| pass.shelf.get::<Base>(tree.base.as_ref()?.as_str()));
    last.into_iter().chain(pass.shelf.all::<Base>()).find(|base| base.fits(vessel.inner_diameter_mm))
}
