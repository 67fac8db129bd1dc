//! PLY: headers of every kind, columns in any order, and tables that are shorter than they say.

use crate::shapes::block;
use crate::writers::{Ply, Tables, numbered, ply};
use pourbook::mesh::{Limits, Place, ReadError, Triangle, read};

const KINDS: [Ply; 3] = [Ply::Ascii, Ply::LeastFirst, Ply::MostFirst];

fn of(bytes: &[u8]) -> Result<Vec<Triangle>, ReadError> {
    read(bytes, &Limits::default()).map(|soup| soup.triangles().to_vec())
}

/// Three corners and a face, in words.
const SMALL: &str = "ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\nelement face 1\n\
    property list uchar int vertex_index\nend_header\n0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n";

#[test]
fn columns_come_in_any_order_and_kind_with_others_between_them() {
    let cube = block([-1.0; 3], [2.0; 3]);
    let (corners, faces) = numbered(&cube);
    for kind in KINDS {
        let mut file = Tables::new(kind);
        file.line("obj_info of a scanner").line("element camera 2").line("property list ushort double angles").line("property uint8 kind");
        file.line(&format!("element vertex {}", corners.len()));
        for column in ["uchar red", "double z", "list uint8 int8 near", "int16 y", "float confidence", "float32 x"] {
            file.line(&format!("property {column}"));
        }
        file.line(&format!("element face {}", faces.len())).line("property int flags").line("property list uint uint vertex_indices");
        file.line("property list uchar float texcoord").line("element nothing 4000000000");
        for length in [0_u16, 2] {
            file.put(length, length.to_le_bytes());
            (0..length).for_each(|_| {
                file.double(0.5);
            });
            file.byte(7).row();
        }
        for [x, y, z] in &corners {
            file.byte(255).double(f64::from(*z)).byte(2).byte(1).byte(9);
            file.put(*y as i16, (*y as i16).to_le_bytes()).float(0.25).float(*x).row();
        }
        for face in &faces {
            file.int(-1).put(3, 3_u32.to_le_bytes());
            for corner in face {
                file.put(corner, (*corner as u32).to_le_bytes());
            }
            file.byte(1).float(0.5).row();
        }
        assert_eq!(of(&file.done()).unwrap(), cube, "{kind:?}");
    }
}

#[test]
fn faces_may_stand_before_their_corners() {
    let cube = block([-1.0; 3], [2.0; 3]);
    let (corners, faces) = numbered(&cube);
    for kind in KINDS {
        let mut file = Tables::new(kind);
        file.line("element face 12").line("property list uchar short vertex_indices").line("element vertex 8");
        file.line("property double x").line("property double y").line("property double z");
        for face in &faces {
            file.byte(3);
            face.iter().for_each(|corner| {
                file.put(corner, (*corner as i16).to_le_bytes());
            });
            file.row();
        }
        for corner in &corners {
            corner.iter().for_each(|x| {
                file.double(f64::from(*x));
            });
            file.row();
        }
        assert_eq!(of(&file.done()).unwrap(), cube, "{kind:?}");
    }
}

#[test]
fn lines_may_end_in_every_way() {
    let wanted = of(SMALL.as_bytes()).unwrap();
    assert_eq!(wanted, [[[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]]);
    assert_eq!(of(SMALL.replace('\n', "\r\n").as_bytes()).unwrap(), wanted);
    assert_eq!(of(SMALL.replace('\n', "\r").as_bytes()).unwrap(), wanted);
    assert_eq!(of(SMALL.trim_end().as_bytes()).unwrap(), wanted);
    // The first byte of a table may look like the end of a line.
    let newline = f32::from_le_bytes([b'\n', 0, 0, 0x40]);
    let triangle = [[[newline, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]];
    let file = ply(&triangle, Ply::LeastFirst);
    assert_eq!(of(&file).unwrap(), triangle);
    let split = file.windows(11).position(|w| w == b"end_header\n").unwrap() + 11;
    for end in ["\r", "\r\n"] {
        let head = String::from_utf8(file[..split].to_vec()).unwrap().replace('\n', end);
        assert_eq!(of(&[head.as_bytes(), &file[split..]].concat()).unwrap(), triangle, "{end:?}");
    }
}

#[test]
fn faces_of_four_and_more_are_cut() {
    let text = SMALL.replace("element vertex 3", "element vertex 5").replace("0 1 0\n3 0 1 2", "2 1 0\n1 2 0\n0 1 0\n5 0 1 2 3 4");
    assert_eq!(of(text.as_bytes()).unwrap().len(), 3);
}

#[test]
fn what_is_wrong_is_said_with_its_place() {
    let wrong = |from: &str, to: &str| {
        assert!(SMALL.contains(from), "{from}");
        of(SMALL.replace(from, to).as_bytes()).unwrap_err()
    };
    let place = Place::Face(1);
    assert_eq!(wrong("3 0 1 2", "3 0 1 3"), ReadError::NoSuchCorner { place, said: 3, there: 3 });
    assert_eq!(wrong("3 0 1 2", "3 0 -1 2"), ReadError::NoSuchCorner { place, said: -1, there: 3 });
    assert_eq!(wrong("3 0 1 2", "2 0 1"), ReadError::TooFewCorners { place, corners: 2 });
    assert_eq!(wrong("3 0 1 2", "0"), ReadError::TooFewCorners { place, corners: 0 });
    assert_eq!(wrong("3 0 1 2", "-3 0 1 2"), ReadError::NegativeLength { what: "face".into(), entry: 1 });
    assert_eq!(wrong("3 0 1 2", "4 0 1 2"), ReadError::TableCutShort { what: "face".into(), said: 1, whole: 0 });
    assert_eq!(wrong("3 0 1 2", "3 0 1"), ReadError::TableCutShort { what: "face".into(), said: 1, whole: 0 });
    assert_eq!(wrong("3 0 1 2", "3 0 1 2 7"), ReadError::BytesLeft { bytes: 2 });
    assert_eq!(wrong("1 0 0", "1 x 0"), ReadError::UnexpectedWord { line: 11, found: "x".into(), wanted: "a number" });
    assert_eq!(wrong("3 0 1 2", "3 0 1.5 2"), ReadError::UnexpectedWord { line: 13, found: "1.5".into(), wanted: "a whole number" });
    assert_eq!(wrong("1 0 0", "inf 0 0"), ReadError::NotFinite { triangle: 1 });
    assert_eq!(wrong("1 0 0", "1e60 0 0"), ReadError::NotFinite { triangle: 1 });
    assert_eq!(
        wrong("element face 1", "element face 0\nelement edge 1"),
        ReadError::Refused { line: 10, reason: "the faces have no list vertex_indices" }
    );
    assert!(matches!(wrong("float z", "float w"), ReadError::Refused { line: 9, .. }));
    assert!(matches!(wrong("float z", "list uchar float z"), ReadError::Refused { line: 9, .. }));
    assert!(matches!(wrong("vertex_index", "corners"), ReadError::Refused { line: 9, .. }));
    assert!(matches!(wrong("int vertex_index", "float vertex_index"), ReadError::Refused { line: 9, .. }));
    assert!(matches!(wrong("list uchar", "list float"), ReadError::Refused { line: 8, .. }));
    assert!(matches!(wrong("element face 1", "element tristrips 1"), ReadError::Refused { line: 7, .. }));
    assert!(matches!(wrong("element face 1", "element vertex 1"), ReadError::Refused { .. }));
    assert!(matches!(wrong("format ascii 1.0\n", ""), ReadError::Refused { .. }));
    assert!(matches!(wrong("element vertex 3\n", ""), ReadError::Refused { line: 3, .. }));
    assert_eq!(
        wrong("ascii", "binary_middle_endian"),
        ReadError::UnexpectedWord {
            line: 2,
            found: "binary_middle_endian".into(),
            wanted: "ascii, binary_little_endian or binary_big_endian"
        }
    );
    assert_eq!(wrong("float y", "number y"), ReadError::UnexpectedWord { line: 5, found: "number".into(), wanted: "a kind of number" });
    assert_eq!(wrong("vertex 3", "vertex three"), ReadError::UnexpectedWord { line: 3, found: "three".into(), wanted: "a count" });
    assert_eq!(
        wrong("element face 1", "elephant 1"),
        ReadError::UnexpectedWord { line: 7, found: "elephant".into(), wanted: "a line of a header" }
    );
    // Corners alone are no pattern.
    let points = "ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nproperty float z\nend_header\n1 2 3\n";
    assert_eq!(of(points.as_bytes()).unwrap_err(), ReadError::NoGeometry);
    // A corner that no face names may be anything.
    assert!(of(SMALL.replace("vertex 3", "vertex 4").replace("\n3 0", "\nnan nan nan\n3 0").as_bytes()).is_ok());
}

#[test]
fn bytes_behind_the_last_table_are_told() {
    for kind in [Ply::LeastFirst, Ply::MostFirst] {
        let mut file = ply(&block([0.0; 3], [1.0; 3]), kind);
        file.extend(b"\r\n");
        assert!(of(&file).is_ok());
        file.push(1);
        assert_eq!(of(&file).unwrap_err(), ReadError::BytesLeft { bytes: 3 });
    }
}

#[test]
fn limits_hold() {
    for kind in KINDS {
        let file = ply(&block([0.0; 3], [1.0; 3]), kind);
        let with = |max_triangles| read(&file, &Limits { max_triangles, ..Limits::default() });
        assert_eq!(with(11).unwrap_err(), ReadError::TooManyTriangles { most: 11 });
        assert_eq!(with(2).unwrap_err(), ReadError::TooManyCorners { most: 6 });
        assert!(with(12).is_ok());
    }
}
