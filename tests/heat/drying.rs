//! Water that has left does not come back.

use super::world::{convection, flask, investment, kiln, mean, plain, run, watch, worst};
use pourbook::calc::heat::{Field, Fineness, Material, Run, Surface, Surroundings, first_at};

/// Up to 400 °C, down to 40, and up again.
const TWICE: [[f64; 2]; 7] = [[0.0, 20.0], [1.0, 400.0], [5.0, 400.0], [5.5, 20.0], [12.0, 20.0], [13.0, 400.0], [17.0, 400.0]];
const HOUR: usize = 60;

fn twice(material: &Material) -> Run {
    let kiln = kiln(&TWICE, convection(25.0));
    run((&flask(76.0, 100.0), material, 20.0), &kiln, &watch(Vec::new(), 60.0, 17.0 * 3600.0), &Fineness::PLAN)
}

/// Minutes the core takes from 90 to 110 °C after some hour.
fn boil(run: &Run, hour: usize) -> f64 {
    let (times, core) = (&run.times_s[hour * HOUR..], &run.core_c[hour * HOUR..]);
    (first_at(times, core, 110.0).unwrap() - first_at(times, core, 90.0).unwrap()) / 60.0
}

#[test]
fn a_dried_mould_has_no_plateau() {
    let dries = twice(&investment());
    let reversible = twice(&Material { reversible: true, ..investment() });
    println!("minutes from 90 to 110 °C: {:.1}, again {:.1}; reversible {:.1}", boil(&dries, 0), boil(&dries, 12), boil(&reversible, 12));
    assert!(dries.core_c[12 * HOUR] < 60.0, "it cooled");
    assert!(boil(&dries, 0) > 20.0 && boil(&reversible, 12) > 20.0);
    // Warming up again, it is a mould that never held water.
    let never = twice(&Material { latent: Vec::new(), ..investment() });
    assert!((boil(&dries, 12) - boil(&never, 12)).abs() < 0.1, "never wet: {:.2}", boil(&never, 12));
    assert!(worst((12 * HOUR..17 * HOUR).map(|at| dries.core_c[at] - never.core_c[at])) < 0.5);
    // The first heating is the same in both.
    let apart = mean((0..5 * HOUR).map(|at| dries.core_c[at] - reversible.core_c[at]));
    assert!(apart < 0.02, "{apart}");
    // Nor is anything given back: it cools through 100 °C without a stop, as a mould does that never held water.
    let fall = |run: &Run| run.core_c[5 * HOUR..12 * HOUR].iter().filter(|c| (90.0..110.0).contains(*c)).count();
    println!("minutes cooling through it: {}, reversible {}", fall(&dries), fall(&reversible));
    assert!(fall(&dries) == fall(&never) && fall(&reversible) > 40);
}

#[test]
fn held_water_only_falls() {
    let run = twice(&investment());
    for (event, held) in run.held_kg_kg.iter().enumerate() {
        assert!(held.is_sorted_by(|a, b| a >= b), "event {event}");
    }
    assert_eq!(run.held_kg_kg[0][0], 0.20);
    assert_eq!(run.held_kg_kg[1][0], 0.05);
    assert_eq!((run.held_kg_kg[0][17 * HOUR], run.held_kg_kg[1][17 * HOUR]), (0.0, 0.0));
}

#[test]
fn the_latent_heat_is_what_was_taken_in_beyond_the_sensible() {
    // 451.4 + 150 kJ/kg of the whole mould, and its sensible heat from 20 to 400 °C.
    let run = twice(&investment());
    let mass = 1700.0 * std::f64::consts::PI * 0.038_f64.powi(2) * 0.1;
    let dry = twice(&Material { latent: Vec::new(), ..investment() });
    let at = 5 * HOUR;
    let beyond = (run.heat_j[at] - dry.heat_j[at]) / mass;
    println!("beyond the sensible {beyond:.1} J/kg of 601400");
    assert!((beyond - 601_400.0).abs() < 601_400.0 * 0.002, "{beyond}");
    // Back at 20 °C both have given up the same.
    let cold = 12 * HOUR;
    assert!(((run.heat_j[cold] - dry.heat_j[cold]) / mass - 601_400.0).abs() < 601_400.0 * 0.005);
}

#[test]
fn a_dried_place_conducts_as_one() {
    // A mould that was at 200 °C, cooling, is one with the dry conductivity and no latent heat at all.
    let mut wet = plain(1.0, 1300.0, 1000.0);
    wet.conductivity_dry = Some(vec![[20.0, 0.3], [500.0, 0.5]]);
    wet.latent = investment().latent;
    let mut dry = plain(1.0, 1300.0, 1000.0);
    dry.conductivity = vec![[20.0, 0.3], [500.0, 0.5]];
    let bench = kiln(&[[0.0, 20.0]], Surface { h_w_m2_k: 10.0, emissivity: 0.8 });
    let cool = |material: &Material| run((&flask(76.0, 100.0), material, 200.0), &bench, &watch(Vec::new(), 60.0, 7200.0), &Fineness::PLAN);
    let (was_wet, was_dry) = (cool(&wet), cool(&dry));
    assert!(was_wet.core_c[120] < 100.0);
    assert!(worst(was_wet.core_c.iter().zip(&was_dry.core_c).map(|(a, b)| a - b)) < 0.1);
    // One that was never above 80 °C conducts three times as well.
    let cool = |material: &Material| run((&flask(76.0, 100.0), material, 80.0), &bench, &watch(Vec::new(), 60.0, 7200.0), &Fineness::PLAN);
    let differ = worst(cool(&wet).core_c.iter().zip(&cool(&dry).core_c).map(|(a, b)| a - b));
    assert!(differ > 3.0, "{differ}");
}

#[test]
fn what_was_half_dried_boils_on_where_it_stopped() {
    let material = investment();
    let flask = flask(76.0, 100.0);
    let mut field = Field::new(&flask, &material, 20.0, &Fineness::PLAN).unwrap();
    let hot = Surroundings::steady(200.0, pourbook::calc::heat::Surfaces::all(convection(25.0)));
    let cold = Surroundings::steady(20.0, pourbook::calc::heat::Surfaces::all(convection(25.0)));
    let mut on = |surroundings: &Surroundings, hours: f64| {
        let until = field.time_s() + hours * 3600.0;
        field.advance(surroundings, &watch(Vec::new(), 60.0, until), &mut || false).unwrap()
    };
    let held = |run: &Run| *run.held_kg_kg[0].last().unwrap();
    let first = held(&on(&hot, 2.0));
    let cooled = held(&on(&cold, 8.0));
    let again = on(&hot, 5.0);
    assert!(first > 0.02 && first < 0.15, "{first}");
    // What is hot under the skin drives a little more off before it has cooled.
    assert!(cooled <= first && cooled > 0.8 * first, "{first} {cooled}");
    // Warming up again drives nothing off before it comes to where it was.
    assert_eq!(again.held_kg_kg[0][5].to_bits(), cooled.to_bits());
    assert!(held(&again) < 0.5 * cooled);
}
