//! The edges of one region: are they all used exactly once in either direction?

use super::regions::Regions;
use super::soup::Triangle;
use super::source::Source;
use super::survey::Found;
use super::union_find::UnionFind;
use super::weld::hash;

/// Points and triangles of a region are numbered in this many bits, so that an edge and what is known of it fit in one word.
const BITS: u32 = 20;
const MOST: usize = 1 << BITS;

/// Tables that serve one region after the other.
#[derive(Default)]
pub(super) struct Patch {
    triangles: Vec<Triangle>,
    /// Numbers of points plus one, by the hash of their place; 0 is free.
    slots: Vec<u32>,
    points: Vec<[u32; 3]>,
    /// The region of every point.
    regions: Vec<u16>,
    /// Edges by the hash of their points; 0 is free. From the top: lower point, higher point, triangle, a bit for the direction, a bit for "met again".
    edges: Vec<u64>,
    sets: UnionFind,
}

/// Set once an edge has been met in both directions.
const PAIRED: u64 = 1;
/// Set when the first triangle runs from the higher point to the lower.
const BACKWARD: u64 = 2;
/// Marks a slot as taken: the lowest triangle and points have the number 0.
const TAKEN: u64 = 1 << 63;

impl Patch {
    /// Looks at a region's triangles, given as lists of doubled numbers. Gives nothing when one of its edges is not used once in either direction.
    pub fn look<'a, S: Source + ?Sized>(
        &mut self,
        source: &S,
        regions: &Regions,
        region: u16,
        lists: impl Iterator<Item = &'a [u32]> + Clone,
    ) -> Option<Found> {
        self.triangles.clear();
        for list in lists.clone() {
            self.triangles.extend(list.iter().map(|&doubled| source.triangle((doubled >> 1) as usize)));
        }
        let count = self.triangles.len();
        if 3 * count >= MOST {
            return None;
        }
        self.clear(count);
        let mut unpaired = 0_i64;
        for at in 0..count {
            let ids = self.triangles[at].map(|corner| corner.map(f32::to_bits));
            let ids = ids.map(|key| self.point(key, regions));
            if ids[0] == ids[1] || ids[1] == ids[2] || ids[2] == ids[0] {
                return None;
            }
            for k in 0..3 {
                let (from, to) = (ids[k], ids[(k + 1) % 3]);
                if self.regions[from as usize].min(self.regions[to as usize]) == region {
                    unpaired += self.edge(from, to, at as u32)?;
                }
            }
        }
        (unpaired == 0).then(|| self.found(lists))
    }

    fn clear(&mut self, triangles: usize) {
        let slots = (2 * triangles).next_power_of_two().max(16);
        self.slots.clear();
        self.slots.resize(slots, 0);
        self.edges.clear();
        self.edges.resize(2 * slots, 0);
        self.points.clear();
        self.regions.clear();
        self.sets.reset(triangles);
    }

    /// The number of a point.
    fn point(&mut self, key: [u32; 3], regions: &Regions) -> u32 {
        if self.points.len() * 2 > self.slots.len() {
            self.grow();
        }
        let mask = self.slots.len() - 1;
        let mut slot = hash(key) as usize & mask;
        loop {
            match self.slots[slot] {
                0 => {
                    self.points.push(key);
                    self.regions.push(regions.of(key.map(f32::from_bits)));
                    self.slots[slot] = self.points.len() as u32;
                    return self.points.len() as u32 - 1;
                }
                id if self.points[id as usize - 1] == key => return id - 1,
                _ => slot = (slot + 1) & mask,
            }
        }
    }

    fn grow(&mut self) {
        let count = 2 * self.slots.len();
        self.slots.clear();
        self.slots.resize(count, 0);
        for (key, id) in self.points.iter().zip(1..) {
            let mut slot = hash(*key) as usize & (count - 1);
            while self.slots[slot] != 0 {
                slot = (slot + 1) & (count - 1);
            }
            self.slots[slot] = id;
        }
    }

    /// Notes the use of an edge: 1 when it was met first, −1 when it found its partner, nothing when it is no sound edge.
    fn edge(&mut self, from: u32, to: u32, triangle: u32) -> Option<i64> {
        let (low, high) = (u64::from(from.min(to)), u64::from(from.max(to)));
        let key = TAKEN | low << (2 * BITS + 2) | high << (BITS + 2);
        let way = if from > to { BACKWARD } else { 0 };
        let mask = self.edges.len() - 1;
        // The top bits of the product depend on all bits of the key.
        let mut slot = (key.wrapping_mul(0x9e37_79b9_7f4a_7c15) >> (64 - self.edges.len().trailing_zeros())) as usize;
        loop {
            let held = self.edges[slot];
            if held == 0 {
                self.edges[slot] = key | u64::from(triangle) << 2 | way;
                return Some(1);
            }
            if (held ^ key) >> (BITS + 2) == 0 {
                if held & PAIRED != 0 || held & BACKWARD == way {
                    return None;
                }
                self.edges[slot] = held | PAIRED;
                self.sets.unite(triangle, (held >> 2) as u32 & (MOST as u32 - 1));
                return Some(-1);
            }
            slot = (slot + 1) & mask;
        }
    }

    fn found<'a>(&mut self, lists: impl Iterator<Item = &'a [u32]>) -> Found {
        let sets = self.sets.number_sets();
        let all = lists.flatten().zip(0..);
        let shared = all.filter(|(doubled, _)| **doubled & 1 == 1).map(|(doubled, at)| (doubled >> 1, self.sets.number(at))).collect();
        Found { sets, shared }
    }
}
