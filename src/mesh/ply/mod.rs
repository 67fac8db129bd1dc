//! PLY: a header of lines that describes tables ("elements") and their columns ("properties"), then the tables, as words or as bytes.
//!
//! The table `vertex` needs columns x, y and z, the table `face` a list `vertex_indices` or `vertex_index`. Other columns and tables are passed
//! over, strips of triangles refused. A table's announced length is compared with the bytes that are left for it before it is read.

mod header;
mod values;

use super::gather::Gather;
use super::read_error::shortened;
use super::soup::Soup;
use super::{Format, Limits, Place, ReadError};
use header::{Column, Encoding, Role, Table, Use};
use values::{Binary, Stop, Text, Values};

/// True for the first line of this format.
pub(super) fn begins(bytes: &[u8]) -> bool {
    bytes.starts_with(b"ply") && bytes.get(3).is_some_and(|&b| b == b'\n' || b == b'\r')
}

/// Reads the faces.
pub(super) fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let header = header::read(bytes)?;
    let mut gather = Gather::new(limits);
    let format = match header.encoding {
        Encoding::Text => {
            tables(Text::new(bytes, header.end), &header.tables, &mut gather, limits)?;
            Format::PlyAscii
        }
        Encoding::Bytes { big_end_first } => {
            tables(Binary::new(&bytes[header.end..], big_end_first), &header.tables, &mut gather, limits)?;
            Format::PlyBinary
        }
    };
    gather.finish(format)
}

/// Walks through the tables in the file's order. Faces that stand before their corners are gone back to.
fn tables<V: Values + Clone>(mut values: V, tables: &[Table], gather: &mut Gather, limits: &Limits) -> Result<(), ReadError> {
    let mut corners: Option<Vec<[f32; 3]>> = None;
    let mut waiting = None;
    for table in tables {
        let left = values.left();
        // Every entry takes some bytes; the last word of a text may lack the blank behind it.
        if u128::from(table.count) * u128::from(table.least_bytes(V::IS_TEXT)) > u128::from(left) + u128::from(V::IS_TEXT) {
            return Err(ReadError::AnnouncesTooMuch { what: table.shown(), said: table.count, bytes: left });
        }
        match (table.is, &corners) {
            (Use::Corners, _) => corners = Some(read_corners(&mut values, table, limits)?),
            (Use::Faces, Some(corners)) => read_faces(&mut values, table, corners, gather)?,
            (Use::Faces, None) => {
                waiting = Some((values.clone(), table));
                pass_over(&mut values, table)?;
            }
            (Use::Nothing, _) => pass_over(&mut values, table)?,
        }
    }
    if let (Some((mut values, table)), Some(corners)) = (waiting, &corners) {
        read_faces(&mut values, table, corners, gather)?;
    }
    match values.after_end() {
        0 => Ok(()),
        bytes => Err(ReadError::BytesLeft { bytes }),
    }
}

fn read_corners<V: Values>(values: &mut V, table: &Table, limits: &Limits) -> Result<Vec<[f32; 3]>, ReadError> {
    if table.count > limits.corners() {
        return Err(ReadError::TooManyCorners { most: limits.corners() });
    }
    // The bytes are there, at least three an entry.
    let mut corners = Vec::with_capacity(table.count as usize);
    entries(table, |_| {
        let mut corner = [0.0; 3];
        for (role, column) in &table.columns {
            match (role, column) {
                (Role::Axis(axis), Column::One(scalar)) => corner[*axis] = values.number(*scalar)?,
                _ => pass_over_column(values, *column)?,
            }
        }
        corners.push(corner);
        Ok(())
    })?;
    Ok(corners)
}

fn read_faces<V: Values>(values: &mut V, table: &Table, corners: &[[f32; 3]], gather: &mut Gather) -> Result<(), ReadError> {
    let mut face = Vec::new();
    entries(table, |at| {
        let place = Place::Face(at + 1);
        for (role, column) in &table.columns {
            let (Role::Corners, Column::List { count, item }) = (role, column) else {
                pass_over_column(values, *column)?;
                continue;
            };
            let length = list_length(values, *count, *item)?;
            if length > gather.most_corners() as u64 {
                return Err(gather.too_many().into());
            }
            face.clear();
            for _ in 0..length {
                let said = values.whole(*item)?;
                let corner = usize::try_from(said).ok().and_then(|at| corners.get(at));
                face.push(*corner.ok_or(ReadError::NoSuchCorner { place, said, there: corners.len() as u64 })?);
            }
        }
        Ok(gather.face(&face, place)?)
    })
}

fn pass_over<V: Values>(values: &mut V, table: &Table) -> Result<(), ReadError> {
    let all_single: Option<u64> = table.columns.iter().map(|(_, column)| column.single_bytes()).sum();
    match all_single {
        // A table without columns takes no bytes, however long it says it is.
        Some(0) => Ok(()),
        Some(bytes) if !V::IS_TEXT => values.jump(bytes * table.count).map_err(|stop| told(stop, table, 0)),
        _ => entries(table, |_| table.columns.iter().try_for_each(|(_, column)| pass_over_column(values, *column))),
    }
}

fn pass_over_column<V: Values>(values: &mut V, column: Column) -> Result<(), Stop> {
    match column {
        Column::One(scalar) => values.skip(1, scalar),
        Column::List { count, item } => {
            let length = list_length(values, count, item)?;
            values.skip(length, item)
        }
    }
}

/// The announced length of a list, which the bytes that are left could hold.
fn list_length<V: Values>(values: &mut V, count: header::Scalar, item: header::Scalar) -> Result<u64, Stop> {
    let length = values.whole(count)?;
    let least = if V::IS_TEXT { 2 } else { item.bytes() };
    match u64::try_from(length) {
        Ok(length) if length.saturating_mul(least) <= values.left().saturating_add(u64::from(V::IS_TEXT)) => Ok(length),
        Ok(_) => Err(Stop::Ends),
        Err(_) => Err(Stop::NegativeLength),
    }
}

/// Does something for every entry of a table, and says which table ended early.
fn entries(table: &Table, mut each: impl FnMut(u64) -> Result<(), Stop>) -> Result<(), ReadError> {
    (0..table.count).try_for_each(|at| each(at).map_err(|stop| told(stop, table, at)))
}

fn told(stop: Stop, table: &Table, whole: u64) -> ReadError {
    let (what, said) = (table.shown(), table.count);
    match stop {
        Stop::Ends => ReadError::TableCutShort { what, said, whole },
        Stop::NegativeLength => ReadError::NegativeLength { what, entry: whole + 1 },
        Stop::Told(error) => error,
    }
}

impl Table<'_> {
    fn shown(&self) -> String {
        shortened(self.name)
    }
}
