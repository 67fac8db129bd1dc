//! From objects and what they are put together from to triangles in mm.

use super::matrix::Matrix;
use super::model::{Model, Use};
use crate::mesh::gather::Gather;
use crate::mesh::soup::Soup;
use crate::mesh::{Format, Limits, ReadError};

/// The deepest that objects may lie within each other.
const MOST_DEEP: u32 = 32;

/// What an object comes to when everything in it is put together.
#[derive(Debug, Clone, Copy)]
enum Total {
    Unknown,
    /// Being counted: an object that is met in this state lies in itself.
    Counting,
    Known {
        triangles: u64,
        /// Objects within each other, itself counted.
        deep: u32,
    },
}

impl Model {
    /// Puts together what the build names. The triangles are counted before room is made for any.
    pub fn assemble(self, limits: &Limits) -> Result<Soup, ReadError> {
        let mut assembly = Assembly { totals: vec![Total::Unknown; self.objects.len()], model: self, gather: Gather::new(limits) };
        let items = std::mem::take(&mut assembly.model.items);
        let mut all = 0_u64;
        for item in &items {
            all = all.saturating_add(assembly.count(item, 0)?.0);
        }
        if all > u64::from(limits.triangles()) {
            return Err(assembly.gather.too_many());
        }
        assembly.gather.reserve(all as usize);
        let to_mm = Matrix::scale(assembly.model.unit_mm);
        for item in &items {
            assembly.put(item, &to_mm, false)?;
        }
        assembly.gather.finish(Format::ThreeMf)
    }
}

struct Assembly {
    model: Model,
    totals: Vec<Total>,
    gather: Gather,
}

fn refused(reason: &str) -> ReadError {
    ReadError::Assembly { reason: reason.to_owned() }
}

impl Assembly {
    fn find(&self, used: &Use) -> Result<usize, ReadError> {
        let found = self.model.numbers.get(&(used.part, used.id)).copied();
        found.ok_or_else(|| ReadError::Assembly { reason: format!("object {} is named and is not there", used.id) })
    }

    /// The triangles an object comes to, and how deep objects lie in it. Each object is counted once, so that a few objects that name each
    /// other twice, and those again, take no time.
    fn count(&mut self, used: &Use, above: u32) -> Result<(u64, u32), ReadError> {
        let at = self.find(used)?;
        let too_deep = || refused("objects lie too deep within each other");
        match self.totals[at] {
            Total::Counting => return Err(refused("an object lies in itself")),
            Total::Known { triangles, deep } if above + deep <= MOST_DEEP => return Ok((triangles, deep)),
            Total::Known { .. } => return Err(too_deep()),
            Total::Unknown if above >= MOST_DEEP => return Err(too_deep()),
            Total::Unknown => {}
        }
        self.totals[at] = Total::Counting;
        let object = &mut self.model.objects[at];
        let is_left_out = object.is_left_out;
        let mut triangles = if is_left_out { 0 } else { object.triangles.len() as u64 };
        let mut deep = 1;
        // What comes to nothing is dropped, so that putting together never takes more steps than triangles come of it.
        let named = std::mem::take(&mut object.components);
        let mut kept = Vec::new();
        for component in named.into_iter().filter(|_| !is_left_out) {
            let (count, below) = self.count(&component, above + 1)?;
            triangles = triangles.saturating_add(count);
            deep = deep.max(below + 1);
            if count > 0 {
                kept.push(component);
            }
        }
        self.model.objects[at].components = kept;
        self.totals[at] = Total::Known { triangles, deep };
        Ok((triangles, deep))
    }

    /// Puts an object in its place. `mirrored` tells whether what it lies in is mirrored.
    fn put(&mut self, used: &Use, within: &Matrix, mirrored: bool) -> Result<(), ReadError> {
        let at = self.find(used)?;
        let object = &mut self.model.objects[at];
        if object.is_left_out {
            return Ok(());
        }
        let transform = used.transform.then(within);
        // Each transform is asked by itself: the sign of a long product could drown in its rounding.
        let mirrored = mirrored != used.transform.mirrors();
        let corners = &self.model.corners[object.corners.clone()];
        for triangle in &self.model.triangles[object.triangles.clone()] {
            let [a, b, c] = triangle.map(|corner| transform.point(corners[corner as usize]).map(|x| x as f32));
            self.gather.push(if mirrored { [a, c, b] } else { [a, b, c] })?;
        }
        let components = std::mem::take(&mut object.components);
        for component in &components {
            self.put(component, &transform, mirrored)?;
        }
        self.model.objects[at].components = components;
        Ok(())
    }
}
