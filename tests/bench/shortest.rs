//! How long the shortest burnout takes to find, and how long it is beside a table of stages.
//!
//! `cargo bench --bench shortest` prints a 102×152 mm flask of gypsum-bonded powder, mixed 40 to 100, over the whole band of conductivities, and
//! a load of four; `-- --smoke` does a small flask, quickly.
#![allow(
    missing_docs,
    dead_code,
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a bench prints, and may stop where it stands"
)]

#[path = "../night/shortest/world.rs"]
mod world;

use pourbook::calc::heat::Fineness;
use pourbook::calc::labour::Labour;
use pourbook::calc::shortest::{Kept, Limits, Load, Outcome, Segment, judge, shortest_by, total_min};
use pourbook::cores::AllCores;
use std::sync::Mutex;
use std::time::Instant;
use world::{VERIFIED, limits, load, mould, needs, table};

/// 149 °C 2 h, 315 °C 2 h, 482 °C 2 h, 732 °C 4 h, soak 2 h, with ramps besides.
const TWELVE_HOURS: &[[f64; 2]] = &[[149.0, 2.0], [315.0, 2.0], [482.0, 2.0], [732.0, 4.0], [538.0, 2.0]];

/// Seconds this thread was on a core, where the system says so: the others are not counted.
fn on_a_core() -> Option<f64> {
    let text = std::fs::read_to_string("/proc/self/schedstat").ok()?;
    Some(text.split(' ').next()?.parse::<f64>().ok()? * 1e-9)
}

fn timed<T>(name: &str, task: impl FnOnce() -> T) -> T {
    let (begun, before) = (Instant::now(), on_a_core());
    let done = task();
    let core = before.zip(on_a_core()).map_or(String::new(), |(from, to)| format!(", on a core {:.2} s", to - from));
    println!("{name}: {:.2} s{core}", begun.elapsed().as_secs_f64());
    done
}

fn show(outcome: &Outcome) {
    let Outcome::Found(programme) = outcome else { return println!("{outcome:?}") };
    println!("{} min", programme.total_min);
    for (segment, bound) in programme.segments.iter().zip(&programme.bound) {
        let Segment { target_c, ramp_min, hold_min } = segment;
        let say = |held: Option<pourbook::calc::shortest::Held>| {
            held.map_or(String::new(), |h| format!("{:?}, {:.1} to spare", h.limit, h.slack))
        };
        println!("  {target_c:>5} °C  ramp {ramp_min:>4} ({})  hold {hold_min:>4} ({})", say(bound.ramp), say(bound.hold));
    }
    for values in &programme.judged.values {
        println!("  {values:?}");
    }
}

fn beside(name: &str, (load, limits): (&Load, &Limits), stages: &[[f64; 2]], fineness: &Fineness) {
    let furthest = Mutex::new(0.0_f64);
    let go_on = |share: f64| {
        let mut furthest = furthest.lock().unwrap();
        *furthest = furthest.max(share);
        true
    };
    let labour = Labour { cores: &AllCores, go_on: &go_on };
    let table = table(stages, limits);
    println!("{name}; the table {} min", total_min(&table));
    let judged = timed("  judging the table", || judge(&table, load, limits, fineness, &labour).unwrap());
    println!("  it breaks {:?}", judged.breaches);
    let outcome = timed("  the search", || shortest_by(load, limits, Some(&table), fineness, &labour));
    assert!((0.0..=1.0).contains(&*furthest.lock().unwrap()));
    show(&outcome);
}

fn main() {
    let limits = limits();
    if !std::env::args().any(|argument| argument == "--bench") || std::env::args().any(|argument| argument == "--smoke") {
        let small = load(vec![mould(51.0, 51.0, needs(200.0, 100.0, 30.0))], Kept::Likely);
        return beside("51x51 mm", (&small, &limits), &[[149.0, 1.0], [371.0, 1.0], [732.0, 2.0], [538.0, 1.0]], &VERIFIED);
    }
    let flask = |d: f64, h: f64| mould(d, h, needs(400.0, 150.0, 60.0));
    let large = load(vec![flask(102.0, 152.0)], Kept::WholeBand);
    let name = "102x152 mm, whole band, wall and core up to 400 K apart at cristobalite and 150 K at quartz";
    beside(&format!("{name}, by the finest run"), (&large, &limits), TWELVE_HOURS, &Fineness::FINE);
    beside(&format!("{name}, by a quicker one"), (&large, &limits), TWELVE_HOURS, &VERIFIED);
    let calm = load(vec![mould(102.0, 152.0, needs(80.0, 60.0, 60.0))], Kept::WholeBand);
    beside("102x152 mm, whole band, 80 and 60 K, by a quicker one", (&calm, &limits), TWELVE_HOURS, &VERIFIED);
    let four = [flask(102.0, 152.0), flask(89.0, 127.0), flask(76.0, 102.0), flask(64.0, 64.0)];
    let four = load(four.to_vec(), Kept::WholeBand);
    beside("four moulds, whole band, by a quicker run", (&four, &limits), TWELVE_HOURS, &VERIFIED);
}
