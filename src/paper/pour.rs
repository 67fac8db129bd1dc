//! Pouring and what comes after: temperatures with their ranges, order and drive, room around the tree, the quench.

use super::block::{Block, Field};
use super::desk::Desk;
use crate::calc::{FlaskFigures, Id};
use crate::job::Drive;
use crate::stock::Section;

/// Metal and mould, and what was really poured.
pub(super) fn pour(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let pour = &flask.pour;
    let job_flask = desk.input.job.flasks.iter().find(|other| other.id == flask.id);
    let mut fields = vec![
        desk.field("pour-metal", with_range(desk, pour.metal, pour.metal_range)),
        desk.field("pour-mould", with_range(desk, pour.mould, pour.mould_range)),
        desk.figure_field("pour-superheat", pour.superheat),
        desk.field("pour-section", section(desk, pour.section, pour.section_assumed)),
    ];
    if let Some(flask) = job_flask {
        fields.extend(flask.turn.map(|turn| desk.field("pour-turn", turn.to_string())));
        fields.push(desk.field("pour-drive", desk.label(drive_key(flask.drive))));
    }
    fields.extend(room(desk, flask));
    let really = ["really-metal", "really-mould", "really-charge", "really-poured-at"];
    let really: Vec<Field> = really.map(|key| desk.field(key, "____________".to_owned())).into();
    vec![desk.heading("sheet-pour"), Block::Fields(fields), Block::Fields(really)]
}

fn with_range(desk: &Desk<'_>, figure: Id, range: Option<[Id; 2]>) -> String {
    let value = desk.figure(figure);
    match range {
        Some(range) => desk.say("value-with-range", &[("value", value.into()), ("range", desk.range(range).into())]),
        None => value,
    }
}

fn section(desk: &Desk<'_>, section: Section, assumed: bool) -> String {
    let name = desk.label(match section {
        Section::Filigree => "section-filigree",
        Section::Thin => "section-thin",
        Section::Medium => "section-medium",
        Section::Heavy => "section-heavy",
    });
    if assumed { desk.say("section-assumed", &[("section", name.into())]) } else { name }
}

fn drive_key(drive: Drive) -> &'static str {
    match drive {
        Drive::Gravity => "drive-gravity",
        Drive::Vacuum => "drive-vacuum",
        Drive::Centrifugal => "drive-centrifugal",
    }
}

/// Room around the tree beside what is needed there.
fn room(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Field> {
    let room = &flask.room;
    let pairs = [("room-wall", room.wall, room.wall_needed), ("room-top", room.top, room.top_needed)];
    let known = pairs.into_iter().filter_map(|(key, has, needs)| Some((key, has?, needs?)));
    known
        .map(|(key, has, needs)| {
            let args = [("has", desk.figure(has).into()), ("needs", desk.figure(needs).into())];
            desk.field(key, desk.say("room-of", &args))
        })
        .collect()
}

/// When the flask may be quenched, or that it never may.
pub(super) fn quench(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let pour = &flask.pour;
    let window = match (pour.never_quench, pour.quench) {
        (true, _) => desk.label("quench-never"),
        (false, Some(window)) => desk.say("quench-window", &[("window", desk.range(window).into())]),
        (false, None) => desk.label("quench-unknown"),
    };
    let asked: &[&str] = if pour.never_quench { &["really-good"] } else { &["really-quench", "really-good"] };
    let really = asked.iter().map(|key| desk.field(key, "____________".to_owned())).collect();
    vec![desk.heading("sheet-quench"), Block::Words(window), Block::Fields(really)]
}
