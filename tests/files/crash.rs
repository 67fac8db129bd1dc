//! A power cut after every call of a save, in every state the medium may be left in.

use std::{
    collections::BTreeSet,
    path::{Path, PathBuf},
};

use pourbook::files::{
    disk::{
        Disk, FailingDisk, SimulatedDisk,
        beside::is_temporary,
        crash::{CrashState, Listing},
        failing::{Effect, Failure},
    },
    save::{Original, SaveError, Theirs, hash_of, save},
};

use crate::document::{check, document, plain};

pub const JOB: &str = "/bench/lilac.ron";
/// Small sectors, so that a short document is torn in many places.
pub const LISTING: Listing = Listing { sector_bytes: 8, most: 200_000, seed: 1 };

pub fn job() -> &'static Path {
    Path::new(JOB)
}

/// Looks at every state after every call from moment `from` on; gives how many there were. `wrong` says what is wrong with a state, told
/// whether it is one after the last call.
pub fn walk(disk: &SimulatedDisk, from: usize, wrong: impl Fn(&CrashState, bool) -> Option<String>) -> Result<usize, String> {
    let moments = disk.moments();
    let mut count = 0;
    for (number, moment) in moments.iter().enumerate().skip(from) {
        let listed = moment.crash_states(&LISTING);
        assert!(listed.complete, "all states are walked, none sampled");
        count += listed.states.len();
        let last = number + 1 == moments.len();
        if let Some(what) = listed.states.iter().find_map(|state| wrong(state, last)) {
            return Err(format!("a power cut after call {number}, {}: {what}", moment.call));
        }
    }
    Ok(count)
}

/// What every save over `old` must keep: old or new whole at the path, and after the end only the new.
pub fn old_or_new<'a>(old: Option<&'a [u8]>, new: &'a [u8], ended_well: bool) -> impl Fn(&CrashState, bool) -> Option<String> + 'a {
    move |state, last| {
        let there = state.bytes(job());
        if there == Some(new) || (there == old && !(last && ended_well)) {
            return None;
        }
        Some(match there {
            None => "the file is absent".to_owned(),
            Some([]) => "the file is empty".to_owned(),
            Some(there) if Some(there) == old => "the file is the old one although the save ended well".to_owned(),
            Some(there) => format!("the file is torn: {} bytes", there.len()),
        })
    }
}

fn with_old(old: &[u8]) -> SimulatedDisk {
    let disk = SimulatedDisk::default();
    disk.put_file(job(), old, 0o640);
    disk
}

#[test]
fn saving_over_a_file_leaves_the_old_or_the_new() {
    let mut count = 0;
    for (old_len, new_len) in [(300, 5_000), (9_000, 300), (4_000, 4_000), (100, 20_000)] {
        let (old, new) = (document(1, old_len), document(2, new_len));
        let disk = with_old(&old);
        let saved = plain(&disk, job(), &new, Some(&hash_of(&old))).unwrap();
        assert!(saved.wrote && saved.hash == hash_of(&new));
        let rule = old_or_new(Some(&old), &new, true);
        count += walk(&disk, 0, |state, last| {
            let mode = state.files.get(job()).map(|survivor| survivor.mode);
            rule(state, last).or_else(|| (mode != Some(0o640)).then(|| format!("the permissions are {mode:?}")))
        })
        .unwrap();
    }
    println!("{count} states after saving over a file");
    assert!(count >= 10_000, "{count}");
}

#[test]
fn a_first_save_leaves_nothing_or_the_new() {
    let mut count = 0;
    for len in [300, 2_000, 20_000] {
        let new = document(2, len);
        let disk = SimulatedDisk::default();
        disk.put_folder(Path::new("/bench"));
        plain(&disk, job(), &new, None).unwrap();
        count += walk(&disk, 0, old_or_new(None, &new, true)).unwrap();
    }
    println!("{count} states after a first save");
    assert!(count >= 5_000, "{count}");
}

#[test]
fn an_hour_of_saves_leaves_one_of_the_last_two() {
    let disk = SimulatedDisk::default();
    disk.put_folder(Path::new("/bench"));
    let mut count = 0;
    let mut last: Option<Vec<u8>> = None;
    for number in 0..20 {
        let new = document(number, 500 + usize::try_from(number).unwrap() * 37);
        let from = disk.moments().len();
        plain(&disk, job(), &new, last.as_deref().map(hash_of).as_ref()).unwrap();
        count += walk(&disk, from, old_or_new(last.as_deref(), &new, true)).unwrap();
        last = Some(new);
    }
    println!("{count} states in twenty saves");
    assert!(count >= 8_000, "{count}");
}

#[test]
fn a_hand_edited_original_is_on_the_medium_before_it_is_replaced() {
    let (old, new) = (document(1, 2_000), document(2, 2_500));
    let kept = PathBuf::from("/bench/lilac.ron.hand-edited");
    let disk = with_old(&old);
    let saved = save(&disk, job(), &new, Some(&hash_of(&old)), Original::KeepBeside, check).unwrap();
    assert_eq!(saved.original_at.as_deref(), Some(kept.as_path()));
    let rule = old_or_new(Some(&old), &new, true);
    let count = walk(&disk, 0, |state, last| {
        let original_lives = state.bytes(job()) == Some(&old) || state.bytes(&kept) == Some(&old);
        rule(state, last).or_else(|| (!original_lives).then(|| "the hand-edited original is lost".to_owned()))
    })
    .unwrap();
    println!("{count} states while keeping an original");
    assert!(count >= 3_000, "{count}");
}

#[test]
fn a_changed_file_is_never_touched_and_ours_is_safe_beside_it() {
    let (base, theirs, ours) = (document(1, 900), document(2, 800), document(3, 2_000));
    let disk = with_old(&theirs);
    let error = plain(&disk, job(), &ours, Some(&hash_of(&base))).unwrap_err();
    let ours_at = PathBuf::from("/bench/lilac (saved beside).ron");
    assert_eq!(error, SaveError::ChangedOnDisk { path: job().into(), ours_at: ours_at.clone(), theirs: Theirs::Different });
    let count = walk(&disk, 0, |state, last| {
        if state.bytes(job()) != Some(&theirs) {
            return Some("theirs was touched".to_owned());
        }
        match state.bytes(&ours_at) {
            None if !last => None,
            Some(there) if there == ours => None,
            other => Some(format!("ours is not safe: {:?} bytes", other.map(<[u8]>::len))),
        }
    })
    .unwrap();
    println!("{count} states beside a changed file");
    assert!(count >= 1_000, "{count}");
}

#[test]
fn bytes_that_stand_there_already_are_made_sure_of() {
    // Another program wrote the very same a moment ago and synced nothing: at the path itself, or under the second file's name.
    let (base, ours) = (document(1, 900), document(3, 800));
    let beside = Path::new("/bench/lilac (saved beside).ron");
    for (there, at) in [(None, job()), (Some(document(2, 700)), beside)] {
        let disk = SimulatedDisk::default();
        disk.put_folder(Path::new("/bench"));
        if let Some(there) = there {
            disk.put_file(job(), &there, 0o644);
        }
        disk.write_new(at, &ours).unwrap();
        let result = plain(&disk, job(), &ours, Some(&hash_of(&base)));
        assert!(
            matches!(&result, Ok(saved) if !saved.wrote)
                || matches!(&result, Err(SaveError::ChangedOnDisk { ours_at, .. }) if ours_at == beside)
        );
        walk(&disk, 0, |state, last| (last && state.bytes(at) != Some(&ours)).then(|| format!("not sure of {}", at.display()))).unwrap();
    }
}

#[test]
fn a_link_still_leads_to_a_whole_file() {
    let (old, new) = (document(1, 700), document(2, 900));
    let disk = with_old(&old);
    disk.put_folder(Path::new("/desk"));
    let link = Path::new("/desk/today.ron");
    disk.put_link(link, Path::new("../bench/lilac.ron"));
    let saved = plain(&disk, link, &new, Some(&hash_of(&old))).unwrap();
    assert_eq!(saved.path, job());
    let rule = old_or_new(Some(&old), &new, true);
    walk(&disk, 0, |state, last| {
        let link_stands = state.files.get(link).is_some_and(|link| link.leads_to == Path::new("../bench/lilac.ron"));
        rule(state, last).or_else(|| (!link_stands).then(|| "the link is gone".to_owned()))
    })
    .unwrap();
}

#[test]
fn after_any_power_cut_the_next_save_works_and_nothing_left_looks_like_a_job() {
    let (old, new, next) = (document(1, 400), document(2, 500), document(3, 450));
    let disk = with_old(&old);
    plain(&disk, job(), &new, Some(&hash_of(&old))).unwrap();
    let states: BTreeSet<CrashState> = disk.moments().iter().flat_map(|moment| moment.crash_states(&LISTING).states).collect();
    for state in &states {
        let restarted = SimulatedDisk::restarted(state);
        let names = restarted.list(Path::new("/bench")).unwrap();
        assert!(names.iter().all(|name| name == job() || is_temporary(name)), "{names:?}");
        let there = restarted.read(job(), 10_000).unwrap();
        plain(&restarted, job(), &next, Some(&hash_of(&there))).unwrap();
        assert_eq!(restarted.read(job(), 10_000).unwrap(), next);
    }
    println!("{} different states started from again", states.len());
    assert!(states.len() >= 100, "{}", states.len());
}

#[test]
fn a_call_that_fails_and_then_a_power_cut_still_lose_nothing() {
    let (old, new) = (document(1, 400), document(2, 900));
    let hash = hash_of(&old);
    let mut count = 0;
    let mut call = 0;
    loop {
        call += 1;
        let mut reached = false;
        for effect in [Effect::NotDone, Effect::DoneAnyway, Effect::Short(300), Effect::ShortUnsaid(300)] {
            for for_good in [false, true] {
                let simulated = with_old(&old);
                let failure = Failure { call, kind: std::io::ErrorKind::Other, effect, for_good };
                let disk = FailingDisk::new(simulated.clone(), Some(failure));
                let result = plain(&disk, job(), &new, Some(&hash));
                reached |= disk.calls().len() >= call;
                let rule = old_or_new(Some(&old), &new, result.is_ok());
                count += walk(&simulated, 0, |state, last| {
                    // "Not written" promises more: the old one, whatever happens next.
                    let broken = last && matches!(result, Err(SaveError::NotWritten { .. })) && state.bytes(job()) != Some(&old);
                    rule(state, last).or_else(|| broken.then(|| "said to be as it was, and is not".to_owned()))
                })
                .unwrap_or_else(|what| panic!("{failure:?}: {what}"));
            }
        }
        if !reached {
            break;
        }
    }
    println!("{count} states after failed calls, {} calls", call - 1);
    assert!(call > 8 && count >= 20_000, "{call} {count}");
}

#[test]
fn above_the_cap_states_are_sampled_the_same_way_each_time() {
    let (old, new) = (document(1, 400), document(2, 9_000));
    let disk = with_old(&old);
    disk.write_new(Path::new("/bench/one"), &new).unwrap();
    disk.write_new(Path::new("/bench/two"), &new).unwrap();
    let moment = disk.moments().pop().unwrap();
    let few = Listing { most: 500, ..LISTING };
    let (one, again) = (moment.crash_states(&few), moment.crash_states(&few));
    assert!(!one.complete && one.states == again.states && one.states.len() > 300, "{}", one.states.len());
    assert_ne!(one.states, moment.crash_states(&Listing { seed: 2, ..few }).states);
}
