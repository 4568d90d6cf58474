//! Checks of the document format from outside: what is written opens again,
//! what is broken is refused with its place, what is not known is kept.

mod bad_input;
mod kept_as_written;
mod never_panics;
mod plans;
mod published_schema;
mod recorded;
mod round_trip;
mod saved;
mod scripts;
mod unknown_parts;
