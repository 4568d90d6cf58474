//! What the rider writes into the record from here.

use leptos::prelude::*;
use leverwright_core::edit::{Edit, RecordEdit};
use leverwright_core::finding::Role;
use leverwright_core::layout::LayoutId;
use leverwright_core::practice;
use leverwright_core::record::Matter;
use leverwright_core::text::Text;

use super::desk::PracticeDesk;
use crate::today::today;

/// Writes something in the rider's name about the layout that is practised; whether it was taken. A
/// refusal is told.
pub fn write(desk: PracticeDesk, matter: Matter) -> bool {
    let layout = desk.plan().map(|plan| untrack(|| desk.layout_of(&plan)));
    desk.workspace.commit(Edit::Record(RecordEdit {
        by: Text::new(""),
        role: Role::Rider,
        date: today(),
        layout,
        matter,
    }))
}

/// Keeps the session with its layout; whether it was taken.
pub fn keep(desk: PracticeDesk) -> bool {
    let Some(result) = desk.result() else {
        return false;
    };
    let kept = write(desk, Matter::Practice(result));
    if kept {
        desk.workspace.report("Kept with this layout.");
    }
    kept
}

/// Sends along what was kept of a layout.
pub fn send(desk: PracticeDesk, layout: LayoutId) {
    let Some(plan) = desk.plan() else { return };
    let sent = practice::unsent(&plan, layout)
        .into_iter()
        .all(|id| write(desk, Matter::Sent(id)));
    if sent {
        desk.workspace
            .report("Goes along with links and files from now on.");
    }
}
