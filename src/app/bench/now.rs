//! Now, by every clock there is.

use std::sync::OnceLock;
use std::time::Instant;

use jiff::Timestamp;

use crate::files::clocks::Moment;

/// This moment.
#[must_use]
pub fn now() -> Moment {
    static RUN: OnceLock<(Instant, String)> = OnceLock::new();
    let wall = Timestamp::now();
    let (since, name) = RUN.get_or_init(|| (Instant::now(), format!("{} {}", std::process::id(), wall.as_nanosecond())));
    Moment { wall, boot: boot(), run: Some((name.clone(), since.elapsed().as_secs_f64())) }
}

/// Seconds since the machine was started, sleep included, with the name of that start. Only Linux tells it, and as a file.
fn boot() -> Option<(String, f64)> {
    let name = std::fs::read_to_string("/proc/sys/kernel/random/boot_id").ok()?;
    let up = std::fs::read_to_string("/proc/uptime").ok()?;
    let seconds = up.split_whitespace().next()?.parse().ok()?;
    Some((name.trim().to_owned(), seconds))
}

#[cfg(test)]
mod tests {
    use super::now;

    #[test]
    fn this_machine_counts_forward() {
        let (start, then) = (now(), now());
        let seconds = then.seconds_since(&start);
        assert!((0.0..5.0).contains(&seconds), "{seconds}");
    }
}
