//! Any bytes: what opens can be looked at, written, and opens again alike.
#![no_main]

use leverwright_core::document;
use leverwright_core::drawing::{Picture, Sheet as Paper};
use leverwright_core::sheet::{Sheet, SheetOptions};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    match document::read(bytes) {
        Ok(opened) => {
            let _ = Sheet::of(&opened.plan, SheetOptions::default());
            let _ = Picture::of(&opened.plan.bike, Paper::for_width(390.0));
            let again = document::read(document::write(&opened.plan)).expect("it opens again");
            assert_eq!(again.plan, opened.plan);
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
});
