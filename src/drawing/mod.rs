//! Figures to primitives in millimetres: what a drawing is made of, apart from whatever paints it.

pub mod arrange;
pub mod flask;
pub mod kiln_curve;
pub mod primitive;
