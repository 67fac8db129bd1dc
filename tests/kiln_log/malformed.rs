//! Files cut short, changed at random, or made to cost much.

use crate::fuzz_body::fuzz_one;
use crate::random::{Random, any_log};
use pourbook::kiln_log::{Limits, LogError, Options, read};
use std::fmt::Write as _;
use std::time::{Duration, Instant};

#[test]
fn every_beginning_of_a_log_is_a_curve_or_an_error() {
    for seed in 0..60 {
        let log = any_log(&mut Random(seed), 12);
        for length in 0..log.bytes.len() {
            fuzz_one(&log.bytes[..length]);
        }
    }
}

#[test]
fn changed_bytes_are_a_curve_or_an_error() {
    let mut random = Random(7);
    let signs = b"0123456789,.;:\t \n\r\"-+#/TZeE\xb0\xff\0CFKaOPEN|'";
    for _ in 0..4000 {
        let mut bytes = any_log(&mut random, 12).bytes;
        for _ in 0..=random.below(6) {
            let at = random.below(bytes.len() as u64) as usize;
            let sign = signs[random.below(signs.len() as u64) as usize];
            match random.below(4) {
                0 => bytes[at] = sign,
                1 => bytes.insert(at, sign),
                2 => drop(bytes.drain(at..(at + random.below(9) as usize).min(bytes.len()))),
                _ => {
                    let part = bytes[at..(at + 20).min(bytes.len())].to_vec();
                    bytes.splice(at..at, part);
                }
            }
            if bytes.is_empty() {
                break;
            }
        }
        fuzz_one(&bytes);
    }
    for _ in 0..2000 {
        let soup: Vec<u8> = (0..random.below(300)).map(|_| signs[random.below(signs.len() as u64) as usize]).collect();
        fuzz_one(&soup);
    }
}

#[test]
fn limits_hold() {
    let text = b"min;C\n0;20\n1;21\n2;22\n";
    let with = |max_bytes, max_rows| read(text, &Options { limits: Limits { max_bytes, max_rows }, ..Options::default() });
    assert!(with(21, 4).is_ok());
    assert_eq!(with(20, 4).unwrap_err(), LogError::TooLarge { bytes: 21, most: 20 });
    assert_eq!(with(21, 3).unwrap_err(), LogError::TooManyRows { most: 3 });
}

/// Seconds a file takes.
fn seconds(bytes: &[u8]) -> f64 {
    let start = Instant::now();
    let result = read(bytes, &Options::default());
    let taken = start.elapsed();
    println!("{:>9} bytes, {} points: {taken:?}", bytes.len(), result.as_ref().map_or(0, |log| log.points.len()));
    taken.as_secs_f64()
}

#[test]
fn time_grows_with_the_length_and_no_faster() {
    let firing = |count: u32| {
        let mut text = String::from("Zeit;Soll;Ist (°C)\n");
        for at in 0..count {
            let (minute, second) = (at / 60, at % 60);
            let day = 1 + minute / 1440;
            let value = 20.0 + f64::from(at % 70_000) / 100.0;
            writeln!(text, "{day:02}.03.2026 {:02}:{:02}:{second:02};{value:.1};{:.1}", minute / 60 % 24, minute % 60, value + 0.3)
                .unwrap();
        }
        text.into_bytes()
    };
    let [short, long] = [firing(100_000), firing(1_000_000)];
    let (short, long) = (seconds(&short), seconds(&long));
    // Ten times the rows; were the time to grow with their square, it would be a hundred times as long.
    assert!(long < 40.0 * short.max(0.02), "{short} s and {long} s");
}

#[test]
fn files_made_to_cost_much_cost_little() {
    let files = [
        "\"".repeat(3_000_000),
        "\"\n".repeat(1_000_000),
        ",\"".repeat(1_500_000),
        ",".repeat(3_000_000),
        "1;2\n".repeat(500_000),
        "0;1372\n1;20\n".repeat(200_000),
        (0..400_000).map(|at| format!("{at};{}\n", if at % 2 == 0 { 20 } else { 900 })).collect(),
        (0..400_000).map(|at| format!("{at};{}\n", [20, 20, 900, 900][at % 4] + at % 3)).collect(),
        (0..400_000).map(|at| format!("{};20\n", at * 7919_u64 % 400_000)).collect(),
        "#\n".repeat(1_500_000),
        format!("min;C\n{}", "x\n".repeat(1_000_000)),
    ];
    for file in files {
        let taken = seconds(file.as_bytes());
        assert!(taken < Duration::from_secs(10).as_secs_f64(), "{taken} s");
    }
}
