//! Past predictions judged.

use crate::chance::Chance;
use crate::studio::{at_most, likely};
use pourbook::calc::learned::{Held, Judgement, RecordError, Verdict, judge};

const TIMES: usize = 2000;

/// Predictions whose errors are a bell curve of deviation 1 about `bias`, with a band of `half` to both sides.
fn record(chance: &mut Chance, jobs: u32, bias: f64, half: f64) -> Vec<Held<u32>> {
    let one = |job: u32| {
        let predicted = 50.0 + 5.0 * chance.normal();
        let actual = predicted + bias + chance.normal();
        Held { job, day: i32::try_from(job).unwrap() * 2, predicted, lower: predicted - half, upper: predicted + half, actual }
    };
    (0..jobs).map(one).collect()
}

fn verdicts(jobs: u32, bias: f64, half: f64, times: usize) -> Vec<Judgement> {
    (0..times).map(|seed| judge(&record(&mut Chance::new(seed as u64 + 9000), jobs, bias, half), 0.95).unwrap()).collect()
}

fn count(of: &[Judgement], like: impl Fn(&Judgement) -> bool) -> usize {
    of.iter().filter(|one| like(one)).count()
}

/// The band of a bell curve that holds 19 in 20.
const RIGHT: f64 = 1.959_963_984_540_054;

#[test]
fn right_predictions_are_called_wrong_at_most_once_in_twenty() {
    for (jobs, times) in [(8, TIMES), (20, TIMES), (100, TIMES), (600, TIMES / 5)] {
        let judged = verdicts(jobs, 0.0, RIGHT, times);
        let wrong = count(&judged, |one| one.verdict != Verdict::Holds);
        assert!(at_most(wrong, times, 0.05), "{jobs} jobs: {wrong}");
        let covered = count(&judged, |one| one.bias_interval.unwrap().contains(0.0));
        assert!(likely(covered, times, 0.95), "{jobs} jobs: {covered}");
        assert!(at_most(count(&judged, |one| !one.within_interval.contains(0.95)), times, 0.05));
    }
}

#[test]
fn what_is_wrong_is_called_by_its_name() {
    let judged = verdicts(100, 0.0, 1.0, 200);
    assert!(count(&judged, |one| one.verdict == Verdict::TooNarrow) >= 198);
    let judged = verdicts(300, 0.0, 4.0, 200);
    assert!(count(&judged, |one| one.verdict == Verdict::TooWide) >= 185);
    // The band misses often here too, but only for the bias.
    let judged = verdicts(100, 1.2, RIGHT, 200);
    assert!(count(&judged, |one| matches!(one.verdict, Verdict::Biased { by } if (by - 1.2).abs() < 0.5)) >= 185);
    let judged = verdicts(100, 1.2, 0.8, 200);
    assert!(count(&judged, |one| one.verdict == Verdict::TooNarrow) >= 198);
    let judged = verdicts(7, 3.0, 0.1, 20);
    assert_eq!(count(&judged, |one| one.verdict == Verdict::TooFew { has: 7, needs: 8 }), 20);
}

/// One flask with forty predictions is one experience.
#[test]
fn many_predictions_of_one_job_do_not_speak_for_many() {
    let mut held = record(&mut Chance::new(3), 12, 0.0, RIGHT);
    let lone = judge(&held, 0.95).unwrap();
    let spoilt = Held { job: 0, day: 0, predicted: 50.0, lower: 48.0, upper: 52.0, actual: 53.0 };
    held.extend(std::iter::repeat_n(spoilt, 40));
    let judged = judge(&held, 0.95).unwrap();
    assert_eq!((judged.count, judged.jobs), (52, 12));
    assert!(judged.within_interval.half_width() > lone.within_interval.half_width());
    assert!((judged.bias - lone.bias).abs() < 0.35);
}

/// Worked by hand: errors 1, −1, 2, 2 of predictions 10, 10, 10, 10.
#[test]
fn a_small_record_by_hand() {
    let held: Vec<Held<&str>> = [("a", 11.0), ("b", 9.0), ("c", 12.0), ("d", 12.0)]
        .map(|(job, actual)| Held { job, day: 0, predicted: 10.0, lower: 9.0, upper: 11.0, actual })
        .to_vec();
    let judged = judge(&held, 0.9).unwrap();
    assert!((judged.bias - 1.0).abs() < 1e-12);
    assert!((judged.relative_bias.unwrap() - 0.1).abs() < 1e-12);
    assert!((judged.rms - 2.5_f64.sqrt()).abs() < 1e-12);
    assert_eq!((judged.within, judged.count), (2, 4));
    assert!((judged.share() - 0.5).abs() < 1e-12);
    // t(3) at 97.5 % is 3.182446 in printed tables; s = √2.
    assert!((judged.bias_interval.unwrap().upper - (1.0 + 3.182_446 * 2.0_f64.sqrt() / 2.0)).abs() < 1e-5);
    assert_eq!(judged.error_trend, None);
}

#[test]
fn what_cannot_be_judged_is_refused_by_its_job() {
    let good = Held { job: 7_u32, day: 0, predicted: 1.0, lower: 0.5, upper: 1.5, actual: 1.0 };
    assert_eq!(judge::<u32>(&[], 0.95), Err(RecordError::Nothing));
    assert_eq!(judge(&[good, Held { job: 9, actual: f64::NAN, ..good }], 0.95), Err(RecordError::NotFinite { job: 9 }));
    assert_eq!(judge(&[good, Held { job: 8, lower: 2.0, ..good }], 0.95), Err(RecordError::BandUpsideDown { job: 8 }));
    assert_eq!(judge(&[good], 1.0), Err(RecordError::Promise { share: 1.0 }));
    assert!(judge(&[Held { predicted: 4e99, lower: -1e100, upper: 1e100, actual: -4e99, ..good }], 0.5).unwrap().rms.is_finite());
}
