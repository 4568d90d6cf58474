//! What works at an open plan: reading and writing, changing, working out, and
//! the screens of the main job.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::document::{self, Opened};
use leverwright_core::edit::{Edit, EditError};
use leverwright_core::history::{Foreseen, History};
use leverwright_core::plan::Plan;
use leverwright_core::share;
use leverwright_core::text::Date;

use crate::route::Route;
use crate::screens::{BikeScreen, DemoPlans, LayoutScreen, PlanList, RiderScreen, SheetScreen};
use crate::workspace::Derived;

/// What the part brings.
pub struct Desk {
    /// Works out what follows from a plan.
    pub derive: fn(&Plan) -> Derived,
    /// A plan that starts from a template.
    pub from_template: fn(TemplateId) -> Plan,
    /// Makes a change.
    pub commit: fn(&mut History, &Edit) -> Result<(), EditError>,
    /// What a change would come to.
    pub foresee: fn(&History, &Edit) -> Option<Foreseen>,
    /// Makes a change that was foreseen.
    pub commit_foreseen: fn(&mut History, &Edit, Foreseen) -> Result<(), EditError>,
    /// Takes the last change back; whether there was one.
    pub undo: fn(&mut History) -> bool,
    /// Makes the last undone change again; whether there was one.
    pub redo: fn(&mut History) -> bool,
    /// Takes another plan in the place of this one, as a step that undo takes
    /// back.
    pub take_over: fn(&mut History, Plan, &str),
    /// What a change is called.
    pub label: fn(&Edit, &Plan) -> String,
    /// Takes hand details out of a plan and its undo.
    pub forget_hands: fn(&mut History, Option<Date>),
    /// Reads a document; why not, in a sentence.
    pub read: fn(&[u8]) -> Result<Opened, String>,
    /// Writes a document.
    pub write: fn(&Plan) -> String,
    /// Reads what a link holds; why not, in a sentence.
    pub open_link: fn(&str) -> Result<Opened, String>,
    /// Writes undo, in at most so many bytes.
    pub write_undo: fn(&History, usize) -> String,
    /// Reads undo.
    pub recall: fn(&mut History, &str),
    /// Whether two plans are copies of one.
    pub are_copies: fn(&Plan, &Plan) -> bool,
    /// A screen, if it is one of the main job.
    pub screen: fn(&Route) -> Option<AnyView>,
    /// The plans of this browser.
    pub plan_list: fn() -> AnyView,
    /// The demo plans.
    pub demo_plans: fn() -> AnyView,
}

/// All of it.
pub fn all() -> Desk {
    Desk {
        derive: Derived::of,
        from_template: |id| template(id).plan(id.words()),
        commit: History::commit,
        foresee: History::foresee,
        commit_foreseen: History::commit_foreseen,
        undo: History::undo,
        redo: History::redo,
        take_over: History::take_over,
        label: Edit::label,
        forget_hands: History::remove_hand_details,
        read: |bytes| document::read(bytes).map_err(|error| error.to_string()),
        write: document::write,
        open_link: |packed| share::open(packed).map_err(|error| error.to_string()),
        write_undo: History::write_past,
        recall: |history, undo| {
            history.recall(undo);
        },
        are_copies: share::are_copies,
        screen,
        plan_list: || view! { <PlanList/> }.into_any(),
        demo_plans: || view! { <DemoPlans/> }.into_any(),
    }
}

fn screen(route: &Route) -> Option<AnyView> {
    Some(match route {
        Route::Rider => view! { <RiderScreen/> }.into_any(),
        Route::Bike => view! { <BikeScreen/> }.into_any(),
        Route::Layout => view! { <LayoutScreen/> }.into_any(),
        Route::Sheet => view! { <SheetScreen/> }.into_any(),
        _ => return None,
    })
}
