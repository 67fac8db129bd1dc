//! Pure functions from documents to figures, findings and schedules.
