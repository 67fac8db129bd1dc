//! Reading small logs.

use pourbook::kiln_log::{KilnLog, LogError, Options, Remark, read};

/// Minutes and °C.
pub type Points = &'static [[f64; 2]];

#[track_caller]
pub fn log_with(text: &str, options: &Options) -> KilnLog {
    read(text.as_bytes(), options).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

#[track_caller]
pub fn log(text: &str) -> KilnLog {
    log_with(text, &Options::default())
}

#[track_caller]
pub fn error(text: &str) -> LogError {
    match read(text.as_bytes(), &Options::default()) {
        Ok(log) => panic!("read as {:?}\n{text}", log.points),
        Err(error) => error,
    }
}

/// True where the points are those, to a thousandth.
pub fn are(log: &KilnLog, points: &[[f64; 2]]) -> bool {
    let near = |(a, b): (&[f64; 2], &[f64; 2])| (a[0] - b[0]).abs() < 1e-3 && (a[1] - b[1]).abs() < 1e-3;
    log.points.len() == points.len() && log.points.iter().zip(points).all(near)
}

#[track_caller]
pub fn same(text: &str, points: &[[f64; 2]]) -> KilnLog {
    let log = log(text);
    assert!(are(&log, points), "{:?}\ninstead of {points:?}\n{:?}\n{:?}\n{text}", log.points, log.taken, log.remarks);
    log
}

/// The remarks in words.
pub fn words(log: &KilnLog) -> Vec<String> {
    log.remarks.iter().map(Remark::to_string).collect()
}

#[track_caller]
pub fn tells(log: &KilnLog, sentence: &str) {
    assert!(words(log).iter().any(|words| words == sentence), "{sentence:?} is not among {:#?}", words(log));
}
