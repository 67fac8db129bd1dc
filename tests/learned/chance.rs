//! Chance that is the same each time.

/// SplitMix64 (Steele, Lea & Flood 2014).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0xD134_2543_DE82_EF95) ^ 0x5851_F42D_4C95_7F2D)
    }

    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// In [0, 1).
    pub fn uniform(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// In 0..n.
    pub fn below(&mut self, n: u32) -> u32 {
        (self.uniform() * f64::from(n)) as u32
    }

    /// Bell curve of mean nought and deviation one (Box & Muller 1958).
    pub fn normal(&mut self) -> f64 {
        (-2.0 * (1.0 - self.uniform()).ln()).sqrt() * (std::f64::consts::TAU * self.uniform()).cos()
    }

    /// Hits in `of` tries.
    pub fn hits(&mut self, of: u32, share: f64) -> u32 {
        (0..of).map(|_| u32::from(self.uniform() < share)).sum()
    }
}
