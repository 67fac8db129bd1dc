//! Finding which corners are the same point.

use super::soup::Triangle;

/// Triangles that share their corners.
#[derive(Debug, Clone)]
pub(super) struct Welded {
    /// Distinct points in mm.
    pub points: Vec<[f32; 3]>,
    /// Three points a triangle, in the file's order.
    pub triangles: Vec<[u32; 3]>,
}

impl Welded {
    /// The corners of a triangle of points.
    pub fn corners(&self, triangle: [u32; 3]) -> Triangle {
        triangle.map(|point| self.points[point as usize])
    }
}

const FREE: u32 = u32::MAX;

/// Gives corners with equal coordinates the same number. Only exact equality counts: nothing here can pull apart or merge a fine detail.
pub(super) fn weld(triangles: &[Triangle]) -> Welded {
    // A closed surface has about half as many points as triangles; the table doubles when a file has more.
    let mut table = Table::with_slots((triangles.len() + 16).next_power_of_two());
    let ids = triangles.iter().map(|[a, b, c]| [table.id_of(*a), table.id_of(*b), table.id_of(*c)]).collect();
    Welded { points: table.points, triangles: ids }
}

/// An open-addressing table that keeps its keys in `points`.
struct Table {
    slots: Vec<u32>,
    points: Vec<[f32; 3]>,
}

impl Table {
    fn with_slots(count: usize) -> Self {
        Self { slots: vec![FREE; count], points: Vec::new() }
    }

    fn id_of(&mut self, corner: [f32; 3]) -> u32 {
        if self.points.len() * 4 > self.slots.len() * 3 {
            self.grow();
        }
        let key = [corner[0].to_bits(), corner[1].to_bits(), corner[2].to_bits()];
        let mask = self.slots.len() - 1;
        let mut slot = hash(key) as usize & mask;
        loop {
            let id = self.slots[slot];
            if id == FREE {
                let new = self.points.len() as u32;
                self.slots[slot] = new;
                self.points.push(corner);
                return new;
            }
            if self.points[id as usize].map(f32::to_bits) == key {
                return id;
            }
            slot = (slot + 1) & mask;
        }
    }

    fn grow(&mut self) {
        let count = self.slots.len() * 2;
        self.slots = vec![FREE; count];
        for (id, point) in self.points.iter().enumerate() {
            let mut slot = hash(point.map(f32::to_bits)) as usize & (count - 1);
            while self.slots[slot] != FREE {
                slot = (slot + 1) & (count - 1);
            }
            self.slots[slot] = id as u32;
        }
    }
}

/// Mixes the ninety-six bits of a point; the low bits of the answer are good.
#[inline(always)]
pub(super) fn hash(key: [u32; 3]) -> u64 {
    let first = (u64::from(key[0]) << 32 | u64::from(key[1])) ^ 0x243f_6a88_85a3_08d3;
    let second = u64::from(key[2]) ^ 0x1319_8a2e_0370_7344;
    let wide = u128::from(first) * u128::from(second.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
    (wide as u64) ^ ((wide >> 64) as u64)
}
