//! The window: an immediate-mode face over the documents. It holds no arithmetic: every figure comes from the calculation, and every change
//! goes through one place that can be undone.

pub mod action;
pub mod arrange_run;
mod bench;
pub mod computed;
pub mod cx;
pub mod dialog;
pub mod folder_run;
pub mod heat_run;
pub mod history;
pub mod index_run;
mod inspect;
pub mod locks;
mod names;
pub mod night_run;
pub mod page;
mod pairs_run;
pub mod paper_desk;
mod patterns_run;
pub mod plan_run;
mod recovery;
mod search;
mod shell;
mod start;
pub mod theme;
pub mod view;
pub mod what_now;
pub mod widget;
pub mod window;
pub mod workbook;

pub use start::open;
