//! What a job asks of a kiln's floor and of its controller.

use super::book::Book;
use super::burnout::kiln_offset_k;
use super::controller::{Controller, Programme, RampBy, Segment, Table, Unit, Wish, key_in};
use super::kiln_floor::{Flask, Floor, Hottest, Shape, Zones};
use super::{BurnoutFigures, Report};
use crate::job::{Burnout, Job, Programme as JobProgramme, Studio};
use crate::stock::{Chamber, Flask as Vessel, HotSide, Kiln, Shelf};

/// Steps of a ramp too slow for the controller may fall so far behind it, in K. Common practice, no source.
const BEHIND_K: f64 = 10.0;

/// The floor of a load's kiln; nothing where the shelf says none.
#[must_use]
pub fn floor_of(load: &Burnout, shelf: &Shelf) -> Option<Floor> {
    let kiln = shelf.get::<Kiln>(load.kiln.as_ref()?.as_str())?;
    let chamber = kiln.chamber.as_ref()?;
    Some(Floor {
        shape: shape(chamber),
        height_mm: chamber.height_mm,
        wall_mm: chamber.from_wall_mm,
        gap_mm: chamber.between_mm,
        zones: Zones { hottest: hottest(chamber.hottest), hot_k: kiln.hot_zone_k.value, cold_k: kiln.cold_zone_k.value },
    })
}

fn shape(chamber: &Chamber) -> Shape {
    if chamber.round {
        Shape::Round { diameter_mm: chamber.width_mm }
    } else {
        Shape::Rectangle { width_mm: chamber.width_mm, depth_mm: chamber.depth_mm }
    }
}

const fn hottest(side: HotSide) -> Hottest {
    match side {
        HotSide::Back => Hottest::Back,
        HotSide::Front => Hottest::Front,
        HotSide::Left => Hottest::Left,
        HotSide::Right => Hottest::Right,
        HotSide::Middle => Hottest::Middle,
        HotSide::Even => Hottest::Even,
    }
}

/// The flasks that stand on it: thin sections are wanted where it is hot, heavy ones where it is cold, and those poured first by the door.
#[must_use]
pub fn flasks_of(load: &Burnout, figures: &BurnoutFigures, job: &Job, report: &Report, shelf: &Shelf) -> Vec<Flask> {
    let order: Vec<_> = figures.rounds.iter().flat_map(|round| round.flasks.iter().copied()).collect();
    let of = |flask: &crate::job::Flask| {
        let vessel = shelf.get::<Vessel>(flask.vessel.as_ref()?.as_str())?;
        let section = report.flasks.iter().find(|figures| figures.id == flask.id).map(|figures| figures.pour.section);
        let warmth = match section {
            Some(crate::stock::Section::Filigree) => 3,
            Some(crate::stock::Section::Thin) => 1,
            Some(crate::stock::Section::Heavy) => -2,
            Some(crate::stock::Section::Medium) | None => 0,
        };
        Some(Flask {
            key: flask.id.0,
            diameter_mm: vessel.inner_diameter_mm + 2.0 * vessel.wall_mm.value,
            height_mm: vessel.height_mm,
            warmth,
            pour: order.iter().position(|id| *id == flask.id).and_then(|at| u32::try_from(at).ok()),
            held_mm: flask.floor_mm.map(|at| at.map(crate::quantity::Finite::get)),
        })
    };
    job.flasks.iter().filter(|flask| flask.burnout == Some(load.id)).filter_map(of).collect()
}

/// What is keyed into the controller of a load's kiln; nothing where it has none, or the programme is not known. Targets are what its display
/// shows.
#[must_use]
pub fn keyed(load: &Burnout, figures: &BurnoutFigures, studio: &Studio, shelf: &Shelf, book: &Book) -> Option<Table> {
    let kiln = shelf.get::<Kiln>(load.kiln.as_ref()?.as_str())?;
    let said = kiln.controller.as_ref()?;
    let offset_k = kiln_offset_k(studio, kiln);
    let own: &[crate::job::Segment] = match &load.programme {
        Some(JobProgramme::Segments(segments)) => segments,
        _ => &[],
    };
    let mut segments = Vec::new();
    for (place, stage) in figures.stages.iter().enumerate() {
        let ramp = book.number(stage.ramp)?;
        let asked = own.get(place).is_some_and(|segment| segment.ramp_k_h.is_some() || segment.ramp_min.is_some());
        let ramp_min = (asked || !said.full_speed).then_some(ramp);
        segments.push(Segment { target_c: book.number(stage.target)? + offset_k, ramp_min, hold_min: book.number(stage.hold)? });
    }
    let programme = Programme { start_c: book.number(figures.start_c)? + offset_k, segments };
    key_in(&programme, &controller(kiln, said, offset_k), &Wish { ceiling_c: None, behind_k: BEHIND_K, bands: Vec::new() }).ok()
}

fn controller(kiln: &Kiln, said: &crate::stock::Controller, offset_k: f64) -> Controller {
    // A degree Fahrenheit is five ninths of a kelvin.
    let degrees = |k_h: f64| whole(if said.fahrenheit { k_h * 1.8 } else { k_h });
    let ramp = if said.ramps_in_minutes {
        RampBy::Minutes { least: 0, most: whole(said.most_hold_h * 60.0) }
    } else {
        RampBy::Rate { least: degrees(said.least_k_h).max(1), most: degrees(said.most_k_h).max(1) }
    };
    Controller {
        unit: if said.fahrenheit { Unit::Fahrenheit } else { Unit::Celsius },
        step: 1,
        ramp,
        full_speed: said.full_speed,
        most_hold_min: whole(said.most_hold_h * 60.0).max(1),
        most_segments: kiln.segments.unwrap_or(99),
        offset_k,
    }
}

/// Down to a whole number.
fn whole(number: f64) -> u32 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped before")]
    let whole = number.clamp(0.0, 1e6) as u32;
    whole
}
