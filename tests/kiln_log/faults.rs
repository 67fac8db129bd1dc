//! Faults of the sensor.

use crate::support::{log, same, words};

const AROUND: [[f64; 2]; 4] = [[0.0, 850.5], [1.0, 851.0], [3.0, 852.5], [4.0, 853.0]];

#[test]
fn what_instruments_write_for_a_fault_is_dropped_and_told() {
    for fault in [
        "----",
        "--",
        "OPEN",
        "Open TC",
        "NaN",
        "nan",
        "n/a",
        "#N/A",
        "ERR",
        "Error 3",
        "Fühlerbruch",
        "OVR",
        "****",
        "-OL-",
        "1372",
        "1372,0",
        "32767",
        "-32768",
        "6553,5",
        "3276,7",
        "-200",
        "-270",
        "9999",
        "-999,9",
        "0",
        "0,0",
    ] {
        for sign in [',', '.'] {
            let fault = fault.replace(',', &sign.to_string());
            let text = "min;°C\n0;850,5\n1;851,0\n2;@\n3;852,5\n4;853,0\n".replace(',', &sign.to_string()).replace('@', &fault);
            let log = same(&text, &AROUND);
            assert_eq!(words(&log), ["line 4: sensor fault, dropped"], "{fault}");
        }
    }
    let empty = same("min;°C\n0;850,5\n1;851,0\n2;\n3;852,5\n4;853,0\n", &AROUND);
    assert_eq!(words(&empty), ["line 4: no temperature, dropped"]);
}

#[test]
fn an_open_thermocouple_may_last_or_come_first_or_last() {
    let text = |rows: &dyn Fn(u32) -> String| {
        format!("min;°C\n{}", (0..60).map(|minute| format!("{minute};{}\n", rows(minute))).collect::<String>())
    };
    let log_of = |from: u32, to: u32, fault: &'static str| {
        log(&text(&move |minute| if (from..to).contains(&minute) { fault.to_owned() } else { format!("{}", 700 + minute) }))
    };
    for fault in ["1372", "OPEN", "32767"] {
        for (from, to) in [(20, 40), (0, 10), (50, 60)] {
            let log = log_of(from, to, fault);
            assert_eq!(log.points.len(), 60 - (to - from) as usize, "{fault} {from}–{to}");
            assert!(words(&log).contains(&format!("lines {}–{}: sensor fault, dropped", from + 2, to + 1)), "{:?}", words(&log));
        }
    }
    let loose = log(&text(&|minute| if minute % 10 == 5 { "250".to_owned() } else { format!("{}", 700 + minute) }));
    assert_eq!(loose.points.len(), 54);
    assert_eq!(words(&loose)[0], "lines 7, 17, 27, 37, 47, 57: sensor fault, dropped");
}

#[test]
fn fast_falls_that_stay_are_kept() {
    // A kiln that is opened and pulled empty, and one that cools freely after a power cut.
    let pulled = format!(
        "min;°C\n{}",
        (0..60).map(|minute| format!("{minute};{}\n", if minute < 30 { 730 } else { 300 - minute })).collect::<String>()
    );
    assert_eq!(log(&pulled).points.len(), 60);
    let cut = format!(
        "min;°C\n{}",
        (0..60).map(|minute: i32| format!("{minute};{}\n", 730 - 8 * (20 - (minute - 30).abs()).max(0))).collect::<String>()
    );
    let log = log(&cut);
    assert!(log.points.len() == 60 && log.remarks.is_empty(), "{:?}", words(&log));
}
