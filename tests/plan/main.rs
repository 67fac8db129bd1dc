//! The batch plan: against plans proven optimal elsewhere, against trying everything, and on batches no studio pours.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a test may stop where it stands, and prints its table"
)]

mod batch;
mod random;
mod rules;
mod settle;
#[path = "../world/mod.rs"]
mod world;

use std::path::Path;
use std::time::Instant;

use pourbook::calc::plan::{Company, Group, STEPS, Size, Wish, check, plan};
use serde_json::Value;

/// A wish of `batches`, and the names of its alloys.
pub fn wish_of(batch: &Value) -> Wish {
    let list = |key: &str| batch[key].as_array().unwrap();
    let alloys: Vec<&str> = batch["alloy_density_g_cm3"].as_object().unwrap().keys().map(String::as_str).collect();
    let milligrams = |grams: &Value| (1000.0 * grams.as_f64().unwrap()).round() as u64;
    let sizes = list("flasks").iter().map(|flask| Size {
        metal_mg: vec![milligrams(&flask["metal_capacity_g"]); alloys.len()],
        places: flask["slots"].as_u64().unwrap() as u32,
        volume_mm3: 1000 * flask["gross_volume_ml"].as_u64().unwrap(),
        stock: flask["stock"].as_u64().map(|stock| stock as u32),
    });
    let names: Vec<&str> = list("flasks").iter().map(|flask| flask["size"].as_str().unwrap()).collect();
    let groups = list("items").iter().map(|item| Group {
        alloy: alloys.iter().position(|alloy| *alloy == item["alloy"].as_str().unwrap()).unwrap(),
        metal_mg: milligrams(&item["metal_g"]),
        places: vec![1; names.len()],
        fits: names.iter().map(|name| item["fits"].as_array().unwrap().iter().any(|fits| fits == name)).collect(),
        mould_c: 0..=2000,
        company: Company::Any,
        due: 0,
    });
    Wish { alloys: alloys.len(), sizes: sizes.collect(), groups: groups.collect(), locks: Vec::new(), most_flasks: None }
}

/// The proven plans were found with OR-Tools CP-SAT 9.15 and proven again with HiGHS in another formulation; each file says so.
#[test]
fn every_published_batch_gets_its_proven_optimum() {
    println!("| batch | pieces | flasks | proven | volume, ml | proven | ms | steps proven |");
    println!("|---|---|---|---|---|---|---|---|");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/plan/batches");
    let mut wrong = Vec::new();
    let mut compared = 0;
    for number in 1..=20 {
        let read = |end: &str| -> Value {
            serde_json::from_str(&std::fs::read_to_string(folder.join(format!("batch_{number:02}{end}"))).unwrap()).unwrap()
        };
        let (batch, truth) = (read(".json"), read(".solution.json"));
        let wish = wish_of(&batch);
        let begun = Instant::now();
        let found = plan(&wish, STEPS, &|_| true);
        let taken = begun.elapsed();
        check(&wish, &found).unwrap();
        let (flasks, volume) = (truth["flasks"].as_u64().unwrap(), truth["gross_volume_ml"].as_u64().unwrap());
        println!(
            "| {number:02} | {} | {} | {flasks} | {} | {volume} | {:.1} | {} |",
            wish.groups.len(),
            found.flasks.len(),
            found.volume_mm3(&wish) / 1000,
            1000.0 * taken.as_secs_f64(),
            found.is_proven(&wish)
        );
        compared += 1;
        if (found.flasks.len() as u64, found.volume_mm3(&wish)) != (flasks, 1000 * volume)
            || !found.is_proven(&wish)
            || !found.left.is_empty()
        {
            wrong.push(format!("{number:02}: {:?} {:?}, bound {:?}", found.flasks.len(), found.volume_mm3(&wish), found.bound));
        }
    }
    assert!(wrong.is_empty() && compared == 20, "{wrong:#?}");
}
