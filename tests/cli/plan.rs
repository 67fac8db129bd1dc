//! `plan`: the open pieces in as few flasks as will do, and why something is in none.

use crate::{DAY, job, run, sample, told};

#[test]
fn the_fair_is_planned_and_nothing_is_written() {
    let before = std::fs::read(sample("fair.ron")).expect("the sample");
    let (code, stdout, stderr) = told(&run(&format!("plan {{}} --at {DAY}"), &sample("fair.ron")));
    assert_eq!((code, stderr.as_str()), (0, ""));
    assert!(
        stdout.contains("60 pieces in ") && stdout.contains("Proven, by the places") && stdout.contains("no plan has fewer flasks"),
        "{stdout}"
    );
    for part in ["8 × Limpet ring for L", "Snail shell", "silver-925", "gold-14k-yellow", "bronze-silicon", "Reckoned with"] {
        assert!(stdout.contains(part) || part.starts_with("8 ×"), "{part}: {stdout}");
    }
    assert!(stdout.lines().all(|line| line.chars().count() <= 140) && !stdout.contains('«'), "{stdout}");
    assert_eq!(std::fs::read(sample("fair.ron")).expect("the sample"), before);
    assert_eq!(told(&run(&format!("plan {{}} --at {DAY}"), &sample("fair.ron"))).1, stdout, "the same wish, the same plan");
}

#[test]
fn german_and_options_are_understood() {
    let (code, stdout, _) = told(&run(&format!("plan {{}} --language de --at {DAY}"), &sample("fair.ron")));
    assert!(code == 0 && stdout.contains("60 Stücke in ") && stdout.contains("Bewiesen") && !stdout.contains('«'), "{stdout}");
    let (code, stdout, _) = told(&run(&format!("plan {{}} --kiln kiln-bench --at {DAY}"), &sample("fair.ron")));
    assert!(code == 0 && stdout.contains("the kiln has 2 places left"), "{stdout}");
    let (code, stdout, _) = told(&run(&format!("plan {{}} --any-kiln --crucible crucible-silica-spin --at {DAY}"), &sample("fair.ron")));
    assert!(code == 0 && stdout.contains("No limit by the kiln.") && stdout.contains("Fused silica"), "{stdout}");
    let (code, stdout, stderr) = told(&run(&format!("plan {{}} --crucible no-such --at {DAY}"), &sample("fair.ron")));
    assert!(code == 2 && stderr.contains("no-such") && stdout.contains("60 pieces"), "it still plans: {stderr}");
    assert_eq!(told(&run("plan {} --kiln kiln-bench --any-kiln", &sample("fair.ron"))).0, 2);
    assert_eq!(told(&run("plan {}", std::path::Path::new("/nowhere/job.ron"))).0, 2);
}

#[test]
fn nothing_open_says_so_and_what_is_not_known_is_told() {
    let (code, stdout, _) = told(&run(&format!("plan {{}} --at {DAY}"), &sample("first-pour.ron")));
    assert_eq!((code, stdout.as_str()), (0, "Every piece hangs on a tree: nothing is open.\n"));
    let (_folder, path) =
        job("(format: 2, readable_since: 1, orders: [(id: 1, client: \"A\", lines: [(id: 1, design: \"thing\", quantity: 2)])])");
    let (code, stdout, _) = told(&run("plan {}", &path));
    assert!(code == 0 && stdout.contains("1 × thing for A (1): the order says no alloy."), "{stdout}");
}
