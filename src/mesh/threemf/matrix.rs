//! Transforms: twelve numbers that bring a point as a row to another, the last three a shift.

/// The columns of a transform: x, y and z of a point become `x·m0 + y·m3 + z·m6 + m9` and so on, as the core specification writes them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Matrix([f64; 12]);

impl Matrix {
    pub const NONE: Self = Self([1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0]);

    /// Twelve finite numbers between blanks.
    pub fn parse(text: &str) -> Option<Self> {
        let mut numbers = [0.0; 12];
        let mut words = text.split_ascii_whitespace();
        for number in &mut numbers {
            *number = words.next()?.parse().ok().filter(|number: &f64| number.is_finite())?;
        }
        words.next().is_none().then_some(Self(numbers))
    }

    /// The same in all directions.
    pub fn scale(by: f64) -> Self {
        Self([by, 0.0, 0.0, 0.0, by, 0.0, 0.0, 0.0, by, 0.0, 0.0, 0.0])
    }

    pub fn point(&self, [x, y, z]: [f64; 3]) -> [f64; 3] {
        let shift: [f64; 3] = [self.0[9], self.0[10], self.0[11]];
        let turned = self.direction([x, y, z]);
        std::array::from_fn(|k| turned[k] + shift[k])
    }

    fn direction(&self, [x, y, z]: [f64; 3]) -> [f64; 3] {
        let m = &self.0;
        std::array::from_fn(|k| x * m[k] + y * m[k + 3] + z * m[k + 6])
    }

    /// First this, then the other.
    pub fn then(&self, other: &Self) -> Self {
        let m = &self.0;
        let rows = [other.direction([m[0], m[1], m[2]]), other.direction([m[3], m[4], m[5]]), other.direction([m[6], m[7], m[8]])];
        let shift = other.point([m[9], m[10], m[11]]);
        let mut all = [0.0; 12];
        for (place, value) in all.iter_mut().zip(rows.as_flattened().iter().chain(&shift)) {
            *place = *value;
        }
        Self(all)
    }

    /// True when left becomes right, so that triangles would face inward.
    pub fn mirrors(&self) -> bool {
        let m = &self.0;
        let determinant = m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6]) + m[2] * (m[3] * m[7] - m[4] * m[6]);
        determinant < 0.0
    }
}
