//! When a button no longer glows: by a second way to reckon it, and against what casters wait.

use pourbook::calc::all_rules;
use pourbook::calc::rule::How;

use super::table::{Table, Within};
use super::world::{Outcome, World, grams, some};

fn call(id: &str, terms: &[f64]) -> f64 {
    let rule = all_rules().into_iter().find(|rule| rule.id == id).unwrap();
    let How::Lookup { call, .. } = rule.how else { panic!("a lookup") };
    call(terms)
}

/// Volume over face of what fills a spherical bowl so far, by slices of a hundredth of a millimetre.
fn depth_by_slices(volume_mm3: f64, bowl_mm3: f64, height: f64) -> f64 {
    // The radius of the sphere by trying: the cap of this height must hold the bowl's volume.
    let cap = |radius: f64| {
        (0..100_000).map(|slice| (f64::from(slice) + 0.5) * height / 100_000.0).map(|x| 2.0 * radius * x - x * x).sum::<f64>()
    };
    let (mut low, mut high) = (height / 2.0, 1000.0);
    for _ in 0..50 {
        let radius = f64::midpoint(low, high);
        if cap(radius) * std::f64::consts::PI * height / 100_000.0 < bowl_mm3 {
            low = radius;
        } else {
            high = radius;
        }
    }
    let radius = f64::midpoint(low, high);
    let (mut filled, mut x) = (0.0, 0.0);
    while filled < volume_mm3 {
        x += 0.001;
        filled += std::f64::consts::PI * (2.0 * radius * x - x * x) * 0.001;
    }
    volume_mm3 / (std::f64::consts::PI * (2.0 * radius * x - x * x))
}

/// Second by second: a plate that radiates through one face to a room of 20 °C.
fn glows_for_min(depth_mm: f64, density: f64, [heat, cp]: [f64; 2], at_c: f64, emissivity: f64) -> f64 {
    let flux = |c: f64| emissivity * 5.670_374e-8 * ((c + 273.15).powi(4) - 293.15_f64.powi(4));
    let mass = density * depth_mm;
    let (mut left, mut c, mut seconds) = (mass * heat * 1000.0, at_c, 0.0);
    while left > 0.0 {
        left -= flux(at_c) * 0.1;
        seconds += 0.1;
    }
    while c > 525.0 {
        c -= flux(c) * 0.1 / (mass * cp * 1000.0);
        seconds += 0.1;
    }
    seconds / 60.0
}

#[test]
fn depth_and_time_by_a_second_way() {
    let mut table = Table::default();
    for (volume, bowl, height) in [(1.0, 7.4, 12.7), (5.0, 7.4, 12.7), (7.3, 7.4, 12.7), (10.0, 30.0, 20.4)] {
        let by_slices = depth_by_slices(volume * 1000.0, bowl * 1000.0, height);
        let ours = call("quench.button-depth", &[volume, bowl, height]);
        table.row(format!("depth of {volume} cm³ in a bowl of {bowl} cm³, mm"), "slices added up", by_slices, ours, Within::Share(0.002));
    }
    // Over the rim it stands as on a plate as wide: 9 cm³ on the rim of that bowl.
    let rim_squared: f64 = (6.0 * 7400.0 / (std::f64::consts::PI * 12.7) - 12.7 * 12.7) / 3.0;
    let over = 9000.0 / (std::f64::consts::PI * rim_squared);
    table.row("depth over the rim, mm", "a disc", over, call("quench.button-depth", &[9.0, 7.4, 12.7]), Within::Share(1e-9));
    for (depth, emissivity) in [(3.0, 0.6), (6.0, 0.45), (9.0, 0.3)] {
        let by_seconds = glows_for_min(depth, 10.3, [140.0, 0.28], 850.0, emissivity);
        let ours = call("quench.no-glow", &[depth, 10.3, 140.0, 850.0, 0.28, emissivity]);
        // The room's own radiation, which the closed form leaves out, is a hundredth or two.
        table.row(format!("{depth} mm, emissivity {emissivity}, min"), "second by second", by_seconds, ours, Within::Share(0.025));
    }
    table.judge(1);
}

/// The button fills three quarters of its funnel.
fn poured(vessel: &str, base: &str, button: &str) -> Outcome {
    let mut world = World::sound();
    world.flask().vessel = some(vessel);
    world.tree().base = some(base);
    world.flask().button.least = Some(grams(button));
    world.recompute()
}

#[test]
fn five_to_fifteen_minutes_by_the_size_of_the_flask() {
    // Common practice, no source: from the pour to the quench 5 to 15 min, a small flask sooner than a large one. Sterling at 10.4 g/cm³;
    // funnels of 3, 5.9, 10.2 and 24 cm³, three quarters full.
    let sizes = [
        ("flask-51x64", "base-51", "23"),
        ("flask-64x64", "base-64", "46"),
        ("flask-76x102", "base-76", "80"),
        ("flask-102x152", "base-102", "187"),
    ];
    let mut last = 0.0;
    for (vessel, base, button) in sizes {
        let outcome = poured(vessel, base, button);
        let [early, late] = outcome.flask().pour.no_glow.unwrap_or_else(|| panic!("{vessel}")).map(|id| outcome.number(id));
        assert!(early < 15.0 && late > 5.0 && late < 20.0, "{vessel}: {early:.1} to {late:.1} min");
        let middle = f64::midpoint(early, late);
        assert!(middle > last, "{vessel}: {middle:.1} min is no longer than {last:.1}");
        last = middle;
    }
    assert!((5.0..=15.0).contains(&last), "the largest: {last:.1} min");
}
