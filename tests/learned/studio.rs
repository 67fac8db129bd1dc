//! An invented studio whose truth is known: three years of 600 jobs.

use crate::chance::Chance;
use pourbook::calc::learned::{Observation, Tally};

/// Jobs in three years.
pub const JOBS: u32 = 600;

/// The days they fall on.
pub const DAYS: u32 = 1095;

/// One quantity as it truly is.
#[derive(Clone, Copy)]
pub struct Truth {
    pub name: &'static str,
    pub mean: f64,
    /// Deviation from job to job.
    pub jobs: f64,
    /// Deviation from value to value within a job.
    pub within: f64,
    /// Most values a job holds.
    pub most: u32,
    /// True change per 30 days.
    pub drift: f64,
}

/// Density of a pattern in g/cm³, melt loss and shrinkage as shares, finishing losses by stage as shares; the last one weighed on a scale that
/// gains 20 mg per month on 20 g.
pub const TRUTHS: [Truth; 6] = [
    Truth { name: "pattern density", mean: 1.12, jobs: 0.015, within: 0.004, most: 6, drift: 0.0 },
    Truth { name: "melt loss", mean: 0.011, jobs: 0.003, within: 0.0, most: 1, drift: 0.0 },
    Truth { name: "linear shrinkage", mean: 0.0165, jobs: 0.0012, within: 0.0006, most: 12, drift: 0.0 },
    Truth { name: "loss at filing", mean: 0.032, jobs: 0.008, within: 0.004, most: 15, drift: 0.0 },
    Truth { name: "loss at polishing", mean: 0.014, jobs: 0.004, within: 0.003, most: 15, drift: 0.0 },
    Truth { name: "weight on the drifting scale", mean: 20.0, jobs: 0.4, within: 0.02, most: 3, drift: 0.02 },
];

impl Truth {
    /// The true value of one job on a day, before its own values scatter about it.
    fn of_job(&self, chance: &mut Chance, day: i32) -> f64 {
        self.mean + self.drift * (f64::from(day) - 0.5 * f64::from(DAYS)) / 30.0 + self.jobs * chance.normal()
    }

    /// What the studio writes down in `jobs` jobs. Large jobs write down more.
    pub fn record(&self, chance: &mut Chance, jobs: u32) -> Vec<Observation<u32>> {
        let mut record = Vec::new();
        for job in 0..jobs {
            record.extend(self.job(chance, job));
        }
        record
    }

    /// What one job writes down.
    pub fn job(&self, chance: &mut Chance, job: u32) -> Vec<Observation<u32>> {
        let day = i32::try_from(chance.below(DAYS)).unwrap();
        let level = self.of_job(chance, day);
        let count = 1 + chance.below(self.most);
        (0..count).map(|_| Observation { job, day, value: level + self.within * chance.normal() }).collect()
    }
}

/// How defects come about.
#[derive(Clone, Copy)]
pub struct Lots {
    /// Powder lots in the record.
    pub lots: u32,
    /// Usual share of defects.
    pub share: f64,
    /// Share in lot 3.
    pub bad: f64,
    /// How unlike jobs of one lot are: deviation of the logarithm of the odds. Nought where each casting fails by itself.
    pub clumped: f64,
}

impl Lots {
    /// Tallies of defects by lot over three years; lots follow each other.
    pub fn record(&self, chance: &mut Chance) -> Vec<(u32, Tally<u32>)> {
        let one = |job: u32| {
            let lot = job * self.lots / JOBS;
            let share = if lot == 3 { self.bad } else { self.share };
            // The usual share is kept near by taking off half the variance.
            let odds = share / (1.0 - share) * (self.clumped * chance.normal() - 0.5 * self.clumped * self.clumped).exp();
            let of = 3 + chance.below(20);
            (lot, Tally { job, defects: chance.hits(of, odds / (1.0 + odds)), of })
        };
        (0..JOBS).map(one).collect()
    }
}

/// True where `hits` of `tries` is a likely count for `share`: within four standard errors, beyond which chance goes once in 16 000.
pub fn likely(hits: usize, tries: usize, share: f64) -> bool {
    let n = tries as f64;
    (hits as f64 - n * share).abs() <= 4.0 * (n * share * (1.0 - share)).sqrt()
}

/// True where `hits` of `tries` does not speak against a share of at most `share`.
pub fn at_most(hits: usize, tries: usize, share: f64) -> bool {
    let n = tries as f64;
    hits as f64 <= n * share + 4.0 * (n * share * (1.0 - share)).sqrt()
}
