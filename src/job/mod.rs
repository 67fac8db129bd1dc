//! The documents: job and studio. No arithmetic.
