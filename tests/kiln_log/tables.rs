//! Separators, decimal signs, headers, units, columns and what stands around the table.

use crate::random::Random;
use crate::support::{Points, are, error, log, log_with, same, tells, words};
use pourbook::kiln_log::{Decimal, LogError, Options, Separator, Unit, read};

const RAMP: Points = &[[0.0, 20.5], [1.0, 25.25], [2.0, 31.0]];

#[test]
fn every_separator_and_decimal_sign() {
    let table: [(&str, Separator, Decimal); 13] = [
        ("min,temp_c\n0,20.5\n1,25.25\n2,31.0\n", Separator::Comma, Decimal::Point),
        ("min;temp_c\n0;20.5\n1;25.25\n2;31.0\n", Separator::Semicolon, Decimal::Point),
        ("min;temp_c\n0;20,5\n1;25,25\n2;31,0\n", Separator::Semicolon, Decimal::Comma),
        ("min;temp_c\n0,0;20,5\n1,0;25,25\n2,0;31,0\n", Separator::Semicolon, Decimal::Comma),
        ("min\ttemp_c\n0\t20.5\n1\t25.25\n2\t31.0\n", Separator::Tab, Decimal::Point),
        ("min\ttemp_c\n0\t20,5\n1\t25,25\n2\t31,0\n", Separator::Tab, Decimal::Comma),
        ("min | temp_c\n0 | 20,5\n1 | 25,25\n2 | 31,0\n", Separator::Bar, Decimal::Comma),
        ("min,temp_c\n\"0\",\"20,5\"\n\"1\",\"25,25\"\n\"2\",\"31,0\"\n", Separator::Comma, Decimal::Comma),
        ("min, temp_c\n0, 20.5\n1, 25.25\n2, 31.0\n", Separator::Comma, Decimal::Point),
        ("min   temp_c\n  0    20.5\n  1    25.25\n  2    31.0\n", Separator::Blanks, Decimal::Point),
        ("Time (min)   Temp (°C)\n  0,0    20,5\n  1,0    25,25\n  2,0    31,0\n", Separator::Blanks, Decimal::Comma),
        ("sep=;\nmin;temp_c\n0;20,5\n1;25,25\n2;31,0\n", Separator::Semicolon, Decimal::Comma),
        ("min;temp_c\n0;+20,5\n1;2,525e1\n2;31,0\n", Separator::Semicolon, Decimal::Comma),
    ];
    for (text, separator, decimal) in table {
        let log = same(text, RAMP);
        assert_eq!((log.taken.separator, log.taken.decimal), (separator, decimal), "{text}");
        assert_eq!(words(&log), [""; 0], "{text}");
    }
}

#[test]
fn thousands_are_parted_only_where_it_is_sure() {
    let hot: Points = &[[0.0, 998.5], [1.0, 1004.5], [2.0, 1010.0]];
    same("min;°C\n0;998,5\n1;1.004,5\n2;1.010\n", hot);
    same("min\t°C\n0\t998.5\n1\t1,004.5\n2\t1,010\n", hot);
    same("min,°C\n0,998.5\n1,\"1,004.5\"\n2,\"1,010\"\n", hot);
    same("min;°C\n0;998,5\n1;1 004,5\n2;1\u{a0}010\n", hot);
    same("min;°C\n0;998.5\n1;1'004.5\n2;1’010\n", hot);
    // Another column tells the decimal sign.
    same("min;°C\n0,5;998\n1,5;1.004\n2,5;1.010\n", &[[0.0, 998.0], [1.0, 1004.0], [2.0, 1010.0]]);
    // Three places everywhere are decimals.
    same("min;°C\n0.000;20.125\n1.000;25.250\n2.000;31.375\n", &[[0.0, 20.125], [1.0, 25.25], [2.0, 31.375]]);
    same("min;°C\n0,000;20,125\n1,000;25,250\n2,000;31,375\n", &[[0.0, 20.125], [1.0, 25.25], [2.0, 31.375]]);
    let open = "min;°C\n0;998\n1;1.004\n2;1.010\n";
    assert_eq!(error(open), LogError::TwoReadings { line: 3, found: "1.004".to_owned() });
    let said = |decimal| Options { decimal: Some(decimal), ..Options::default() };
    assert!(are(&log_with(open, &said(Decimal::Comma)), &[[0.0, 998.0], [1.0, 1004.0], [2.0, 1010.0]]));
    assert_eq!(log_with("min;°C\n0;1.5\n1;1.004\n", &said(Decimal::Point)).points[1], [1.0, 1.004]);
    assert_eq!(error("min,°C\n0,998\n1,\"1,004\"\n2,\"1,010\"\n"), LogError::TwoReadings { line: 3, found: "1,004".to_owned() });
    let mixed = same("min;°C\n0;20.5\n1;25,25\n2;31.0\n", RAMP);
    tells(&mixed, "line 3: decimal points and decimal commas in one column");
    assert_eq!(error("min,°C\n0,0,20,5\n1,0,25,3\n2,0,31,0\n"), LogError::CommaTwice { line: 2 });
}

#[test]
fn headers_in_english_german_nonsense_or_none() {
    for header in [
        "Time (min);Temperature (°C)\n",
        "Elapsed minutes;T/°C\n",
        "min;temp_c\n",
        "Zeit [min];Ofentemperatur [°C]\n",
        "Brennzeit/min;Istwert °C\n",
        "Minuten;Temperatur (Celsius)\n",
        "time_min;TempC\n",
        "Zeit;Temperatur\nmin;°C\n",
        "# time_min; temp_c\n",
        "\"Time\n(min)\";\"Temp\n(°C)\"\n",
    ] {
        let log = same(&format!("{header}0;20,5\n1;25,25\n2;31,0\n"), RAMP);
        assert_eq!(words(&log), [""; 0], "{header}");
    }
    for header in ["", "foo;bar\n", "\n\n"] {
        let log = log(&format!("{header}0,5;20,5\n1,5;25,25\n2,5;31,0\n"));
        tells(&log, "the file names no unit of temperature; taken as °C");
        assert!(words(&log).iter().any(|words| words.contains("unit of time")), "{:?}", words(&log));
    }
    let named = log("Zeit;Temperatur\nmin;°C\n0;20\n1;21\n").taken;
    assert_eq!((named.temperature.name.as_str(), named.header_line), ("Temperatur °C", Some(1)));
}

#[test]
fn units_by_header_by_cell_by_prose_or_inferred() {
    // 68 °F = 20 °C, 212 °F = 100 °C and 1350 °F = 732.222 °C; 293.15 K = 20 °C: by definition of the scales.
    let points: Points = &[[0.0, 20.0], [30.0, 100.0], [300.0, 732.2222]];
    for fahrenheit in [
        "min,Temp (°F)\n0,68\n30,212\n300,1350\n",
        "min,temp_f\n0,68\n30,212\n300,1350\n",
        "min,Fahrenheit\n0,68\n30,212\n300,1350\n",
        "min,T/F\n0,68\n30,212\n300,1350\n",
        "min,Temp\n0,68 °F\n30,212 °F\n300,1350 °F\n",
        "min,Temp\n0,68F\n30,212F\n300,1350F\n",
        "Units: °F\nmin,Temp\n0,68\n30,212\n300,1350\n",
    ] {
        let log = same(fahrenheit, points);
        assert_eq!(log.taken.unit, Unit::Fahrenheit, "{fahrenheit}");
        assert!(!words(&log).iter().any(|words| words.contains("no unit")), "{fahrenheit}");
    }
    for kelvin in [
        "min;Kelvin\n0;293,15\n30;373,15\n300;1005,3722\n",
        "min;Temp (K)\n0;293,15\n30;373,15\n300;1005,3722\n",
        "min;T [K]\n0;293,15\n30;373,15\n300;1005,3722\n",
    ] {
        assert_eq!(same(kelvin, points).taken.unit, Unit::Kelvin);
    }
    // A kind of thermocouple is no unit.
    assert_eq!(log("min;TC type K\n0;20\n30;100\n300;732\n").taken.unit, Unit::Celsius);
    let long = |temperatures: fn(u32) -> f64| (0..600).map(|minute| format!("{minute};{:.1}\n", temperatures(minute))).collect::<String>();
    let inferred = |text: String| {
        let log = log(&text);
        tells(&log, &format!("the file names no unit of temperature; taken as {}", log.taken.unit.symbol()));
        log.taken.unit
    };
    assert_eq!(inferred(long(|minute| 20.0 + f64::from(minute.min(300)) * 2.37)), Unit::Celsius);
    assert_eq!(inferred(long(|minute| 68.0 + f64::from(minute.min(300)) * 4.27)), Unit::Fahrenheit);
    assert_eq!(inferred(long(|minute| 293.0 + f64::from(minute.min(300)) * 2.37)), Unit::Kelvin);
    let said = Options { unit: Some(Unit::Fahrenheit), ..Options::default() };
    let log = log_with("min;Temp\n0;212\n1;212,9\n", &said);
    assert!(are(&log, &[[0.0, 100.0], [1.0, 100.5]]) && log.remarks.is_empty());
}

#[test]
fn the_measured_column_is_taken_and_others_can_be() {
    let text = "Time;Set (°C);Actual (°C);Output %;Room (°C)\n0:00:00;20;21,5;0;18\n0:01:00;30;27,5;100;18\n0:02:00;40;36,0;100;18\n";
    let log = same(text, &[[0.0, 21.5], [1.0, 27.5], [2.0, 36.0]]);
    tells(&log, "temperature taken from “Actual (°C)”; the file also has “Set (°C)”");
    assert_eq!(log.taken.temperature.index, 2);
    let set = log_with(text, &Options { temperature_column: Some(1), ..Options::default() });
    assert!(are(&set, &[[0.0, 20.0], [1.0, 30.0], [2.0, 40.0]]));
    for (column, there) in [(0, 5), (9, 5)] {
        let asked = Options { temperature_column: Some(column), ..Options::default() };
        assert_eq!(read(text.as_bytes(), &asked).unwrap_err(), LogError::NoSuchColumn { column: column + 1, there });
    }
    for (header, taken) in
        [("Zeit (min);Sollwert;Istwert", 2), ("Time (min);SP;PV", 2), ("min;TC1 °C;TC2 °C", 1), ("min;PV;SP", 1), ("Nr.;min;Temp", 2)]
    {
        let log = self::log(&format!("{header}\n1;20,5;21,7\n2;22,5;23,1\n3;24,5;26,3\n4;26,5;27,9\n"));
        assert_eq!(log.taken.temperature.index, taken, "{header}");
    }
    // Without a header a set point shows itself by its straight lines, a power by its narrow range.
    let rows = |minute: u32| {
        let (set, noise) = (20.0 + 2.5 * f64::from(minute), Random(minute.into()).between(0.0, 1.7));
        format!("{minute},{},{set},{:.1}\n", minute % 3 * 10, set - 3.0 + noise)
    };
    let bare = self::log(&(0..100).map(rows).collect::<String>());
    assert_eq!((bare.taken.temperature.index, bare.taken.others[0].index), (3, 2));
    tells(&bare, "temperature taken from column 4; the file also has column 3, column 2");
    for (text, time, temperature) in [
        ("#,Time,TC1 (°C)\n1,12:00:00,20.5\n2,12:00:10,20.6\n", 1, 2),
        ("t,T\n0,20.5\n60,21.5\n120,26\n", 0, 1),
        ("1;0;20,5\n2;5;30,5\n3;10;40,1\n4;15;39,2\n", 1, 2),
        ("Temp (C);Time(min)\n20;0\n25;1\n20;2\n", 1, 0),
        ("No;Datum;Zeit;PV;SV;MV\n1;14.03.2026;12:00;20;25;90\n2;14.03.2026;12:01;22;27;95\n", 1, 3),
        ("Zeit min;Temp;\n0;20,5;\n1;21,5;door\n2;23;\n", 0, 1),
    ] {
        let taken = self::log(text).taken;
        assert_eq!((taken.time[0].index, taken.temperature.index), (time, temperature), "{text}");
    }
    let only = self::log("min;Soll\n0;20\n1;21\n");
    tells(&only, "“Soll” seems to be the set point; no measured temperature was found");
    let by_elapsed = Options { time_column: Some(1), ..Options::default() };
    let two_times = "Time,Elapsed (s),Temp (C)\n2026-03-04 10:00,0,20\n2026-03-04 10:00,30,21\n2026-03-04 10:01,60,23\n";
    assert!(are(&log_with(two_times, &by_elapsed), &[[0.0, 20.0], [0.5, 21.0], [1.0, 23.0]]));
}

#[test]
fn bytes_of_every_encoding_and_every_end_of_line() {
    let text = "Zeit (min);Temp (°C)\n0;20,5\n1;25,25\n2;31,0\n";
    let wide = |order: fn(u16) -> [u8; 2], mark: bool| -> Vec<u8> {
        let mark = if mark { "\u{feff}" } else { "" };
        format!("{mark}{text}").encode_utf16().flat_map(order).collect()
    };
    let latin: Vec<u8> = text.chars().map(|c| u8::try_from(u32::from(c)).unwrap()).collect();
    let files: [Vec<u8>; 10] = [
        text.as_bytes().to_vec(),
        format!("\u{feff}{text}").into_bytes(),
        wide(u16::to_le_bytes, true),
        wide(u16::to_be_bytes, true),
        wide(u16::to_le_bytes, false),
        wide(u16::to_be_bytes, false),
        latin,
        text.replace('\n', "\r\n").into_bytes(),
        text.replace('\n', "\r").into_bytes(),
        format!("{}\0\0\0\0", text.trim_end()).into_bytes(),
    ];
    for file in files {
        let log = read(&file, &Options::default()).unwrap_or_else(|error| panic!("{error}: {file:?}"));
        assert!(are(&log, RAMP) && log.taken.unit == Unit::Celsius && log.remarks.is_empty(), "{log:?}");
    }
    assert_eq!(read(b"PK\x03\x04\0\0\0\0abc", &Options::default()).unwrap_err(), LogError::NotText);
}

#[test]
fn lines_around_and_among_the_rows() {
    let text = "Kiln log\nSerial no.;12345\nOperator: N. N.\n\n# a comment\nZeit (min);Temp (°C)\n0;20,5\n\n# door opened\n1;25,25\n;;\n\
                program step 2\nZeit (min);Temp (°C)\n2;31,0\n\nMax;31,0\nEnd of log\n";
    let log = same(text, RAMP);
    tells(&log, "lines 1–3: before the table, passed over");
    tells(&log, "lines 12–13: neither time nor temperature, passed over");
    tells(&log, "lines 16–17: after the table, passed over");
    assert_eq!(log.remarks.len(), 3);
    let english = same("Kiln log,,\nSerial no.,12345,\nTime (min),Temp (C),Note\n0,20.5,\n1,25.25,door\n2,31.0,\nMax,31.0,\n", RAMP);
    assert_eq!(words(&english), ["lines 1–2: before the table, passed over", "line 7: after the table, passed over"]);
}

#[test]
fn nonsense_is_named_with_its_line() {
    let table = [
        ("", "the file is empty"),
        ("\n \n\t\n", "the file is empty"),
        ("hello\nworld\n", "line 1 and after: no two columns of times and temperatures were found"),
        ("min;°C\n0;20\n1;21\n2;22\n3;23\n4;24\n5;abc\n6;26\n", "line 7: “abc” is no temperature"),
        ("min;°C\n0;abc\n1;21\n2;22\n", "line 2: “abc” is no temperature"),
        ("min;°C\n0;20\n1;21\n2;22\n3;abc\n", "line 5: “abc” is no temperature"),
        ("min,°C\n0,20.5\nx,21.5\n2,22.5\n", "line 3: “x” is no time"),
        ("min;°C\n0;20,5\n;21,5\n2;22,5\n", "line 3: nothing stands where a time was expected"),
        ("date;time;°C\n4.3.2026;10:00;20,5\n4.3.2026;10:61;21,5\n4.3.2026;10:02;22,5\n", "line 3: “4.3.2026 10:61” is no time"),
        ("date time;°C\n2026-02-28 10:00;20\n2026-02-30 10:00;20\n2026-03-01 10:00;20\n", "line 3: “2026-02-30 10:00” is no time"),
        ("Temp;Set\n20;21\n30;31\n35;20\n", "line 1: no column of times was found"),
        ("min;Output %\n0;21\n1;31\n", "line 1: no column of temperatures was found"),
        ("min;°C\n0;20\n", "1 readings are no curve; at least 2 are needed"),
        ("min;°C\n0;5000\n1;5001\n", "all 2 readings are sensor faults"),
    ];
    for (text, sentence) in table {
        assert_eq!(error(text).to_string(), sentence, "{text}");
    }
}
