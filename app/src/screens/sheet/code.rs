//! The layout as a code to scan, on the page that hangs on the stand.

use leptos::prelude::*;
use leverwright_core::plan::Plan;
use leverwright_core::share::{self, QrMatrix};

use crate::drawing::CodeView;
use crate::route::address_of_app;
use crate::storage::is_page_from_file;

/// The code of the layout in hand; none where it does not fit, or where the page
/// has no address that a telephone could open.
pub fn code_of(plan: &Plan) -> Option<QrMatrix> {
    let has_address = !is_page_from_file();
    has_address.then(|| share::qr_of(&address_of_app(), plan))?
}

/// The code, and what it does.
#[component]
pub fn SheetCode(code: QrMatrix) -> impl IntoView {
    view! {
        <figure class="sheet-code">
            <CodeView code/>
            <figcaption>"Scan to open this layout."</figcaption>
        </figure>
    }
}
