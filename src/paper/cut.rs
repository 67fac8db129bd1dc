//! What a kiln's log comes to in words: how long it is, where it fell, and what is to be done with each mould.

use jiff::civil::DateTime;

use super::words::{Words, moment_words};
use crate::calc::mould_heat::{Band, ByLog, Verdict};
use crate::job::{FlaskId, Job};
use crate::quantity::{Kind, print};

/// What a log is put into words with.
#[derive(Debug, Clone, Copy)]
pub struct CutWords<'a> {
    /// The job.
    pub job: &'a Job,
    /// Catalogue and units.
    pub words: Words<'a>,
}

impl CutWords<'_> {
    fn c(&self, c: f64) -> String {
        print(c, Kind::Temperature, self.words.style).to_string()
    }

    fn minutes(&self, minutes: f64) -> String {
        print(minutes, Kind::Duration, self.words.style).to_string()
    }

    /// A log in one line: readings, how long, from when, from and to what.
    #[must_use]
    pub fn log(&self, points: &[[f64; 2]], start: Option<DateTime>) -> String {
        let least = points.iter().map(|point| point[1]).fold(f64::INFINITY, f64::min);
        let most = points.iter().map(|point| point[1]).fold(f64::NEG_INFINITY, f64::max);
        let last = points.last().map_or(0.0, |point| point[0]);
        let args = [
            ("count", points.len().into()),
            ("time", self.minutes(last).into()),
            ("least", self.c(least).into()),
            ("most", self.c(most).into()),
        ];
        let said = self.words.texts.say("cut-log", &args);
        match start {
            Some(at) => format!("{said} {}", self.words.texts.say("cut-log-from", &[("at", moment_words(at, self.words.texts).into())])),
            None => said,
        }
    }

    /// A fall of the kiln: minutes from and to, temperatures from and to, and whether it rose again.
    #[must_use]
    pub fn drop(&self, [from, to]: [f64; 2], [high, low]: [f64; 2], recovers: bool) -> String {
        let args = [
            ("from", self.minutes(from).into()),
            ("to", self.minutes(to).into()),
            ("high", self.c(high).into()),
            ("low", self.c(low).into()),
        ];
        self.words.texts.say(if recovers { "cut-drop-recovers" } else { "cut-drop" }, &args)
    }

    /// What is to be done with a mould, and why.
    #[must_use]
    pub fn mould(&self, flask: FlaskId, mould: &ByLog) -> String {
        self.of(&self.scratch(flask), mould)
    }

    /// What is to be done with the moulds of a load: a sentence for each, one for all that have come equally far.
    #[must_use]
    pub fn moulds(&self, moulds: &[(FlaskId, &ByLog)]) -> Vec<String> {
        self.alike(moulds).into_iter().map(|(names, mould)| self.of(&names, mould)).collect()
    }

    /// The moulds of a load, those together that have come equally far, with the numbers of their flasks.
    #[must_use]
    pub fn alike<'m>(&self, moulds: &[(FlaskId, &'m ByLog)]) -> Vec<(String, &'m ByLog)> {
        let mut all: Vec<(String, String, &ByLog)> = Vec::new();
        for (flask, mould) in moulds {
            let (name, why) = (self.scratch(*flask), self.why(mould));
            match all.iter_mut().find(|(_, other, with)| *other == why && with.verdict == mould.verdict) {
                Some((names, ..)) => *names = format!("{names}, {name}"),
                None => all.push((name, why, mould)),
            }
        }
        all.into_iter().map(|(names, _, mould)| (names, mould)).collect()
    }

    fn of(&self, names: &str, mould: &ByLog) -> String {
        let answer = self.words.texts.label(answer(mould.verdict));
        let args = [("flask", names.into()), ("answer", answer.into()), ("why", self.why(mould).into())];
        self.words.texts.say("cut-says", &args)
    }

    /// The number on the face of a flask.
    fn scratch(&self, flask: FlaskId) -> String {
        let scratch = self.job.flasks.iter().find(|one| one.id == flask).map(|one| one.scratch.trim().to_owned()).unwrap_or_default();
        if scratch.is_empty() { flask.to_string() } else { scratch }
    }

    /// Why, and what to do.
    #[must_use]
    pub fn why(&self, mould: &ByLog) -> String {
        let core = mould.now_c.map(|now| now.map(|[_, core]| core));
        let args = [("corner", self.band(mould.corner_low_c).into()), ("core", self.band(core).into())];
        self.words.texts.say(why(mould.verdict), &args)
    }

    /// From the least to the most of a band.
    fn band(&self, band: Band<f64>) -> String {
        let known = || band.into_iter().flatten();
        let (least, most) = (known().fold(f64::INFINITY, f64::min), known().fold(f64::NEG_INFINITY, f64::max));
        if !least.is_finite() {
            return String::from("–");
        }
        let (least, most) = (self.c(least), self.c(most));
        if least == most { least } else { self.words.texts.say("cut-band", &[("least", least.into()), ("most", most.into())]) }
    }
}

/// The key of an answer in one word.
#[must_use]
pub const fn answer(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::NotFired => "cut-not-fired",
        Verdict::Reheat => "cut-reheat",
        Verdict::Marginal => "cut-marginal",
        Verdict::Scrap => "cut-scrap",
    }
}

const fn why(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::NotFired => "cut-not-fired-why",
        Verdict::Reheat => "cut-reheat-why",
        Verdict::Marginal => "cut-marginal-why",
        Verdict::Scrap => "cut-scrap-why",
    }
}
