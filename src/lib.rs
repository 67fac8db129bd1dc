//! Pourbook: a casting-batch workbook for small studios.
//!
//! The crate is a library with a thin binary. Layers, each may use what stands to its right and nothing to its left:
//! `main → app | headless → files → paper → drawing → calc → job → stock → quantity`, `files → mesh → quantity`, and `files | kiln_log → table`, which needs nothing.
//! [`texts`] stands beside `quantity` and is used by paper and by everything to the left of it.
//! Start reading at [`job`] for the documents and at [`calc`] for the figures.

#[cfg(feature = "window")]
pub mod app;
pub mod calc;
pub mod cores;
pub mod drawing;
pub mod files;
pub mod folder;
pub mod headless;
pub mod job;
pub mod kiln_log;
pub mod mesh;
pub mod paper;
pub mod quantity;
pub mod stock;
pub mod table;
pub mod texts;
