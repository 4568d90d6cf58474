//! Small views that several screens share.
