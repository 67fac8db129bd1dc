//! Figures to primitives in millimetres.
