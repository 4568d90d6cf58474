//! What ends every screen: what this is, and the way to the rules.

use leptos::prelude::*;

use crate::route::Route;

/// The caution, the rules.
#[component]
pub fn Footer() -> impl IntoView {
    view! {
        <footer class="foot">
            <p>
                "A planning aid. The fitter proves it on the stand; the first ride is on a closed \
                road at walking pace. Braking law differs by place: ask. A clinician judges hand \
                use. Makers’ manuals win."
            </p>
            <ul>
                <li><a href=Route::Rules(None).href()>"Rules"</a></li>
            </ul>
        </footer>
    }
}
