//! Files that were made to do harm: they must cost little and end with a sentence.

use crate::shapes::block;
use crate::writers::{Naming, Ply, model_xml, obj, package, ply, whole_model, zipped};
use pourbook::mesh::{Limits, ReadError, measure_bytes, read, read_model_part};
use std::fmt::Write as _;
use std::time::{Duration, Instant};

/// Reads and must be refused soon.
#[track_caller]
fn refused(bytes: &[u8]) -> ReadError {
    let start = Instant::now();
    let error = read(bytes, &Limits::default()).map(|soup| soup.triangles().len()).unwrap_err();
    assert!(start.elapsed() < Duration::from_secs(20), "{:?}", start.elapsed());
    let words = error.to_string();
    assert!(words.len() < 400 && words.ends_with('.'), "{words}");
    error
}

#[test]
fn every_beginning_of_a_file_is_an_error_or_sound() {
    let cube = block([-1.0; 3], [1.5; 3]);
    let files = [
        obj(&cube, Naming::WithBoth).into_bytes(),
        ply(&cube, Ply::Ascii),
        ply(&cube, Ply::LeastFirst),
        ply(&cube, Ply::MostFirst),
        package(&whole_model(&cube)),
        zipped(&[("3D/3dmodel.model", whole_model(&cube).as_bytes())], false),
    ];
    for file in files {
        assert_eq!(read(&file, &Limits::default()).unwrap().triangles(), cube);
        let mut sound = 0;
        for length in 0..file.len() {
            match measure_bytes(&file[..length], &Limits::default()) {
                Ok(found) => {
                    assert!((1..=12).contains(&found.triangles) && found.size_mm.iter().all(|side| side.is_finite()));
                    sound += 1;
                }
                Err(error) => assert!(error.to_string().ends_with('.') || error.to_string().contains("expected"), "{error}"),
            }
        }
        // A text of lines may be cut between two of them; bytes and packages know their length.
        assert!(file.starts_with(b"#") || sound <= 2, "{sound} beginnings of {:?}", String::from_utf8_lossy(&file[..20]));
    }
    let xml = whole_model(&cube);
    for length in 0..xml.trim_end().len() {
        assert!(read_model_part(&xml.as_bytes()[..length], &Limits::default()).is_err(), "{length}");
    }
}

#[test]
fn counts_without_bytes_make_no_room() {
    let head = |vertices: &str, faces: &str, format: &str| {
        format!(
            "ply\nformat {format} 1.0\nelement vertex {vertices}\nproperty float x\nproperty float y\nproperty float z\nelement face {faces}\n\
             property list uint int vertex_indices\nend_header\n"
        )
    };
    for format in ["ascii", "binary_little_endian", "binary_big_endian"] {
        for count in ["4000000000", "18446744073709551615"] {
            let error = refused(head(count, "1", format).as_bytes());
            assert!(matches!(error, ReadError::AnnouncesTooMuch { ref what, .. } if what == "vertex"), "{error:?}");
            let error = refused(head("0", count, format).as_bytes());
            assert!(matches!(error, ReadError::AnnouncesTooMuch { ref what, .. } if what == "face"), "{error:?}");
        }
    }
    // A list of four thousand million corners.
    let binary = [head("0", "1", "binary_little_endian").as_bytes(), &u32::MAX.to_le_bytes(), &[0; 64]].concat();
    assert!(matches!(refused(&binary), ReadError::TableCutShort { whole: 0, .. }));
    let text = head("0", "1", "ascii") + "4294967295 1 2 3\n";
    assert!(matches!(refused(text.as_bytes()), ReadError::TableCutShort { whole: 0, .. }));
    let skipped = head("0", "1", "ascii").replace("element face", "element other 1\nproperty list int int a\nelement face")
        + "9223372036854775807 1 2\n";
    assert!(matches!(refused(skipped.as_bytes()), ReadError::TableCutShort { .. }));
    // A table without columns may be as long as it likes.
    let empty = head("0", "0", "ascii").replace("element vertex", "element nothing 18446744073709551615\nelement vertex");
    assert_eq!(refused(empty.as_bytes()), ReadError::NoGeometry);
    let long = format!("ply\nformat ascii 1.0\n{}", "comment a long story\n".repeat(100_000));
    assert!(matches!(refused(long.as_bytes()), ReadError::Refused { .. }));
}

#[test]
fn a_package_that_swells_is_stopped() {
    let model = whole_model(&block([0.0; 3], [1.0; 3]));
    let swollen = |by: &str, times: usize| package(&model.replace("<build>", &(by.repeat(times) + "<build>")));
    // Sixty million blanks, a long comment, many small tags: a few kB packed.
    let blanks = swollen(" ", 60_000_000);
    assert!(blanks.len() < 200_000);
    assert!(refused(&blanks).to_string().contains("too long"));
    let comment = model.replace("<build>", &format!("<!--{}--><build>", "x".repeat(30_000_000)));
    assert!(refused(&package(&comment)).to_string().contains("too long"));
    let tags = swollen("<a/>\n", 2_000_000);
    assert!(tags.len() < 100_000, "{}", tags.len());
    assert!(read(&tags, &Limits::default()).is_ok(), "ten million bytes are within the usual limit");
    let few = Limits { max_expanded_bytes: 1 << 20, ..Limits::default() };
    assert_eq!(read(&tags, &few).unwrap_err(), ReadError::TooLargeUnpacked { most: 1 << 20 });
    let exact = Limits { max_expanded_bytes: (model.len() + crate::writers::RELATIONSHIPS.len()) as u64, ..Limits::default() };
    assert!(read(&package(&model), &exact).is_ok());
    let short = Limits { max_expanded_bytes: exact.max_expanded_bytes - 1, ..exact };
    assert!(matches!(read(&package(&model), &short).unwrap_err(), ReadError::TooLargeUnpacked { .. }));
}

#[test]
fn objects_that_double_and_double_again_are_counted_first() {
    let mesh = crate::writers::mesh_xml(&block([0.0; 3], [1.0; 3]));
    let doubling = |levels: u32, first: &str| {
        let mut resources = format!("<object id=\"1\">{first}</object>");
        for level in 2..=levels {
            let below = level - 1;
            let _ = write!(
                resources,
                "<object id=\"{level}\"><components><component objectid=\"{below}\"/><component objectid=\"{below}\"/></components></object>"
            );
        }
        package(&model_xml("millimeter", &resources, &format!("<item objectid=\"{levels}\"/>")))
    };
    assert!(refused(&doubling(41, &mesh)).to_string().contains("too deep"));
    assert!(matches!(refused(&doubling(31, &mesh)), ReadError::TooManyTriangles { .. }));
    // Nothing, two to the thirtieth times.
    assert_eq!(refused(&doubling(31, "")), ReadError::NoGeometry);
    assert_eq!(read(&doubling(11, &mesh), &Limits::default()).unwrap().triangles().len(), 12 << 10);
    // A deep row whose parts are counted before the row is.
    let mut resources = format!("<object id=\"1\">{mesh}</object>");
    (2..=60).for_each(|id| {
        let _ = write!(resources, "<object id=\"{id}\"><components><component objectid=\"{}\"/></components></object>", id - 1);
    });
    let build: String = (1..=60).map(|id| format!("<item objectid=\"{id}\"/>")).collect();
    assert!(refused(&package(&model_xml("millimeter", &resources, &build))).to_string().contains("too deep"));
    for own in ["<component objectid=\"1\"/>", "<component objectid=\"2\"/>"] {
        let resources = format!(
            "<object id=\"1\"><components>{own}</components></object><object id=\"2\"><components><component objectid=\"1\"/></components></object>"
        );
        assert!(refused(&package(&model_xml("millimeter", &resources, "<item objectid=\"2\"/>"))).to_string().contains("in itself"));
    }
    // Wide rows of empty objects in wide rows.
    let wide = |id: u32, below: u32| {
        format!("<object id=\"{id}\"><components>{}</components></object>", format!("<component objectid=\"{below}\"/>").repeat(100_000))
    };
    let resources = "<object id=\"1\"></object>".to_owned() + &wide(2, 1) + &wide(3, 2) + &wide(4, 3);
    assert_eq!(refused(&package(&model_xml("millimeter", &resources, "<item objectid=\"4\"/>"))), ReadError::NoGeometry);
}

#[test]
fn deep_tags_and_many_attributes_are_stopped() {
    let deep = package(&model_xml("millimeter", &"<a>".repeat(100_000), ""));
    assert!(refused(&deep).to_string().contains("too deep"));
    let attributes: String = (0..90_000).fold(String::new(), |mut all, at| {
        let _ = write!(all, " a{at}=\"\"");
        all
    });
    let many = model_xml("millimeter", &format!("<object id=\"1\"{attributes}/>"), "");
    refused(&package(&many));
    let names: String = (0..2_000_000).map(|_| "<metadata/>").collect();
    assert_eq!(refused(&package(&model_xml("millimeter", &names, ""))), ReadError::NoGeometry);
}

#[test]
fn faces_that_never_end_are_stopped() {
    // A comb of ever longer teeth, whose every ear must be looked for: too long a search ends with a sentence.
    let teeth = 60_000;
    let mut text = String::new();
    for k in 0..teeth {
        let _ = writeln!(text, "v {k} {} 0", if k % 2 == 0 { 0.0 } else { 1.0 + f64::from(k) });
    }
    let _ = writeln!(text, "v {} -1 0\nv 0 -1 0\nf{}", teeth, (1..=teeth + 2).rev().map(|at| format!(" {at}")).collect::<String>());
    let start = Instant::now();
    match read(text.as_bytes(), &Limits::default()) {
        Ok(soup) => assert_eq!(soup.triangles().len(), teeth as usize),
        Err(error) => assert!(matches!(error, ReadError::IntricateFace { .. }), "{error:?}"),
    }
    assert!(start.elapsed() < Duration::from_secs(30), "{:?}", start.elapsed());
    // The same place, over and over.
    let same = format!("v 0 0 0\nf{}\n", " 1".repeat(200_000));
    let start = Instant::now();
    let _ = read(same.as_bytes(), &Limits::default());
    assert!(start.elapsed() < Duration::from_secs(30), "{:?}", start.elapsed());
}

#[test]
fn lists_of_a_package_that_lie_are_stopped() {
    let good = package(&whole_model(&block([0.0; 3], [1.0; 3])));
    // A record for large packages that announces thousands of millions of entries, behind many bytes of nothing.
    let mut record = b"PK\x06\x06".to_vec();
    record.extend(44_u64.to_le_bytes());
    record.extend([45, 0, 45, 0]);
    record.extend([0; 8]);
    record.extend(3_000_000_000_u64.to_le_bytes());
    record.extend(3_000_000_000_u64.to_le_bytes());
    record.extend((1_u64 << 60).to_le_bytes());
    record.extend(4_u64.to_le_bytes());
    let at = 8 << 20;
    let mut file = [&good[..4], &vec![0; at - 4], &record].concat();
    file.extend(b"PK\x06\x07\0\0\0\0");
    file.extend((at as u64).to_le_bytes());
    file.extend([1, 0, 0, 0]);
    file.extend(b"PK\x05\x06\0\0\0\0\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\0\0");
    assert!(refused(&file).to_string().contains("too many parts"));
    // Many ends of a list, each of which says that it is long.
    let mut ends = good[..4].to_vec();
    for _ in 0..100_000 {
        ends.extend(b"PK\x05\x06\0\0\0\0\xff\xfe\xff\xfe\0\0\x10\0\x04\0\0\0\0\0");
    }
    refused(&ends);
    // The same with a list of entries that are there.
    let entries = b"PK\x01\x02".iter().copied().chain([0; 42]).collect::<Vec<u8>>();
    let mut list = good[..4].to_vec();
    list.extend(entries.repeat(65_000));
    for _ in 0..3000 {
        list.extend(b"PK\x05\x06\0\0\0\0\xff\xfe\xff\xfe\0\0\x10\0\x04\0\0\0\0\0");
    }
    refused(&list);
}
