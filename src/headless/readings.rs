//! `pourbook readings`: what a kiln's log says, and how far every mould of the load has come by it. Writes nothing.

use std::fmt::Write as _;

use jiff::civil::DateTime;

use super::args::{LogUnit, Readings, Tongue};
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::calc::mould_heat::by_log;
use crate::job::BurnoutId;
use crate::kiln_log::{Options, Unit, find_drops, read, thin};
use crate::paper::cut::CutWords;
use crate::paper::words::Words;
use crate::quantity::Style;
use crate::texts::{Language, Texts};

/// A log is made lighter, within this many kelvins.
const WITHIN_K: f64 = 0.5;

pub(super) fn print(how: &Readings, out: &mut Out) -> u8 {
    let Some(computed) = Computed::open(&how.job, &how.day, out) else { return BAD_INPUT };
    let bytes = match std::fs::read(&how.log) {
        Ok(bytes) => bytes,
        Err(error) => {
            out.tell(&format!("{} cannot be read: {error}", how.log.display()));
            return BAD_INPUT;
        }
    };
    let unit = how.unit.map(|unit| match unit {
        LogUnit::C => Unit::Celsius,
        LogUnit::F => Unit::Fahrenheit,
        LogUnit::K => Unit::Kelvin,
    });
    let options = Options { unit, temperature_column: how.column.map(|column| column.saturating_sub(1)), ..Options::default() };
    let log = match read(&bytes, &options) {
        Ok(log) => log,
        Err(error) => {
            out.tell(&format!("{}: {error}", how.log.display()));
            return BAD_INPUT;
        }
    };
    log.remarks.iter().for_each(|remark| out.tell(&remark.to_string()));
    let load = how.load.map(BurnoutId).or_else(|| computed.batch.sound.burnouts.last().map(|load| load.id));
    let asks: Vec<_> = computed.report.heat.iter().filter(|one| Some(one.load) == load).collect();
    if asks.is_empty() {
        out.tell("this load has no flask whose mould can be computed: flask, powder and mix must be known");
        return BAD_INPUT;
    }
    let language = match how.language {
        Tongue::En => Language::English,
        Tongue::De => Language::German,
    };
    let style = Style { comma: language.has_comma(), ..Style::METRIC };
    let words = Words { texts: Texts::of(language), style: &style, ..computed.words(&Style::METRIC) };
    let words = CutWords { job: &computed.batch.sound, words };
    let points = until_pour(thin(&log.points, WITHIN_K), log.start, load, &computed);
    let mut text = format!("{}\n", words.log(&log.points, log.start));
    for drop in find_drops(&log.points) {
        let _ = writeln!(text, "  {}", words.drop([drop.start_min, drop.fallen_min], [drop.start_c, drop.lowest_c], drop.recovers));
    }
    for one in asks {
        if let Some(mould) = by_log(&one.ask, &points, &mut || false) {
            let _ = writeln!(text, "\n{}", words.mould(one.flask, &mould));
        }
    }
    out.data(&text);
    if computed.faulty { BAD_INPUT } else { FINE }
}

/// What a kiln does after the pour is of no matter to a mould that is out of it. Nothing is taken off where nobody knows when either was.
fn until_pour(mut points: Vec<[f64; 2]>, start: Option<DateTime>, load: Option<BurnoutId>, computed: &Computed) -> Vec<[f64; 2]> {
    let zone = &computed.setting.zone;
    let minutes = |at: DateTime| zone.to_zoned_datetime(at).ok().map(|at| at.timestamp().as_second() as f64 / 60.0);
    let pour = computed.batch.sound.burnouts.iter().find(|one| Some(one.id) == load).and_then(|load| load.pour_at);
    if let Some((start, pour)) = start.and_then(minutes).zip(pour.and_then(minutes))
        && pour > start
    {
        points.retain(|point| point[0] <= pour - start);
    }
    points
}
