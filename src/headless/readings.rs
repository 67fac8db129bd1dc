//! `pourbook readings`: what a kiln's log says, and how far every mould of the load has come by it. Writes nothing.

use std::fmt::Write as _;

use jiff::civil::DateTime;

use super::args::{LogUnit, Readings, Tongue};
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::calc::labour::Labour;
use crate::calc::mould_heat::{by_log, poured_at};
use crate::cores::AllCores;
use crate::job::{BurnoutId, FlaskId};
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
    let points = thin(&log.points, WITHIN_K);
    let mut text = format!("{}\n", words.log(&log.points, log.start));
    for drop in find_drops(&log.points) {
        let _ = writeln!(text, "  {}", words.drop([drop.start_min, drop.fallen_min], [drop.start_c, drop.lowest_c], drop.recovers));
    }
    for one in asks {
        let points = until_poured(&points, log.start, one.flask, &computed);
        if let Some(mould) = by_log(&one.ask, &points, &Labour { cores: &AllCores, ..Labour::ALONE }) {
            let _ = writeln!(text, "\n{}", words.mould(one.flask, &mould));
        }
    }
    out.data(&text);
    if computed.faulty { BAD_INPUT } else { FINE }
}

/// What a kiln does after a flask was poured is of no matter to its mould. Nothing is taken off where the record does not say when that was.
fn until_poured(points: &[[f64; 2]], start: Option<DateTime>, flask: FlaskId, computed: &Computed) -> Vec<[f64; 2]> {
    let zone = &computed.setting.zone;
    let minutes = |at: DateTime| zone.to_zoned_datetime(at).ok().map(|at| at.timestamp().as_second() as f64 / 60.0);
    let poured = poured_at(&computed.batch.sound, flask);
    let last = start.and_then(minutes).zip(poured.and_then(minutes)).map(|(start, poured)| poured - start).filter(|last| *last > 0.0);
    points.iter().copied().filter(|point| last.is_none_or(|last| point[0] <= last)).collect()
}
