//! What numbers make sense.

use super::curve::Band;
use super::{Controller, ControllerError, Programme, RampBy};

/// Temperatures taken, in °C.
const COLDEST_C: f64 = -100.0;
const HOTTEST_C: f64 = 2000.0;

/// The longest ramp or hold taken, in min: a hundred days.
const LONGEST_MIN: f64 = 144_000.0;

/// The slowest and the fastest kiln, in K/h.
const RATES_K_H: [f64; 2] = [0.01, 1e6];

/// The largest whole number a controller takes.
const LARGEST: u32 = 1_000_000;

/// No programme has more segments.
const MOST_SEGMENTS: usize = 100;

/// No table has more rows.
pub(super) const MOST_ROWS: usize = 2000;

type Sound = Result<(), ControllerError>;

pub(super) fn within(what: &'static str, at: Option<usize>, value: f64, least: f64, most: f64) -> Sound {
    if (least..=most).contains(&value) { Ok(()) } else { Err(ControllerError::OutOfRange { what, at, value, least, most }) }
}

pub(super) fn temperature(what: &'static str, at: Option<usize>, value: f64) -> Sound {
    within(what, at, value, COLDEST_C, HOTTEST_C)
}

pub(super) fn programme(programme: &Programme) -> Sound {
    if programme.segments.len() > MOST_SEGMENTS {
        return Err(ControllerError::TooMany { what: "segments", most: MOST_SEGMENTS });
    }
    temperature("Start in °C", None, programme.start_c)?;
    for (at, segment) in programme.segments.iter().enumerate() {
        temperature("Target in °C", Some(at), segment.target_c)?;
        within("Ramp in min", Some(at), segment.ramp_min.unwrap_or(0.0), 0.0, LONGEST_MIN)?;
        within("Hold in min", Some(at), segment.hold_min, 0.0, LONGEST_MIN)?;
    }
    Ok(())
}

fn whole(what: &'static str, value: u32, least: u32, most: u32) -> Sound {
    within(what, None, f64::from(value), f64::from(least), f64::from(most))
}

pub(super) fn controller(controller: &Controller) -> Sound {
    whole("Step of set points in degrees", controller.step, 1, 100)?;
    whole("Longest hold in min", controller.most_hold_min, 1, LARGEST)?;
    whole("Most segments", controller.most_segments, 1, LARGEST)?;
    within("Offset in K", None, controller.offset_k, -500.0, 500.0)?;
    match controller.ramp {
        RampBy::Rate { least, most } => {
            whole("Least rate in degrees an hour", least, 1, LARGEST)?;
            whole("Most rate in degrees an hour", most, least, LARGEST)
        }
        RampBy::Minutes { least, most } => {
            whole("Shortest ramp in min", least, 0, LARGEST)?;
            whole("Longest ramp in min", most, least.max(1), LARGEST)
        }
    }
}

/// Bands, which may be none.
pub(super) fn bands(bands: &[Band]) -> Sound {
    if bands.len() > 100 {
        return Err(ControllerError::TooMany { what: "bands", most: 100 });
    }
    for (at, band) in bands.iter().enumerate() {
        within("Fastest rise in K/h", Some(at), band.rise_k_h, RATES_K_H[0], RATES_K_H[1])?;
        within("Fastest fall in K/h", Some(at), band.fall_k_h, RATES_K_H[0], RATES_K_H[1])?;
    }
    let closed = &bands[..bands.len().saturating_sub(1)];
    let rising = closed.windows(2).all(|pair| pair[0].up_to_c < pair[1].up_to_c);
    if rising && closed.iter().all(|band| band.up_to_c.is_finite()) { Ok(()) } else { Err(ControllerError::Bands) }
}
