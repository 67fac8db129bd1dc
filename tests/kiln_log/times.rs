//! Times in all their forms, and their order.

use crate::support::{Points, are, error, log, log_with, same, tells, words};
use jiff::civil::{DateTime, Time, date, time};
use jiff::tz::TimeZone;
use pourbook::kiln_log::{KilnLog, LogError, Options, Remark, TimeUnit};

const THREE: Points = &[[0.0, 20.5], [10.0, 25.0], [20.0, 31.5]];

/// Three readings ten minutes apart, whatever the times look like.
#[track_caller]
fn at(header: &str, times: [&str; 3]) -> KilnLog {
    let [a, b, c] = times;
    let log = same(&format!("{header};°C\n{a};20,5\n{b};25,0\n{c};31,5\n"), THREE);
    same(&format!("{header}\t°C\n{a}\t20.5\n{b}\t25.0\n{c}\t31.5\n"), THREE);
    log
}

#[test]
fn times_that_count_from_the_beginning() {
    for (header, times, unit) in [
        ("Time (min)", ["0", "10", "20"], Some(TimeUnit::Minute)),
        ("t/s", ["0", "600", "1200"], Some(TimeUnit::Second)),
        ("Sekunden", ["5", "605", "1205"], Some(TimeUnit::Second)),
        ("ms", ["0", "600000", "1200000"], Some(TimeUnit::Millisecond)),
        ("Elapsed [h]", ["1", "1.1666667", "1.3333333"], Some(TimeUnit::Hour)),
        ("Laufzeit", ["0:00:00", "0:10:00", "0:20:00"], None),
        ("Elapsed", ["23:55:00", "24:05:00", "24:15:00"], None),
        ("Time", ["99:50:00", "100:00:00", "100:10:00"], None),
        ("h:mm", ["0:00", "0:10", "0:20"], None),
        ("mm:ss", ["0:00", "10:00", "20:00"], None),
        ("Time", ["0:30.5", "10:30.5", "20:30.5"], None),
    ] {
        let log = at(header, times);
        assert_eq!((log.start, log.start_clock, log.taken.time_unit), (None, None, unit), "{header}");
        assert!(log.remarks.is_empty(), "{header}: {:?}", words(&log));
    }
}

#[test]
fn the_unit_of_a_plain_number_is_inferred_from_the_spacing() {
    let curve = |step: f64, count: u32| -> String {
        (0..count).map(|at| format!("{},{:.1}\n", f64::from(at) * step, 20.0 + f64::from(at % 700))).collect()
    };
    for (step, count, unit) in [
        (1.0, 600, TimeUnit::Minute),
        (5.0, 150, TimeUnit::Minute),
        (10.0, 3600, TimeUnit::Second),
        (1.0, 40_000, TimeUnit::Second),
        (0.05, 240, TimeUnit::Hour),
        (0.25, 48, TimeUnit::Hour),
        (0.000_694_444, 720, TimeUnit::Day),
    ] {
        let log = log(&curve(step, count));
        tells(&log, &format!("the file names no unit of time; taken as {}", unit.name()));
        let minutes = f64::from(count - 1) * step * unit.seconds() / 60.0;
        assert!((log.points.last().unwrap()[0] - minutes).abs() < 1e-6, "{step} × {count}");
    }
    let said = Options { time_unit: Some(TimeUnit::Hour), ..Options::default() };
    let log = log_with("0;20,5\n1;25\n2;31,5\n", &said);
    assert!(are(&log, &[[0.0, 20.5], [60.0, 25.0], [120.0, 31.5]]) && !words(&log).iter().any(|words| words.contains("unit of time")));
}

#[test]
fn clocks_dates_and_moments() {
    let noon: DateTime = date(2026, 3, 14).at(12, 0, 0, 0);
    let half = ["12:00", "12:10", "12:20"];
    let whole = |form: &str| half.map(|clock| form.replace('@', clock));
    for form in [
        "2026-03-14 @",
        "2026-03-14 @:00",
        "2026-03-14T@:00",
        "2026-03-14T@:00.000",
        "2026/03/14 @",
        "14.03.2026 @",
        "14.3.26 @",
        "14.03.2026, @ Uhr",
        "14/03/2026 @:00",
        "03/14/2026 @:00",
        "3/14/26 @ PM",
        "14-03-2026 @",
        "14. März 2026 @",
        "14-Mar-2026 @",
        "Sat Mar 14, 2026 @",
        "@:00 14.03.2026",
        "2026-03-14T@+01:00",
        "2026-03-14 @:00 +0100",
        "2026-03-14T@:00+01:00[Europe/Berlin]",
        "14.03.2026 @ MEZ",
    ] {
        let times = whole(form);
        let log = at("Date/Time", [&times[0], &times[1], &times[2]]);
        assert_eq!((log.start, log.start_clock), (Some(noon), Some(noon.time())), "{form}");
        assert!(log.remarks.is_empty(), "{form}: {:?}", words(&log));
    }
    let compact = at("time", ["20260314T120000", "20260314T121000", "20260314T122000"]);
    assert_eq!(compact.start, Some(noon));
    let two = same("Datum;Uhrzeit;Temp °C\n14.03.2026;12:00;20,5\n14.03.2026;12:10;25,0\n14.03.2026;12:20;31,5\n", THREE);
    assert_eq!((two.start, two.taken.time.len()), (Some(noon), 2));
    let blanks = same("Date Time Temp(C)\n2026-03-14 12:00:00 PM 20.5\n2026-03-14 12:10:00 PM 25.0\n2026-03-14 12:20:00 PM 31.5\n", THREE);
    assert_eq!(blanks.start, Some(noon));
    let clock = at("Uhrzeit", ["12:00:00", "12:10:00", "12:20:00"]);
    assert_eq!((clock.start, clock.start_clock), (None, Some(noon.time())));
    let half_day = at("clock", ["11:50 AM", "12:00 PM", "12:10 PM"]);
    assert_eq!(half_day.start_clock, Some(time(11, 50, 0, 0)));
    // Spreadsheets leave the clock out at midnight.
    let midnight = at("Zeit", ["13.03.2026 23:50", "14.03.2026", "14.03.2026 00:10"]);
    assert_eq!(midnight.start, Some(date(2026, 3, 13).at(23, 50, 0, 0)));
}

#[test]
fn moments_since_1970_in_utc_and_spreadsheet_days() {
    // 1773489600 s after 1970-01-01T00:00Z is 2026-03-14T12:00Z (GNU `date -u -d @1773489600`).
    let noon = date(2026, 3, 14).at(12, 0, 0, 0);
    let berlin = Options { zone: Some(TimeZone::get("Europe/Berlin").unwrap()), ..Options::default() };
    for (header, times) in [
        ("timestamp", ["1773489600", "1773490200", "1773490800"]),
        ("time", ["1773489600000", "1773490200000", "1773490800000"]),
        ("unix (s)", ["1773489600.0", "1773490200.0", "1773490800.0"]),
        ("time", ["2026-03-14T12:00:00Z", "2026-03-14T12:10:00Z", "2026-03-14T12:20:00Z"]),
        ("time", ["2026-03-14 12:00 UTC", "2026-03-14 12:10 UTC", "2026-03-14 12:20 UTC"]),
    ] {
        let log = at(header, times);
        assert_eq!(log.start, Some(noon), "{header}");
        assert_eq!(log.remarks, [Remark::StartInUtc]);
        let [a, b, c] = times;
        let there = log_with(&format!("{header};°C\n{a};20,5\n{b};25,0\n{c};31,5\n"), &berlin);
        // Berlin is an hour ahead of UTC in winter.
        assert!(are(&there, THREE) && there.start == Some(date(2026, 3, 14).at(13, 0, 0, 0)) && there.remarks.is_empty());
    }
    // Day 46095 is 2026-03-14: 25569 for 1970-01-01 and 20526 days since.
    let serial = at("Time", ["46095.5", "46095.5069444444", "46095.5138888889"]);
    assert_eq!((serial.start, serial.taken.time_unit), (Some(noon), Some(TimeUnit::SerialDay)));
    same("Zeit;°C\n46095,5;20,5\n46095,5069444444;25,0\n46095,5138888889;31,5\n", THREE);
}

#[test]
fn day_or_month_first() {
    let start = |text: &str, options: &Options| {
        let log = log_with(text, options);
        (log.start.unwrap().date(), words(&log))
    };
    let plain = Options::default();
    let open = "time;°C\n03/04/2026 10:00;20\n03/04/2026 10:10;21\n";
    assert_eq!(start(open, &plain), (date(2026, 4, 3), vec!["dates read day before month: nothing in the file decides it".to_owned()]));
    let asked = |day_first| Options { day_first: Some(day_first), ..Options::default() };
    assert_eq!(start(open, &asked(false)), (date(2026, 3, 4), vec!["dates read month before day: as asked".to_owned()]));
    assert_eq!(start(open, &asked(true)).0, date(2026, 4, 3));
    // A number above twelve decides, whatever is asked.
    let sure = "time,°C\n03/31/2026 23:00,20.5\n04/01/2026 01:00,21\n04/01/2026 03:00,22\n";
    assert_eq!(start(sure, &asked(true)), (date(2026, 3, 31), Vec::new()));
    // Two days running are not a month apart.
    let running = "time;°C\n03/04/2026 23:50;20,5\n03/05/2026 00:00;21\n";
    assert_eq!(
        start(running, &plain),
        (date(2026, 3, 4), vec!["dates read month before day: the other order would tear the log apart".to_owned()])
    );
    assert_eq!(start("time;°C\n03.04.2026 10:00;20\n03.04.2026 10:10;21\n", &plain), (date(2026, 4, 3), Vec::new()));
}

#[test]
fn a_clock_passes_midnight_more_than_once() {
    let text: String = (0..50).map(|at| format!("{:02}:30;{}\n", (20 + at) % 24, 100 + at)).collect();
    let log = log(&format!("Uhrzeit;°C\n{text}"));
    assert_eq!(log.points.len(), 50);
    assert!((log.points[49][0] - 49.0 * 60.0).abs() < 1e-9);
    tells(&log, "lines 6, 30: the clock passed midnight");
    assert_eq!(log.start_clock, Some(Time::constant(20, 30, 0, 0)));
    let ten = at("Time", ["23:50", "0:00", "0:10"]);
    tells(&ten, "line 3: the clock passed midnight");
    same("Time,Temp C\n11:50 PM,20.5\n12:00 AM,25.0\n12:10 AM,31.5\n", THREE);
}

#[test]
fn gaps_are_told_and_not_filled() {
    let minutes = (0..30).chain(95..120);
    let log = log(&format!("min;°C\n{}", minutes.map(|minute| format!("{minute};{}\n", 20 + minute)).collect::<String>()));
    assert_eq!(log.points.len(), 55);
    assert_eq!(words(&log), ["no readings from minute 29.0 (line 31) to minute 95.0 (line 32)"]);
    let many: String = (0..300).map(|at| format!("{};20,{}\n", at + at / 12 * 30, at % 10)).collect();
    let log = self::log(&format!("min;°C\n{many}"));
    tells(&log, "4 more gaps");
    assert_eq!(log.remarks.len(), 21);
}

#[test]
fn repeated_times_and_rows_out_of_order() {
    let log = same("min;°C\n0;20,5\n0;20,5\n10;24,0\n10;25,0\n20;31,5\n20;31,5\n", THREE);
    assert_eq!(words(&log), ["lines 3, 7: repeated, dropped", "line 4: another temperature follows for the same time; dropped"]);
    let log = same("min;°C\n0;20,5\n20;31,5\n10;25,0\n", THREE);
    assert_eq!(words(&log), ["line 4: out of order, put in place"]);
    let log = same("time;°C\n2026-03-14 12:20;31,5\n2026-03-14 12:10;25,0\n2026-03-14 12:00;20,5\n", THREE);
    assert_eq!(words(&log), ["the newest row stood first; turned round"]);
    let log = same("Uhrzeit;°C\n00:10;31,5\n00:00;25,0\n23:50;20,5\n", THREE);
    assert_eq!(words(&log), ["the newest row stood first; turned round", "line 3: the clock passed midnight"]);
    let twice = format!("min;°C\n{}", (0..100).chain(0..100).map(|minute| format!("{minute};{}\n", 20 + minute)).collect::<String>());
    assert_eq!(error(&twice), LogError::GoesBack { line: 102 });
}

/// A reading every ten minutes by the clock on the wall of a zone, from a moment in UTC on; the temperature rises 1 °C a reading.
fn on_the_wall(zone: &TimeZone, start: &str, count: i64) -> String {
    let start: jiff::Timestamp = start.parse().unwrap();
    let row = |at: i64| {
        let moment = jiff::Timestamp::from_second(start.as_second() + 600 * at).unwrap();
        format!("{};{}\n", zone.to_datetime(moment).strftime("%Y-%m-%d %H:%M"), 100 + at)
    };
    format!("time;°C\n{}", (0..count).map(row).collect::<String>())
}

fn is_even(log: &KilnLog, count: usize) -> bool {
    log.points.len() == count && log.points.iter().enumerate().all(|(at, point)| (point[0] - 10.0 * at as f64).abs() < 1e-9)
}

#[test]
fn clocks_go_back_and_forward() {
    // European Union: summer time ended on 2025-10-26 and began on 2026-03-29, both at 01:00 UTC (Directive 2000/84/EC).
    let zone = TimeZone::get("Europe/Berlin").unwrap();
    let known = Options { zone: Some(zone.clone()), ..Options::default() };
    let autumn = on_the_wall(&zone, "2025-10-25T22:00:00Z", 60);
    let log = log_with(&autumn, &known);
    assert!(is_even(&log, 60), "{:?}", log.points);
    assert_eq!(words(&log), ["line 20: the clocks went back an hour"]);
    assert_eq!(log.start, Some(date(2025, 10, 26).at(0, 0, 0, 0)));
    let log = self::log(&autumn);
    assert!(is_even(&log, 60), "{:?}", log.points);
    assert_eq!(words(&log), ["line 20: the clock went back an hour; taken as the end of summer time"]);
    let backward: String = std::iter::once("time;°C")
        .chain(autumn.lines().skip(1).collect::<Vec<_>>().into_iter().rev())
        .map(|line| format!("{line}\n"))
        .collect();
    let log = log_with(&backward, &known);
    assert!(is_even(&log, 60) && log.remarks[0] == Remark::TurnedRound, "{:?}", log.points);

    let spring = on_the_wall(&zone, "2026-03-28T22:00:00Z", 60);
    let log = log_with(&spring, &known);
    assert!(is_even(&log, 60), "{:?}", log.points);
    assert_eq!(words(&log), ["line 20: the clocks went forward an hour"]);
    let log = self::log(&spring);
    assert!((log.points[59][0] - 650.0).abs() < 1e-9);
    assert_eq!(words(&log), ["no readings from minute 170.0 (line 19) to minute 240.0 (line 20); it may be the hour that the clocks skip"]);

    // A logger that stays on winter time, in either season.
    for start in ["2026-03-28T22:00:00Z", "2025-10-25T22:00:00Z"] {
        let winter = on_the_wall(&TimeZone::fixed(jiff::tz::offset(1)), start, 60);
        let log = log_with(&winter, &known);
        assert!(is_even(&log, 60), "{:?}", log.points);
        assert_eq!(words(&log), ["the clock of the log did not follow the change of clocks in the zone"]);
    }
    // With the offset written there is nothing to decide.
    let told = "time;°C\n2025-10-26T02:50+02:00;20,5\n2025-10-26T02:00+01:00;25,0\n2025-10-26T02:10+01:00;31,5\n";
    assert_eq!(same(told, THREE).start, Some(date(2025, 10, 26).at(2, 50, 0, 0)));
    // Without a date the hour of the night must do.
    let clock = "Uhrzeit;°C\n02:40;20\n02:50;21\n02:00;22\n02:10;23\n02:20;24\n";
    let log = same(clock, &[[0.0, 20.0], [10.0, 21.0], [20.0, 22.0], [30.0, 23.0], [40.0, 24.0]]);
    tells(&log, "line 4: the clock went back an hour; taken as the end of summer time");
    // At noon nobody changes clocks.
    let rows = |hour: u32| (0..60).map(move |minute| format!("2026-03-14 {hour}:{minute:02};{}\n", 100 + minute)).collect::<String>();
    assert_eq!(error(&format!("time;°C\n{}{}{}", rows(11), rows(12), rows(12))), LogError::GoesBack { line: 122 });
}
