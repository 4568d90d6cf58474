//! The Share screen: handing the plan on, as a file, a link or a code.

mod code;
mod link;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::document;
use leverwright_core::edit::{Edit, RecordEdit};
use leverwright_core::finding::Role;
use leverwright_core::plan::Plan;
use leverwright_core::record::{Code, Matter};
use leverwright_core::share::{self, Along, IMPLIED};
use leverwright_core::text::Text;
use std::sync::Arc;

use crate::erase::{act, memo, text, view_of};
use crate::focus::focus_screen_if_lost;
use crate::route::Route;
use crate::storage::{Library, is_page_from_file};
use crate::today::today;
use crate::widgets::{Choice, NoPlan};
use crate::workspace::Workspace;
use code::LayoutCode;
use link::Link;

/// The Share screen.
#[component]
pub fn ShareScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    view! {
        <h1>"Share"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Ways/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
    }
}

/// One choice, then the ways.
#[component]
fn Ways() -> impl IntoView {
    let workspace = Workspace::here();
    let along = RwSignal::new(Along::WithoutRider);
    let content = memo(move || {
        let plan = workspace.plan.get()?;
        Some(Arc::new(share::content(&plan, along.get())))
    });
    let from_file = is_page_from_file();
    view! {
        <p class="lead">
            "Hands this plan to somebody else. This page sends nothing: it makes a file or a link, \
            and you send it."
        </p>
        <WhatGoesAlong along/>
        <div class="share-ways">
            <AsFile content/>
            {if from_file {
                view! { <FilesOnly/> }.into_any()
            } else {
                view! { <Link content/> <LayoutCode/> }.into_any()
            }}
        </div>
        <section aria-labelledby="share-back">
            <h2 id="share-back">"When it comes back"</h2>
            <p>
                "Follow the link, or open the file under "<a href=Route::Plans.href()>"Plans"</a>
                ". What was changed elsewhere is shown beside yours, part by part, and you choose. A \
                link that came as text is pasted under "<a href=Route::Open.href()>"Open a link"</a>"."
            </p>
        </section>
    }
}

#[component]
fn WhatGoesAlong(along: RwSignal<Along>) -> impl IntoView {
    let workspace = Workspace::here();
    let choices = memo(move || {
        let plan = workspace.plan.get();
        plan.map(|plan| Along::choices(&plan)).unwrap_or_default()
    });
    let stays = text(move || {
        let plan = workspace.plan.get();
        let stays = plan.and_then(|plan| share::stays(&plan, along.get()));
        stays.unwrap_or_default()
    });
    let choose = move |chosen: Option<Along>| along.set(chosen.unwrap_or(Along::WithoutRider));
    view! {
        <section class="what-goes-along" aria-label="What goes along">
            {view_of(move || {
                let choices = choices.get();
                let choices = choices.iter();
                let choices = choices.map(|along| (Some(*along), along.words().to_owned())).collect();
                view! {
                    <Choice legend="What goes along" name="along" choices
                        chosen=Signal::derive(move || Some(along.get())) choose/>
                }
            })}
            <p>{move || along.get().explained()}</p>
            <p class="stays"><strong>{stays}</strong></p>
            <p><strong>{IMPLIED}</strong></p>
            <PracticeStays along/>
        </section>
    }
}

/// Where practice would not go along, that it stays, with the way to include it.
#[component]
fn PracticeStays(along: RwSignal<Along>) -> impl IntoView {
    let workspace = Workspace::here();
    let left = memo(move || {
        let plan = workspace.plan.get()?;
        share::practice_left(&plan, along.get(), workspace.role.get())
    });
    let include = move |sessions: Vec<Code>| {
        let included = sessions.into_iter().all(|id| {
            workspace.commit(Edit::Record(RecordEdit {
                by: Text::new(""),
                role: Role::Rider,
                date: today(),
                layout: None,
                matter: Matter::Sent(id),
            }))
        });
        if included {
            workspace.report("Practice goes along with links and files from now on.");
            focus_screen_if_lost();
        }
    };
    view_of(move || {
        left.get().map(|left| {
            let sessions = left.may_include;
            view! {
                <div class="practice-stays">
                    <p>{left.words}</p>
                    {(!sessions.is_empty()).then(|| view! {
                        <button type="button" on:click=act(move || include(sessions.clone()))>
                            "Include it"
                        </button>
                    })}
                </div>
            }
        })
    })
}

#[component]
fn AsFile(content: Memo<Option<Arc<Plan>>>) -> impl IntoView {
    let library = Library::here();
    let save = move |_| {
        if let Some(content) = content.get_untracked() {
            library.export_part(&content);
        }
    };
    let size = move || {
        let content = content.get()?;
        Some(format!(
            "The file has {}.",
            kilobytes(document::write(&content).len())
        ))
    };
    view! {
        <section aria-labelledby="share-file">
            <h2 id="share-file">"As a file"</h2>
            <p>"To send by mail, or to carry on a stick. Nothing is too large for it."</p>
            <div class="acts">
                <button type="button" class="main" on:click=save>"Save a file"</button>
            </div>
            <p class="quiet size">{size}</p>
        </section>
    }
}

/// Where the page has no address that others could follow.
#[component]
fn FilesOnly() -> impl IntoView {
    view! {
        <section aria-labelledby="share-link">
            <h2 id="share-link">"As a link"</h2>
            <p>
                "This page was opened from a file, so a link to it would work on this computer \
                only. Send the plan as a file."
            </p>
        </section>
    }
}

/// A size as people read it.
fn kilobytes(bytes: usize) -> String {
    format!("{:.1} KB", bytes as f64 / 1000.0)
}
