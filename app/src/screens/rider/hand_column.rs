//! The answers to one question for one hand.

use crate::erase::{memo, text};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{
    Ability, Answer, Contact, Difficulty, Hand, MAIN_CONTACTS, Question, QuestionId, Side, YesNo,
};

use super::Desk;
use super::body::{LaterChoice, MovesChoice, PlaceChoice, PressingChoice};
use super::said::said;
use crate::widgets::{Choice, Choices, Tick};

/// The answers to one question for one hand.
#[component]
pub fn HandColumn(question: &'static Question, side: Side) -> impl IntoView {
    let special = match question.id {
        QuestionId::Place => view! { <PlaceChoice side/> }.into_any(),
        QuestionId::Pressing => view! {
            <ContactSteps side contacts=MAIN_CONTACTS/>
            <PressingChoice side/>
        }
        .into_any(),
        QuestionId::OnItsOwn => view! { <MovesChoice side/><LaterChoice side/> }.into_any(),
        _ => ().into_any(),
    };
    let on_request = (question.id == QuestionId::Comfort).then(|| view! { <WhereItHurts side/> });
    // A question about one thing only says it all in its heading.
    let is_told = question.abilities.len() == 1;
    let steps = question
        .abilities
        .iter()
        .map(|ability| view! { <AbilityStep side ability=*ability is_told/> })
        .collect_view();
    view! {
        <div class="hand" data-side=side.code() role="group" aria-label=format!("{side} hand")>
            <p class="hand-name" aria-hidden="true">{format!("{side} hand")}</p>
            {special}
            {steps}
            {on_request}
        </div>
    }
}

#[component]
fn AbilityStep(side: Side, ability: Ability, is_told: bool) -> impl IntoView {
    let desk = Desk::here();
    view! {
        <StepChoice side legend=ability.words() legend_unseen=is_told
            words=move |step| ability.brief(step) name=format!("{}-{}", side.code(), ability.code())
            step=move |hand: &Hand| hand.abilities.get(ability)
            choose=move |step| {
                desk.commit(RiderEdit::Ability(side, ability, desk.answer(step)));
            }/>
    }
}

/// How each of several contacts presses.
#[component]
pub fn ContactSteps(side: Side, contacts: &'static [Contact]) -> impl IntoView {
    let desk = Desk::here();
    contacts
        .iter()
        .map(|contact| {
            let contact = *contact;
            view! {
                <StepChoice side legend=format!("{contact} presses") words=Difficulty::brief
                    name=format!("{}-{}", side.code(), contact.code())
                    step=move |hand: &Hand| hand.contacts.get(contact)
                    choose=move |step| {
                        desk.commit(RiderEdit::Contact(side, contact, desk.answer(step)));
                    }/>
            }
        })
        .collect_view()
}

/// Which part hurts, on request; what is not ticked was not said.
#[component]
fn WhereItHurts(side: Side) -> impl IntoView {
    let desk = Desk::here();
    let ticks = Contact::ALL
        .iter()
        .filter(|part| **part != Contact::DeviceTip)
        .map(|part| {
            let part = *part;
            let on = memo(move || {
                let hurts = |hand: &Hand| hand.hurts.get(part).is_yes();
                desk.rider.with(|rider| hurts(rider.hands.get(side)))
            });
            let set = move |on: bool| {
                let answer = desk.answer(on.then_some(YesNo::Yes));
                desk.commit(RiderEdit::Hurts(side, part, answer));
            };
            view! { <Tick label=part.words() on set/> }
        })
        .collect_view();
    view! {
        <details class="where-it-hurts">
            <summary>{format!("Which part of the {side} hand hurts?")}</summary>
            {ticks}
        </details>
    }
}

/// Five steps and *not asked*.
#[component]
fn StepChoice<W, R, C>(
    side: Side,
    #[prop(into)] legend: String,
    #[prop(optional)] legend_unseen: bool,
    words: W,
    name: String,
    step: R,
    choose: C,
) -> impl IntoView
where
    W: Fn(Difficulty) -> &'static str + Copy + Send + Sync + 'static,
    R: Fn(&Hand) -> Answer<Difficulty> + Copy + Send + Sync + 'static,
    C: Fn(Option<Difficulty>) + Send + Sync + 'static,
{
    let desk = Desk::here();
    let answer = move || desk.rider.with(|rider| step(rider.hands.get(side)));
    let chosen = memo(move || answer().value);
    let note = text(move || said(&answer().map(words)));
    let choose = Callback::new(choose);
    move || {
        view! {
            <Choice legend=legend.clone() legend_unseen name=name.clone() choices=steps(desk.clinical.get(), words)
                chosen choose note/>
        }
    }
}

fn steps(numbers: bool, words: impl Fn(Difficulty) -> &'static str) -> Choices<Difficulty> {
    Difficulty::ALL
        .iter()
        .map(|step| {
            let words = if numbers {
                format!("{} · {}", step.number(), words(*step))
            } else {
                words(*step).to_owned()
            };
            (Some(*step), words)
        })
        .chain([(None, "not asked".to_owned())])
        .collect()
}
