//! The layout in hand as a code to scan.

use leptos::prelude::*;
use leverwright_core::share::{self, Along, LAYOUT_IS_TOO_LARGE};

use crate::drawing::CodeView;
use crate::erase::{memo, view_of};
use crate::route::address_of_app;
use crate::workspace::Workspace;

/// The code with the size of its text, or why there is none.
#[component]
pub fn LayoutCode() -> impl IntoView {
    let workspace = Workspace::here();
    let code = memo(move || {
        let plan = workspace.plan.get()?;
        let address = address_of_app();
        let text = share::link(&address, &share::content(&plan, Along::Layout));
        let size = text.map(|text| text.len()).unwrap_or_default();
        Some(share::qr_of(&address, &plan).map(|code| (code, size)))
    });
    view! {
        <section class="share-code" aria-labelledby="share-code">
            <h2 id="share-code">"As a code to scan"</h2>
            <p>
                "Point a telephone’s camera at it, here or on the printed sheet: the layout in hand \
                opens on its bike. It carries nothing else, whatever is chosen above."
            </p>
            {view_of(move || code.get().map(|code| match code {
                Some((code, size)) => view! {
                    <CodeView code/>
                    <p class="quiet size">{format!("The code holds a link of {size} characters.")}</p>
                }
                .into_any(),
                None => view! { <p class="check">{LAYOUT_IS_TOO_LARGE}</p> }.into_any(),
            }))}
        </section>
    }
}
