//! Heavy places and their moduli, against balls, wires and plates; places a sprue must not stand.

use crate::files::near;
use crate::overlaps::bar;
use crate::shapes::{ball, block, moved, torus, turned};
use crate::walls::{soup, split};
use pourbook::mesh::{Heavy, Triangle, Unwatched, clear_of, heaviest, thickness};

fn of(triangles: &[Triangle], no_go: &[([f64; 3], f64)]) -> Vec<Heavy> {
    let soup = soup(triangles);
    let walls = thickness(&soup, &Unwatched).unwrap();
    heaviest(&soup, &walls, &clear_of(no_go), &Unwatched).unwrap()
}

#[test]
fn moduli_of_closed_forms() {
    // V/A: a ball's is d/6. In a ball of radius 2 d about a long wire the wire's is 0.508 d/2 instead of d/4, and in one of radius 2 t about a
    // wide plate it is 0.522 t instead of t/2, by integrating over the ball.
    let wide = split(&block([0.0; 3], [30.0, 30.0, 1.2]), 4);
    for (name, shape, size, modulus) in [
        ("ball", ball(4.0, 60, 120), 8.0, 8.0 / 6.0),
        ("wire", bar(0, 0.8, 30.0, 60), 1.6, 0.508 * 1.6 / 2.0),
        ("plate", wide, 1.2, 0.5222 * 1.2),
    ] {
        let found = &of(&shape, &[])[0];
        println!("{name}: {:.4} mm across, modulus {:.4} mm, {:.4} mm wanted", found.diameter_mm, found.modulus_mm.unwrap(), modulus);
        near(found.diameter_mm, size, 0.01, name);
        near(found.modulus_mm.unwrap(), modulus, 0.03, name);
    }
}

#[test]
fn the_heaviest_place_is_found() {
    // A box of 6 × 8 × 10 on a wire of 2 mm; a ball of 6 fits in the box.
    let shape = [split(&block([10.0, -3.0, -4.0], [16.0, 3.0, 4.0]), 3), bar(0, 1.0, 12.0, 24)].concat();
    let found = of(&shape, &[]);
    near(found[0].diameter_mm, 6.0, 0.02, "box");
    assert!((found[0].centre_mm[0] - 13.0).abs() < 0.2 && found[0].centre_mm[1].abs() < 0.2, "{:?}", found[0]);
    // A cube: its middle.
    let found = of(&split(&block([0.0; 3], [10.0; 3]), 2), &[]);
    assert!(found[0].centre_mm.iter().all(|x| (x - 5.0).abs() < 0.02), "{:?}", found[0]);
    near(found[0].diameter_mm, 10.0, 0.003, "cube");
    assert_eq!(found.len(), 1, "{found:?}");
}

#[test]
fn a_sprue_stands_where_it_may() {
    let found = &of(&ball(4.0, 60, 120), &[])[0];
    let foot = found.foot.unwrap();
    let out = |p: [f64; 3]| p.iter().map(|x| x * x).sum::<f64>().sqrt();
    near(out(foot.place_mm), 4.0, 0.01, "on the ball");
    let straight: f64 = (0..3).map(|k| foot.outward[k] * foot.place_mm[k]).sum::<f64>() / out(foot.place_mm);
    near(straight, 1.0, 0.01, "outward");
    // A plate of 3 mm with all of its top and most of its underside barred: the nearest that is left.
    let plate = block([0.0; 3], [10.0, 10.0, 3.0]);
    let no_go = [([5.0, 5.0, 8.0], 5.5 + 3.0), ([5.0, 5.0, 0.0], 3.0)];
    let foot = of(&plate, &no_go)[0].foot.unwrap();
    assert!(clear_of(&no_go)(0, foot.place_mm), "{foot:?}");
    // Nothing is left at all.
    assert_eq!(of(&plate, &[([0.0; 3], 100.0)])[0].foot, None);
    // Not on the wall of a sealed cavity, though it is nearest.
    let hollow = [block([0.0; 3], [8.0; 3]), turned(&block([3.0; 3], [7.8; 3]))].concat();
    let foot = of(&hollow, &[])[0].foot.unwrap();
    assert!(foot.triangle < 12, "{foot:?}");
}

#[test]
fn places_well_apart() {
    // Three balls on a ring of wire, the largest first.
    let shape = [
        torus(12.0, 0.6, 90, 16),
        moved(&ball(3.0, 24, 36), [12.0, 0.0, 0.0]),
        moved(&ball(2.5, 24, 36), [-12.0, 0.0, 0.0]),
        moved(&ball(2.0, 24, 36), [0.0, 12.0, 0.0]),
    ]
    .concat();
    let found = of(&shape, &[]);
    let sizes: Vec<f64> = found.iter().map(|heavy| heavy.diameter_mm).collect();
    assert_eq!(sizes.len(), 3, "{sizes:?}");
    for (size, wanted) in sizes.iter().zip([6.0, 5.0, 4.0]) {
        near(*size, wanted, 0.05, "ball");
    }
}
