//! How long the tree of one flask takes to arrange, on one core.
//!
//! `cargo bench --bench arrange` prints medians; `-- --smoke`, and any run that is not `cargo bench`, arranges a few pieces once. 24 pieces, none
//! like another, may take two seconds.
#![allow(missing_docs, dead_code, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

#[path = "../arrange/world.rs"]
mod world;

use std::time::Instant;

use pourbook::calc::arrange::{CannotArrange, STEPS, arrange};

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let smoke = arguments.iter().any(|a| a == "--smoke" || a == "--test") || !arguments.iter().any(|a| a == "--bench");
    let rounds = if smoke { 1 } else { 7 };
    let mut tasks = vec![("6 charms", world::charms(6, 1))];
    if !smoke {
        tasks.extend([
            ("18 rings", world::equal(18, &world::piece(world::ring(20.0, 3.0), 3.0, 1.5))),
            ("24 charms", world::charms(24, 1)),
            ("60 charms, more than go on", world::charms(60, 3)),
        ]);
    }
    for (name, task) in tasks {
        let mut said = String::new();
        let mut times: Vec<f64> = (0..rounds)
            .map(|_| {
                let begun = Instant::now();
                said = match arrange(&task, STEPS, &|_| true) {
                    Ok(found) => format!("{} steps, cost {:.4}", found.steps, found.cost.total),
                    Err(CannotArrange::RoomFor { most, steps, .. }) => format!("{steps} steps, room for {most}"),
                    Err(other) => format!("{other:?}"),
                };
                begun.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        println!("{name}: {:.2} s, {:.2} to {:.2}; {said}", times[times.len() / 2], times[0], times[times.len() - 1]);
    }
}
