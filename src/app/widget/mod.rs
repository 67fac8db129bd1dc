//! The house's own widgets. Entry and result never look alike: what a person typed sits in a field, what is computed sits on the paper with a
//! dotted line under it.

pub mod button;
pub mod choice;
pub mod curve;
pub mod drawing;
pub mod entry;
pub mod figure;
pub mod finding;
pub mod heading;
pub mod leaf;
pub mod mark;
pub mod moment;
pub mod number;
pub mod order;
pub mod part;
pub mod row;
pub mod rows;
pub mod text;
pub mod weighing;
