//! The edges of one region: are they all used exactly once in either direction?

use super::bins::Bin;
use super::regions::Regions;
use super::survey::Found;
use super::union_find::UnionFind;
use super::weld::hash;

/// Points and triangles of a region are numbered in this many bits, so that an edge and what is known of it fit in one word.
const BITS: u32 = 20;
const MOST: usize = 1 << BITS;

/// Tables that serve one region after the other.
#[derive(Default)]
pub(super) struct Patch {
    /// Numbers of points plus one, by the hash of their place; 0 is free.
    slots: Vec<u32>,
    points: Vec<[u32; 3]>,
    /// The region of every point.
    regions: Vec<u16>,
    /// Edges by the hash of their points; 0 is free. From the top: lower point, higher point, triangle, a bit for the direction, a bit for "met again".
    edges: Vec<u64>,
    /// Edges that may still be new: a sound region has no more than three to two triangles.
    room: usize,
    sets: UnionFind,
}

/// Set once an edge has been met in both directions.
const PAIRED: u64 = 1;
/// Set when the first triangle runs from the higher point to the lower.
const BACKWARD: u64 = 2;
/// Marks a slot as taken: the lowest triangle and points have the number 0.
const TAKEN: u64 = 1 << 63;

impl Patch {
    /// Looks at a region's triangles. Gives nothing when one of its edges is not used once in either direction.
    pub fn look<'a>(&mut self, regions: &Regions, region: u16, bins: impl Iterator<Item = &'a Bin> + Clone) -> Option<Found> {
        let count = bins.clone().map(|bin| bin.triangles.len()).sum();
        if 3 * count >= MOST {
            return None;
        }
        self.clear(count);
        let mut unpaired = 0_i64;
        for (at, triangle) in bins.clone().flat_map(|bin| &bin.triangles).enumerate() {
            let mut ids = [0; 3];
            for (id, corner) in ids.iter_mut().zip(triangle) {
                *id = self.point([corner[0].to_bits(), corner[1].to_bits(), corner[2].to_bits()], regions);
            }
            let [a, b, c] = ids;
            if a == b || b == c || c == a {
                return None;
            }
            let (of_a, of_b, of_c) = (self.regions[a as usize], self.regions[b as usize], self.regions[c as usize]);
            for (from, to, owner) in [(a, b, of_a.min(of_b)), (b, c, of_b.min(of_c)), (c, a, of_c.min(of_a))] {
                if owner == region {
                    unpaired += self.edge(from, to, at as u32)?;
                }
            }
        }
        (unpaired == 0).then(|| self.found(bins))
    }

    fn clear(&mut self, triangles: usize) {
        // A closed surface has half as many points as triangles and three edges to two triangles.
        self.slots.clear();
        self.slots.resize(triangles.next_power_of_two().max(16), 0);
        self.edges.clear();
        self.edges.resize((2 * triangles).next_power_of_two().max(16), 0);
        self.room = 3 * triangles / 2;
        self.points.clear();
        self.regions.clear();
        self.sets.reset(triangles);
    }

    /// The number of a point.
    #[inline(always)]
    fn point(&mut self, key: [u32; 3], regions: &Regions) -> u32 {
        if self.points.len() * 8 > self.slots.len() * 5 {
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

    #[cold]
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

    #[inline(always)]
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
                self.room = self.room.checked_sub(1)?;
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

    fn found<'a>(&mut self, bins: impl Iterator<Item = &'a Bin>) -> Found {
        let sets = self.sets.number_sets();
        let mut shared = Vec::new();
        let mut first = 0;
        for bin in bins {
            shared.extend(bin.shared.iter().map(|&(triangle, place)| (triangle, self.sets.number(first + place))));
            first += bin.triangles.len() as u32;
        }
        Found { sets, shared }
    }
}
