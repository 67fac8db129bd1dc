//! Sets that grow together.

/// Disjoint sets of numbers from 0.
pub(super) struct UnionFind {
    parent: Vec<u32>,
}

impl UnionFind {
    pub fn new(count: usize) -> Self {
        Self { parent: (0..count as u32).collect() }
    }

    /// The set a number is in, named by one of its members.
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

    /// Makes two sets one. The lower root stays.
    pub fn unite(&mut self, a: u32, b: u32) {
        let (a, b) = (self.root(a), self.root(b));
        if a < b {
            self.parent[b as usize] = a;
        } else if b < a {
            self.parent[a as usize] = b;
        }
    }

    /// Gives every number the place of its set, counted from 0 in order of first member, and says how many sets there are.
    pub fn numbered(mut self) -> (Vec<u32>, usize) {
        let mut count = 0;
        let mut number = vec![0; self.parent.len()];
        for at in 0..self.parent.len() as u32 {
            let root = self.root(at);
            if root == at {
                number[at as usize] = count;
                count += 1;
            } else {
                number[at as usize] = number[root as usize];
            }
        }
        (number, count as usize)
    }
}
