//! A QR code as a drawing.

use std::fmt::Write;

use leptos::prelude::*;
use leverwright_core::share::QrMatrix;

/// The code on white, quiet zone and all: readers need it dark on light.
#[component]
pub fn CodeView(code: QrMatrix) -> impl IntoView {
    let side = code.side + 2 * code.quiet_zone();
    view! {
        <svg class="qr" viewBox=format!("0 0 {side} {side}") role="img"
            aria-label="QR code of a link to the layout">
            <rect class="qr-light" width=side.to_string() height=side.to_string()></rect>
            <path class="qr-dark" d=modules(&code)></path>
        </svg>
    }
}

/// Dark modules, those beside each other as one.
fn modules(code: &QrMatrix) -> String {
    let quiet = code.quiet_zone();
    let mut d = String::new();
    for y in 0..code.side {
        let mut x = 0;
        while x < code.side {
            let start = x;
            while code.is_dark(x, y) {
                x += 1;
            }
            if x > start {
                // Writing to a text does not fail.
                let _ = write!(
                    d,
                    "M{} {}h{}v1h-{}z",
                    start + quiet,
                    y + quiet,
                    x - start,
                    x - start
                );
            }
            x += 1;
        }
    }
    d
}
