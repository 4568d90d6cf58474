//! The last word of a check, and the check once it stands.

use leptos::ev::SubmitEvent;
use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Role;
use leverwright_core::proof::Proof;
use leverwright_core::record::Check;

use super::HEADING;
use super::desk::CheckDesk;
use super::list::{AllSteps, BeginAgain};
use super::step::PageHead;
use crate::erase::view_of;
use crate::route::Route;
use crate::widgets::Choice;
use crate::workspace::Workspace;

/// What the button of the last word says.
const fn word(check: Check) -> &'static str {
    match check {
        Check::Stand => "Wired and working",
        Check::Rider => "Rider check done",
        Check::FirstRide => "Tried by the rider",
    }
}

/// What ends it.
const fn ends_with(check: Check) -> &'static str {
    match check {
        Check::Stand => "Any change to the bike or the layout ends it.",
        Check::Rider | Check::FirstRide => {
            "Any change to the bike, the layout or what is known of the hands ends it."
        }
    }
}

/// Every step is OK: somebody says so with a name.
#[component]
pub fn GiveWord() -> impl IntoView {
    let (desk, workspace) = (CheckDesk::here(), Workspace::here());
    let run = desk.run.get_untracked()?;
    let check = run.check;
    let missing = RwSignal::new(None::<&'static str>);
    let field = NodeRef::<html::Input>::new();
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let role = match check {
            Check::Stand => Some(Role::Shop),
            Check::Rider | Check::FirstRide => desk.role.get_untracked(),
        };
        let name = workspace.signer.get_untracked();
        match role {
            None => missing.set(Some("Say whether you are the shop or the rider.")),
            Some(_) if name.trim().is_empty() => {
                missing.set(Some("Write who says so."));
                if let Some(field) = field.get_untracked() {
                    let _ = field.focus();
                }
            }
            Some(role) => {
                missing.set(None);
                desk.give_word(role);
            }
        }
    };
    Some(view! {
        <PageHead check/>
        <section class="stand-word" aria-labelledby=HEADING>
            <h2 id=HEADING tabindex="-1">"Every step is OK"</h2>
            <p class="lead">"Somebody who was there says so. It stands for this revision only, and ends with any change."</p>
            <form on:submit=submit novalidate>
                {(check != Check::Stand).then(|| view! { <AsWho/> })}
                <label class="field">
                    <span>"Who says so (a typed name is not a signature)"</span>
                    <input type="text" autocomplete="off" maxlength="400" node_ref=field
                        prop:value=workspace.signer
                        on:input:target=move |event| workspace.signer.set(event.target().value())/>
                </label>
                <p class="must-fix" role="alert">{view_of(move || missing.get())}</p>
                <div class="acts"><button type="submit" class="main large">{word(check)}</button></div>
            </form>
            <AllSteps run/>
        </section>
    })
}

#[component]
fn AsWho() -> impl IntoView {
    let desk = CheckDesk::here();
    let roles = [Role::Shop, Role::Rider].map(|role| (Some(role), role.words().to_owned()));
    let choose = Callback::new(move |role| desk.role.set(role));
    view! { <Choice legend="You are the" name="word-as" choices=roles.to_vec() chosen=desk.role choose/> }
}

/// The check stands.
#[component]
pub fn Proved() -> impl IntoView {
    let desk = CheckDesk::here();
    let plan = Workspace::here().plan.get_untracked()?;
    let run = desk.run.get_untracked()?;
    let proof = Proof::of(&plan);
    let [wired, tried] = proof.words();
    let (said, next) = match run.check {
        Check::Stand => (
            wired,
            (CheckDesk::href(Check::Rider), "Go on to the rider check"),
        ),
        Check::Rider => (
            "The rider check is done.".to_owned(),
            (CheckDesk::href(Check::FirstRide), "Go on to the first ride"),
        ),
        Check::FirstRide => (tried, (Route::Card.href(), "Go on to the road card")),
    };
    Some(view! {
        <PageHead check=run.check/>
        <section class="stand-word" aria-labelledby=HEADING>
            <h2 id=HEADING tabindex="-1">{word(run.check)}</h2>
            <p class="lead proved">{said}</p>
            <p>{ends_with(run.check)}</p>
            <div class="acts">
                <a class="act main" href=next.0>{next.1}</a>
                <button type="button" class="large" on:click=move |_| desk.go(Some(0))>
                    "Look through the steps"
                </button>
                <BeginAgain check=run.check/>
            </div>
            <AllSteps run=run.clone()/>
        </section>
    })
}
