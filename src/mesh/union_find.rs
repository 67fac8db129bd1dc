//! Sets that grow together.

/// Disjoint sets of numbers from 0.
#[derive(Default)]
pub(super) struct UnionFind {
    parent: Vec<u32>,
    number: Vec<u32>,
}

impl UnionFind {
    pub fn new(count: usize) -> Self {
        Self { parent: (0..count as u32).collect(), number: Vec::new() }
    }

    /// Starts again with sets of one.
    pub fn reset(&mut self, count: usize) {
        self.parent.clear();
        self.parent.extend(0..count as u32);
    }

    /// The set a number is in, named by its lowest member.
    #[inline]
    pub fn root(&mut self, mut at: u32) -> u32 {
        loop {
            let up = self.parent[at as usize];
            if up == at {
                return at;
            }
            let next = self.parent[up as usize];
            self.parent[at as usize] = next;
            at = next;
        }
    }

    /// Makes two sets one.
    #[inline]
    pub fn unite(&mut self, a: u32, b: u32) {
        let (a, b) = (self.root(a), self.root(b));
        if a < b {
            self.parent[b as usize] = a;
        } else if b < a {
            self.parent[a as usize] = b;
        }
    }

    /// Numbers the sets from 0 in order of their lowest member, and says how many there are.
    pub fn number_sets(&mut self) -> u32 {
        let mut count = 0;
        self.number.clear();
        for at in 0..self.parent.len() as u32 {
            let root = self.root(at);
            let number = if root == at { count } else { self.number[root as usize] };
            count += u32::from(root == at);
            self.number.push(number);
        }
        count
    }

    /// The number of a member's set. Asked for after the sets were numbered.
    pub fn number(&self, at: u32) -> u32 {
        self.number[at as usize]
    }

    /// Every member's set, numbered from 0, and how many sets there are.
    pub fn numbered(mut self) -> (Vec<u32>, usize) {
        let count = self.number_sets();
        (self.number, count as usize)
    }
}
