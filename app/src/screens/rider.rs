//! The Rider screen: what each hand can do, asked in plain words.

mod body;
mod details;
mod evidence;
mod hand_column;
mod hand_map;
mod one_tap;
mod positions;
mod question;
mod said;

use crate::erase::{When, flag, memo, view_of};
use leptos::ev;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, RiderEdit};
use leverwright_core::rider::{Answer, ICF_NOTE, QUESTIONS, Rider, Side, Subject};
use leverwright_core::text::Text;

use crate::evidence::EvidenceChoice;
use crate::focus::focus_field_soon;
use crate::route::field_in_address;
use crate::widgets::{Choice, NoPlan, SpotList};
use crate::workspace::Workspace;
use details::{Details, OwnWords};
use evidence::{EvidenceBar, EvidenceNow};
use hand_map::StepKey;
use one_tap::OneTap;
use positions::Positions;
use question::QuestionCard;

/// The Rider screen.
#[component]
pub fn RiderScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    view! {
        <h1>"Rider"</h1>
        <Show when=move || is_open.get() fallback=NoPlan>
            <Interview/>
        </Show>
    }
}

/// What the parts of the interview share.
#[derive(Clone, Copy)]
struct Desk {
    workspace: Workspace,
    rider: Memo<Rider>,
    /// Where answers come from now.
    evidence: RwSignal<EvidenceChoice>,
    /// Whether step numbers and the closest ICF codes are shown, here and on the
    /// printed page with hand details.
    clinical: Signal<bool>,
    /// The hand shown where there is room for one.
    shown: RwSignal<Side>,
}

impl Desk {
    fn new() -> Desk {
        let workspace = Workspace::here();
        Desk {
            workspace,
            rider: memo(move || {
                workspace
                    .plan
                    .with(|plan| plan.as_ref().map(|p| p.rider.clone()).unwrap_or_default())
            }),
            evidence: workspace.evidence,
            clinical: flag(move || workspace.print.get().clinical),
            shown: RwSignal::new(hand_in_address().unwrap_or(Side::Left)),
        }
    }

    fn here() -> Desk {
        expect_context()
    }

    fn commit(self, edit: RiderEdit) {
        self.workspace.commit(Edit::Rider(edit));
    }

    /// An answer given now, with who says so, the day, and what is worn.
    fn answer<T>(self, value: Option<T>) -> Answer<T> {
        Answer {
            value,
            evidence: Some(self.evidence.get_untracked().evidence()),
            before: None,
        }
    }
}

/// The hand whose answers the address leads to.
fn hand_in_address() -> Option<Side> {
    let field = field_in_address()?;
    let (hand, _) = field.split_once('-')?;
    Side::from_code(hand)
}

/// Shows the hand to which a link on this screen leads.
fn follow_links(desk: Desk) {
    let listener = window_event_listener(ev::hashchange, move |_| {
        if let Some(side) = hand_in_address() {
            desk.shown.set(side);
        }
        if let Some(field) = field_in_address() {
            focus_field_soon(field);
        }
    });
    on_cleanup(move || listener.remove());
}

/// What is still open, each with the way there.
#[component]
fn StillOpen() -> impl IntoView {
    let workspace = Desk::here().workspace;
    view_of(move || {
        let plan = workspace.plan.get()?;
        let open = plan.rider.open_questions().into_iter();
        let spots: Vec<_> = open
            .flat_map(|question| question.open_spots(&plan))
            .collect();
        let bike = plan.bike.clone();
        (!spots.is_empty()).then(|| {
            view! {
                <details class="still-open">
                    <summary>"Show what is open"</summary>
                    <SpotList label="Not asked yet" spots bike/>
                </details>
            }
        })
    })
}

#[component]
fn Interview() -> impl IntoView {
    let desk = Desk::new();
    provide_context(desk);
    follow_links(desk);
    let open = memo(move || desk.rider.with(Rider::open_words));
    let each_hand = QUESTIONS
        .iter()
        .filter(|question| question.subject == Subject::EachHand)
        .map(|question| view! { <QuestionCard question/> })
        .collect_view();
    let show_hand = Callback::new(move |side: Option<Side>| {
        desk.shown.set(side.unwrap_or(Side::Left));
    });
    view! {
        <p class="lead">
            "About five minutes. Answer what you know; “not asked” is a good answer, and it is not the same as “easily”. "
            <strong>{move || open.get()}</strong>
        </p>
        <StillOpen/>
        <Nickname/>
        <EvidenceBar/>
        <EvidenceNow/>
        <section aria-labelledby="one-tap">
            <h2 id="one-tap">"Each hand in one tap"</h2>
            <div class="hands">
                <OneTap side=Side::Left/>
                <OneTap side=Side::Right/>
            </div>
            <StepKey/>
        </section>
        <section aria-labelledby="questions" class="interview"
            class:shows-right=move || desk.shown.get() == Side::Right>
            <h2 id="questions">"Question by question"</h2>
            <ClinicalSwitch/>
            <div class="hand-switch">
                <Choice legend="Hand shown" name="hand-shown"
                    choices=Side::ALL.iter().map(|s| (Some(*s), format!("{s} hand"))).collect()
                    chosen=Signal::derive(move || Some(desk.shown.get()))
                    choose=show_hand/>
            </div>
            {each_hand}
        </section>
        <Positions/>
        <OwnWords/>
        <Details/>
    }
}

#[component]
fn Nickname() -> impl IntoView {
    let desk = Desk::here();
    let name = memo(move || desk.rider.with(|r| r.nickname.as_str().to_owned()));
    view! {
        <label class="field nickname">
            <span>"What the rider is called in the shop (not a full name)"</span>
            <input type="text" maxlength="60" autocomplete="off"
                prop:value=name
                on:change:target=move |ev| {
                    desk.commit(RiderEdit::Nickname(Text::new(&ev.target().value())));
                }/>
        </label>
    }
}

#[component]
fn ClinicalSwitch() -> impl IntoView {
    let desk = Desk::here();
    view! {
        <label class="tick">
            <input type="checkbox" prop:checked={flag(move || desk.clinical.get())}
                on:change:target=move |ev| {
                    let on = ev.target().checked();
                    desk.workspace.print.update(|print| print.clinical = on);
                }/>
            <span>"Show step numbers and the closest ICF codes"</span>
        </label>
        <When holds={flag(move || desk.clinical.get())}>
            <p class="quiet">{ICF_NOTE}</p>
        </When>
    }
}
