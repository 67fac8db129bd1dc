//! 3MF: units, transforms worked by hand, objects put together, and what a package may not do.

use crate::files::near;
use crate::shapes::block;
use crate::writers::{RELATIONSHIPS, mesh_xml, model_xml, package, whole_model, zipped};
use pourbook::mesh::{Limits, Place, ReadError, Triangle, measure_bytes, read, read_model_part};

fn of(xml: &str) -> Result<Vec<Triangle>, ReadError> {
    read_model_part(xml.as_bytes(), &Limits::default()).map(|soup| soup.triangles().to_vec())
}

fn of_package(bytes: &[u8]) -> Result<Vec<Triangle>, ReadError> {
    read(bytes, &Limits::default()).map(|soup| soup.triangles().to_vec())
}

fn cube() -> Vec<Triangle> {
    block([0.0; 3], [1.0, 2.0, 3.0])
}

fn object(id: u32, kind: &str) -> String {
    format!("<object id=\"{id}\" type=\"{kind}\">{}</object>", mesh_xml(&cube()))
}

/// A single triangle as an object, for transforms.
const TRIANGLE: &str = "<object id=\"1\"><mesh><vertices><vertex x=\"1\" y=\"0\" z=\"0\"/><vertex x=\"0\" y=\"2\" z=\"0\"/><vertex x=\"0\" y=\"0\" z=\"3\"/></vertices>\
    <triangles><triangle v1=\"0\" v2=\"1\" v3=\"2\"/></triangles></mesh></object>";

#[test]
fn every_unit_comes_to_mm() {
    // Lengths of the units in mm: one inch is 25.4 mm by definition, a foot twelve of them.
    for (unit, mm) in [("micron", 0.001), ("millimeter", 1.0), ("centimeter", 10.0), ("inch", 25.4), ("foot", 304.8), ("meter", 1000.0)] {
        let file = package(&model_xml(unit, &object(1, "model"), "<item objectid=\"1\"/>"));
        let found = measure_bytes(&file, &Limits::default()).unwrap();
        for (side, wanted) in found.size_mm.into_iter().zip([1.0, 2.0, 3.0]) {
            near(side, wanted * mm, 1e-7, unit);
        }
        near(found.volume_mm3.unwrap(), 6.0 * mm * mm * mm, 3e-7, unit);
    }
    let without = whole_model(&cube()).replace(" unit=\"millimeter\"", "");
    assert_eq!(of(&without).unwrap(), cube());
    assert!(matches!(of(&model_xml("cubit", "", "")).unwrap_err(), ReadError::Model { .. }));
}

#[test]
fn a_transform_turns_scales_and_shifts() {
    // Rows of the matrix: where the x, y and z axes go. Here x → 2y, y → −x, z → z, then 10, 20, 30 further.
    let item = "<item objectid=\"1\" transform=\"0 2 0 -1 0 0 0 0 1 10 20 30\"/>";
    let found = of(&model_xml("millimeter", TRIANGLE, item)).unwrap();
    assert_eq!(found, [[[10.0, 22.0, 30.0], [8.0, 20.0, 30.0], [10.0, 20.0, 33.0]]]);
    // The shift is in the model's unit too.
    let found = of(&model_xml("centimeter", TRIANGLE, item)).unwrap();
    assert_eq!(found, [[[100.0, 220.0, 300.0], [80.0, 200.0, 300.0], [100.0, 200.0, 330.0]]]);
}

#[test]
fn the_inner_transform_comes_first() {
    let resources = format!(
        "{TRIANGLE}<object id=\"2\"><components><component objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 1 0 0\"/></components></object>"
    );
    // Shifted by one along x, then a quarter turn about z: x → y, y → −x.
    let found = of(&model_xml("millimeter", &resources, "<item objectid=\"2\" transform=\"0 1 0 -1 0 0 0 0 1 0 0 0\"/>")).unwrap();
    assert_eq!(found, [[[0.0, 2.0, 0.0], [-2.0, 1.0, 0.0], [0.0, 1.0, 3.0]]]);
}

#[test]
fn a_mirror_keeps_the_outside_outside() {
    let mirror = "transform=\"-1 0 0 0 1 0 0 0 1 0 0 0\"";
    let resources =
        object(1, "model") + &format!("<object id=\"2\"><components><component objectid=\"1\" {mirror}/></components></object>");
    for build in [format!("<item objectid=\"1\" {mirror}/>"), "<item objectid=\"2\"/>".into(), format!("<item objectid=\"2\" {mirror}/>")] {
        let found = measure_bytes(&package(&model_xml("millimeter", &resources, &build)), &Limits::default()).unwrap();
        assert!(found.problems.is_empty(), "{build}: {:?}", found.problems);
        near(found.plain_sum_mm3.unwrap(), 6.0, 1e-12, "positive: the outside is outside");
    }
    let twice = of(&model_xml("millimeter", &resources, &format!("<item objectid=\"2\" {mirror}/>"))).unwrap();
    assert_eq!(twice, cube(), "mirrored twice is as it was, −0 too");
}

#[test]
fn objects_are_taken_together_and_supports_left_out() {
    let shifted = |id: u32, by: u32| format!("<item objectid=\"{id}\" transform=\"1 0 0 0 1 0 0 0 1 {by} 0 0\"/>");
    let both = object(1, "model") + &object(2, "solidsupport") + &object(3, "support") + &object(4, "other");
    let put = "<object id=\"5\"><components><component objectid=\"1\"/><component objectid=\"3\"/></components></object>";
    let build = shifted(1, 0) + &shifted(2, 10) + &shifted(3, 20) + &shifted(4, 30) + &shifted(5, 40);
    let found = of(&model_xml("millimeter", &(both.clone() + put), &build)).unwrap();
    assert_eq!(found.len(), 3 * 12);
    assert_eq!(of(&model_xml("millimeter", &both, &shifted(3, 0))).unwrap_err(), ReadError::NoGeometry);
    // What is not built is not there.
    assert_eq!(of(&model_xml("millimeter", &both, "")).unwrap_err(), ReadError::NoGeometry);
}

#[test]
fn what_other_extensions_add_is_passed_over() {
    let extra = format!(
        "<basematerials id=\"9\"><base name=\"a\" displaycolor=\"#ffffff\"/></basematerials>\
         <m:colorgroup id=\"8\"><m:color color=\"#000000\"/><mesh><vertices><vertex x=\"x\"/></vertices></mesh></m:colorgroup>{}",
        object(1, "model").replace("<mesh>", "<metadatagroup><metadata name=\"n\">x</metadata></metadatagroup><mesh>").replace(
            "</triangles></mesh>",
            "</triangles><b:beamlattice><b:vertices><b:vertex x=\"7\"/></b:vertices></b:beamlattice><s:triangles><s:triangle v1=\"99\"/></s:triangles></mesh>"
        )
    );
    assert_eq!(of(&model_xml("millimeter", &extra, "<item objectid=\"1\" printable=\"0\"/>")).unwrap(), cube());
    // The core names may stand under a prefix.
    let model = whole_model(&cube()).replace("xmlns=", "xmlns:c=");
    let prefixed = model.replace('<', "<c:").replace("<c:/", "</c:").replace("<c:?", "<?");
    assert!(prefixed.contains("<c:vertex ") && prefixed.contains("</c:model>"), "{prefixed}");
    assert_eq!(of(&prefixed).unwrap(), cube());
}

#[test]
fn an_extension_that_is_needed_and_not_read_is_refused() {
    let needing = |name: &str, space: &str| {
        whole_model(&cube()).replace("xml:lang=\"en\"", &format!("requiredextensions=\"{name}\" xmlns:{name}=\"{space}\""))
    };
    let beams = of(&needing("b", "http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02")).unwrap_err();
    assert!(beams.to_string().contains("needs the extension \"b\""), "{beams}");
    assert!(of(&needing("p", "http://schemas.microsoft.com/3dmanufacturing/production/2015/06")).is_ok());
}

#[test]
fn a_model_may_lie_in_several_files() {
    let path = "p:path=\"/3D/Objects/one.model\"";
    let first = |build: &str| {
        model_xml("millimeter", &format!("<object id=\"1\"><components><component {path} objectid=\"1\"/></components></object>"), build)
    };
    let other = whole_model(&cube());
    let made = |first: &str, other: &str| {
        zipped(
            &[
                ("_rels/.rels", RELATIONSHIPS.as_bytes()),
                ("3D/3dmodel.model", first.as_bytes()),
                ("3D/Objects/one.model", other.as_bytes()),
            ],
            true,
        )
    };
    let one = "<item objectid=\"1\"/>";
    assert_eq!(of_package(&made(&first(one), &other)).unwrap(), cube());
    // An item may name it as well; the other file's own build does not count.
    assert_eq!(of_package(&made(&first(&format!("{one}<item {path} objectid=\"1\"/>")), &other)).unwrap().len(), 24);
    let inch = made(&first(one), &other.replace("millimeter", "inch"));
    assert!(of_package(&inch).unwrap_err().to_string().contains("different units"));
    let missing = zipped(&[("3D/3dmodel.model", first(one).as_bytes())], true);
    assert!(of_package(&missing).unwrap_err().to_string().contains("no part \"3D/Objects/one.model\""));
    assert!(matches!(of(&first(one)).unwrap_err(), ReadError::Package { .. }));
    let climbing = first(one).replace("/3D/Objects", "/3D/../..");
    assert!(of_package(&package(&climbing)).unwrap_err().to_string().contains("no path within the package"));
}

#[test]
fn the_model_is_found_through_the_relationships_or_where_it_usually_lies() {
    let model = whole_model(&cube());
    assert_eq!(of_package(&zipped(&[("3D/3dmodel.model", model.as_bytes())], false)).unwrap(), cube());
    assert_eq!(of_package(&zipped(&[("3d/3DModel.Model", model.as_bytes())], false)).unwrap(), cube(), "capitals do not matter");
    let elsewhere = RELATIONSHIPS.replace("/3D/3dmodel.model", "models/a.xml");
    let parts = |rels: &str, name: &str| zipped(&[(name, model.as_bytes()), ("_rels/.rels", rels.as_bytes())], true);
    assert_eq!(of_package(&parts(&elsewhere, "models/a.xml")).unwrap(), cube());
    let other_kind = RELATIONSHIPS.replace("/3dmodel\"", "/thumbnail\"");
    assert_eq!(of_package(&parts(&other_kind, "3D/3dmodel.model")).unwrap(), cube());
    assert!(of_package(&parts(&elsewhere, "3D/3dmodel.model")).unwrap_err().to_string().contains("no part \"models/a.xml\""));
    for path in ["../3dmodel.model", "/3D/../../etc/passwd", "3D\\..\\a", "file:///etc/passwd", "3D//a", "3D/./a", "%2e%2e/a", ""] {
        let rels = RELATIONSHIPS.replace("/3D/3dmodel.model", path);
        let error = of_package(&parts(&rels, "3D/3dmodel.model")).unwrap_err();
        assert!(error.to_string().contains("no path within the package"), "{path}: {error}");
    }
    let outside = RELATIONSHIPS.replace("Id=", "TargetMode=\"External\" Id=");
    assert!(of_package(&parts(&outside, "3D/3dmodel.model")).unwrap_err().to_string().contains("outside the package"));
}

#[test]
fn what_is_wrong_in_a_model_is_said() {
    let good = whole_model(&cube());
    let wrong = |from: &str, to: &str| {
        assert!(good.contains(from), "{from}");
        of(&good.replacen(from, to, 1)).unwrap_err()
    };
    let place = Place::Object { id: 1, triangle: 1 };
    let (first, _) = good.split_once("v1=\"0\"").unwrap();
    assert!(!first.contains("v1="), "the first triangle begins with corner 0");
    assert_eq!(wrong("v1=\"0\"", "v1=\"8\""), ReadError::NoSuchCorner { place, said: 8, there: 8 });
    assert!(matches!(wrong("v1=\"0\"", "v1=\"-1\""), ReadError::Model { .. }));
    assert!(matches!(wrong("v1=\"0\"", "v1=\"4294967296\""), ReadError::Model { .. }));
    assert!(matches!(wrong("v1=\"0\"", ""), ReadError::Model { .. }));
    assert!(matches!(wrong("x=\"0\"", "x=\"0,5\""), ReadError::Model { line: 5, .. }));
    assert!(matches!(wrong("x=\"0\"", "x=\"0\" x=\"1\""), ReadError::Model { .. }));
    assert!(matches!(wrong("x=\"0\"", "x=\"&#48;\""), ReadError::Model { .. }));
    assert_eq!(wrong("x=\"0\"", "x=\"1e400\""), ReadError::NotFinite { triangle: 1 });
    assert_eq!(wrong("x=\"0\"", "x=\"nan\""), ReadError::NotFinite { triangle: 1 });
    assert!(matches!(wrong("type=\"model\"", "type=\"thing\""), ReadError::Model { .. }));
    assert!(matches!(wrong("<item objectid=\"1\"", "<item"), ReadError::Model { .. }));
    for transform in ["", "1 0 0", "1 0 0 0 1 0 0 0 1 0 0 0 0", "1 0 0 0 1 0 0 0 1 0 0 inf", "a b c d e f g h i j k l"] {
        assert!(matches!(wrong("<item ", &format!("<item transform=\"{transform}\" ")), ReadError::Model { .. }), "{transform}");
    }
    assert!(wrong("<item objectid=\"1\"", "<item objectid=\"2\"").to_string().contains("object 2 is named and is not there"));
    let twice = model_xml("millimeter", &(object(1, "model") + &object(1, "model")), "");
    assert!(of(&twice).unwrap_err().to_string().contains("same number"));
    assert!(matches!(of("").unwrap_err(), ReadError::Model { .. }));
    assert!(matches!(of("<html></html>").unwrap_err(), ReadError::Model { .. }));
    assert!(matches!(of(&format!("{good}{good}")).unwrap_err(), ReadError::Model { .. }));
    assert!(matches!(wrong("</vertices>", "</vertex>"), ReadError::Model { .. }));
    assert!(matches!(wrong("UTF-8", "UTF-16"), ReadError::Model { .. }));
}

#[test]
fn definitions_are_refused() {
    let model = whole_model(&cube());
    let (head, rest) = model.split_at(model.find("<model").unwrap());
    let doctype = format!("{head}<!DOCTYPE model [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>{rest}");
    let error = of(&doctype.replace("a &amp; b", "&b;")).unwrap_err();
    assert!(error.to_string().contains("DOCTYPE"), "{error}");
}

#[test]
fn locked_and_unusual_packages_are_said() {
    let good = zipped(&[("3D/3dmodel.model", whole_model(&cube()).as_bytes())], false);
    // The bit that says a part is locked, and the method of packing, in the local header and in the list (APPNOTE 4.3.7, 4.3.12).
    let list = good.windows(4).rposition(|w| w == b"PK\x01\x02").unwrap();
    let with = |local: usize, listed: usize, value: u8| {
        let mut bytes = good.clone();
        (bytes[local], bytes[list + listed]) = (value, value);
        of_package(&bytes).unwrap_err().to_string()
    };
    assert!(with(6, 8, 1).contains("password"), "{}", with(6, 8, 1));
    assert!(with(8, 10, 12).contains("unusual way"), "{}", with(8, 10, 12));
    // A changed byte in a stored part is noticed by its checksum.
    let mut bytes = good.clone();
    let at = bytes.windows(10).position(|w| w == b"a &amp; b<").expect("the title");
    bytes[at] ^= 1;
    assert!(of_package(&bytes).unwrap_err().to_string().contains("damaged"));
}
