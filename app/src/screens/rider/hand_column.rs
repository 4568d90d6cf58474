//! The answers to one question for one hand.

use crate::erase::{memo, text};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{
    Ability, Answer, Contact, Difficulty, Hand, MAIN_CONTACTS, Question, QuestionId, Side,
};

use super::Desk;
use super::body::{LaterChoice, MovesChoice, PlaceChoice, PressingChoice};
use super::said::said;
use crate::widgets::{Choice, Choices};

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
    let steps = question
        .abilities
        .iter()
        .map(|ability| view! { <AbilityStep side ability=*ability/> })
        .collect_view();
    view! {
        <div class="hand" data-side=side.code() role="group" aria-label=format!("{side} hand")>
            <p class="hand-name" aria-hidden="true">{format!("{side} hand")}</p>
            {special}
            {steps}
        </div>
    }
}

#[component]
fn AbilityStep(side: Side, ability: Ability) -> impl IntoView {
    let desk = Desk::here();
    view! {
        <StepChoice side ability legend=ability.words() name=format!("{}-{}", side.code(), ability.code())
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
                <StepChoice side legend=format!("{contact} presses")
                    name=format!("{}-{}", side.code(), contact.code())
                    step=move |hand: &Hand| hand.contacts.get(contact)
                    choose=move |step| {
                        desk.commit(RiderEdit::Contact(side, contact, desk.answer(step)));
                    }/>
            }
        })
        .collect_view()
}

/// Five steps and *not asked*.
#[component]
fn StepChoice<R, C>(
    side: Side,
    #[prop(into)] legend: String,
    name: String,
    /// What is answered in words of its own, if anything.
    #[prop(optional)]
    ability: Option<Ability>,
    step: R,
    choose: C,
) -> impl IntoView
where
    R: Fn(&Hand) -> Answer<Difficulty> + Copy + Send + Sync + 'static,
    C: Fn(Option<Difficulty>) + Send + Sync + 'static,
{
    let desk = Desk::here();
    let answer = move || desk.rider.with(|rider| step(rider.hands.get(side)));
    let chosen = memo(move || answer().value);
    let note = text(move || {
        said(&answer().map(|step| ability.map_or(step.brief(), |ability| ability.brief(step))))
    });
    let choose = Callback::new(choose);
    move || {
        view! {
            <Choice legend=legend.clone() name=name.clone() choices=steps(ability, desk.clinical.get())
                chosen choose note/>
        }
    }
}

fn steps(ability: Option<Ability>, numbers: bool) -> Choices<Difficulty> {
    Difficulty::ALL
        .iter()
        .map(|step| {
            let brief = ability.map_or(step.brief(), |ability| ability.brief(*step));
            let words = if numbers {
                format!("{} · {brief}", step.number())
            } else {
                brief.to_owned()
            };
            (Some(*step), words)
        })
        .chain([(None, "not asked".to_owned())])
        .collect()
}
