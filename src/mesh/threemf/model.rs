//! The XML of a model: objects with their corners and triangles, what they are put together from, and the build.

use super::matrix::Matrix;
use super::meter::{Meter, refused};
use super::package::part_name;
use crate::mesh::read_error::shortened;
use crate::mesh::{Limits, Place, ReadError};
use quick_xml::events::{BytesStart, Event};
use std::collections::BTreeMap;
use std::io::BufRead;
use std::ops::Range;

/// Extensions that change nothing about the shape, or are followed: the production and the materials extension.
const TAKEN_EXTENSIONS: &[&[u8]] =
    &[b"http://schemas.microsoft.com/3dmanufacturing/production/2015/06", b"http://schemas.microsoft.com/3dmanufacturing/material/2015/02"];

/// The most files a model may be spread over.
const MOST_PARTS: usize = 4096;
/// The most objects, and the most places where one is named.
const MOST_USES: usize = 1_000_000;

/// All objects of a model, from one file or several.
pub(super) struct Model {
    parts: Vec<String>,
    part_numbers: BTreeMap<String, usize>,
    uses: usize,
    /// The unit of the first file, in mm.
    pub unit_mm: f64,
    pub objects: Vec<Object>,
    /// Objects by file and number.
    pub numbers: BTreeMap<(usize, u32), usize>,
    pub corners: Vec<[f64; 3]>,
    pub triangles: Vec<[u32; 3]>,
    pub items: Vec<Use>,
    limits: Limits,
}

/// An object: a mesh, or others put together.
pub(super) struct Object {
    pub id: u32,
    pub is_left_out: bool,
    pub corners: Range<usize>,
    pub triangles: Range<usize>,
    pub components: Vec<Use>,
}

/// An object put somewhere.
#[derive(Debug, Clone, Copy)]
pub(super) struct Use {
    pub part: usize,
    pub id: u32,
    pub transform: Matrix,
}

/// Which tag the text is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum In {
    Model,
    Resources,
    Object,
    Mesh,
    Corners,
    Corner,
    Triangles,
    Triangle,
    Components,
    Component,
    Build,
    Item,
    Nothing,
}

impl In {
    /// Where a tag leads. What is not known is passed over with all that lies in it.
    fn enter(self, name: &[u8]) -> Self {
        match (self, name) {
            (Self::Model, b"resources") => Self::Resources,
            (Self::Model, b"build") => Self::Build,
            (Self::Resources, b"object") => Self::Object,
            (Self::Object, b"mesh") => Self::Mesh,
            (Self::Object, b"components") => Self::Components,
            (Self::Mesh, b"vertices") => Self::Corners,
            (Self::Mesh, b"triangles") => Self::Triangles,
            (Self::Corners, b"vertex") => Self::Corner,
            (Self::Triangles, b"triangle") => Self::Triangle,
            (Self::Components, b"component") => Self::Component,
            (Self::Build, b"item") => Self::Item,
            _ => Self::Nothing,
        }
    }
}

impl Model {
    /// A model that begins in a part of the package.
    pub fn new(limits: &Limits, first_part: String) -> Self {
        Self {
            part_numbers: BTreeMap::from([(first_part.clone(), 0)]),
            parts: vec![first_part],
            uses: 0,
            unit_mm: 1.0,
            objects: Vec::new(),
            numbers: BTreeMap::new(),
            corners: Vec::new(),
            triangles: Vec::new(),
            items: Vec::new(),
            limits: *limits,
        }
    }

    /// The name of a file of the model, of those that are known of so far.
    pub fn part(&self, at: usize) -> Option<&str> {
        self.parts.get(at).map(String::as_str)
    }

    /// Reads the text of a file of the model.
    pub fn read<R: BufRead>(&mut self, meter: &mut Meter<R>, part: usize) -> Result<(), ReadError> {
        let mut open: Vec<In> = Vec::new();
        let mut prefix = None;
        let mut has_root = false;
        loop {
            let line = meter.line();
            let event = meter.next()?;
            let (tag, is_empty) = match &event {
                Event::Start(tag) => (tag, false),
                Event::Empty(tag) => (tag, true),
                Event::End(_) => {
                    if open.pop() == Some(In::Object) {
                        self.close_object()?;
                    }
                    continue;
                }
                Event::Eof if !has_root => return Err(refused(line, "it holds no model")),
                Event::Eof => return Ok(()),
                _ => continue,
            };
            let of = tag.name();
            let (own_prefix, name) = (of.prefix().map(|prefix| prefix.as_ref().to_vec()), of.local_name());
            let place = match open.last() {
                Some(within) if own_prefix == prefix => within.enter(name.as_ref()),
                Some(_) => In::Nothing,
                None if has_root || name.as_ref() != b"model" => return Err(refused(line, "it holds no model, or more than one")),
                None => {
                    (has_root, prefix) = (true, own_prefix);
                    In::Model
                }
            };
            self.take(place, tag, part).map_err(|fault| fault.on(line))?;
            if !is_empty {
                open.push(place);
            } else if place == In::Object {
                self.close_object()?;
            }
        }
    }

    fn take(&mut self, place: In, tag: &BytesStart, part: usize) -> Result<(), Fault> {
        match place {
            In::Model => self.begin(tag, part),
            In::Object => self.open_object(tag, part),
            In::Corner => {
                if self.corners.len() as u64 >= self.limits.corners() {
                    return Err(ReadError::TooManyCorners { most: self.limits.corners() }.into());
                }
                let [x, y, z] = attributes(tag, [b"x", b"y", b"z"])?;
                self.corners.push([number(x)?, number(y)?, number(z)?]);
                Ok(())
            }
            In::Triangle => {
                if self.triangles.len() >= self.limits.triangles() as usize {
                    return Err(ReadError::TooManyTriangles { most: self.limits.triangles() }.into());
                }
                let [a, b, c] = attributes(tag, [b"v1", b"v2", b"v3"])?;
                self.triangles.push([number(a)?, number(b)?, number(c)?]);
                Ok(())
            }
            In::Component => {
                let used = self.used(tag, part)?;
                if let Some(object) = self.objects.last_mut() {
                    object.components.push(used);
                }
                Ok(())
            }
            // Only the first file builds; the others lend it their objects.
            In::Item if part == 0 => {
                let used = self.used(tag, part)?;
                self.items.push(used);
                Ok(())
            }
            _ => Ok(()),
        }
    }

    /// The model's own tag: its unit, and what it says must be understood.
    fn begin(&mut self, tag: &BytesStart, part: usize) -> Result<(), Fault> {
        let mut unit_mm = 1.0;
        let mut needed = Vec::new();
        let mut spaces = BTreeMap::new();
        for attribute in tag.attributes().take(MOST_ATTRIBUTES) {
            let attribute = attribute.map_err(|_| Fault::Says("a tag cannot be read"))?;
            match attribute.key.as_ref() {
                b"unit" => unit_mm = unit(&attribute.value).ok_or(Fault::Says("its unit of length is not known"))?,
                b"requiredextensions" => needed = attribute.value.to_vec(),
                key => {
                    if let Some(name) = key.strip_prefix(b"xmlns:") {
                        spaces.insert(name.to_vec(), attribute.value.to_vec());
                    }
                }
            }
        }
        for name in needed.split(u8::is_ascii_whitespace).filter(|name| !name.is_empty()) {
            let is_taken = spaces.get(name).is_some_and(|space| TAKEN_EXTENSIONS.contains(&space.as_slice()));
            if !is_taken {
                let words = format!("it needs the extension \"{}\", which is not read", shortened(name));
                return Err(Fault::SaysThat(words));
            }
        }
        if part == 0 {
            self.unit_mm = unit_mm;
        } else if unit_mm != self.unit_mm {
            return Err(Fault::Says("its files are in different units"));
        }
        Ok(())
    }

    fn open_object(&mut self, tag: &BytesStart, part: usize) -> Result<(), Fault> {
        let [id, kind] = attributes(tag, [b"id", b"type"])?;
        let id = number(id)?;
        if self.objects.len() >= MOST_USES {
            return Err(Fault::Says("it has too many objects"));
        }
        let is_left_out = match kind.as_deref().unwrap_or(b"model") {
            b"model" | b"solidsupport" | b"surface" => false,
            b"support" | b"other" => true,
            _ => return Err(Fault::Says("an object is of a kind that is not known")),
        };
        if self.numbers.insert((part, id), self.objects.len()).is_some() {
            return Err(Fault::Says("two objects have the same number"));
        }
        let (corners, triangles) = (self.corners.len(), self.triangles.len());
        let object = Object { id, is_left_out, corners: corners..corners, triangles: triangles..triangles, components: Vec::new() };
        self.objects.push(object);
        Ok(())
    }

    /// The mesh of the last object is whole: its triangles may only name its own corners.
    fn close_object(&mut self) -> Result<(), ReadError> {
        let Some(object) = self.objects.last_mut() else { return Ok(()) };
        object.corners.end = self.corners.len();
        object.triangles.end = self.triangles.len();
        let there = object.corners.len() as u64;
        for (at, triangle) in (1..).zip(&self.triangles[object.triangles.clone()]) {
            if let Some(said) = triangle.iter().find(|&&corner| u64::from(corner) >= there) {
                let place = Place::Object { id: object.id, triangle: at };
                return Err(ReadError::NoSuchCorner { place, said: i64::from(*said), there });
            }
        }
        Ok(())
    }

    fn used(&mut self, tag: &BytesStart, part: usize) -> Result<Use, Fault> {
        self.uses += 1;
        if self.uses > MOST_USES {
            return Err(Fault::Says("it is put together from too many objects"));
        }
        let [id, transform, path] = attributes(tag, [b"objectid", b"transform", PATH])?;
        let transform = match transform.as_deref().map(std::str::from_utf8) {
            None => Matrix::NONE,
            Some(text) => text.ok().and_then(Matrix::parse).ok_or(Fault::Says("a transform is not twelve numbers"))?,
        };
        let part = match path.as_deref() {
            None => part,
            Some(path) => self.part_at(&String::from_utf8_lossy(path))?,
        };
        Ok(Use { part, id: number(id)?, transform })
    }

    /// The file of a path, which is read in its turn.
    fn part_at(&mut self, path: &str) -> Result<usize, Fault> {
        let name = part_name(path)?;
        if let Some(at) = self.part_numbers.get(&name) {
            return Ok(*at);
        }
        if self.parts.len() >= MOST_PARTS {
            return Err(Fault::Says("the model lies in too many files"));
        }
        self.part_numbers.insert(name.clone(), self.parts.len());
        self.parts.push(name);
        Ok(self.parts.len() - 1)
    }
}

/// Why a tag is refused.
enum Fault {
    Says(&'static str),
    SaysThat(String),
    Told(ReadError),
}

impl Fault {
    fn on(self, line: u64) -> ReadError {
        match self {
            Self::Says(reason) => refused(line, reason),
            Self::SaysThat(reason) => refused(line, reason),
            Self::Told(error) => error,
        }
    }
}

impl From<ReadError> for Fault {
    fn from(error: ReadError) -> Self {
        Self::Told(error)
    }
}

/// The most attributes of a tag that are looked at.
const MOST_ATTRIBUTES: usize = 64;

/// The path of the production extension, under whatever prefix.
const PATH: &[u8] = b":path";

type Value<'a> = Option<std::borrow::Cow<'a, [u8]>>;

/// The values of a tag's attributes with these names, without a prefix; a name that begins with a colon stands under any prefix.
fn attributes<'a, const N: usize>(tag: &'a BytesStart, names: [&[u8]; N]) -> Result<[Value<'a>; N], Fault> {
    let mut values = [const { None }; N];
    for attribute in tag.attributes().take(MOST_ATTRIBUTES) {
        let attribute = attribute.map_err(|_| Fault::Says("a tag cannot be read"))?;
        let key = attribute.key.as_ref();
        let fits = |name: &&[u8]| key == *name || (name.starts_with(b":") && key.ends_with(name));
        if let Some(at) = names.iter().position(fits) {
            values[at] = Some(attribute.value);
        }
    }
    Ok(values)
}

fn number<T: std::str::FromStr>(value: Value) -> Result<T, Fault> {
    let value = value.ok_or(Fault::Says("a tag lacks a number"))?;
    let text = std::str::from_utf8(value.trim_ascii()).ok();
    text.and_then(|text| text.parse().ok())
        .ok_or_else(|| Fault::SaysThat(format!("\"{}\" stands where a number was expected", shortened(&value))))
}

/// A unit of length in mm (core specification, table of units).
fn unit(name: &[u8]) -> Option<f64> {
    Some(match name {
        b"micron" => 0.001,
        b"millimeter" => 1.0,
        b"centimeter" => 10.0,
        b"inch" => 25.4,
        b"foot" => 304.8,
        b"meter" => 1000.0,
        _ => return None,
    })
}
