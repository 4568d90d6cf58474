//! Accepting a finding with a reason, and taking that back.

use leptos::ev::SubmitEvent;
use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::PlanEdit;
use leverwright_core::finding::{Acceptance, Finding, Role};
use leverwright_core::text::{Date, Text};
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::decide;
use crate::today::today;
use crate::widgets::Choice;
use crate::widgets::id::fresh_id;
use crate::workspace::Workspace;

/// A folded form, written only once it is unfolded: most findings are fixed.
#[component]
pub fn AcceptForm(
    finding: Finding,
    /// What the finding is, in a few words.
    title: String,
    acted: Callback<()>,
) -> impl IntoView {
    // What was written before going to another screen is seen again.
    let begun = !Workspace::here().drafts.reason(&finding.key()).is_empty();
    let unfolded = RwSignal::new(begun);
    let finding = StoredValue::new(finding);
    view! {
        <details class="accept" prop:open=begun on:toggle=move |_| unfolded.set(true)>
            <summary>"Accept with a reason"<span class="unseen">": "{title}</span></summary>
            <Show when=move || unfolded.get()>
                <Fields finding=finding.get_value() acted/>
            </Show>
        </details>
    }
}

/// Role, name, reason. No role is chosen beforehand, unless somebody said who
/// sits here: who accepts a finding says so.
#[component]
fn Fields(finding: Finding, acted: Callback<()>) -> impl IntoView {
    let workspace = Workspace::here();
    let form = Form::signed_by(
        workspace.signer.get_untracked(),
        workspace.role.get_untracked(),
        workspace.drafts.reason(&finding.key()),
    );
    let acceptable = finding.acceptable;
    let choose = Callback::new(move |role| form.role.set(role));
    let key = StoredValue::new(finding.key());
    let accept = move |event: SubmitEvent| {
        event.prevent_default();
        form.missing.set(form.first_missing(&finding));
        match (form.missing.get_untracked(), form.role.get_untracked()) {
            (None, Some(role)) => {
                let date = workspace.dated.get_untracked().or_else(today);
                let acceptance = form.acceptance(key.get_value(), role, date);
                workspace.signer.set(form.by.get_untracked());
                key.with_value(|key| workspace.drafts.set_reason(key, String::new()));
                let said = "Accepted with a reason.";
                decide(workspace, PlanEdit::Accept(acceptance), said, acted);
            }
            _ => form.focus_missing(),
        }
    };
    let roles = Role::ALL.iter();
    let roles = roles.map(|role| (Some(*role), role.words().to_owned()));
    view! {
        <form on:submit=accept novalidate>
            <p class="quiet">{acceptable.who()}</p>
            <div node_ref=form.role_field>
                <Choice legend="You are the" name=fresh_id("accepts-as") choices=roles.collect()
                    chosen=form.role choose/>
            </div>
            <Problem form of=Missing::Role/>
            <p class="must-fix" role="alert">{move || form.instead()}</p>
            <label class="field">"Who says so (a typed name is not a signature)"
                <input type="text" autocomplete="off" prop:value=form.by node_ref=form.by_field
                    aria-invalid=move || form.lacks(Missing::Name).then_some("true")
                    on:input:target=move |e| form.by.set(e.target().value())/>
            </label>
            <Problem form of=Missing::Name/>
            <label class="field">"Why it may stand"
                <textarea rows="2" prop:value=form.reason node_ref=form.reason_field
                    aria-invalid=move || form.lacks(Missing::Reason).then_some("true")
                    on:input:target=move |e| {
                        let reason = e.target().value();
                        key.with_value(|key| workspace.drafts.set_reason(key, reason.clone()));
                        form.reason.set(reason);
                    }></textarea>
            </label>
            <Problem form of=Missing::Reason/>
            <p class="quiet">
                "Reason, name and role are printed on the setup sheet, where the shop reads them."
            </p>
            <button type="submit">"Accept it"</button>
        </form>
    }
}

/// What is missing before a finding can be accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Missing {
    Role,
    /// It is not for this role; with what to do instead.
    Right(&'static str),
    Name,
    Reason,
}

impl Missing {
    const fn words(self) -> &'static str {
        match self {
            Missing::Role => "Say in what role you accept it.",
            Missing::Right(instead) => instead,
            Missing::Name => "Write who says so.",
            Missing::Reason => "Write why it may stand.",
        }
    }
}

/// What is filled in, and what is still missing.
#[derive(Clone, Copy)]
struct Form {
    role: RwSignal<Option<Role>>,
    by: RwSignal<String>,
    reason: RwSignal<String>,
    missing: RwSignal<Option<Missing>>,
    role_field: NodeRef<html::Div>,
    by_field: NodeRef<html::Input>,
    reason_field: NodeRef<html::Textarea>,
}

impl Form {
    /// Empty but for the name of who signed last, and the role of who said that
    /// they sit here, and what was written already.
    fn signed_by(name: String, role: Option<Role>, reason: String) -> Form {
        Form {
            role: RwSignal::new(role),
            by: RwSignal::new(name),
            reason: RwSignal::new(reason),
            missing: RwSignal::new(None),
            role_field: NodeRef::new(),
            by_field: NodeRef::new(),
            reason_field: NodeRef::new(),
        }
    }

    fn lacks(self, what: Missing) -> bool {
        self.missing.get() == Some(what)
    }

    /// What to do instead, where it is not for this role.
    fn instead(self) -> Option<&'static str> {
        match self.missing.get() {
            Some(Missing::Right(instead)) => Some(instead),
            _ => None,
        }
    }

    /// The first thing missing, from top to bottom.
    fn first_missing(self, finding: &Finding) -> Option<Missing> {
        let blank = |field: RwSignal<String>| Text::new(&field.get_untracked()).is_empty();
        let role = self.role.get_untracked();
        let Some(role) = role else {
            return Some(Missing::Role);
        };
        let instead = finding.acceptable.instead(role).map(Missing::Right);
        let name = || blank(self.by).then_some(Missing::Name);
        let reason = || blank(self.reason).then_some(Missing::Reason);
        instead.or_else(name).or_else(reason)
    }

    fn acceptance(self, finding: String, role: Role, date: Option<Date>) -> Acceptance {
        Acceptance {
            finding,
            reason: Text::new(&self.reason.get_untracked()),
            by: Text::new(&self.by.get_untracked()),
            role,
            date,
            lapsed: false,
        }
    }

    /// Takes the focus to what is missing.
    fn focus_missing(self) {
        let first_role = || {
            let field = self.role_field.get_untracked()?;
            field.query_selector("input").ok().flatten()
        };
        // A field that is on the page takes the focus.
        let _ = match self.missing.get_untracked() {
            Some(Missing::Role) => first_role()
                .and_then(|input| input.dyn_into::<HtmlElement>().ok())
                .map(|input| input.focus()),
            Some(Missing::Name) => self.by_field.get_untracked().map(|field| field.focus()),
            // What was written stays at hand, to go into a comment.
            Some(Missing::Right(_) | Missing::Reason) => {
                self.reason_field.get_untracked().map(|field| field.focus())
            }
            None => None,
        };
    }
}

#[component]
fn Problem(form: Form, of: Missing) -> impl IntoView {
    view! { <p class="must-fix" role="alert">{move || form.lacks(of).then_some(of.words())}</p> }
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
    let when = acceptance.date.map(|date| format!(", {date}"));
    let when = when.unwrap_or_default();
    format!("{}, {}{when}", acceptance.by, acceptance.role)
}

/// Who accepted it and why, and the way back.
#[component]
pub fn Accepted(
    acceptance: Acceptance,
    /// What the finding is, in a few words.
    title: String,
    acted: Callback<()>,
) -> impl IntoView {
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
        <button type="button" on:click=withdraw>
            "No longer accept it"<span class="unseen">": "{title}</span>
        </button>
    }
}
