//! This program among others: the computer's name, its process number, and whether another process is alive.

use jiff::Timestamp;

use super::lock::Holder;

/// This program, as a lock says it.
#[must_use]
pub fn this_program() -> Holder {
    Holder { host: name(), pid: std::process::id(), initials: String::new(), time: Timestamp::now() }
}

/// The computer's name, where the system tells it without asking anybody.
fn name() -> String {
    let told = std::fs::read_to_string("/proc/sys/kernel/hostname").or_else(|_| std::fs::read_to_string("/etc/hostname"));
    let told = told.ok().or_else(|| std::env::var("COMPUTERNAME").or_else(|_| std::env::var("HOSTNAME")).ok());
    told.map(|name| name.trim().to_owned()).unwrap_or_default()
}

/// Whether a process of this computer is alive. Where the system does not tell it in its files, every one is taken to be: a lock that is silent
/// for long is told as that all the same.
#[must_use]
pub fn runs(pid: u32) -> bool {
    let processes = std::path::Path::new("/proc");
    !processes.join("self").exists() || processes.join(pid.to_string()).exists()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn this_program_is_alive() {
        assert!(runs(this_program().pid));
        assert!(!cfg!(target_os = "linux") || !runs(u32::MAX));
    }
}
