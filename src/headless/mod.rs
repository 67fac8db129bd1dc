//! The terminal commands.
