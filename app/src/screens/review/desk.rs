//! The page as it is read, and how something is written into the record.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::edit::{Edit, RecordEdit};
use leverwright_core::finding::{Finding, Place, Role};
use leverwright_core::plan::Plan;
use leverwright_core::record::{Matter, Pin};
use leverwright_core::review::{ReviewPage, pins};
use leverwright_core::text::Text;

use crate::erase::memo;
use crate::focus::focus_field_soon;
use crate::workspace::Workspace;

/// What the parts of the page share. A context.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The open plan.
    pub workspace: Workspace,
    /// The page, as who sits here sees it.
    pub page: Memo<Option<Arc<ReviewPage>>>,
}

impl Desk {
    /// Works the page out anew as the plan changes.
    pub fn new(workspace: Workspace) -> Desk {
        let page = memo(move || {
            let plan = workspace.plan.get()?;
            // Until somebody says who sits here, only what everyone sees is shown.
            let role = workspace.role.get().unwrap_or(Role::Shop);
            Some(Arc::new(ReviewPage::of(&plan, role)))
        });
        Desk { workspace, page }
    }

    /// The desk of the screen.
    pub fn here() -> Desk {
        expect_context()
    }

    /// Something of the page, passed on only when it comes out different.
    pub fn read<T>(self, read: fn(&ReviewPage) -> T) -> Memo<T>
    where
        T: Default + PartialEq + Send + Sync + 'static,
    {
        memo(move || {
            self.page
                .with(|page| page.as_deref().map(read).unwrap_or_default())
        })
    }

    /// Something of the plan.
    pub fn of_plan<T: Default>(self, read: impl FnOnce(&Plan) -> T) -> T {
        self.workspace
            .plan
            .with(|plan| plan.as_deref().map(read).unwrap_or_default())
    }

    /// Writes into the record in the name of who sits here, or says why not.
    pub fn write(self, matter: Matter) -> Result<(), String> {
        let Some(role) = self.workspace.role.get_untracked() else {
            return Err(
                "Say first who sits here: role, name and day stand at the top of this page.".into(),
            );
        };
        let edit = Edit::Record(RecordEdit {
            by: Text::new(&self.workspace.signer.get_untracked()),
            role,
            date: self.workspace.dated.get_untracked(),
            layout: None,
            matter,
        });
        (self.workspace.try_commit(&edit)).map_err(|error| error.to_string())
    }

    /// Everything a comment may be pinned to.
    pub fn pins(self) -> Vec<(Pin, String)> {
        let findings = self.workspace.derived.get();
        let findings: Vec<Finding> = findings.map_or_else(Vec::new, |d| d.findings.clone());
        self.of_plan(|plan| pins(plan, &findings))
    }

    /// Leads to the form of a comment with its pin set.
    pub fn comment_on(self, pin: Pin) {
        self.workspace.drafts.comment.update(|draft| draft.on = pin);
        focus_field_soon("review-comment-text".into());
    }

    /// The buttons with their balloon numbers.
    pub fn buttons(self) -> Vec<(ButtonId, String)> {
        let words = |plan: &Plan| {
            let all = plan.bike.buttons().into_iter();
            all.map(|(id, ..)| (id, Pin::Place(Place::Button(id)).words(plan)))
                .collect()
        };
        self.of_plan(words)
    }

    /// Lights places on the drawing; none darkens it.
    pub fn light(self, places: &[Place]) {
        self.workspace.lit.set(places.to_vec());
    }
}
