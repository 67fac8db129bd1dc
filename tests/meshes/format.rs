//! Every awkward file, against what a careful reader does with it (`format/expected.json`).

use crate::files::{bytes, folder, json, near};
use pourbook::mesh::{Format, Limits, ReadError, measure, measure_bytes, measure_file, read};

enum Wanted {
    Solid { triangles: u32, volume_mm3: f64 },
    Error(fn(&ReadError) -> bool),
}

/// Our reading of the sentences in `expected.json`.
fn wanted(name: &str) -> Option<Wanted> {
    let cube = Wanted::Solid { triangles: 12, volume_mm3: 1000.0 };
    Some(match name {
        "binary_header_says_solid.stl" | "binary_with_colour_attr.stl" | "binary_zero_normals.stl" | "binary_wrong_normals.stl" => cube,
        "ascii_crlf_upper.stl" | "ascii_no_name.stl" | "ascii_scientific.stl" | "ascii_leading_blank_lines.stl" | "ascii_utf8_name.stl" => {
            cube
        }
        "ascii_two_solid_blocks.stl" => Wanted::Solid { triangles: 24, volume_mm3: 1125.0 },
        "ascii_truncated.stl" => Wanted::Error(|e| matches!(e, ReadError::TextCutShort { .. })),
        "binary_truncated.stl" => Wanted::Error(|e| *e == ReadError::BinaryCutShort { said: 12, whole: 7 }),
        "binary_count_too_small.stl" => Wanted::Error(|e| *e == ReadError::TrailingBytes { said: 10, bytes: 100 }),
        "binary_count_huge.stl" => Wanted::Error(|e| matches!(e, ReadError::BinaryCutShort { whole: 12, .. })),
        "empty.stl" => Wanted::Error(|e| *e == ReadError::Empty),
        "binary_zero_triangles.stl" => Wanted::Error(|e| *e == ReadError::NoGeometry),
        "binary_nan_vertex.stl" | "binary_inf_vertex.stl" => {
            Wanted::Error(|e| matches!(e, ReadError::NotFinite { triangle } if *triangle > 0))
        }
        "not_a_mesh.stl" => Wanted::Error(|e| *e == ReadError::NotAMesh),
        _ => return None,
    })
}

#[test]
fn every_awkward_file_is_read_as_expected() {
    let expected = json("format/expected.json");
    let mut seen = 0;
    for (name, entry) in expected.as_object().unwrap() {
        let sentence = entry["expect"].as_str().unwrap();
        let found = measure_bytes(&bytes(&format!("format/{name}")), &Limits::default());
        match (wanted(name).unwrap_or_else(|| panic!("{name} has no expectation here: {sentence}")), found) {
            (Wanted::Solid { triangles, volume_mm3 }, Ok(measure)) => {
                assert!(sentence.contains(&format!("{volume_mm3} mm3")), "{name}: {sentence}");
                assert_eq!(measure.triangles, triangles, "{name}");
                near(measure.volume_mm3.unwrap(), volume_mm3, 1e-12, name);
                assert!(measure.problems.is_empty(), "{name}: {:?}", measure.problems);
            }
            (Wanted::Error(fits), Err(error)) => {
                assert!(sentence.starts_with("error"), "{name}: {sentence}");
                assert!(fits(&error), "{name}: {error:?}");
            }
            (Wanted::Solid { .. }, Err(error)) => panic!("{name}: {error}"),
            (Wanted::Error(_), Ok(measure)) => panic!("{name} was read: {measure:?}"),
        }
        seen += 1;
    }
    let files =
        std::fs::read_dir(folder().join("format")).unwrap().filter(|f| f.as_ref().unwrap().path().extension().is_some_and(|e| e == "stl"));
    assert_eq!(seen, files.count(), "a file without an expectation");
}

#[test]
fn the_triangle_that_is_no_number_is_named() {
    let mut bytes = bytes("synthetic/cube_10.stl");
    for (triangle, corner_byte) in [(1_u32, 12), (7, 24), (12, 44)] {
        let at = 84 + 50 * (triangle as usize - 1) + corner_byte;
        let kept: [u8; 4] = bytes[at..at + 4].try_into().unwrap();
        bytes[at..at + 4].copy_from_slice(&f32::NAN.to_le_bytes());
        assert_eq!(read(&bytes, &Limits::default()).unwrap_err(), ReadError::NotFinite { triangle });
        bytes[at..at + 4].copy_from_slice(&kept);
    }
    // A stored normal that is no number does not matter.
    bytes[84..88].copy_from_slice(&f32::NAN.to_le_bytes());
    assert!(read(&bytes, &Limits::default()).is_ok());
}

#[test]
fn the_line_that_cannot_be_read_is_named() {
    let text = String::from_utf8(bytes("synthetic/cube_10_ascii.stl")).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    let line = lines.iter().position(|l| l.contains("vertex")).unwrap();
    let spoilt: Vec<String> =
        lines.iter().enumerate().map(|(at, l)| if at == line { "vertex 1,5 0 0".to_owned() } else { (*l).to_owned() }).collect();
    let error = read(spoilt.join("\n").as_bytes(), &Limits::default()).unwrap_err();
    assert_eq!(error, ReadError::UnexpectedWord { line: line as u64 + 1, found: "1,5".into(), wanted: "a number" });
}

#[test]
fn a_file_cut_anywhere_is_an_error() {
    let binary = bytes("synthetic/cube_10.stl");
    for length in 0..binary.len() {
        assert!(read(&binary[..length], &Limits::default()).is_err(), "binary cut at {length}");
    }
    let text = bytes("synthetic/cube_10_ascii.stl");
    let last = text.windows(8).rposition(|w| w == b"endsolid").unwrap() + 8;
    for length in 0..last {
        assert!(read(&text[..length], &Limits::default()).is_err(), "text cut at {length}");
    }
    // From here on every triangle is there; a cut name is told.
    let name = text[last..].trim_ascii();
    assert!(name.len() > 1, "the fixture has a name to cut");
    let cut = read(&text[..last + 2], &Limits::default()).unwrap();
    assert_eq!(cut.triangles().len(), 12);
    assert!(cut.last_line_looks_cut());
    assert!(!read(&text, &Limits::default()).unwrap().last_line_looks_cut());
}

#[test]
fn limits_hold() {
    let binary = bytes("synthetic/cube_10.stl");
    let text = bytes("synthetic/cube_10_ascii.stl");
    let few = Limits { max_triangles: 11, ..Limits::default() };
    assert_eq!(read(&binary, &few).unwrap_err(), ReadError::TooManyTriangles { most: 11 });
    assert_eq!(read(&text, &few).unwrap_err(), ReadError::TooManyTriangles { most: 11 });
    let short = Limits { max_bytes: 683, ..Limits::default() };
    assert_eq!(read(&binary, &short).unwrap_err(), ReadError::TooLarge { bytes: 684, most: 683 });
    let path = folder().join("synthetic/cube_10.stl");
    assert_eq!(measure_file(&path, &short).unwrap_err(), ReadError::TooLarge { bytes: 684, most: 683 });
    assert!(read(&binary, &Limits { max_bytes: 684, max_triangles: 12, ..Limits::default() }).is_ok());
    assert!(matches!(measure_file(&folder(), &Limits::default()), Err(ReadError::CannotRead { .. })));
    assert!(matches!(measure_file(&folder().join("none.stl"), &Limits::default()), Err(ReadError::CannotRead { .. })));
}

#[test]
fn formats_are_told_apart() {
    let format = |name: &str| read(&bytes(name), &Limits::default()).unwrap().format();
    assert_eq!(format("format/binary_header_says_solid.stl"), Format::StlBinary);
    assert_eq!(format("format/ascii_crlf_upper.stl"), Format::StlAscii);
}

#[test]
fn a_path_and_its_bytes_measure_alike() {
    for name in json("mesh_truth.json").as_object().unwrap().keys() {
        let by_path = measure_file(&folder().join(name), &Limits::default()).unwrap();
        assert_eq!(by_path, measure_bytes(&bytes(name), &Limits::default()).unwrap(), "{name}");
        assert_eq!(by_path, measure(&read(&bytes(name), &Limits::default()).unwrap()), "{name}");
    }
    for name in json("format/expected.json").as_object().unwrap().keys().map(|n| format!("format/{n}")) {
        let by_path = measure_file(&folder().join(&name), &Limits::default());
        assert_eq!(by_path, measure_bytes(&bytes(&name), &Limits::default()), "{name}");
    }
}

#[test]
fn zero_has_no_sign() {
    // Every other zero of the cube written as −0: still the same corners, in binary and in text.
    let mut binary = bytes("synthetic/cube_10.stl");
    let mut zeros = 0;
    for at in (0..12).flat_map(|t| (0..9).map(move |k| 84 + 50 * t + 12 + 4 * k)) {
        if binary[at..at + 4] == [0; 4] {
            zeros += 1;
            binary[at + 3] = if zeros % 2 == 0 { 0x80 } else { 0 };
        }
    }
    assert_eq!(zeros, 54);
    let found = measure_bytes(&binary, &Limits::default()).unwrap();
    assert!(found.problems.is_empty() && found.volume_mm3 == Some(1000.0), "{found:?}");
    let text = String::from_utf8(bytes("synthetic/cube_10_ascii.stl")).unwrap();
    let lines = text.lines().enumerate().map(|(at, line)| if at % 2 == 0 { line.replace(" 0", " -0") } else { line.to_owned() });
    let text = lines.collect::<Vec<_>>().join("\n");
    assert!(text.contains("-0"));
    let found = measure_bytes(text.as_bytes(), &Limits::default()).unwrap();
    assert!(found.problems.is_empty() && found.volume_mm3 == Some(1000.0), "{found:?}");
}
