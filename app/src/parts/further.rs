//! The screens beyond the main job.

use leptos::prelude::*;

use crate::route::Route;
use crate::screens::{
    CardScreen, CompareScreen, GearsScreen, OpenScreen, PracticeScreen, ReviewScreen, RideScreen,
    RulesScreen, SettingsScreen, ShareScreen, StandScreen,
};

/// What the part brings.
pub struct Further {
    /// A screen, if it is one of these.
    pub screen: fn(&Route) -> Option<AnyView>,
}

/// All of it.
pub fn all() -> Further {
    Further { screen }
}

fn screen(route: &Route) -> Option<AnyView> {
    Some(match route {
        Route::Gears => view! { <GearsScreen/> }.into_any(),
        Route::Ride => view! { <RideScreen/> }.into_any(),
        Route::Compare => view! { <CompareScreen/> }.into_any(),
        Route::Review => view! { <ReviewScreen/> }.into_any(),
        Route::Practice => view! { <PracticeScreen/> }.into_any(),
        Route::Share => view! { <ShareScreen/> }.into_any(),
        Route::Open => view! { <OpenScreen/> }.into_any(),
        Route::Stand => view! { <StandScreen/> }.into_any(),
        Route::Card => view! { <CardScreen/> }.into_any(),
        Route::Settings => view! { <SettingsScreen/> }.into_any(),
        Route::Rules(id) => view! { <RulesScreen id=id.clone()/> }.into_any(),
        _ => return None,
    })
}
