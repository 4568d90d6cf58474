//! The revision history: who changed what when, and what differs between any
//! two revisions.

use leptos::prelude::*;
use leverwright_core::finding::Place;
use leverwright_core::plan::Plan;
use leverwright_core::revision::{Between, Difference, between};

use super::desk::Desk;
use super::drawn::MarkedCockpit;
use crate::erase::{memo, view_of};
use crate::focus::focus_soon;
use crate::widgets::Select;
use crate::words::capitalised;

/// How many revisions are listed before somebody asks for all.
const FIRST: usize = 20;

/// One line of the history.
#[derive(Debug, Clone, PartialEq)]
struct Line {
    number: u32,
    what: String,
    who: String,
    code: String,
}

/// The list, and two revisions beside each other.
#[component]
pub fn Revisions() -> impl IntoView {
    let desk = Desk::here();
    let history = memo(move || desk.of_plan(lines));
    // None: the latest, and the one before it.
    let pair = RwSignal::new((None::<u32>, None::<u32>));
    let all = RwSignal::new(false);
    let listed = memo(move || {
        let mut lines = history.get();
        if !all.get() {
            lines.truncate(FIRST);
        }
        lines
    });
    let more = view_of(move || {
        let count = history.with(Vec::len);
        (count > FIRST && !all.get()).then(|| {
            view! {
                <button type="button" on:click=move |_| all.set(true)>
                    {format!("Show all {count} revisions")}
                </button>
            }
        })
    });
    view! {
        <section class="review-revisions" aria-labelledby="review-revisions">
            <h2 id="review-revisions">"Revision history"</h2>
            {view_of(move || match history.with(Vec::is_empty) {
                true => view! { <p>"Nothing was changed since the plan began."</p> }.into_any(),
                false => view! { <Compare history pair/> }.into_any(),
            })}
            <ol class="review-history">
                <For each=move || listed.get() key=|line| format!("{line:?}") let:line>
                    {row(pair, &line)}
                </For>
            </ol>
            {more}
        </section>
    }
}

fn lines(plan: &Plan) -> Vec<Line> {
    let revisions = plan.record.revisions.iter().rev();
    let lines = revisions.map(|revision| Line {
        number: revision.number,
        what: capitalised(revision.what.as_str()),
        who: revision.signed(),
        code: revision.code.to_string(),
    });
    lines.collect()
}

type Pair = RwSignal<(Option<u32>, Option<u32>)>;

fn row(pair: Pair, line: &Line) -> impl IntoView + use<> {
    let number = line.number;
    let show = move |_| {
        pair.set((Some(number.saturating_sub(1)), Some(number)));
        focus_soon("review-differs");
    };
    view! {
        <li>
            <span class="review-number">{number}</span>
            <span class="review-what">{line.what.clone()}
                <span class="quiet">{format!(" {} · {}", line.who, line.code)}</span>
            </span>
            <button type="button" on:click=show>
                "What changed"<span class="unseen">{format!(" in revision {number}")}</span>
            </button>
        </li>
    }
}

#[component]
fn Compare(history: Memo<Vec<Line>>, pair: Pair) -> impl IntoView {
    let desk = Desk::here();
    let choices = memo(move || {
        let lines = history.get().into_iter();
        let lines = lines.map(|line| (line.number, format!("{}: {}", line.number, line.what)));
        lines
            .chain([(0, "0: as the plan began".to_owned())])
            .collect::<Vec<_>>()
    });
    let latest = move || history.with(|all| all.first().map_or(0, |line| line.number));
    let now = memo(move || {
        let (before, after) = pair.get();
        let after = after.unwrap_or_else(latest);
        (before.unwrap_or_else(|| after.saturating_sub(1)), after)
    });
    // A number between two listed ones is the plan as the lower left it.
    let listed =
        move |number: u32| choices.with(|all| all.iter().map(|(n, _)| *n).find(|n| *n <= number));
    let told = view_of(move || {
        let (before, after) = now.get();
        let found = desk
            .workspace
            .plan
            .with(|plan| between(plan.as_deref()?, before, after));
        match found {
            Some(found) => view! { <Found found/> }.into_any(),
            None => view! {
                <p>"One of the two is not on record here: it cannot be told what differs."</p>
            }
            .into_any(),
        }
    });
    view! {
        <div class="review-compare">
            <h3 id="review-differs" tabindex="-1">"What differs between two revisions"</h3>
            <div class="review-pair">
                <Select label="One" choices=Signal::derive(move || choices.get())
                    chosen=Signal::derive(move || listed(now.get().0))
                    set=move |n| pair.update(|pair| pair.0 = Some(n))/>
                <Select label="The other" choices=Signal::derive(move || choices.get())
                    chosen=Signal::derive(move || listed(now.get().1))
                    set=move |n| pair.update(|pair| pair.1 = Some(n))/>
            </div>
            {told}
        </div>
    }
}

#[component]
fn Found(found: Between) -> impl IntoView {
    let whole = (found.before.is_whole && found.after.is_whole) || found.differences.is_empty();
    let gap = (!whole).then(|| view! {
        <p class="check">"Part of it is no longer on record, so more may differ than is told here."</p>
    });
    let plan = found.after.plan;
    let items = found
        .differences
        .iter()
        .map(|differs| item(&plan, differs))
        .collect_view();
    let lead = match found.differences.len() {
        0 => "Nothing differs.".to_owned(),
        1 => "One thing differs:".to_owned(),
        n => format!("{n} things differ:"),
    };
    let drawing = (!found.buttons.is_empty()).then(|| view! {
        <figure>
            <MarkedCockpit plan=plan.clone() marked=found.buttons.clone()
                label="The later cockpit; buttons that differ carry a filled square"/>
            <figcaption class="quiet">"Filled square: differs. Circle: the same in both."</figcaption>
        </figure>
    });
    view! {
        {gap}
        <div class="review-found">
            <div>
                <p>{lead}</p>
                <ul class="review-lines">{items}</ul>
            </div>
            {drawing}
        </div>
    }
}

fn item(plan: &Plan, differs: &Difference) -> impl IntoView + use<> {
    let numbers = differs.places.iter().filter_map(|place| match place {
        Place::Button(_) => place.balloon(&plan.bike),
        _ => None,
    });
    let numbers = numbers.map(|n| view! { <span class="balloon-number">{n}</span>" " });
    view! { <li>{numbers.collect_view()}{differs.words.clone()}</li> }
}
