//! The same solid in every format: the same triangles and the same figures.

use crate::files::{bytes, json};
use crate::shapes::{ball, block, stl, torus};
use crate::writers::{Naming, Ply, obj, package, ply, whole_model};
use pourbook::mesh::{Format, Limits, Triangle, measure, measure_bytes, measure_file, read, read_file, read_model_part};

/// The triangles in every way of writing them.
fn written(triangles: &[Triangle]) -> Vec<(&'static str, Format, Vec<u8>)> {
    let plain = obj(triangles, Naming::Plain);
    vec![
        ("normals", Format::Obj, obj(triangles, Naming::WithNormals).into_bytes()),
        ("textures", Format::Obj, obj(triangles, Naming::WithTextures).into_bytes()),
        ("both", Format::Obj, obj(triangles, Naming::WithBoth).into_bytes()),
        ("backward", Format::Obj, obj(triangles, Naming::Backward).into_bytes()),
        ("CRLF", Format::Obj, plain.replace("\\\n", "\n").replace('\n', "\r\n").into_bytes()),
        ("CR", Format::Obj, plain.replace("\\\n", "\n").replace('\n', "\r").into_bytes()),
        ("no last line end", Format::Obj, plain.trim_end().as_bytes().to_vec()),
        ("goes on", Format::Obj, plain.replace("\nf ", "\nf \\\n").replace("\nv ", "\nv\\\n ").into_bytes()),
        ("plain", Format::Obj, plain.into_bytes()),
        ("ascii", Format::PlyAscii, ply(triangles, Ply::Ascii)),
        ("little", Format::PlyBinary, ply(triangles, Ply::LeastFirst)),
        ("big", Format::PlyBinary, ply(triangles, Ply::MostFirst)),
        ("package", Format::ThreeMf, package(&whole_model(triangles))),
    ]
}

fn held_against_stl(name: &str, triangles: &[Triangle]) {
    let of_stl = read(&stl(triangles), &Limits::default()).unwrap();
    let figures = measure(&of_stl);
    for (way, format, file) in written(triangles) {
        let soup = read(&file, &Limits::default()).unwrap_or_else(|error| panic!("{name}, {format:?} {way}: {error}"));
        assert_eq!(soup.format(), format, "{name}, {way}");
        // Bit for bit: zeros too.
        let bits = |triangles: &[Triangle]| -> Vec<u32> { triangles.as_flattened().as_flattened().iter().map(|x| x.to_bits()).collect() };
        assert!(bits(soup.triangles()) == bits(of_stl.triangles()), "{name}, {format:?} {way}");
        assert_eq!(measure_bytes(&file, &Limits::default()).unwrap(), figures, "{name}, {format:?} {way}");
    }
    let soup = read_model_part(whole_model(triangles).as_bytes(), &Limits::default()).unwrap();
    assert_eq!(soup.triangles(), of_stl.triangles(), "{name}");
}

#[test]
fn shapes_are_the_same_in_every_format() {
    held_against_stl("cube", &block([-5.0; 3], [5.0; 3]));
    held_against_stl("ball", &ball(6.0, 24, 48));
    held_against_stl("ring", &torus(9.0, 1.1, 60, 24));
    let minus_zero = block([-0.0, -0.0, 0.0], [1.0, 2.0, 3.0]);
    held_against_stl("a corner at −0", &minus_zero);
}

#[test]
fn the_fixtures_are_the_same_in_every_format() {
    let names: Vec<String> = json("mesh_truth.json").as_object().unwrap().keys().cloned().collect();
    let small: Vec<&String> = names.iter().filter(|name| bytes(name).len() < 1_000_000).collect();
    assert!(small.len() > 15, "{}", small.len());
    for name in small {
        held_against_stl(name, read(&bytes(name), &Limits::default()).unwrap().triangles());
    }
}

#[test]
fn a_path_measures_as_its_bytes_in_every_format() {
    let folder = tempfile::tempdir().unwrap();
    for (way, format, file) in written(&torus(9.0, 1.1, 30, 12)) {
        // The name says nothing: the bytes do.
        let path = folder.path().join("pattern.stl");
        std::fs::write(&path, &file).unwrap();
        assert_eq!(measure_file(&path, &Limits::default()).unwrap(), measure_bytes(&file, &Limits::default()).unwrap(), "{way}");
        assert_eq!(read_file(&path, &Limits::default()).unwrap().format(), format, "{way}");
    }
}

#[test]
fn formats_have_lasting_names() {
    let all = [Format::StlBinary, Format::StlAscii, Format::Obj, Format::PlyAscii, Format::PlyBinary, Format::ThreeMf];
    assert_eq!(all.map(Format::key), ["stl-binary", "stl-ascii", "obj", "ply-ascii", "ply-binary", "3mf"]);
}
