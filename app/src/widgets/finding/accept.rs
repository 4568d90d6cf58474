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

/// A folded form: reason, name, role.
#[component]
pub fn AcceptForm(finding: Finding, acted: Callback<()>) -> impl IntoView {
    let workspace = Workspace::here();
    let roles: Vec<Role> = Role::ALL
        .iter()
        .copied()
        .filter(|role| finding.acceptable.by(*role))
        .collect();
    let reason = RwSignal::new(String::new());
    let by = RwSignal::new(workspace.signer.get_untracked());
    // Nobody signs as the shop without saying so.
    let role = RwSignal::new((roles.len() == 1).then(|| roles[0]));
    let missing = RwSignal::new(None::<&'static str>);
    let key = StoredValue::new(finding.key());
    let accept = move |event: SubmitEvent| {
        event.prevent_default();
        let reason = Text::new(&reason.get_untracked());
        missing.set(match (reason.is_empty(), role.get_untracked()) {
            (true, _) => Some("Write why it may stand."),
            (false, None) => Some("Choose as whom."),
            (false, Some(_)) => None,
        });
        let (Some(role), None) = (role.get_untracked(), missing.get_untracked()) else {
            return;
        };
        workspace.signer.set(by.get_untracked());
        let acceptance = Acceptance {
            finding: key.get_value(),
            reason,
            by: Text::new(&by.get_untracked()),
            role,
            date: today(),
            lapsed: false,
        };
        let said = "Accepted with a reason.";
        decide(workspace, PlanEdit::Accept(acceptance), said, acted);
    };
    view! {
        <details class="accept">
            <summary>"Accept with a reason"</summary>
            <form on:submit=accept novalidate>
                <label class="field">"Why it may stand"
                    <textarea rows="2" prop:value=reason
                        aria-invalid=move || (missing.get().is_some() && reason.with(|r| r.trim().is_empty())).then_some("true")
                        on:input:target=move |e| reason.set(e.target().value())></textarea>
                </label>
                <p class="must-fix" role="alert">
                    {missing}
                </p>
                <label class="field">"Who says so (a typed name is not a signature)"
                    <input type="text" autocomplete="off" prop:value=by
                        on:input:target=move |e| by.set(e.target().value())/>
                </label>
                <RoleChoice roles role/>
                <button type="submit">"Accept it"</button>
            </form>
        </details>
    }
}

/// In what role; asked only where there is a choice.
#[component]
fn RoleChoice(roles: Vec<Role>, role: RwSignal<Option<Role>>) -> impl IntoView {
    if roles.len() < 2 {
        return view! { <p class="quiet">"As: "{roles[0].words()}</p> }.into_any();
    }
    let options = roles
        .iter()
        .map(|role| view! { <option value=role.code()>{role.words()}</option> })
        .collect_view();
    let choose = move |code: String| role.set(Role::from_code(&code));
    view! {
        <label class="field">"As"
            <select on:change:target=move |e| choose(e.target().value())>
                <option value="">"choose"</option>
                {options}
            </select>
        </label>
    }
    .into_any()
}

/// That it was accepted once, and that this does not count any more.
#[component]
pub fn Lapsed(acceptance: Acceptance) -> impl IntoView {
    view! {
        <p class="lapsed">
            "No longer accepted: what it rests on has changed since. It was accepted ("
            {who(&acceptance)}"): "{acceptance.reason.to_string()}
        </p>
    }
}

/// "A. Fitter, shop, 2031-05-09".
fn who(acceptance: &Acceptance) -> String {
    let named = match acceptance.by.as_str() {
        "" => acceptance.role.to_string(),
        name => format!("{name}, {}", acceptance.role),
    };
    match acceptance.date {
        Some(date) => format!("{named}, {date}"),
        None => named,
    }
}

/// Who accepted it and why, and the way back.
#[component]
pub fn Accepted(acceptance: Acceptance, acted: Callback<()>) -> impl IntoView {
    let workspace = Workspace::here();
    let who = who(&acceptance);
    let withdraw = move |_| {
        let edit = PlanEdit::Withdraw(acceptance.finding.clone());
        decide(workspace, edit, "No longer accepted.", acted);
    };
    view! {
        <p class="accepted">
            "Accepted ("{who}"): "{acceptance.reason.to_string()}
        </p>
        <button type="button" on:click=withdraw>"No longer accept it"</button>
    }
}
