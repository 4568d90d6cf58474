//! All findings about the open plan, heaviest first.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::{Finding, Fix, Severity};
use leverwright_core::rules::{self, Family};
use leverwright_core::shared_fixes::{open_after, shared_fixes};
use leverwright_core::tally::Tally;

use crate::after_paint::a_frame_behind;
use crate::widgets::{FindingCard, FixButton, SeverityMark};
use crate::workspace::{Seen, Workspace};

/// The findings that are shown together.
#[derive(Clone, Copy, PartialEq)]
enum Group {
    Open(Severity),
    Accepted,
}

/// The findings about the open plan, grouped by severity, under a heading of
/// the second level. After a fix the focus goes to that heading, because the
/// button that had it is gone.
#[component]
pub fn FindingList(
    /// Only those of one family of rules.
    #[prop(optional)]
    family: Option<Family>,
) -> impl IntoView {
    let workspace = Workspace::here();
    let heading = NodeRef::<html::H2>::new();
    let acted = Callback::new(move |()| {
        request_animation_frame(move || {
            if let Some(heading) = heading.get_untracked() {
                let _ = heading.focus();
            }
        });
    });
    let tally = Memo::new(move |_| {
        let Seen { plan, derived, .. } = workspace.seen.get()?;
        Some(match family {
            None => Tally::of(&plan, &derived.findings),
            Some(_) => {
                let own = derived.findings.iter().filter(|f| is_of(f, family));
                Tally::of(&plan, &own.cloned().collect::<Vec<_>>())
            }
        })
    });
    let foreseen = Memo::new(move |_| workspace.foresees());
    let foreseen = move || foreseen.get();
    let heading_words = match family {
        Some(family) => format!("Findings about {family}: ").into_any(),
        None => view! { <StandOrForeseen/> }.into_any(),
    };
    // They are about all findings, so they stand only where all do.
    let seen = move || workspace.seen.get().filter(|_| family.is_none());
    let of_seen = |seen: &Seen| shared_fixes(&seen.plan, &seen.derived.findings);
    let shared = Memo::new(move |_| seen().as_ref().map_or_else(Vec::new, of_seen));
    // All rules are asked for each: not before what was changed is seen.
    let later = a_frame_behind(seen);
    let then = Memo::new(move |_| {
        let open_after = |seen: &Seen| open_after(&seen.plan, &of_seen(seen));
        later.with(|seen| seen.as_ref().map_or_else(Vec::new, open_after))
    });
    let groups = Severity::ALL
        .iter()
        .map(|severity| Group::Open(*severity))
        .chain([Group::Accepted])
        .map(|group| view! { <FindingGroup group family shared acted/> })
        .collect_view();
    view! {
        <section class="findings" class:foreseen=foreseen aria-labelledby="findings">
            <h2 id="findings" tabindex="-1" node_ref=heading>
                {heading_words}{move || tally.get().unwrap_or_default().to_string()}
            </h2>
            <ForSeveral shared then acted/>
            {groups}
        </section>
    }
}

/// Whether what follows stands, or would. Both are there and one is seen, in the same room: a drop
/// that was foreseen moves nothing.
#[component]
fn StandOrForeseen() -> impl IntoView {
    view! {
        <span class="stand-or-foreseen">
            <span class="stand">"Findings: "</span>
            <span class="would">"If let go here: "</span>
        </span>
    }
}

/// The changes that answer several findings at once, each with what stands open then.
#[component]
fn ForSeveral(
    shared: Memo<Vec<Fix>>,
    then: Memo<Vec<Option<Tally>>>,
    acted: Callback<()>,
) -> impl IntoView {
    let one_each = move || {
        let shared = shared.get().into_iter().enumerate();
        shared
            .map(|(at, fix)| {
                let id = format!("then-{at}");
                let words = move || {
                    let tally = then.with(|then| then.get(at).copied().flatten());
                    tally.map(|tally| format!("then {tally}"))
                };
                view! {
                    <li>
                        <FixButton fix acted described_by=id.clone()/>
                        <span class="quiet" id=id>{words}</span>
                    </li>
                }
            })
            .collect_view()
    };
    view! {
        <Show when=move || shared.with(|shared| !shared.is_empty())>
            <h3 class="for-several">"One change for several"</h3>
            <ul class="fixes for-several">{one_each}</ul>
        </Show>
    }
}

#[component]
fn FindingGroup(
    group: Group,
    family: Option<Family>,
    shared: Memo<Vec<Fix>>,
    acted: Callback<()>,
) -> impl IntoView {
    let workspace = Workspace::here();
    let findings = Memo::new(move |_| in_group(workspace, group, family));
    let title = move || match group {
        Group::Open(severity) => view! { <SeverityMark severity/> }.into_any(),
        Group::Accepted => "Accepted with a reason".into_any(),
    };
    view! {
        <Show when=move || !findings.with(Vec::is_empty)>
            <h3 class="finding-group">{title()}" ("{move || findings.with(Vec::len)}")"</h3>
            <ul class="finding-list">
                <For each=move || findings.get() key=row_key let:finding>
                    <li><FindingCard finding acted shared/></li>
                </For>
            </ul>
        </Show>
    }
}

fn in_group(workspace: Workspace, group: Group, family: Option<Family>) -> Vec<Finding> {
    let Some(Seen { plan, derived, .. }) = workspace.seen.get() else {
        return Vec::new();
    };
    let belongs = |finding: &&Finding| match (group, plan.acceptance_of(finding)) {
        (Group::Open(severity), None) => finding.severity == severity,
        (Group::Accepted, Some(_)) => true,
        _ => false,
    };
    let findings = derived.findings.iter().filter(|f| is_of(f, family));
    findings.filter(belongs).cloned().collect()
}

/// Whether a finding is of a family of rules, where one is asked for.
fn is_of(finding: &Finding, family: Option<Family>) -> bool {
    family.is_none() || family == rules::rule(finding.rule).map(|rule| rule.family)
}

/// A card is drawn anew when what it says changes; what it offers follows by
/// itself.
fn row_key(finding: &Finding) -> String {
    format!("{}|{}", finding.key(), finding.message)
}
