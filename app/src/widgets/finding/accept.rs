//! Accepting a finding with a reason, and taking that back.

use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::PlanEdit;
use leverwright_core::finding::{Acceptance, Finding, Role};
use leverwright_core::text::Text;

use super::decide;
use crate::today::today;
use crate::workspace::Workspace;

/// A folded form, written only once it is unfolded: most findings are fixed.
#[component]
pub fn AcceptForm(finding: Finding, acted: Callback<()>) -> impl IntoView {
    let unfolded = RwSignal::new(false);
    let finding = StoredValue::new(finding);
    view! {
        <details class="accept" on:toggle=move |_| unfolded.set(true)>
            <summary>"Accept with a reason"</summary>
            <Show when=move || unfolded.get()>
                <Form finding=finding.get_value() acted/>
            </Show>
        </details>
    }
}

/// Reason, name, role.
#[component]
fn Form(finding: Finding, acted: Callback<()>) -> impl IntoView {
    let workspace = Workspace::here();
    let roles: Vec<Role> = Role::ALL
        .iter()
        .copied()
        .filter(|role| finding.acceptable.by(*role))
        .collect();
    let reason = RwSignal::new(String::new());
    let by = RwSignal::new(String::new());
    let role = RwSignal::new(roles[0]);
    let reasonless = RwSignal::new(false);
    let key = StoredValue::new(finding.key());
    let accept = move |event: SubmitEvent| {
        event.prevent_default();
        let acceptance = Acceptance {
            finding: key.get_value(),
            reason: Text::new(&reason.get_untracked()),
            by: Text::new(&by.get_untracked()),
            role: role.get_untracked(),
            date: today(),
        };
        reasonless.set(acceptance.reason.is_empty());
        if !acceptance.reason.is_empty() {
            let said = "Accepted with a reason.";
            decide(workspace, PlanEdit::Accept(acceptance), said, acted);
        }
    };
    view! {
        <form on:submit=accept novalidate>
            <label class="field">"Why it may stand"
                <textarea rows="2" prop:value=reason
                    aria-invalid=move || reasonless.get().then_some("true")
                    on:input:target=move |e| reason.set(e.target().value())></textarea>
            </label>
            <p class="must-fix" role="alert">
                {move || reasonless.get().then_some("Write why it may stand.")}
            </p>
            <label class="field">"Who says so (a typed name is not a signature)"
                <input type="text" autocomplete="off" prop:value=by
                    on:input:target=move |e| by.set(e.target().value())/>
            </label>
            <RoleChoice roles role/>
            <button type="submit">"Accept it"</button>
        </form>
    }
}

/// In what role; asked only where there is a choice.
#[component]
fn RoleChoice(roles: Vec<Role>, role: RwSignal<Role>) -> impl IntoView {
    if roles.len() < 2 {
        return view! { <p class="quiet">"As: "{roles[0].words()}</p> }.into_any();
    }
    let options = roles
        .iter()
        .map(|role| view! { <option value=role.code()>{role.words()}</option> })
        .collect_view();
    let choose = move |code: String| {
        if let Some(chosen) = Role::from_code(&code) {
            role.set(chosen);
        }
    };
    view! {
        <label class="field">"As"
            <select on:change:target=move |e| choose(e.target().value())>{options}</select>
        </label>
    }
    .into_any()
}

/// Who accepted it and why, and the way back.
#[component]
pub fn Accepted(acceptance: Acceptance, acted: Callback<()>) -> impl IntoView {
    let workspace = Workspace::here();
    let who = match acceptance.by.as_str() {
        "" => acceptance.role.to_string(),
        name => format!("{name}, {}", acceptance.role),
    };
    let when = acceptance.date.map(|date| format!(", {date}"));
    let withdraw = move |_| {
        let edit = PlanEdit::Withdraw(acceptance.finding.clone());
        decide(workspace, edit, "No longer accepted.", acted);
    };
    view! {
        <p class="accepted">
            "Accepted ("{who}{when}"): "{acceptance.reason.to_string()}
        </p>
        <button type="button" on:click=withdraw>"No longer accept it"</button>
    }
}
