//! Pouring and what comes after: temperatures with their ranges, order and drive, room around the tree, the quench.

use super::block::{BigWeight, Block, Field, WriteIn};
use super::desk::Desk;
use crate::calc::{FlaskFigures, Id};
use crate::job::Drive;
use crate::quantity::Kind;
use crate::stock::Section;

/// Metal and mould, and what was really poured.
pub(super) fn pour(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let pour = &flask.pour;
    let job_flask = desk.input.job.flasks.iter().find(|other| other.id == flask.id);
    let temperatures =
        vec![temperature(desk, "pour-metal", pour.metal, pour.metal_range), temperature(desk, "pour-mould", pour.mould, pour.mould_range)];
    let mut fields = vec![
        desk.figure_field("pour-superheat", pour.superheat),
        desk.field("pour-section", section(desk, pour.section, pour.section_assumed)),
    ];
    if let Some(flask) = job_flask {
        fields.extend(flask.turn.map(|turn| desk.field("pour-turn", turn.to_string())));
        fields.push(desk.field("pour-drive", desk.label(drive_key(flask.drive))));
    }
    fields.extend(driven(desk, flask));
    fields.extend(room(desk, flask));
    let really = [WriteIn { label: desk.label("really-poured-at"), unit: "" }];
    vec![desk.heading("sheet-pour"), Block::Weights(temperatures), Block::Fields(fields), Block::WriteIn(really.into())]
}

/// A temperature, large, with its range beside it and a place for the real one.
fn temperature(desk: &Desk<'_>, key: &str, figure: Id, range: Option<[Id; 2]>) -> BigWeight {
    let note = range.map_or_else(String::new, |range| desk.say("value-range", &[("range", desk.range(range).into())]));
    let unit = desk.words.style.units.of(Kind::Temperature).symbol;
    BigWeight { label: desk.label(key), value: desk.figure(figure), note, unit, part: false }
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

/// What drives the metal and how fine it goes; on a machine, its speed and its counterweight. Only what is known prints.
fn driven(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Field> {
    let (fill, spin) = (&flask.fill, flask.spin);
    let figures = [
        ("pour-pressure", Some(fill.pressure)),
        ("pour-detail", Some(fill.detail)),
        ("pour-speed", spin.map(|spin| spin.speed)),
        ("pour-counterweight", spin.map(|spin| spin.counterweight)),
    ];
    let known = figures.into_iter().filter_map(|(key, id)| Some((key, id.filter(|id| desk.input.book.number(*id).is_some())?)));
    known.map(|(key, id)| desk.figure_field(key, id)).collect()
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
    let minutes = desk.words.style.units.of(Kind::Duration).symbol;
    let quenched = (!pour.never_quench).then(|| WriteIn { label: desk.label("really-quench"), unit: minutes });
    let really = quenched.into_iter().chain([WriteIn { label: desk.label("really-good"), unit: "" }]).collect();
    // Where the alloy has a window of its own, that is enough for the sheet.
    let glow = pour.no_glow.filter(|_| !pour.never_quench && pour.quench.is_none());
    let window = match glow {
        Some(glow) => format!("{window} {}", desk.say("quench-no-glow", &[("window", desk.range(glow).into())])),
        None => window,
    };
    vec![desk.heading("sheet-quench"), Block::Words(window), Block::WriteIn(really)]
}
