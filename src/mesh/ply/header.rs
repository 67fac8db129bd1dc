//! The header: which tables follow, and how their columns are written.

use crate::mesh::ReadError;
use crate::mesh::read_error::shortened;

/// The longest header that is read, in bytes.
const MOST_BYTES: usize = 1 << 20;

pub(super) struct Header<'a> {
    pub encoding: Encoding,
    pub tables: Vec<Table<'a>>,
    /// Where the first table begins, in bytes from the start of the file.
    pub end: usize,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Encoding {
    Text,
    Bytes { big_end_first: bool },
}

/// What a table is read for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Use {
    Corners,
    Faces,
    Nothing,
}

pub(super) struct Table<'a> {
    pub name: &'a [u8],
    pub is: Use,
    pub count: u64,
    pub columns: Vec<(Role, Column)>,
}

/// What a column is read for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// 0 to 2 for x, y, z.
    Axis(usize),
    Corners,
    Nothing,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Column {
    One(Scalar),
    List { count: Scalar, item: Scalar },
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Scalar {
    I8,
    U8,
    I16,
    U16,
    I32,
    U32,
    F32,
    F64,
}

impl Scalar {
    fn named(word: &[u8]) -> Option<Self> {
        Some(match word {
            b"char" | b"int8" => Self::I8,
            b"uchar" | b"uint8" => Self::U8,
            b"short" | b"int16" => Self::I16,
            b"ushort" | b"uint16" => Self::U16,
            b"int" | b"int32" => Self::I32,
            b"uint" | b"uint32" => Self::U32,
            b"float" | b"float32" => Self::F32,
            b"double" | b"float64" => Self::F64,
            _ => return None,
        })
    }

    /// Bytes of one number in a binary table.
    pub fn bytes(self) -> u64 {
        match self {
            Self::I8 | Self::U8 => 1,
            Self::I16 | Self::U16 => 2,
            Self::I32 | Self::U32 | Self::F32 => 4,
            Self::F64 => 8,
        }
    }

    fn is_whole(self) -> bool {
        !matches!(self, Self::F32 | Self::F64)
    }
}

impl Column {
    /// Bytes of a column that is no list, in a binary table.
    pub fn single_bytes(self) -> Option<u64> {
        match self {
            Self::One(scalar) => Some(scalar.bytes()),
            Self::List { .. } => None,
        }
    }
}

impl Table<'_> {
    /// The fewest bytes an entry can take: a digit and a blank a column in a text; no entry of a list.
    pub fn least_bytes(&self, is_text: bool) -> u64 {
        let of = |column: Column| match column {
            _ if is_text => 2,
            Column::One(scalar) | Column::List { count: scalar, .. } => scalar.bytes(),
        };
        self.columns.iter().map(|(_, column)| of(*column)).sum()
    }

    fn has(&self, role: Role) -> bool {
        self.columns.iter().any(|(has, _)| *has == role)
    }
}

/// Reads up to and with `end_header`.
pub(super) fn read(bytes: &[u8]) -> Result<Header<'_>, ReadError> {
    // The end of the first line tells how lines end: a table of bytes may begin with a byte that looks like one.
    let end_byte = if bytes.get(3) == Some(&b'\r') && bytes.get(4) != Some(&b'\n') { b'\r' } else { b'\n' };
    let head = &bytes[..bytes.len().min(MOST_BYTES)];
    let (mut encoding, mut tables) = (None, Vec::new());
    let (mut at, mut line) = (0, 0);
    loop {
        line += 1;
        let Some(length) = head[at..].iter().position(|&b| b == end_byte) else {
            let whole = head.len() == bytes.len();
            return Err(if whole { ReadError::TextCutShort { line, whole: 0 } } else { refused(line, "the header is too long") });
        };
        let words: Vec<&[u8]> = head[at..at + length].split(u8::is_ascii_whitespace).filter(|word| !word.is_empty()).take(6).collect();
        at += length + 1;
        match words[..] {
            [b"ply"] if line == 1 => {}
            [] | [b"comment" | b"obj_info", ..] => {}
            [b"format", name, ..] => encoding = Some(encoding_of(name, line)?),
            [b"element", name, count] => tables.push(table(name, count, line)?),
            [b"property", ref column @ ..] => {
                let table = tables.last_mut().ok_or(refused(line, "a property stands before the first element"))?;
                add(table, column, line)?;
            }
            [b"end_header"] => break,
            [word, ..] => return Err(ReadError::UnexpectedWord { line, found: shortened(word), wanted: "a line of a header" }),
        }
    }
    check(&tables, line)?;
    let encoding = encoding.ok_or(refused(line, "the header names no format"))?;
    Ok(Header { encoding, tables, end: at })
}

fn refused(line: u64, reason: &'static str) -> ReadError {
    ReadError::Refused { line, reason }
}

fn encoding_of(name: &[u8], line: u64) -> Result<Encoding, ReadError> {
    match name {
        b"ascii" => Ok(Encoding::Text),
        b"binary_little_endian" => Ok(Encoding::Bytes { big_end_first: false }),
        b"binary_big_endian" => Ok(Encoding::Bytes { big_end_first: true }),
        _ => Err(ReadError::UnexpectedWord { line, found: shortened(name), wanted: "ascii, binary_little_endian or binary_big_endian" }),
    }
}

fn table<'a>(name: &'a [u8], count: &[u8], line: u64) -> Result<Table<'a>, ReadError> {
    let unexpected = || ReadError::UnexpectedWord { line, found: shortened(count), wanted: "a count" };
    let count = std::str::from_utf8(count).ok().and_then(|text| text.parse().ok()).ok_or_else(unexpected)?;
    let is = match name {
        b"vertex" => Use::Corners,
        b"face" => Use::Faces,
        b"tristrips" if count > 0 => return Err(refused(line, "strips of triangles are not read; export the model as triangles")),
        _ => Use::Nothing,
    };
    Ok(Table { name, is, count, columns: Vec::new() })
}

fn add(table: &mut Table, words: &[&[u8]], line: u64) -> Result<(), ReadError> {
    let scalar = |word: &[u8]| {
        Scalar::named(word).ok_or_else(|| ReadError::UnexpectedWord { line, found: shortened(word), wanted: "a kind of number" })
    };
    let (name, column) = match *words {
        [b"list", count, item, name] => (name, Column::List { count: scalar(count)?, item: scalar(item)? }),
        [kind, name] => (name, Column::One(scalar(kind)?)),
        _ => return Err(refused(line, "a property is a kind and a name, or a list, two kinds and a name")),
    };
    if let Column::List { count, .. } = column
        && !count.is_whole()
    {
        return Err(refused(line, "the length of a list is no whole number"));
    }
    let role = match (table.is, name, column) {
        (Use::Corners, b"x", Column::One(_)) => Role::Axis(0),
        (Use::Corners, b"y", Column::One(_)) => Role::Axis(1),
        (Use::Corners, b"z", Column::One(_)) => Role::Axis(2),
        (Use::Faces, b"vertex_indices" | b"vertex_index", Column::List { item, .. }) if item.is_whole() => Role::Corners,
        _ => Role::Nothing,
    };
    // A second column of the same name does not count.
    let role = if table.has(role) { Role::Nothing } else { role };
    table.columns.push((role, column));
    Ok(())
}

/// Holds the tables against what is needed. `line` is the last of the header.
fn check(tables: &[Table], line: u64) -> Result<(), ReadError> {
    let of = |is: Use| tables.iter().filter(move |table| table.is == is);
    if of(Use::Corners).count() > 1 || of(Use::Faces).count() > 1 {
        return Err(refused(line, "corners or faces are announced twice"));
    }
    if !of(Use::Corners).all(|table| (0..3).all(|axis| table.has(Role::Axis(axis)))) {
        return Err(refused(line, "the corners have no x, y and z"));
    }
    if !of(Use::Faces).all(|table| table.has(Role::Corners)) {
        return Err(refused(line, "the faces have no list vertex_indices"));
    }
    Ok(())
}
