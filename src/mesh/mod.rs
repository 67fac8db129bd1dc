//! Reading pattern files within limits, and measuring them.
