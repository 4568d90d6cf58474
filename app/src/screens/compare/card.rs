//! One layout of the comparison: drawing, words, what differs, what can be done.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::layout::LayoutId;
use leverwright_core::text::Text;
use leverwright_core::variants::{Line, Topic};

use super::Compared;
use super::acts::RenameForm;
use super::choose::ChooseForm;
use crate::drawing::MarkedCockpit;
use crate::erase::When;
use crate::focus::focus_soon;
use crate::route::Route;
use crate::widgets::{MenuButton, MenuItem};
use crate::workspace::Workspace;

/// A layout at its place in the order.
#[component]
pub fn Card(compared: Compared, at: usize, choosing: RwSignal<Option<LayoutId>>) -> impl IntoView {
    let (plan, comparison) = &*compared;
    let column = &comparison.columns[at];
    let layout = &plan.layouts[at];
    let id = column.layout;
    let label = format!(
        "Drawing of “{}”; a diamond marks what is not the same in all layouts",
        column.name
    );
    let verdict = format!("{}: {}", column.readiness.words(), column.tally);
    let heading = heading_id(id);
    let chosen = column.is_chosen.then(|| {
        view! {
            <p class="chosen-mark"><strong>"✓ Chosen for the sheet"</strong></p>
        }
    });
    let summary = &column.summary;
    let mut sentences = vec![summary.left.clone(), summary.right.clone()];
    sentences.extend(summary.centre.clone());
    let sentences = sentences.into_iter().map(|said| view! { <p>{said}</p> });
    view! {
        <section class="compare-card" class:chosen=column.is_chosen aria-labelledby=heading_id(id)>
            <h2 id=heading tabindex="-1">{column.name.clone()}</h2>
            {chosen}
            <p class="compare-verdict">{verdict}<span class="quiet">{format!(" · code {}", column.code)}</span></p>
            <MarkedCockpit bike=&plan.bike layout marked=&comparison.differing
                name=format!("compare-{}", id.0) label/>
            {differences(&comparison.lines, at)}
            <div class="compare-summary">{sentences.collect_view()}</div>
            <Acts id at count=plan.layouts.len() name=column.name.clone() is_chosen=column.is_chosen choosing/>
        </section>
    }
}

/// The name of a layout's heading on the page.
pub fn heading_id(layout: LayoutId) -> String {
    format!("compared-{}", layout.0)
}

/// What the differing buttons do in this layout.
fn differences(lines: &[Line], at: usize) -> impl IntoView + use<> {
    let differing = lines
        .iter()
        .filter(|line| line.topic == Topic::Buttons && line.differs());
    let items = differing
        .map(|line| {
            view! {
                <li><span class="diamond" aria-hidden="true">"◆"</span>{line.head.clone()}": "
                    <strong>{line.cells[at].clone()}</strong></li>
            }
        })
        .collect_view();
    (!items.is_empty()).then(|| view! { <ul class="compare-differs">{items}</ul> })
}

#[component]
fn Acts(
    id: LayoutId,
    at: usize,
    count: usize,
    name: String,
    is_chosen: bool,
    choosing: RwSignal<Option<LayoutId>>,
) -> impl IntoView {
    let workspace = Workspace::here();
    let renaming = RwSignal::new(false);
    let edit = move |edit: PlanEdit| workspace.commit(Edit::Plan(edit));
    let work_on = move |_| {
        edit(PlanEdit::SelectLayout(id));
        Route::Layout.go();
    };
    let copy_name = Text::new(&format!("{name} copy"));
    let copy = move || {
        // A copy is made of the layout in hand.
        let edits = [
            PlanEdit::SelectLayout(id),
            PlanEdit::DuplicateLayout(copy_name.clone()),
        ];
        workspace.commit(Edit::Several {
            label: "copy the layout".into(),
            edits: edits.map(Edit::Plan).into(),
        });
    };
    let move_to = move |to: usize| {
        move || {
            edit(PlanEdit::MoveLayout(id, to));
            focus_soon(heading_id(id));
        }
    };
    let remove = move || {
        edit(PlanEdit::RemoveLayout(id));
        focus_soon("main");
    };
    let earlier = (at > 0).then(|| MenuItem::new("Move earlier", move_to(at.wrapping_sub(1))));
    let later = (at + 1 < count).then(|| MenuItem::new("Move later", move_to(at + 1)));
    let copy_alone = (count == 1).then(|| {
        let copy = copy.clone();
        view! { <button type="button" class="main" on:click=move |_| copy()>"Copy this layout"</button> }
    });
    let copy = (count > 1).then(|| MenuItem::new("Copy this layout", copy));
    let rename = MenuItem::new("Rename this layout", move || renaming.set(true));
    let remove = (count > 1).then(|| MenuItem::new("Remove this layout", remove));
    let items = copy
        .into_iter()
        .chain([rename])
        .chain(earlier)
        .chain(later)
        .chain(remove)
        .collect();
    let about = name.clone();
    let form_name = name.clone();
    let unseen = format!(" {name}");
    view! {
        <div class="acts on-screen">
            {(!is_chosen && count > 1).then(|| view! {
                <button type="button" class="main" aria-expanded=move || (choosing.get() == Some(id)).to_string()
                    on:click=move |_| choosing.update(|now| {
                        *now = if *now == Some(id) { None } else { Some(id) };
                    })>
                    "Choose for the sheet"<span class="unseen">{unseen.clone()}</span>
                </button>
            })}
            {copy_alone}
            <button type="button" on:click=work_on>"Work on it"<span class="unseen">{unseen.clone()}</span></button>
            <MenuButton label="More" about=Signal::stored(about) items/>
        </div>
        <When holds=Signal::derive(move || choosing.get() == Some(id))>
            <ChooseForm id name=form_name.clone() choosing/>
        </When>
        <When holds=renaming>
            <RenameForm id name=name.clone() renaming/>
        </When>
    }
}
