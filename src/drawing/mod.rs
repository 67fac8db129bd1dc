//! Figures to primitives in millimetres: what a drawing is made of, apart from whatever paints it.

pub mod flask;
pub mod kiln_curve;
pub mod primitive;
pub mod tree;
