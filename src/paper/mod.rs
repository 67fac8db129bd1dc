//! Sheets and quotes as pages and as text.
