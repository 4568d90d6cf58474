//! Shared by the reference checks and the browser walk-throughs.
