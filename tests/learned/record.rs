//! Single records: counting by job, outliers, offers, groups and refusals.

use pourbook::calc::learned::{DefaultNotFinite, Learned, Observation, Offer, RecordError, Said, Tally, learn, learn_by, rates_by};

/// One value a job, a day apart.
fn record(values: &[f64]) -> Vec<Observation<u32>> {
    (0..).zip(0..).zip(values).map(|((job, day), value)| Observation { job, day, value: *value }).collect()
}

fn learned(values: &[f64]) -> Learned<u32> {
    learn(&record(values)).unwrap()
}

#[test]
fn one_large_job_does_not_speak_for_ten() {
    let mut record = record(&[1.0, 2.0, 3.0]);
    record.extend([4.0; 9].map(|value| Observation { job: 2, day: 2, value }));
    let learned = learn(&record).unwrap();
    assert_eq!((learned.observations, learned.jobs), (12, 3));
    assert!((learned.all.mean - (1.0 + 2.0 + 3.9) / 3.0).abs() < 1e-12);
    assert!((learned.all.median - 2.0).abs() < 1e-12);
}

#[test]
fn one_job_has_a_mean_and_nothing_else() {
    let learned = learned(&[0.3]);
    assert!((learned.all.mean - 0.3).abs() < 1e-15);
    assert_eq!((learned.all.deviation, learned.all.mean_interval, learned.all.next_job, learned.all.trend), (None, None, None, None));
}

/// Worked by hand from the sorted list: median 2.45, median absolute deviation 0.15.
#[test]
fn a_wild_job_is_named_and_its_weight_is_told() {
    let learned = learned(&[2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3]);
    let named: Vec<(u32, f64)> = learned.outliers.iter().map(|outlier| (outlier.job, outlier.score)).collect();
    assert_eq!(named.iter().map(|(job, _)| *job).collect::<Vec<_>>(), [8, 9]);
    assert!((named[0].1 - 0.6745 * (8.2 - 2.45) / 0.15).abs() < 1e-9);
    assert_eq!((learned.all.jobs, learned.without_outliers.jobs), (10, 8));
    assert!((learned.summary(false).mean - 2.3625).abs() < 1e-12);
    assert!((learned.summary(true).mean - 3.54).abs() < 1e-12);
}

#[test]
fn where_most_jobs_agree_exactly_the_mean_deviation_stands_in() {
    // One in ten apart: the mean absolute deviation is 9.9, its score 99 / (1.253314 · 9.9) = 7.98.
    let far = learned(&[1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 100.0]);
    assert_eq!(far.outliers.len(), 1);
    assert!((far.outliers[0].score - 7.9789).abs() < 1e-3);
    // Written to one decimal, one or two steps beside the rest is rounding; three steps are not.
    let near = |beside: f64| learned(&[1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.1, beside]).outliers.len();
    assert_eq!(near(1.2), 0);
    assert_eq!(near(1.4), 1);
    // Equal but for the last bits is equal.
    assert_eq!(learned(&[0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.1 + 0.2]).outliers, []);
    assert_eq!(learned(&[5.0; 12]).outliers, []);
    // Of four, none is named.
    assert_eq!(learned(&[1.0, 1.0, 1.0, 50.0]).outliers, []);
}

#[test]
fn a_constant_record_has_no_trend() {
    let trend = learned(&[0.1 + 0.2; 30]).all.trend.unwrap();
    assert_eq!((trend.per_30_days, trend.theil_sen_per_30_days, trend.certain), (0.0, 0.0, false));
    let line: Vec<f64> = (0..8).map(f64::from).collect();
    assert!(learned(&line).all.trend.unwrap().certain);
    assert!((learned(&line).all.trend.unwrap().per_30_days - 30.0).abs() < 1e-9);
    assert!(!learned(&line[..7]).all.trend.unwrap().certain);
    let same_day: Vec<Observation<u32>> = (0..9).map(|job| Observation { job, day: 4, value: f64::from(job) }).collect();
    assert_eq!(learn(&same_day).unwrap().all.trend, None);
}

#[test]
fn few_jobs_never_replace_a_default() {
    let offer = |values: &[f64], default| Offer::of(&learned(values).all, default);
    assert_eq!(offer(&[1.0, 1.0, 1.0, 1.0], 9.0), Ok(Offer::TooFew { has: 4, needs: 5 }));
    assert_eq!(offer(&[1.0, 1.1, 0.9, 1.0, 1.0], 1.02), Ok(Offer::Agrees));
    assert_eq!(offer(&[1.0, 1.1, 0.9, 1.0, 1.0], f64::NAN), Err(DefaultNotFinite));
    // Five values of one job are one job.
    let one: Vec<Observation<u32>> = (0..5).map(|day| Observation { job: 1, day, value: 2.0 }).collect();
    assert_eq!(Offer::of(&learn(&one).unwrap().all, 1.0), Ok(Offer::TooFew { has: 1, needs: 5 }));
}

/// s = 0.0158114, t(4) = 2.776445: half width 0.0196324, first digit 1, so thousandths.
#[test]
fn an_offer_carries_the_digits_of_its_interval() {
    let near = learned(&[1.10, 1.11, 1.12, 1.13, 1.14]);
    assert_eq!(Offer::of(&near.all, 1.2), Ok(Offer::Differs { default: 1.2, learned: 1.12, lower: 1.1, upper: 1.14 }));
    // The default lies above the true end 1.13963 and below 1.14: the step is made finer until what is shown tells them apart.
    let Ok(Offer::Differs { upper, .. }) = Offer::of(&near.all, 1.1398) else { panic!() };
    assert!((upper - 1.1397).abs() < 1e-12);
    // Minutes: mean 112.68, half width 28.74, first digit 2, so whole minutes.
    let minutes = learned(&[100.0, 120.0, 140.0, 80.0, 123.4]);
    let Ok(Offer::Differs { learned: mean, lower, upper, .. }) = Offer::of(&minutes.all, 500.0) else { panic!() };
    assert_eq!((mean, lower, upper), (113.0, 83.0, 142.0));
    assert_eq!(Offer::of(&learned(&[0.75; 6]).all, 0.75 + 1e-14), Ok(Offer::Agrees));
    assert_eq!(Offer::of(&learned(&[0.75; 6]).all, 0.8), Ok(Offer::Differs { default: 0.8, learned: 0.75, lower: 0.75, upper: 0.75 }));
}

#[test]
fn what_cannot_be_learned_from_is_refused_by_its_job() {
    assert_eq!(learn::<u32>(&[]), Err(RecordError::Nothing));
    let named = |value| learn(&[Observation { job: "B-12".to_owned(), day: 0, value }]).map(|_| ());
    assert_eq!(named(f64::NAN), Err(RecordError::NotFinite { job: "B-12".to_owned() }));
    assert_eq!(named(f64::NEG_INFINITY), Err(RecordError::NotFinite { job: "B-12".to_owned() }));
    assert_eq!(named(1e200), Err(RecordError::OutOfReach { job: "B-12".to_owned() }));
    assert!(named(f64::NAN).unwrap_err().to_string().contains("B-12"));
    let far = learn(&record(&[1e100, -1e100, 1e100, 3.0, 1e-300, 0.0, -1e100])).unwrap();
    assert!(far.all.deviation.unwrap().is_finite() && far.all.trend.unwrap().interval.upper.is_finite());
}

#[test]
fn groups_learn_by_themselves() {
    let both = record(&[1.0, 10.0, 3.0, 30.0]).into_iter().zip(["a", "b", "a", "b"]).map(|(observation, key)| (key, observation));
    let groups = learn_by(both).unwrap();
    assert_eq!(groups.keys().copied().collect::<Vec<_>>(), ["a", "b"]);
    assert!((groups["a"].all.mean - 2.0).abs() < 1e-12 && (groups["b"].all.mean - 20.0).abs() < 1e-12);
    assert_eq!(learn_by([("a", Observation { job: 5, day: 0, value: f64::NAN })]), Err(RecordError::NotFinite { job: 5 }));
}

fn tallies(group: &'static str, first: u32, jobs: &[(u32, u32)]) -> Vec<(&'static str, Tally<u32>)> {
    (first..).zip(jobs).map(|(job, (defects, of))| (group, Tally { job, defects: *defects, of: *of })).collect()
}

#[test]
fn one_spoilt_flask_is_no_bad_lot() {
    let usual: Vec<(u32, u32)> = (0..60).map(|job| (u32::from(job % 3 == 0), 12)).collect();
    let said = |jobs: &[(u32, u32)]| {
        let rows = rates_by([tallies("usual", 0, &usual), tallies("lot", 100, jobs)].concat()).unwrap();
        let row = rows.into_iter().find(|row| row.key == "lot").unwrap();
        (row.plain_p < 1e-4, row.said)
    };
    assert_eq!(said(&[(12, 12)]), (true, Said::TooFew { has: 1, needs: 3 }));
    assert_eq!(said(&[(12, 12), (0, 12), (0, 12), (0, 12)]), (true, Said::NothingCertain));
    assert_eq!(said(&[(4, 12), (4, 12), (5, 12), (3, 12)]), (true, Said::Worse));
}

#[test]
fn a_table_counts_castings_and_jobs() {
    let rows =
        rates_by([tallies("a", 0, &[(1, 10), (0, 0), (0, 5)]), tallies("a", 0, &[(1, 5)]), tallies("b", 9, &[(0, 3)])].concat()).unwrap();
    let a = &rows[0];
    assert_eq!((a.key, a.rate.defects, a.rate.of, a.rate.jobs), ("a", 2, 20, 2));
    assert!((a.rate.share() - 0.1).abs() < 1e-15);
    assert_eq!((rows[1].key, rows[1].rate.of, rows[1].rate.jobs), ("b", 3, 1));
    let wrong = rates_by(tallies("a", 4, &[(3, 2)]));
    assert_eq!(wrong, Err(RecordError::MoreDefectsThanCastings { job: 4, defects: 3, of: 2 }));
    assert_eq!(rates_by::<u32, u32>([]), Ok(vec![]));
    // Alone there is nothing to compare with.
    let lone = rates_by(tallies("a", 0, &[(1, 5), (1, 5), (0, 5)])).unwrap();
    assert!(matches!(lone[0].said, Said::TooFew { .. }));
}
