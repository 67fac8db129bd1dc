//! Walls, against what the generated solids were made with and against shapes whose walls follow from their making.

use crate::files::{bytes, json, near};
use crate::shapes::{ball, block, mapped, moved, stl, torus, turned};
use pourbook::mesh::{Limits, Soup, Triangle, Unwatched, Walls, Watch, read, thickness};
use std::sync::Mutex;

pub fn soup(triangles: &[Triangle]) -> Soup {
    read(&stl(triangles), &Limits::default()).unwrap()
}

fn of(triangles: &[Triangle]) -> Walls {
    thickness(&soup(triangles), &Unwatched).unwrap()
}

fn file(name: &str) -> Walls {
    thickness(&read(&bytes(&format!("synthetic/{name}.stl")), &Limits::default()).unwrap(), &Unwatched).unwrap()
}

fn thin(walls: &Walls) -> f64 {
    walls.thinnest.unwrap().thickness_mm
}

fn typical(walls: &Walls) -> f64 {
    walls.typical.unwrap().thickness_mm
}

fn heavy(walls: &Walls) -> f64 {
    walls.heaviest.unwrap().thickness_mm
}

#[test]
fn known_walls_are_found() {
    let closed = json("closed_form.json");
    println!("{:28} {:>9} {:>9} {:>9} {:>7}", "file", "thinnest", "typical", "heaviest", "known");
    let mut names: Vec<String> = closed.as_object().unwrap().keys().map(|name| name.replace(".stl", "")).collect();
    names.sort();
    for name in names.iter().filter(|name| !name.ends_with("_ascii")) {
        let walls = file(name);
        let number = |wall: Option<pourbook::mesh::Wall>| wall.map_or(f64::NAN, |wall| wall.thickness_mm);
        println!(
            "{name:28} {:9.4} {:9.4} {:9.4} {:6.1}%",
            number(walls.thinnest),
            number(walls.typical),
            number(walls.heaviest),
            100.0 * walls.known_share
        );
        if let Some(wall) = closed[format!("{name}.stl")]["wall_thickness_true"].as_f64() {
            near(thin(&walls), wall, 0.03, name);
        }
    }
    // The plate of 2 mm round the thin floor; a flat band is as thick at its rims as at its faces; a hollow ring's wall is the same all over.
    near(heavy(&file("plate_thin_floor")), 2.0, 0.03, "plate");
    near(heavy(&file("flat_band")), 1.8, 0.03, "band");
    near(typical(&file("comfort_ring_hollow")), 0.55, 0.03, "hollow ring");
    // By their making: diameters 12, 8 and 2.2, edge 10.
    for (name, wall) in [("sphere_r6", 12.0), ("cylinder_d8_h15", 8.0), ("torus_band", 2.2), ("cube_10", 10.0)] {
        let walls = file(name);
        near(thin(&walls), wall, 0.03, name);
        near(heavy(&walls), wall, 0.03, name);
        near(walls.known_share, 1.0, 1e-12, name);
    }
}

#[test]
fn a_pierced_band_is_as_thick_as_its_radii_differ() {
    // The radii of its faces stand in the file's own corners.
    let corners = read(&bytes("synthetic/filigree_band.stl"), &Limits::default()).unwrap().triangles().as_flattened().to_vec();
    let radii = corners.iter().map(|c| f64::from(c[0]).hypot(f64::from(c[1])));
    let (least, most) = radii.fold((f64::INFINITY, 0.0_f64), |(least, most), r| (least.min(r), most.max(r)));
    near(typical(&file("filigree_band")), most - least, 0.03, "between the faces");
}

#[test]
fn tilted_faces_and_rims() {
    // A wedge of 30°: 10 long, 20 wide. Where it is x from its edge, the largest ball is 2 x tan 15° across.
    let (length, width, height) = (10.0, 20.0, 10.0 * 30.0_f64.to_radians().tan());
    let [a, b, c] = [[0.0, 0.0, 0.0], [length, 0.0, 0.0], [length, 0.0, height]];
    let fine = 40;
    let at = |p: [f64; 3], q: [f64; 3], s: f64, y: f64| -> [f32; 3] {
        [p[0] + s * (q[0] - p[0]), y, p[2] + s * (q[2] - p[2])].map(|x| x as f32)
    };
    let mut wedge = Vec::new();
    for (p, q) in [(b, a), (c, b), (a, c)] {
        for k in 0..fine * fine {
            let (s0, s1) = ((k / fine) as f64 / fine as f64, (k / fine + 1) as f64 / fine as f64);
            let (y0, y1) = ((k % fine) as f64 * width / fine as f64, (k % fine + 1) as f64 * width / fine as f64);
            wedge.push([at(p, q, s0, y0), at(p, q, s1, y1), at(p, q, s1, y0)]);
            wedge.push([at(p, q, s0, y0), at(p, q, s0, y1), at(p, q, s1, y1)]);
        }
    }
    let walls = of(&wedge);
    let mut looked = 0;
    for (triangle, wall) in wedge.iter().zip(&walls.thickness_mm) {
        let middle: [f64; 3] = std::array::from_fn(|k| triangle.iter().map(|c| f64::from(c[k])).sum::<f64>() / 3.0);
        // On the floor, away from the back and the open ends.
        if middle[2] == 0.0 && (2.0..6.0).contains(&middle[0]) && (5.0..15.0).contains(&middle[1]) {
            let ball = 2.0 * middle[0] * 15.0_f64.to_radians().tan();
            let wall = f64::from(wall.unwrap());
            assert!((0.95..=1.25).contains(&(wall / ball)), "{wall} where a ball of {ball} fits");
            looked += 1;
        }
    }
    assert!(looked > 200, "{looked}");
}

#[test]
fn area_under_a_minimum() {
    // A floor of 12 × 7 seen from both sides, and the rest at 2 mm.
    let plate = read(&bytes("synthetic/plate_thin_floor.stl"), &Limits::default()).unwrap();
    let walls = of(&split(plate.triangles(), 5));
    near(walls.under(0.5).area_mm2, 2.0 * 12.0 * 7.0, 0.1, "the floor, give or take a row of triangles along its rim");
    assert_eq!(walls.under(0.3).area_mm2, 0.0);
    near(walls.under(100.0).share, 1.0, 1e-9, "all");
    near(walls.histogram.iter().map(|bin| bin.area_mm2).sum::<f64>(), walls.under(100.0).area_mm2, 1e-6, "the bins hold all");
    assert_eq!(walls.histogram.len(), 24);
    let cube = of(&block([0.0; 3], [4.0; 3]));
    assert_eq!(cube.under(3.9).area_mm2, 0.0);
    near(cube.under(4.1).area_mm2, 96.0, 1e-6, "cube");
}

#[test]
fn places_are_in_the_file() {
    let floor = file("plate_thin_floor").thinnest.unwrap();
    let triangles = read(&bytes("synthetic/plate_thin_floor.stl"), &Limits::default()).unwrap().triangles().to_vec();
    let corners = triangles[floor.triangle as usize];
    for axis in 0..3 {
        let middle = corners.iter().map(|c| f64::from(c[axis])).sum::<f64>() / 3.0;
        assert!((floor.place_mm[axis] - middle).abs() < 1e-5, "{floor:?}");
    }
    // Far away it is the same wall.
    let far = moved(&triangles, [1000.0, -2000.0, 500.0]);
    near(thin(&of(&far)), 0.35, 0.03, "far");
}

#[test]
fn awkward_files() {
    // Turned inside out, with triangles twice, and in two parts.
    near(typical(&file("inside_out_band")), 2.2, 0.03, "inside out");
    near(typical(&file("cube_duplicates_degenerates")), 10.0, 0.03, "twice");
    near(typical(&of(&[block([0.0; 3], [3.0; 3]), moved(&block([0.0; 3], [3.0; 3]), [9.0, 0.0, 0.0])].concat())), 3.0, 1e-6, "two");
    // Wound both ways: counting crossings still tells.
    let mixed = file("mixed_winding_band");
    near(typical(&mixed), 2.2, 0.03, "mixed");
    assert!(mixed.known_share > 0.9, "{}", mixed.known_share);
    // Open: through the hole nothing is known; never a wrong figure.
    let open = file("cube_one_facet_missing");
    assert!(open.known_share < 1.0 && open.thickness_mm.iter().any(Option::is_none));
    assert!(open.thickness_mm.iter().flatten().all(|wall| (f64::from(*wall) - 10.0).abs() < 1e-3), "{:?}", open.thickness_mm);
    let sheet = of(&[[[0.0; 3], [5.0, 0.0, 0.0], [0.0, 5.0, 0.0]]]);
    assert_eq!((sheet.thinnest, sheet.known_share, &sheet.thickness_mm[..]), (None, 0.0, &[None][..]));
    assert_eq!(of(&[[[1.0; 3]; 3]]).thinnest, None);
}

#[test]
fn a_cavity_and_solids_through_each_other() {
    // A shell of 2 round a cavity of 4: one and one across its walls.
    let hollow = of(&[block([0.0; 3], [6.0; 3]), turned(&block([1.0; 3], [5.0; 3]))].concat());
    near(thin(&hollow), 1.0, 1e-6, "from outside and inside");
    near(heavy(&hollow), 1.0, 1e-6, "from outside and inside");
    // Two boxes through each other read as one; what lies inside the other has no wall.
    let fine = |low: [f32; 3], high: [f32; 3]| split(&block(low, high), 4);
    let one = of(&[fine([0.0; 3], [10.0, 4.0, 4.0]), fine([7.0, 0.0, 0.0], [20.0, 4.0, 4.0])].concat());
    near(thin(&one), 4.0, 1e-3, "joined");
    near(heavy(&one), 4.0, 1e-3, "joined");
    assert!(one.known_share < 0.97, "{}", one.known_share);
}

/// Every triangle in four, so many times.
pub fn split(triangles: &[Triangle], times: usize) -> Vec<Triangle> {
    if times == 0 {
        return triangles.to_vec();
    }
    let half = |a: [f32; 3], b: [f32; 3]| std::array::from_fn(|k| 0.5 * (a[k] + b[k]));
    let four = triangles.iter().flat_map(|&[a, b, c]| {
        let (ab, bc, ca) = (half(a, b), half(b, c), half(c, a));
        [[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]]
    });
    split(&four.collect::<Vec<_>>(), times - 1)
}

#[test]
fn a_model_of_any_size() {
    for scale in [1e-20, 1e-3, 1e3, 1e20] {
        let walls = of(&mapped(&torus(8.0, 1.0, 60, 20), |p| p.map(|x| scale * x)));
        near(typical(&walls), 2.0 * scale, 0.03, "torus");
    }
}

struct Recorder {
    shares: Mutex<Vec<f64>>,
    stop_at: f64,
}

impl Watch for Recorder {
    fn go_on(&self, share: f64) -> bool {
        self.shares.lock().unwrap().push(share);
        share < self.stop_at
    }
}

#[test]
fn who_waits_is_told_and_may_stop() {
    let soup = soup(&ball(5.0, 100, 200));
    let patient = Recorder { shares: Mutex::default(), stop_at: 2.0 };
    assert!(thickness(&soup, &patient).is_some());
    let shares = patient.shares.into_inner().unwrap();
    assert!(shares.len() > 5 && shares.iter().all(|share| (0.0..=1.0).contains(share)), "{shares:?}");
    for stop_at in [0.0, 0.3, 0.6] {
        assert!(thickness(&soup, &Recorder { shares: Mutex::default(), stop_at }).is_none());
    }
}
