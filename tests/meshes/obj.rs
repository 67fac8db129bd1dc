//! OBJ: what stands on its lines, and faces of many corners.

use crate::files::near;
use crate::shapes::block;
use pourbook::mesh::{Limits, Place, ReadError, Triangle, measure_bytes, read};

fn of(text: &str) -> Result<Vec<Triangle>, ReadError> {
    read(text.as_bytes(), &Limits::default()).map(|soup| soup.triangles().to_vec())
}

const FOUR: &str = "v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\n";

/// A box with faces of four, going round as seen from outside.
fn box_of_quads(words: [&str; 8]) -> String {
    let corners = words.map(|word| format!("v {word}\n")).concat();
    corners + "f 1 4 3 2\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n"
}

const TWO_THREE_FIVE: [&str; 8] = ["0 0 0", "2 0 0", "2 3 0", "0 3 0", "0 0 5", "2 0 5", "2 3 5", "0 3 5"];

#[test]
fn faces_of_four_make_a_sound_box() {
    let found = measure_bytes(box_of_quads(TWO_THREE_FIVE).as_bytes(), &Limits::default()).unwrap();
    assert_eq!((found.triangles, found.watertight, found.problems.len()), (12, true, 0), "{found:?}");
    near(found.volume_mm3.unwrap(), 30.0, 1e-12, "2 × 3 × 5");
    near(found.area_mm2, 62.0, 1e-12, "2 (6 + 10 + 15)");
}

#[test]
fn colours_weights_and_everything_else_are_passed_over() {
    let text = "\u{feff}# v 9 9 9\r\nmtllib a b.mtl\ng\no\nv 0 0 0 0.1 0.2 0.3 # red\nv\t1  0 0 1.0\nvp 0.1\nv 0 1 0 255 0 0\nvn nan\nl 1 2\np 1\nf 1 2 3\nend";
    assert_eq!(of(text).unwrap(), [[[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]]);
}

#[test]
fn backward_numbers_count_from_the_face() {
    let text = "v 0 0 0\nv 1 0 0\nv 0 1 0\nf -3 -2 -1\nv 0 0 1\nf -4//-1 -1/7 -2/1/2\n";
    let found = of(text).unwrap();
    assert_eq!(found[1], [[0.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, 1.0, 0.0]]);
    assert_eq!(
        of("v 0 0 0\nv 1 0 0\nf -3 -2 -1\nv 0 1 0\n").unwrap_err(),
        ReadError::NoSuchCorner { place: Place::Line(3), said: -3, there: 2 }
    );
}

#[test]
fn faces_may_stand_before_their_corners() {
    let found = of(&format!("f 1 2 3\n{FOUR}f 1 2 4\n")).unwrap();
    assert_eq!(found.len(), 2);
}

#[test]
fn what_is_wrong_is_said_with_its_line() {
    let wrong = |rest: &str| of(&format!("{FOUR}{rest}")).unwrap_err();
    let place = Place::Line(5);
    assert_eq!(wrong("f 1 2 5\n"), ReadError::NoSuchCorner { place, said: 5, there: 4 });
    assert_eq!(wrong("f 0 1 2\n"), ReadError::NoSuchCorner { place, said: 0, there: 4 });
    assert_eq!(wrong("f -5 1 2\n"), ReadError::NoSuchCorner { place, said: -5, there: 4 });
    assert_eq!(wrong("f 1 2 4294967297\n"), ReadError::NoSuchCorner { place, said: 4_294_967_297, there: 4 });
    assert_eq!(wrong("f -9223372036854775808 1 2\n"), ReadError::NoSuchCorner { place, said: i64::MIN, there: 4 });
    assert_eq!(wrong("f 1 2\n"), ReadError::TooFewCorners { place, corners: 2 });
    assert_eq!(wrong("f\n"), ReadError::TooFewCorners { place, corners: 0 });
    let wanted = "the number of a corner";
    assert_eq!(wrong("f 1 2 x\n"), ReadError::UnexpectedWord { line: 5, found: "x".into(), wanted });
    assert_eq!(wrong("f 1 2 \\\n /3\n"), ReadError::UnexpectedWord { line: 6, found: "/3".into(), wanted });
    assert_eq!(wrong("v 1 2\n"), ReadError::LineEnds { line: 5, wanted: "a number" });
    assert_eq!(wrong("v 1 2 \\\n"), ReadError::LineEnds { line: 6, wanted: "a number" });
    assert_eq!(wrong("v 1 2,5 3\n"), ReadError::UnexpectedWord { line: 5, found: "2,5".into(), wanted: "a number" });
    assert_eq!(wrong(""), ReadError::NoGeometry);
    assert_eq!(wrong("v nan 0 0\nv 1e39 0 0\nf 1 2 3\nf 1 2 6\n"), ReadError::NotFinite { triangle: 2 });
    assert_eq!(wrong("v nan 0 0\nf 1 2 3 5\n"), ReadError::NotFinite { triangle: 1 });
    assert!(matches!(wrong("surf 0 1 0 1 1 2 3 4\n"), ReadError::Refused { line: 5, .. }));
    assert_eq!(wrong("f 1 2 5\n").to_string(), "On line 5, corner 5 is asked for; the file has 4. Export the model again.");
}

#[test]
fn other_texts_are_no_pattern() {
    for text in ["Once upon a time", "v is a letter\n", "o my love\nis like\nv 1 2 3\n", "# v 1 2 3\n", "f 1 2 3\n", "o\n", "{\"v\": 1}"] {
        assert_eq!(of(text).unwrap_err(), ReadError::NotAMesh, "{text}");
    }
    let words = ReadError::NotAMesh.to_string();
    assert!(["STL", "OBJ", "PLY", "3MF"].iter().all(|name| words.contains(name)), "{words}");
}

/// Twice the area as seen from above, and the plain area: alike when no triangle is turned over.
fn areas(triangles: &[Triangle]) -> (f64, f64) {
    let doubled = |[a, b, c]: &Triangle| {
        let at = |p: &[f32; 3]| [f64::from(p[0]), f64::from(p[1])];
        let ([ax, ay], [bx, by], [cx, cy]) = (at(a), at(b), at(c));
        (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    };
    (triangles.iter().map(doubled).sum(), triangles.iter().map(|t| doubled(t).abs()).sum())
}

fn cut(outline: &[[f32; 2]]) -> Vec<Triangle> {
    let corners: String = outline.iter().map(|[x, y]| format!("v {x} {y} 0\n")).collect();
    let face: String = (1..=outline.len()).map(|at| format!(" {at}")).collect();
    of(&format!("{corners}f{face}\n")).unwrap()
}

/// An outline that goes round to the left must be cut into n − 2 triangles that face up and fill it.
fn fills(outline: &[[f32; 2]], area: f64) {
    for turn in 0..outline.len() {
        let turned: Vec<[f32; 2]> = outline.iter().cycle().skip(turn).take(outline.len()).copied().collect();
        let found = cut(&turned);
        let (signed, plain) = areas(&found);
        assert_eq!(found.len(), outline.len() - 2, "{turned:?}");
        near(signed / 2.0, area, 1e-9, "area");
        near(plain / 2.0, area, 1e-9, "no triangle is turned over or beside the outline");
        // From below it is the mirror image.
        let back: Vec<[f32; 2]> = turned.iter().rev().copied().collect();
        let (signed, plain) = areas(&cut(&back));
        near(-signed / 2.0, area, 1e-9, "area from below");
        near(plain / 2.0, area, 1e-9, "from below");
    }
}

#[test]
fn faces_that_bend_inward_are_cut_within_their_outline() {
    // An arrowhead, an L, a comb, a square with its middle points, a ring cut free along a line; areas worked by hand.
    fills(&[[0.0, 0.0], [4.0, 0.0], [1.0, 1.0], [0.0, 4.0]], 4.0);
    fills(&[[0.0, 0.0], [3.0, 0.0], [3.0, 1.0], [1.0, 1.0], [1.0, 3.0], [0.0, 3.0]], 5.0);
    let comb = [
        [0.0, 0.0],
        [5.0, 0.0],
        [5.0, 3.0],
        [4.0, 3.0],
        [4.0, 1.0],
        [3.0, 1.0],
        [3.0, 3.0],
        [2.0, 3.0],
        [2.0, 1.0],
        [1.0, 1.0],
        [1.0, 3.0],
        [0.0, 3.0],
    ];
    fills(&comb, 11.0);
    fills(&[[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [2.0, 2.0], [1.0, 2.0], [0.0, 2.0]], 4.0);
    fills(&[[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [0.0, 2.0]], 2.0);
    let ring = [[0.0, 0.0], [4.0, 0.0], [4.0, 4.0], [0.0, 4.0], [0.0, 0.0], [1.0, 1.0], [1.0, 3.0], [3.0, 3.0], [3.0, 1.0], [1.0, 1.0]];
    fills(&ring, 12.0);
    // Regular outlines of many corners: n/2 · sin(2π/n).
    for n in [5, 8, 33, 200] {
        let round: Vec<[f32; 2]> =
            (0..n).map(|k| (k as f64 / n as f64 * std::f64::consts::TAU).sin_cos()).map(|(y, x)| [x as f32, y as f32]).collect();
        let found = cut(&round);
        assert_eq!(found.len(), n - 2);
        near(areas(&found).0, n as f64 * (std::f64::consts::TAU / n as f64).sin(), 1e-6, "round");
    }
    // A star of many points.
    let star: Vec<[f32; 2]> = (0..80)
        .map(|k| {
            let ((y, x), r) = ((f64::from(k) / 80.0 * std::f64::consts::TAU).sin_cos(), if k % 2 == 0 { 3.0 } else { 1.0 });
            [(r * x) as f32, (r * y) as f32]
        })
        .collect();
    // The corners are rounded to f32: the shoelace sum of the rounded ones, which the exact area n/2 · r · R · sin(2π/n) bears out.
    let shoelace = |k: usize| {
        let ([ax, ay], [bx, by]) = (star[k].map(f64::from), star[(k + 1) % star.len()].map(f64::from));
        (ax * by - ay * bx) / 2.0
    };
    let area = (0..star.len()).map(shoelace).sum();
    near(area, 40.0 * 3.0 * (std::f64::consts::TAU / 80.0).sin(), 1e-6, "star");
    fills(&star, area);
}

#[test]
fn a_bent_face_of_four_is_cut_along_its_shorter_diagonal() {
    // Corner 3 stands high: the diagonal from 2 to 4 is shorter than the one from 1 to 3.
    let found = of("v 0 0 0\nv 1 0 0\nv 1 1 1\nv 0 1 0\nf 1 2 3 4\n").unwrap();
    assert_eq!(found, [[[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]], [[1.0, 0.0, 0.0], [1.0, 1.0, 1.0], [0.0, 1.0, 0.0]]]);
}

#[test]
fn faces_that_cross_themselves_keep_their_edges() {
    // A face that crosses itself or has no area: still n − 2 triangles, whose inner edges cancel.
    for outline in [
        &[[0.0, 0.0], [2.0, 2.0], [2.0, 0.0], [0.0, 2.0], [1.0, 5.0]][..],
        &[[0.0, 0.0]; 7],
        &[[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [3.0, 0.0], [1.5, 0.0]],
    ] {
        let mut sums = std::collections::BTreeMap::new();
        let found = cut(outline);
        assert_eq!(found.len(), outline.len() - 2);
        let edges = found.iter().flat_map(|t| [(t[0], t[1]), (t[1], t[2]), (t[2], t[0])]);
        let bits = |p: [f32; 3]| p.map(f32::to_bits);
        for (from, to) in edges {
            *sums.entry((bits(from), bits(to))).or_insert(0) += 1;
            *sums.entry((bits(to), bits(from))).or_insert(0) -= 1;
        }
        for k in 0..outline.len() {
            let at = |k: usize| [outline[k % outline.len()][0], outline[k % outline.len()][1], 0.0];
            *sums.entry((bits(at(k)), bits(at(k + 1)))).or_insert(0) -= 1;
            *sums.entry((bits(at(k + 1)), bits(at(k)))).or_insert(0) += 1;
        }
        assert!(sums.values().all(|sum| *sum == 0), "{outline:?}");
    }
}

#[test]
fn limits_hold() {
    let text = crate::writers::obj(&block([0.0; 3], [1.0; 3]), crate::writers::Naming::Plain);
    let with = |max_triangles| read(text.as_bytes(), &Limits { max_triangles, ..Limits::default() });
    assert_eq!(with(11).unwrap_err(), ReadError::TooManyTriangles { most: 11 });
    assert!(with(12).is_ok());
    let corners = "v 0 0 0\n".repeat(37) + "f 1 2 3\n";
    let few = Limits { max_triangles: 12, ..Limits::default() };
    assert_eq!(read(corners.as_bytes(), &few).unwrap_err(), ReadError::TooManyCorners { most: 36 });
    let wide = format!("{FOUR}f{}\n", " 1".repeat(15));
    assert_eq!(read(wide.as_bytes(), &few).unwrap_err(), ReadError::TooManyTriangles { most: 12 });
}
