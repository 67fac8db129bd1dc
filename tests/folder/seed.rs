/// Numbers that look random and are the same for the same seed (splitmix64, from memory).
pub struct Seed(pub u64);

impl Seed {
    pub fn draw(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.draw() % end.max(1) as u64) as usize
    }

    pub fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    pub fn of<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())]
    }
}
