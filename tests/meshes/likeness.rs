//! The same shape, its mirror image, both, or neither: shapes made here and turned by known angles.

use crate::overlaps::turn;
use crate::shapes::{ball, block, mapped, moved, torus, turned};
use crate::walls::{soup, split};
use pourbook::mesh::{Likeness, Triangle, Twin, Unwatched, twin};

fn compared(one: &[Triangle], other: &[Triangle]) -> Twin {
    twin(&soup(one), &soup(other), 0.02, &Unwatched).unwrap()
}

/// A left thing: three blocks of different size along no common plane.
fn left() -> Vec<Triangle> {
    [
        split(&block([0.0; 3], [12.0, 3.0, 2.0]), 2),
        moved(&split(&block([0.0; 3], [3.0, 7.0, 2.0]), 2), [20.0, 0.0, 0.0]),
        moved(&ball(2.0, 12, 18), [4.0, 9.0, 7.0]),
    ]
    .concat()
}

fn mirrored(shape: &[Triangle]) -> Vec<Triangle> {
    turned(&mapped(shape, |[x, y, z]| [-x, y, z]))
}

fn laid_elsewhere(shape: &[Triangle]) -> Vec<Triangle> {
    mapped(&mapped(shape, turn([0.7, 1.9, -0.4])), |p| [p[0] + 31.0, p[1] - 12.0, p[2] + 5.0])
}

#[test]
fn left_and_right() {
    let same = compared(&left(), &laid_elsewhere(&left()));
    assert_eq!(same.likeness, Likeness::Same, "{same:?}");
    assert!(same.deviation_mm < 1e-3 && same.mirrored_mm[0] > 0.2, "{same:?}");
    assert!(same.volume_difference.unwrap().abs() < 1e-5, "{same:?}");
    let other = compared(&left(), &laid_elsewhere(&mirrored(&left())));
    assert_eq!(other.likeness, Likeness::Mirrored, "{other:?}");
    assert!(other.deviation_mm < 1e-3 && other.as_they_are_mm[0] > 0.2, "{other:?}");
}

#[test]
fn scaled_is_different() {
    let found = compared(&left(), &laid_elsewhere(&mapped(&left(), |p| p.map(|x| 1.02 * x))));
    assert_eq!(found.likeness, Likeness::Different, "{found:?}");
    let grown = 1.02_f64.powi(3) - 1.0;
    assert!((found.volume_difference.unwrap() - grown).abs() < 1e-4, "{found:?}");
    // Two hundredths of some ten millimetres from the middle.
    assert!((0.1..0.6).contains(&found.deviation_mm), "{found:?}");
}

#[test]
fn what_is_its_own_mirror_image() {
    // Distinct moments, two alike, and all alike: a box, a square rod, a ring, a cube.
    for (name, shape) in [
        ("box", split(&block([0.0; 3], [9.0, 5.0, 2.0]), 2)),
        ("rod", split(&block([0.0; 3], [9.0, 4.0, 4.0]), 2)),
        ("ring", torus(8.0, 1.0, 72, 24)),
        ("cube", split(&block([0.0; 3], [6.0; 3]), 2)),
    ] {
        let found = compared(&shape, &laid_elsewhere(&shape));
        assert_eq!(found.likeness, Likeness::Both, "{name}: {found:?}");
    }
}

#[test]
fn a_ring_with_one_mark() {
    // A ring's axes say nothing about where its marks stand: turns between must be tried. Two marks of different size, off its plane, make it
    // left or right.
    let ring = torus(8.0, 1.0, 72, 24);
    let marked = [ring, moved(&ball(0.9, 12, 18), [9.0, 0.0, 0.6]), moved(&ball(0.6, 12, 18), [4.5, 7.8, 0.9])].concat();
    assert_eq!(compared(&marked, &laid_elsewhere(&marked)).likeness, Likeness::Same);
    assert_eq!(compared(&marked, &laid_elsewhere(&mirrored(&marked))).likeness, Likeness::Mirrored);
}

#[test]
fn nothing_alike() {
    let found = compared(&torus(8.0, 1.0, 48, 16), &ball(6.0, 24, 36));
    assert_eq!(found.likeness, Likeness::Different, "{found:?}");
    assert!(found.deviation_mm > 1.0, "{found:?}");
}
