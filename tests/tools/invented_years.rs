//! `cargo run --example invented_years FOLDER`: writes the three invented years that the tests learn from into a folder, 600 batches, to be opened,
//! searched and learned from in the window.
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a tool for whoever works on the program")]

#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../learned/chance.rs"]
mod chance;
#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../learned/years.rs"]
mod years;

fn main() {
    let Some(folder) = std::env::args_os().nth(1) else {
        println!("cargo run --example invented_years FOLDER");
        return;
    };
    let folder = std::path::PathBuf::from(folder);
    std::fs::create_dir_all(&folder).unwrap();
    years::write(&folder);
    println!("{} batches in {}", years::JOBS, folder.display());
}
