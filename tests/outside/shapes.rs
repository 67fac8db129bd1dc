//! Volume, area and modulus of shapes with closed forms.

use std::f64::consts::PI;

use pourbook::job::PatternFile;

use super::table::{Table, Within};
use super::world::{Outcome, World, measure};

fn shape(volume_mm3: f64, area_mm2: f64) -> Outcome {
    let mut world = World::sound();
    world.pattern().file = Some(PatternFile { path: "shape.stl".to_owned(), ..PatternFile::default() });
    world.measured(1, measure(volume_mm3, area_mm2, [10.0, 10.0, 10.0]));
    world.recompute()
}

fn modulus(area_mm2: f64) -> f64 {
    let outcome = shape(1000.0, area_mm2);
    outcome.number(outcome.report.patterns[0].modulus.unwrap())
}

/// Areas of bodies of 1000 mm³, by textbook geometry.
fn areas() -> Vec<(&'static str, f64)> {
    let volume: f64 = 1000.0;
    let sphere = (3.0 * volume / (4.0 * PI)).cbrt();
    let cylinder = |height_by_diameter: f64| {
        let diameter = (4.0 * volume / (PI * height_by_diameter)).cbrt();
        PI * diameter * diameter / 2.0 + PI * diameter * diameter * height_by_diameter
    };
    // Torus of R = 8 r: V = 2π²Rr², A = 4π²Rr.
    let tube = (volume / (2.0 * PI * PI * 8.0)).cbrt();
    let plate = (volume / 2.0).sqrt();
    let rod = (volume / (PI * 100.0)).sqrt();
    vec![
        ("sphere", 4.0 * PI * sphere * sphere),
        ("cube", 600.0),
        ("cylinder H=D", cylinder(1.0)),
        ("cylinder H=2D", cylinder(2.0)),
        ("cylinder H=D/2", cylinder(0.5)),
        ("torus R/r=8", 4.0 * PI * PI * 8.0 * tube * tube),
        ("square plate 2 mm", 2.0 * plate * plate + 4.0 * plate * 2.0),
        ("rod 100 mm long", 2.0 * PI * rod * rod + 2.0 * PI * rod * 100.0),
    ]
}

#[test]
fn moduli_of_bodies_of_equal_volume() {
    let text = std::fs::read_to_string("tests/outside/physics/physics.json").unwrap();
    let json: serde_json::Value = serde_json::from_str(&text).unwrap();
    let shapes = &json["chvorinov_equal_volume_1000_mm3"]["table"];
    let sphere = modulus(areas()[0].1);
    let mut table = Table::default();
    for (name, area) in areas() {
        let ours = modulus(area);
        let expected = shapes[name]["modulus_V_over_A_mm"].as_f64().unwrap();
        table.row(format!("modulus of a {name}, mm"), "physics/make_physics.py", expected, ours, Within::Share(1e-8));
        let time = shapes[name]["time_relative_to_sphere"].as_f64().unwrap();
        table.row(
            format!("freezing time of a {name} to the sphere's"),
            "Chvorinov 1940, exponent 2, from memory",
            time,
            (ours / sphere).powi(2),
            Within::Share(1e-8),
        );
    }
    // A textbook's rounded answers for volume 1: sphere 0.0428, cube 0.0278, cylinder 0.0326 (Kalpakjian, from memory).
    for (name, answer) in [("sphere", 0.0428), ("cube", 0.0278), ("cylinder H=D", 0.0326)] {
        let (_, area) = areas().into_iter().find(|(shape, _)| *shape == name).unwrap();
        // V/A of a body of volume 1 is a tenth of that of volume 1000.
        table.row(
            format!("(V/A)² of a {name} of volume 1"),
            "Kalpakjian example 10.1, from memory, recomputed",
            answer,
            (modulus(area) / 10.0).powi(2),
            Within::Printed(4),
        );
    }
    table.judge(1);
}
