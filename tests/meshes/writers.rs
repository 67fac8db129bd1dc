//! Triangles written in every format that is read, each by plain rules of its format.

use pourbook::mesh::Triangle;
use std::collections::HashMap;
use std::fmt::Write as _;
use std::io::Write as _;

/// Corners once each, and triangles by their numbers.
pub fn numbered(triangles: &[Triangle]) -> (Vec<[f32; 3]>, Vec<[usize; 3]>) {
    let (mut corners, mut numbers) = (Vec::new(), HashMap::new());
    let faces = triangles.iter().map(|triangle| {
        triangle.map(|corner| {
            *numbers.entry(corner.map(f32::to_bits)).or_insert_with(|| {
                corners.push(corner);
                corners.len() - 1
            })
        })
    });
    let faces = faces.collect();
    (corners, faces)
}

/// How an OBJ names the corners of a face.
#[derive(Debug, Clone, Copy)]
pub enum Naming {
    Plain,
    WithNormals,
    WithTextures,
    WithBoth,
    Backward,
}

pub fn obj(triangles: &[Triangle], naming: Naming) -> String {
    let (corners, faces) = numbered(triangles);
    let mut text = String::from("# a comment with a \\\nmtllib nothing.mtl\no first\n");
    for [x, y, z] in &corners {
        let _ = writeln!(text, "v {x} {y} {z}");
    }
    let _ = writeln!(text, "vt 0 0\nvn 0 0 1\ng half\ns off");
    for (at, face) in faces.iter().enumerate() {
        if at == faces.len() / 2 {
            text.push_str("g other half\nusemtl grey\n");
        }
        text.push('f');
        for corner in face {
            let _ = match naming {
                Naming::Plain => write!(text, " {}", corner + 1),
                Naming::WithNormals => write!(text, " {}//1", corner + 1),
                Naming::WithTextures => write!(text, " {}/1", corner + 1),
                Naming::WithBoth => write!(text, " {}/1/1", corner + 1),
                Naming::Backward => write!(text, " -{}", corners.len() - corner),
            };
        }
        text.push('\n');
    }
    text
}

/// The bytes of numbers in a PLY.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ply {
    Ascii,
    LeastFirst,
    MostFirst,
}

/// The tables of a PLY as it is built: the header's lines, then numbers of which each knows its kind.
pub struct Tables {
    kind: Ply,
    pub head: String,
    pub body: Vec<u8>,
}

impl Tables {
    pub fn new(kind: Ply) -> Self {
        let name = match kind {
            Ply::Ascii => "ascii",
            Ply::LeastFirst => "binary_little_endian",
            Ply::MostFirst => "binary_big_endian",
        };
        Self { kind, head: format!("ply\nformat {name} 1.0\ncomment made here\n"), body: Vec::new() }
    }

    pub fn line(&mut self, line: &str) -> &mut Self {
        self.head.push_str(line);
        self.head.push('\n');
        self
    }

    pub fn put<const N: usize>(&mut self, word: impl std::fmt::Display, least_first: [u8; N]) -> &mut Self {
        let mut bytes = least_first;
        match self.kind {
            Ply::Ascii => self.body.extend(format!("{word} ").bytes()),
            Ply::LeastFirst => self.body.extend(bytes),
            Ply::MostFirst => {
                bytes.reverse();
                self.body.extend(bytes);
            }
        }
        self
    }

    pub fn byte(&mut self, x: u8) -> &mut Self {
        self.put(x, x.to_le_bytes())
    }

    pub fn int(&mut self, x: i32) -> &mut Self {
        self.put(x, x.to_le_bytes())
    }

    pub fn float(&mut self, x: f32) -> &mut Self {
        self.put(x, x.to_le_bytes())
    }

    pub fn double(&mut self, x: f64) -> &mut Self {
        self.put(x, x.to_le_bytes())
    }

    pub fn row(&mut self) -> &mut Self {
        if self.kind == Ply::Ascii {
            self.body.push(b'\n');
        }
        self
    }

    pub fn done(&self) -> Vec<u8> {
        [self.head.as_bytes(), b"end_header\n", &self.body].concat()
    }
}

pub fn ply(triangles: &[Triangle], kind: Ply) -> Vec<u8> {
    let (corners, faces) = numbered(triangles);
    let mut file = Tables::new(kind);
    file.line(&format!("element vertex {}", corners.len()));
    file.line("property float x").line("property float y").line("property float z");
    file.line(&format!("element face {}", faces.len())).line("property list uchar int vertex_indices");
    for [x, y, z] in corners {
        file.float(x).float(y).float(z).row();
    }
    for face in faces {
        file.byte(3);
        for corner in face {
            file.int(corner as i32);
        }
        file.row();
    }
    file.done()
}

pub const CORE: &str = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

/// The mesh of a 3MF object.
pub fn mesh_xml(triangles: &[Triangle]) -> String {
    let (corners, faces) = numbered(triangles);
    let mut xml = String::from("<mesh><vertices>\n");
    for [x, y, z] in corners {
        let _ = writeln!(xml, "<vertex x=\"{x}\" y=\"{y}\" z=\"{z}\"/>");
    }
    xml.push_str("</vertices><triangles>\n");
    for [a, b, c] in faces {
        let _ = writeln!(xml, "<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\" pid=\"1\"/>");
    }
    xml + "</triangles></mesh>"
}

/// The XML of a model in a unit, from what stands in its resources and its build.
pub fn model_xml(unit: &str, resources: &str, build: &str) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model unit=\"{unit}\" xml:lang=\"en\" xmlns=\"{CORE}\">\n<metadata name=\"Title\">a &amp; b</metadata>\n\
         <resources>{resources}</resources>\n<build>{build}</build></model>\n"
    )
}

/// One object, built once.
pub fn whole_model(triangles: &[Triangle]) -> String {
    model_xml("millimeter", &format!("<object id=\"1\" type=\"model\">{}</object>", mesh_xml(triangles)), "<item objectid=\"1\"/>")
}

pub const RELATIONSHIPS: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">\
    <Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/></Relationships>";

/// A package of parts.
pub fn zipped(parts: &[(&str, &[u8])], packed: bool) -> Vec<u8> {
    let method = if packed { zip::CompressionMethod::Deflated } else { zip::CompressionMethod::Stored };
    let options = zip::write::SimpleFileOptions::default().compression_method(method);
    let mut writer = zip::ZipWriter::new(std::io::Cursor::new(Vec::new()));
    for (name, bytes) in parts {
        writer.start_file(*name, options).unwrap();
        writer.write_all(bytes).unwrap();
    }
    writer.finish().unwrap().into_inner()
}

/// The package of a model.
pub fn package(model: &str) -> Vec<u8> {
    zipped(&[("_rels/.rels", RELATIONSHIPS.as_bytes()), ("3D/3dmodel.model", model.as_bytes())], true)
}
