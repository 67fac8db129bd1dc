//! What the words over a column say.

use super::{TimeUnit, Unit};

/// What a column is for, as far as its header tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    Time,
    /// A running number.
    Number,
    /// The measured temperature, said in so many words.
    Actual,
    Temperature,
    SetPoint,
    /// Something else that is measured or set.
    Other,
    Unknown,
}

/// What a header says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Meaning {
    pub role: Role,
    pub unit: Option<Unit>,
    pub time_unit: Option<TimeUnit>,
    /// True where the time is said to count from the beginning.
    pub elapsed: bool,
    /// True where times of two parts are minutes and seconds.
    pub minutes_and_seconds: bool,
}

const TIME: [&str; 14] = [
    "time",
    "zeit",
    "timestamp",
    "zeitstempel",
    "datetime",
    "date",
    "datum",
    "clock",
    "uhr",
    "unix",
    "epoch",
    "dauer",
    "duration",
    "elapsed",
];
const NUMBER: [&str; 13] = ["no", "nr", "num", "number", "nummer", "index", "idx", "id", "record", "sample", "row", "lfd", "zeile"];
const SET: [&str; 9] = ["set", "sp", "sv", "setpoint", "soll", "target", "ziel", "wsp", "setvalue"];
const ACTUAL: [&str; 11] = ["actual", "act", "pv", "ist", "process", "measured", "gemessen", "messwert", "reading", "current", "real"];
const TEMPERATURE: [&str; 20] = [
    "temp",
    "temps",
    "t",
    "tc",
    "te",
    "thermocouple",
    "thermoelement",
    "kiln",
    "ofen",
    "oven",
    "furnace",
    "chamber",
    "kammer",
    "muffle",
    "muffel",
    "probe",
    "sensor",
    "channel",
    "kanal",
    "ch",
];
const OTHER: [&str; 51] = [
    "mv",
    "op",
    "output",
    "out",
    "power",
    "leistung",
    "stellgrad",
    "heizung",
    "heater",
    "duty",
    "humidity",
    "feuchte",
    "rh",
    "ambient",
    "umgebung",
    "room",
    "raum",
    "cold",
    "junction",
    "vergleichsstelle",
    "cj",
    "cjc",
    "internal",
    "intern",
    "board",
    "battery",
    "batterie",
    "voltage",
    "strom",
    "relay",
    "relais",
    "status",
    "segment",
    "step",
    "schritt",
    "error",
    "fehler",
    "alarm",
    "rate",
    "rampe",
    "ramp",
    "deviation",
    "abweichung",
    "energy",
    "kwh",
    "kw",
    "pressure",
    "druck",
    "comment",
    "bemerkung",
    "event",
];
const PROGRAM: [&str; 3] = ["program", "programme", "programm"];

/// Reads a header; what is not understood is `Unknown`.
pub(super) fn meaning(header: &str) -> Meaning {
    let lower = plain(header);
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphanumeric())
        .map(|word| word.trim_end_matches(|c: char| c.is_ascii_digit()))
        .filter(|word| !word.is_empty())
        .collect();
    let unit = unit_in(&lower, &words);
    // What the formats of clocks spell is no unit.
    let is_format = lower.contains("hh") || lower.contains("mm") || lower.contains("h:m");
    let time_unit = if is_format { None } else { words.iter().find_map(|word| time_unit_of(word)) };
    let has = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let begins = |start: &str| words.iter().any(|word| word.starts_with(start));
    Meaning {
        role: role(header, &lower, &words, unit, time_unit),
        unit,
        time_unit,
        elapsed: has(&["elapsed", "dauer", "duration", "laufzeit", "brennzeit", "runtime", "run"]) || begins("laufzeit"),
        minutes_and_seconds: (lower.contains("mm:ss") || lower.contains("m:ss")) && !lower.contains("h:m"),
    }
}

/// Small letters, with one sign for a degree.
fn plain(header: &str) -> String {
    let header: String = header.chars().take(200).collect::<String>().to_lowercase();
    let header = header.replace('℃', "°c").replace('℉', "°f").replace(['º', '˚'], "°");
    // The degree sign of old systems, read as Latin-1.
    header.replace("øc", "°c").replace("øf", "°f")
}

fn role(header: &str, lower: &str, words: &[&str], unit: Option<Unit>, time_unit: Option<TimeUnit>) -> Role {
    let has = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let begins = |start: &str| words.iter().any(|word| word.starts_with(start));
    let temperature = unit.is_some() || has(&TEMPERATURE) || lower.contains("temp") || begins("ofen");
    let time = has(&TIME) || words.iter().any(|word| word.ends_with("zeit") || word.ends_with("time"));
    // A small t is a time as often as a temperature.
    if header.trim() == "t" {
        Role::Unknown
    } else if has(&SET) || begins("soll") || begins("setp") || (temperature && has(&PROGRAM)) {
        Role::SetPoint
    } else if has(&OTHER) || has(&PROGRAM) || lower.contains('%') {
        Role::Other
    } else if time {
        Role::Time
    } else if has(&ACTUAL) || begins("istw") || begins("istt") {
        Role::Actual
    } else if has(&TEMPERATURE[..2]) || unit.is_some() || lower.contains("temp") {
        Role::Temperature
    } else if time_unit.is_some() {
        Role::Time
    } else if has(&NUMBER) || lower.trim() == "#" {
        Role::Number
    } else if temperature {
        Role::Temperature
    } else {
        Role::Unknown
    }
}

/// A unit named in words; a single letter only with a degree sign, a bracket, or another word beside it.
fn unit_in(lower: &str, words: &[&str]) -> Option<Unit> {
    if let Some(unit) = unit_named(lower) {
        return Some(unit);
    }
    let marked = |letter: char| ['(', '[', '/'].iter().any(|before| lower.contains(&format!("{before}{letter}")));
    words.iter().enumerate().rev().find_map(|(at, &word)| {
        let before = at.checked_sub(1).map_or("", |at| words[at]);
        let beside = !before.is_empty() && !before.starts_with("typ");
        match word {
            "degc" | "tempc" => Some(Unit::Celsius),
            "degf" | "tempf" => Some(Unit::Fahrenheit),
            "tempk" => Some(Unit::Kelvin),
            "c" if beside || marked('c') => Some(Unit::Celsius),
            "f" if beside || marked('f') => Some(Unit::Fahrenheit),
            // A K is a kind of thermocouple as well.
            "k" if before == "t" || before.starts_with("temp") || marked('k') => Some(Unit::Kelvin),
            _ => None,
        }
    })
}

/// A unit written out or with a degree sign, anywhere in a text of small letters.
pub(super) fn unit_named(lower: &str) -> Option<Unit> {
    let degree = lower.split('°').skip(1).find_map(|rest| match rest.trim_start().as_bytes() {
        [b'c', rest @ ..] if !rest.first().is_some_and(u8::is_ascii_alphabetic) => Some(Unit::Celsius),
        [b'f', rest @ ..] if !rest.first().is_some_and(u8::is_ascii_alphabetic) => Some(Unit::Fahrenheit),
        _ => None,
    });
    let written = || match () {
        () if lower.contains("celsius") => Some(Unit::Celsius),
        () if lower.contains("fahrenheit") => Some(Unit::Fahrenheit),
        () if lower.contains("kelvin") => Some(Unit::Kelvin),
        () => None,
    };
    degree.or_else(written)
}

/// The unit named in lines around the table.
pub(super) fn unit_in_prose(line: &str) -> Option<Unit> {
    unit_named(&plain(line))
}

fn time_unit_of(word: &str) -> Option<TimeUnit> {
    Some(match word {
        "ms" | "msec" | "millis" | "milliseconds" | "millisekunden" => TimeUnit::Millisecond,
        "s" | "sec" | "secs" | "second" | "seconds" | "sek" | "sekunde" | "sekunden" => TimeUnit::Second,
        "m" | "min" | "mins" | "minute" | "minutes" | "minuten" => TimeUnit::Minute,
        "h" | "hr" | "hrs" | "hour" | "hours" | "std" | "stunde" | "stunden" => TimeUnit::Hour,
        "d" | "days" | "tage" => TimeUnit::Day,
        _ => return None,
    })
}

/// True where a cell names a unit and nothing else, as the second line of a header does.
pub(super) fn is_unit_alone(cell: &str) -> bool {
    let lower = plain(cell);
    let bare = lower.trim_matches(|c: char| matches!(c, '(' | ')' | '[' | ']') || c.is_whitespace());
    let words = [
        "°c",
        "°f",
        "k",
        "c",
        "f",
        "celsius",
        "fahrenheit",
        "kelvin",
        "%",
        "deg c",
        "deg f",
        "degc",
        "degf",
        "hh:mm:ss",
        "h:mm:ss",
        "hh:mm",
    ];
    bare.is_empty() || words.contains(&bare) || time_unit_of(bare).is_some() || bare.starts_with("dd") || bare.starts_with("yyyy")
}
