//! Random curves in random ways of writing them, read back.

use crate::support::words;
use jiff::civil::{DateTime, date};
use pourbook::kiln_log::{Options, Unit, read};

/// A random sequence that can be repeated (splitmix64, from memory).
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Below `end`, which is above 0.
    pub fn below(&mut self, end: u64) -> u64 {
        self.next() % end
    }

    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn of<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(from.len() as u64) as usize]
    }
}

/// A log, and what must be read from it.
pub struct Written {
    pub bytes: Vec<u8>,
    pub points: Vec<[f64; 2]>,
    pub start: Option<DateTime>,
    /// °C to which the temperatures are printed.
    pub precision_k: f64,
}

/// The ways of writing a time: header, and the cell of a moment some s after the start.
#[derive(Clone, Copy, PartialEq)]
enum Form {
    Minutes,
    Seconds,
    Hours,
    Passed,
    Clock,
    HalfDays,
    Iso,
    IsoOffset,
    German,
    American,
    TwoColumns,
    UnixSeconds,
    UnixMilliseconds,
    Serial,
}

const FORMS: [Form; 14] = [
    Form::Minutes,
    Form::Seconds,
    Form::Hours,
    Form::Passed,
    Form::Clock,
    Form::HalfDays,
    Form::Iso,
    Form::IsoOffset,
    Form::German,
    Form::American,
    Form::TwoColumns,
    Form::UnixSeconds,
    Form::UnixMilliseconds,
    Form::Serial,
];

/// Afternoon of a day above twelve, so that its date reads in one way.
fn start() -> DateTime {
    date(2026, 1, 19).at(15, 20, 0, 0)
}

/// 2026-01-19T15:20Z in s since 1970 (GNU `date -u -d 2026-01-19T15:20Z +%s`), and in days of a spreadsheet (25569 days more).
const START_S: u64 = 1_768_836_000;

impl Form {
    fn header(self, separator: char) -> String {
        match self {
            Self::Minutes => "Time (min)".to_owned(),
            Self::Seconds => "t/s".to_owned(),
            Self::Hours => "Zeit [h]".to_owned(),
            Self::Passed => "Elapsed".to_owned(),
            Self::Clock => "Uhrzeit".to_owned(),
            Self::HalfDays | Self::Iso | Self::IsoOffset | Self::German | Self::American => "Date/Time".to_owned(),
            Self::TwoColumns => format!("Datum{separator}Uhrzeit"),
            Self::UnixSeconds | Self::UnixMilliseconds | Self::Serial => "timestamp".to_owned(),
        }
    }

    fn cell(self, seconds: u64, separator: char) -> String {
        let moment = start() + jiff::SignedDuration::from_secs(seconds as i64);
        let of = |form: &str| moment.strftime(form).to_string();
        match self {
            Self::Minutes => format!("{:.4}", seconds as f64 / 60.0),
            Self::Seconds => seconds.to_string(),
            Self::Hours => format!("{:.6}", seconds as f64 / 3600.0),
            Self::Passed => format!("{}:{:02}:{:02}", seconds / 3600, seconds / 60 % 60, seconds % 60),
            Self::Clock => of("%H:%M:%S"),
            Self::HalfDays => of("%m/%d/%Y %I:%M:%S %p"),
            Self::Iso => of("%Y-%m-%dT%H:%M:%S"),
            Self::IsoOffset => of("%Y-%m-%dT%H:%M:%S+05:30"),
            Self::German => of("%d.%m.%Y %H:%M:%S"),
            Self::American => of("%m/%d/%Y %H:%M:%S"),
            Self::TwoColumns => of(&format!("%d.%m.%Y{separator}%H:%M:%S")),
            Self::UnixSeconds => (START_S + seconds).to_string(),
            Self::UnixMilliseconds => ((START_S + seconds) * 1000).to_string(),
            Self::Serial => format!("{:.9}", (START_S + seconds) as f64 / 86_400.0 + 25_569.0),
        }
    }

    fn has_start(self) -> bool {
        !matches!(self, Self::Minutes | Self::Seconds | Self::Hours | Self::Passed | Self::Clock)
    }
}

/// Writes a random firing of some readings in one of the ways.
pub fn any_log(random: &mut Random, readings: u64) -> Written {
    let form = random.of(&FORMS);
    let separator = random.of(&[',', ';', '\t', '|']);
    let comma = random.below(2) == 0;
    let unit = random.of(&[Unit::Celsius, Unit::Fahrenheit, Unit::Kelvin]);
    let places = random.of(&[1_usize, 2, 4]);
    let step = random.of(&[1_u64, 10, 30, 60, 300]);
    let has_set = random.below(3) == 0;
    let quoted = random.below(4) == 0 || (comma && separator == ',');
    let decimal = |text: String| if comma { text.replace('.', ",") } else { text };
    let cell = |text: String| if quoted { format!("\"{text}\"") } else { text };
    let mut lines = Vec::new();
    if random.below(3) == 0 {
        lines.extend(["Kiln log".to_owned(), "# written at random".to_owned(), String::new()]);
    }
    let name = random.of(&["Temp", "Ist", "Actual", "Ofentemperatur", "T"]);
    let set = if has_set { format!("{separator}Soll ({})", unit.symbol()) } else { String::new() };
    lines.push(format!("{}{set}{separator}{name} ({})", form.header(separator), unit.symbol()));
    let (mut seconds, mut celsius, mut points) = (0, random.between(15.0, 30.0), Vec::new());
    for _ in 0..readings {
        let value = match unit {
            Unit::Celsius => celsius,
            Unit::Fahrenheit => celsius * 1.8 + 32.0,
            Unit::Kelvin => celsius + 273.15,
        };
        let time = form.cell(seconds, separator);
        // Dates with dots keep them; only numbers have a decimal sign.
        let is_number = matches!(form, Form::Minutes | Form::Hours | Form::Serial);
        let time = if is_number { decimal(time) } else { time };
        let time: Vec<String> = time
            .split(separator)
            .filter(|_| !is_number)
            .map(|part| cell(part.to_owned()))
            .chain(is_number.then(|| cell(time.clone())))
            .collect();
        let set = if has_set { format!("{separator}{}", cell(decimal(format!("{:.1}", value.round() + 0.5)))) } else { String::new() };
        lines.push(format!("{}{set}{separator}{}", time.join(&separator.to_string()), cell(decimal(format!("{value:.places$}")))));
        points.push([seconds as f64 / 60.0, celsius]);
        seconds += step;
        celsius = (celsius + random.between(-2.0, 12.0)).clamp(5.0, 1000.0);
    }
    let end = random.of(&["\n", "\r\n", "\r"]);
    let text = lines.join(end) + random.of(&["", end]);
    Written {
        bytes: encoded(&text, random),
        points,
        start: form.has_start().then(start),
        precision_k: 0.5001 * 10_f64.powi(-(places as i32)),
    }
}

fn encoded(text: &str, random: &mut Random) -> Vec<u8> {
    let marked = format!("\u{feff}{text}");
    match random.below(5) {
        0 => marked.into_bytes(),
        1 => marked.encode_utf16().flat_map(u16::to_le_bytes).collect(),
        2 => marked.encode_utf16().flat_map(u16::to_be_bytes).collect(),
        3 => text.chars().map(|c| u8::try_from(u32::from(c)).unwrap()).collect(),
        _ => text.as_bytes().to_vec(),
    }
}

#[test]
fn a_curve_written_in_any_way_is_read_back() {
    let mut random = Random(1);
    for case in 0..3000 {
        let readings = 2 + random.below(60);
        let written = any_log(&mut random, readings);
        let text = String::from_utf8_lossy(&written.bytes);
        let log = read(&written.bytes, &Options::default()).unwrap_or_else(|error| panic!("case {case}: {error}\n{text}"));
        assert_eq!(log.points.len(), written.points.len(), "case {case}: {:?} {:?}\n{text}", log.taken, words(&log));
        for (read, wanted) in log.points.iter().zip(&written.points) {
            // Minutes are printed to 0.0001, hours to 0.000 001, spreadsheet days to 0.000 000 001.
            assert!((read[0] - wanted[0]).abs() < 2e-4, "case {case}: {read:?} {wanted:?} {:?}\n{text}", log.taken);
            assert!((read[1] - wanted[1]).abs() <= written.precision_k, "case {case}: {read:?} {wanted:?} {:?}\n{text}", log.taken);
        }
        assert_eq!(log.start, written.start, "case {case}\n{text}");
    }
}
