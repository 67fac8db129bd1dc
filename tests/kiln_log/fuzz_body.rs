//! What must hold for whatever bytes a log is made of.

use jiff::tz::TimeZone;
use pourbook::kiln_log::{Decimal, Limits, Options, POSSIBLE_C, TimeUnit, Unit, find_drops, read, thin};

/// Reads bytes, the first of which choose the options, and checks what comes of it.
///
/// # Panics
/// Where a curve is none: too short, out of order, beyond what a kiln can show; where thinning leaves the tolerance; where a drop does not fall.
pub fn fuzz_one(bytes: &[u8]) {
    let (choice, rest) = bytes.split_first().map_or((0, bytes), |(first, rest)| (*first, rest));
    check(bytes, &Options::default());
    check(rest, &options(choice));
}

fn options(choice: u8) -> Options {
    let bit = |at: u8| choice >> at & 1 == 1;
    Options {
        temperature_column: bit(0).then_some(usize::from(choice >> 6)),
        time_column: bit(1).then_some(usize::from(choice >> 5 & 1)),
        unit: bit(2).then_some(Unit::Fahrenheit),
        time_unit: bit(3).then_some(TimeUnit::SerialDay),
        day_first: bit(4).then_some(bit(0)),
        decimal: bit(5).then_some(Decimal::Comma),
        zone: bit(6).then(|| TimeZone::get("Europe/Berlin").unwrap_or(TimeZone::UTC)),
        limits: Limits { max_bytes: 1 << 20, max_rows: if bit(7) { 100 } else { 100_000 } },
    }
}

fn check(bytes: &[u8], options: &Options) {
    let log = match read(bytes, options) {
        Ok(log) => log,
        Err(error) => {
            assert!(error.to_string().len() < 400, "{error}");
            return;
        }
    };
    let points = &log.points;
    assert!(points.len() >= 2 && points[0][0].abs() < 1e-9, "{} points from {:?}", points.len(), points[0]);
    for pair in points.windows(2) {
        assert!(pair[1][0] >= pair[0][0] && pair[1][0].is_finite(), "minutes {} and {}", pair[0][0], pair[1][0]);
    }
    assert!(points.iter().all(|point| POSSIBLE_C.contains(&point[1])), "a temperature beyond the possible");
    for remark in &log.remarks {
        assert!(!remark.to_string().is_empty(), "a remark without words");
    }
    let thinned = thin(points, 1.0);
    assert!(thinned.first() == points.first() && thinned.last() == points.last() && thinned.len() <= points.len(), "thinned ends");
    for drop in find_drops(points) {
        assert!(drop.lowest_c < drop.start_c && drop.end_min > drop.start_min && drop.rate_k_h > 0.0, "{drop:?}");
    }
}
