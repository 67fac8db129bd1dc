//! Agreement with scipy and statsmodels: `tests/tools/learned_reference.py` wrote the numbers.

use pourbook::calc::learned::{Interval, Learned, Observation, clopper_pearson, fisher_two_sided, holm, learn};
use serde_json::Value;

fn reference() -> Value {
    serde_json::from_str(include_str!("data/learned_reference.json")).unwrap()
}

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().unwrap()
}

#[track_caller]
fn agrees(ours: f64, theirs: &Value, what: &str) {
    let theirs = theirs.as_f64().unwrap();
    assert!((ours - theirs).abs() <= 1e-9 * theirs.abs(), "{what}: {ours:e} here, {theirs:e} there");
}

#[track_caller]
fn interval_agrees(ours: Interval, theirs: &Value, what: &str) {
    agrees(ours.lower, &theirs[0], what);
    agrees(ours.upper, &theirs[1], what);
}

fn observations(of: &Value) -> Vec<Observation<u32>> {
    let one = |row: &Value| Observation {
        job: u32::try_from(row[0].as_u64().unwrap()).unwrap(),
        day: i32::try_from(row[1].as_i64().unwrap()).unwrap(),
        value: row[2].as_f64().unwrap(),
    };
    list(of, "rows").iter().map(one).collect()
}

#[test]
fn means_intervals_and_trends_are_those_of_scipy_and_statsmodels() {
    let reference = reference();
    let lists = list(&reference, "lists");
    assert_eq!(lists.len(), 36);
    for theirs in lists {
        let ours = learn(&observations(theirs)).unwrap();
        assert_eq!(ours.observations as u64, theirs["observations"].as_u64().unwrap());
        assert_eq!(ours.jobs as u64, theirs["jobs"].as_u64().unwrap());
        agrees(ours.all.mean, &theirs["mean"], "mean");
        agrees(ours.all.median, &theirs["median"], "median");
        agrees(ours.all.deviation.unwrap(), &theirs["deviation"], "deviation");
        interval_agrees(ours.all.mean_interval.unwrap(), &theirs["mean_interval"], "interval of the mean");
        interval_agrees(ours.all.next_job.unwrap(), &theirs["next_job"], "next job");
        if ours.jobs >= 3 {
            let trend = ours.all.trend.unwrap();
            agrees(trend.per_30_days, &theirs["slope"], "slope");
            interval_agrees(trend.interval, &theirs["slope_interval"], "interval of the slope");
            agrees(trend.theil_sen_per_30_days, &theirs["theil_sen"], "Theil–Sen");
        }
        outliers_agree(&ours, theirs);
    }
}

fn outliers_agree(ours: &Learned<u32>, theirs: &Value) {
    if theirs["outliers"].is_null() {
        return;
    }
    let theirs = list(theirs, "outliers");
    assert_eq!(ours.outliers.len(), theirs.len());
    for (ours, theirs) in ours.outliers.iter().zip(theirs) {
        assert_eq!(u64::from(ours.job), theirs[0].as_u64().unwrap());
        agrees(ours.score, &theirs[1], "score");
    }
}

#[test]
fn clopper_pearson_is_that_of_statsmodels() {
    for row in list(&reference(), "clopper_pearson") {
        let (hits, of, level) = (row[0].as_f64().unwrap(), row[1].as_f64().unwrap(), row[2].as_f64().unwrap());
        let ours = clopper_pearson(hits, of, level).unwrap();
        agrees(ours.lower, &row[3], &format!("lower of {hits} in {of}"));
        agrees(ours.upper, &row[4], &format!("upper of {hits} in {of}"));
    }
}

#[test]
fn fisher_is_that_of_scipy() {
    for row in list(&reference(), "fisher") {
        let count = |at: usize| row[at].as_u64().unwrap();
        let ours = fisher_two_sided(count(0), count(0) + count(1), count(2), count(2) + count(3));
        agrees(ours, &row[4], &format!("{row}"));
    }
}

#[test]
fn holm_is_that_of_statsmodels() {
    for row in reference()["holm"].as_array().unwrap() {
        let chances: Vec<f64> = row[0].as_array().unwrap().iter().map(|p| p.as_f64().unwrap()).collect();
        let raised = holm(&chances);
        assert_eq!(raised.len(), chances.len());
        for (ours, theirs) in raised.iter().zip(row[1].as_array().unwrap()) {
            agrees(*ours, theirs, "Holm");
        }
    }
}
