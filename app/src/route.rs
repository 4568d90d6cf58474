//! Which screen is shown: the part of the address after `#/`.

use leptos::ev;
use leptos::prelude::*;
use leverwright_core::spot::{Screen, Spot};

use crate::arrivals::Arrivals;
use crate::parts::{self, Part};
use crate::workspace::Workspace;

/// A screen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Route {
    /// The list of plans, where everything starts.
    Plans,
    /// What the rider's hands can do.
    Rider,
    /// Controls, brakes, what the system can program.
    Bike,
    /// Which button does what.
    Layout,
    /// Rings, cogs, and how the derailleurs work together.
    Gears,
    /// What a ride asks of the hands.
    Ride,
    /// The layouts beside each other.
    Compare,
    /// What a therapist reads and decides.
    Review,
    /// Finding the buttons at home, without the bike.
    Practice,
    /// The setup sheet.
    Sheet,
    /// Handing the plan on.
    Share,
    /// What somebody handed on, before it is a plan here.
    Open,
    /// What was built, proved on the stand and by the rider.
    Stand,
    /// The rider's card for the road.
    Card,
    /// The page of a rule, or of all of them.
    Rules(Option<String>),
    /// How the app behaves here.
    Settings,
}

impl Route {
    /// The screen at an address fragment such as `#/layout`; unknown ones lead
    /// to the list of plans.
    pub fn parse(hash: &str) -> Route {
        let path = hash.trim_start_matches('#').trim_matches('/');
        match path.split_once('/').unwrap_or((path, "")) {
            ("rider", _) => Route::Rider,
            ("bike", _) => Route::Bike,
            ("layout", _) => Route::Layout,
            ("gears", _) => Route::Gears,
            ("ride", _) => Route::Ride,
            ("compare", _) => Route::Compare,
            ("review", _) => Route::Review,
            ("practice", _) => Route::Practice,
            ("sheet", _) => Route::Sheet,
            ("share", _) => Route::Share,
            ("open", _) => Route::Open,
            ("stand", _) => Route::Stand,
            ("card", _) => Route::Card,
            ("settings", _) => Route::Settings,
            ("rules", "") => Route::Rules(None),
            ("rules", id) => Route::Rules(Some(id.to_owned())),
            _ => Route::Plans,
        }
    }

    /// The address fragment of the screen.
    pub fn href(&self) -> String {
        match self {
            Route::Plans => "#/plans".into(),
            Route::Rider => "#/rider".into(),
            Route::Bike => "#/bike".into(),
            Route::Layout => "#/layout".into(),
            Route::Gears => "#/gears".into(),
            Route::Ride => "#/ride".into(),
            Route::Compare => "#/compare".into(),
            Route::Review => "#/review".into(),
            Route::Practice => "#/practice".into(),
            Route::Sheet => "#/sheet".into(),
            Route::Share => "#/share".into(),
            Route::Open => "#/open".into(),
            Route::Stand => "#/stand".into(),
            Route::Card => "#/card".into(),
            Route::Settings => "#/settings".into(),
            Route::Rules(None) => "#/rules".into(),
            Route::Rules(Some(id)) => format!("#/rules/{id}"),
        }
    }

    /// The address of a field on a screen of the plan.
    pub fn href_of(spot: Spot) -> String {
        format!("{}/{}", Route::of(spot.screen()).href(), spot.key())
    }

    /// The screen on which something is noted.
    pub fn of(screen: Screen) -> Route {
        match screen {
            Screen::Rider => Route::Rider,
            Screen::Bike => Route::Bike,
            Screen::Layout => Route::Layout,
            Screen::Gears => Route::Gears,
        }
    }

    /// The screen at the address now.
    pub fn now() -> Route {
        Route::parse(&hash())
    }

    /// What the screen is called.
    pub fn name(&self) -> &'static str {
        match self {
            Route::Plans => "Plans",
            Route::Rider => "Rider",
            Route::Bike => "Bike",
            Route::Layout => "Layout",
            Route::Gears => "Gears",
            Route::Ride => "Ride",
            Route::Compare => "Compare",
            Route::Review => "Review",
            Route::Practice => "Practice",
            Route::Sheet => "Sheet",
            Route::Share => "Share",
            Route::Open => "Open",
            Route::Stand => "Stand check",
            Route::Card => "Road card",
            Route::Rules(_) => "Rules",
            Route::Settings => "Settings",
        }
    }

    /// Whether it shows the open plan.
    pub fn is_about_plan(&self) -> bool {
        !matches!(
            self,
            Route::Plans | Route::Open | Route::Rules(_) | Route::Settings
        )
    }

    /// Goes there.
    pub fn go(&self) {
        // Setting the fragment of one's own page does not fail.
        let _ = window().location().set_hash(&self.href());
    }
}

/// The address of the app, without what stands after the `#`.
pub fn address_of_app() -> String {
    let href = window().location().href().unwrap_or_default();
    href.split('#').next().unwrap_or_default().to_owned()
}

fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// What follows the screen's name in the address, as it changes: `rider` of
/// `#/stand/rider`.
pub fn current_page() -> ReadSignal<String> {
    let read = || {
        let hash = hash();
        let page = hash.trim_start_matches("#/").split_once('/');
        page.map_or_else(String::new, |(_, page)| page.to_owned())
    };
    let (page, set_page) = signal(read());
    let listener = window_event_listener(ev::hashchange, move |_| set_page.set(read()));
    on_cleanup(move || listener.remove());
    page
}

/// The field that the address leads to on its screen: `throw-3` of
/// `#/bike/throw-3`.
pub fn field_in_address() -> Option<String> {
    let hash = hash();
    let (_, field) = hash.trim_start_matches("#/").split_once('/')?;
    let of_plan = Route::parse(&hash).is_about_plan();
    (of_plan && !field.is_empty()).then(|| field.to_owned())
}

/// The screen at the address, followed as the address changes, and as soon as
/// what it needs is here.
pub fn current_route() -> ReadSignal<Route> {
    let (route, set_route) = signal(Route::now());
    let (arrivals, workspace) = (Arrivals::here(), Workspace::here());
    let follow = move || {
        let now = Route::now();
        // A link to a field of the screen in view must not draw it anew, and
        // somebody may have gone on while a part was on its way.
        if parts::is_here(&now) && route.get_untracked() != now {
            set_route.set(now);
        }
    };
    let listener = window_event_listener(ev::hashchange, move |_| {
        arrivals.take_from_address(workspace);
        match Part::of(&Route::now()) {
            Some(part) => parts::once_here(part, workspace, follow),
            None => follow(),
        }
    });
    on_cleanup(move || listener.remove());
    route
}
