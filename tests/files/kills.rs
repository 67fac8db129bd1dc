//! Real programs killed in the middle of real saves. The machine's memory survives a kill, so this cannot show a missing sync (the simulated
//! disk does); it shows that no step in between leaves a torn file.

use std::{
    io::{BufRead as _, BufReader},
    path::Path,
    process::{Command, Stdio},
    time::{Duration, Instant, SystemTime},
};

use pourbook::files::{
    disk::{
        Disk, RealDisk,
        beside::{is_temporary, sweep},
    },
    save::hash_of,
};

use crate::{
    agree::Random,
    document::{document, number, plain},
};

const KILLS: usize = 200;

/// Saves for ever, from whatever stands there on. Run as a child and killed.
#[test]
#[ignore = "a child of two_hundred_kills_leave_a_whole_file"]
fn child_saving_for_ever() {
    let Ok(path) = std::env::var("POURBOOK_TEST_KILLED") else { return };
    let path = Path::new(&path);
    let there = std::fs::read(path).unwrap();
    let (mut next, mut base) = (number(&there).unwrap() + 1, hash_of(&there));
    println!("saving");
    loop {
        let bytes = document(next, 20_000 + usize::try_from(next % 7).unwrap() * 30_000);
        base = plain(&RealDisk, path, &bytes, Some(&base)).unwrap().hash;
        next += 1;
    }
}

#[test]
fn two_hundred_kills_leave_a_whole_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lilac.ron");
    let begun = Instant::now();
    plain(&RealDisk, &path, &document(0, 200_000), None).unwrap();
    // Kills fall within about two saves, however slow this disk is; a very slow one is not waited for.
    let within_us = u64::try_from(begun.elapsed().as_micros()).unwrap().clamp(2_000, 20_000) * 2;
    let mut random = Random(7);
    let mut last = 0;
    for kill in 0..KILLS {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "kills::child_saving_for_ever", "--ignored", "--nocapture"])
            .env("POURBOOK_TEST_KILLED", &path)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        assert!(lines.any(|line| line.unwrap().ends_with("saving")), "the child of kill {kill} ended before saving");
        std::thread::sleep(Duration::from_micros(random.below(within_us)));
        assert!(child.try_wait().unwrap().is_none(), "the child of kill {kill} ended by itself");
        child.kill().unwrap();
        child.wait().unwrap();
        let now = number(&std::fs::read(&path).unwrap()).unwrap_or_else(|what| panic!("kill {kill}: {what}"));
        assert!(now >= last, "kill {kill}: back from {last} to {now}");
        last = now;
    }
    // The kills must have met saves half done, and saves must have gone on, or nothing was tried.
    let stray = RealDisk.list(folder.path()).unwrap().iter().filter(|path| is_temporary(path)).count();
    println!("{KILLS} kills, {last} saves between them, {stray} unfinished saves left behind");
    assert!(last > 20, "{last}");
    assert!(stray > 5, "{stray}");
    let much_later = SystemTime::now() + Duration::from_secs(100_000);
    assert_eq!(sweep(&RealDisk, folder.path(), much_later, Duration::from_secs(86_400)).unwrap().removed.len(), stray);
    assert_eq!(RealDisk.list(folder.path()).unwrap(), [path]);
}
