//! The frame around every screen.

use leptos::prelude::*;

use crate::route::{Route, current_route};
use crate::screens::{
    BikeScreen, LayoutScreen, PlansScreen, RiderScreen, RulesScreen, SettingsScreen, SheetScreen,
};
use crate::workspace::Workspace;

/// Heading, way between screens, acts on the whole plan, messages, and the
/// screen itself.
#[component]
pub fn Shell() -> impl IntoView {
    let route = current_route();
    let workspace = Workspace::here();
    view! {
        <header class="masthead">"Leverwright"</header>
        <main id="main" tabindex="-1">
            {move || match route.get() {
                Route::Plans => view! { <PlansScreen/> }.into_any(),
                Route::Rider => view! { <RiderScreen/> }.into_any(),
                Route::Bike => view! { <BikeScreen/> }.into_any(),
                Route::Layout => view! { <LayoutScreen/> }.into_any(),
                Route::Sheet => view! { <SheetScreen/> }.into_any(),
                Route::Settings => view! { <SettingsScreen/> }.into_any(),
                Route::Rules(id) => view! { <RulesScreen id/> }.into_any(),
            }}
        </main>
        <p class="live" role="status" aria-live="polite">{move || workspace.spoken.get()}</p>
    }
}
