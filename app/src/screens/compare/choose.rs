//! One layout is chosen for the sheet, with a reason.

use leptos::ev::{KeyboardEvent, SubmitEvent};
use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::finding::Role;
use leverwright_core::layout::{Chosen, LayoutId};
use leverwright_core::text::Text;

use super::card::heading_id;
use crate::focus::focus_soon;
use crate::today::today;
use crate::widgets::Choice;
use crate::workspace::Workspace;

/// Asks why this one, and who says so.
#[component]
pub fn ChooseForm(
    id: LayoutId,
    name: String,
    choosing: RwSignal<Option<LayoutId>>,
) -> impl IntoView {
    let workspace = Workspace::here();
    let reason = NodeRef::<html::Textarea>::new();
    let by = NodeRef::<html::Input>::new();
    let role = RwSignal::new(Role::Shop);
    let lacks = RwSignal::new(false);
    Effect::new(move |_| {
        if let Some(field) = reason.get() {
            // A field on the page takes the focus.
            let _ = field.focus();
        }
    });
    let close = move || {
        choosing.set(None);
        focus_soon(heading_id(id));
    };
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let typed = reason.get_untracked().map(|field| field.value());
        let by = by
            .get_untracked()
            .map(|field| field.value())
            .unwrap_or_default();
        let chosen = Chosen {
            layout: id,
            reason: Text::new(&typed.unwrap_or_default()),
            by: Text::new(&by),
            role: role.get_untracked(),
            date: today(),
        };
        lacks.set(chosen.reason.is_empty());
        if lacks.get_untracked() {
            let _ = reason.get_untracked().map(|field| field.focus());
            return;
        }
        workspace.signer.set(by);
        if workspace.commit(Edit::Plan(PlanEdit::ChooseLayout(Some(chosen)))) {
            close();
        }
    };
    let escape = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            close();
        }
    };
    let roles = Role::ALL.iter();
    let roles = roles
        .map(|role| (Some(*role), role.words().to_owned()))
        .collect();
    let choose = move |chosen: Option<Role>| role.set(chosen.unwrap_or(Role::Shop));
    let error = format!("why-missing-{}", id.0);
    view! {
        <form class="choose-form" novalidate on:submit=submit on:keydown=escape>
            <label class="field">
                <span>{format!("Why “{name}”")}</span>
                <textarea rows="2" maxlength="400" node_ref=reason aria-describedby=error.clone()
                    aria-invalid=move || lacks.get().then_some("true")></textarea>
            </label>
            <p class="must-fix" role="alert" id=error>{move || lacks.get().then_some(
                "Write why this one: whoever reads the sheet will ask."
            )}</p>
            <label class="field">
                <span>"Who chose it, if that is to be known (a typed name is not a signature)"</span>
                <input type="text" autocomplete="off" maxlength="400" node_ref=by
                    value=workspace.signer.get_untracked()/>
            </label>
            <Choice legend="Chosen by the" name=format!("chosen-by-{}", id.0) choices=roles
                chosen=Signal::derive(move || Some(role.get()))
                choose=choose/>
            <div class="acts">
                <button type="submit" class="main">"Choose this layout"</button>
                <button type="button" on:click=move |_| close()>"Cancel"</button>
            </div>
        </form>
    }
}
