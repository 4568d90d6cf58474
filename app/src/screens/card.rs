//! The Road card screen: the rider’s card as the paper it will be.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::proof::{CardSize, RoadCard};
use leverwright_core::sheet::Paper;

use crate::alone::alone;
use crate::erase::{flag, view_of};
use crate::widgets::{Choice, NoPlan};
use crate::workspace::Workspace;

/// The Road card screen.
#[component]
pub fn CardScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = flag(move || workspace.plan.with(Option::is_some));
    let is_open = Memo::new(move |_| is_open.get());
    let size = RwSignal::new(CardSize::Wallet);
    let card = Memo::new(move |_| workspace.plan.get().map(|plan| RoadCard::of(&plan)));
    view! {
        <h1>"Road card"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Choices size/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
        {view_of(move || card.get().map(|card| paper(&card, size.get(), workspace.print.get().paper)))}
    }
}

/// Size, paper, and the act of printing.
#[component]
fn Choices(size: RwSignal<CardSize>) -> impl IntoView {
    let print = Workspace::here().print;
    let sizes = CardSize::ALL.iter();
    let sizes = sizes.map(|size| (Some(*size), size.words().to_owned()));
    let papers = Paper::ALL.iter();
    let papers = papers.map(|paper| (Some(*paper), paper.words().to_owned()));
    let set_size = Callback::new(move |chosen: Option<CardSize>| {
        if let Some(chosen) = chosen {
            size.set(chosen);
        }
    });
    let set_paper = Callback::new(move |paper: Option<Paper>| {
        if let Some(paper) = paper {
            print.update(|options| options.paper = paper);
        }
    });
    view! {
        <p class="lead">
            "For the rider’s pocket: how to stop, what each hand does, what to look at when it does \
            not shift, how to get home. It says nothing about the rider."
        </p>
        <div class="card-choices">
            <Choice legend="Size" name="card-size" choices=sizes.collect()
                chosen=Signal::derive(move || Some(size.get())) choose=set_size/>
            <Choice legend="Paper" name="card-paper" choices=papers.collect()
                chosen=Signal::derive(move || Some(print.get().paper)) choose=set_paper/>
            <button type="button" class="main" on:click=move |_| {
                // A browser without printing leaves the page as it is.
                let _ = window().print();
            }>"Print the card"</button>
        </div>
    }
}

fn paper(card: &RoadCard, size: CardSize, paper: Paper) -> impl IntoView + use<> {
    let how = match size {
        CardSize::Wallet => {
            "Print at full size. Cut along the marks, put both sides back to back, and laminate them or use clear tape."
        }
        CardSize::LargePrint => "One page, to hang at home or keep in a frame bag.",
    };
    let wallet = size == CardSize::Wallet;
    alone("card");
    view! {
        <p class="quiet card-how">{how}</p>
        <article class=format!("road-card {} {}", size.code(), paper.code()) aria-label="Road card">
            {panel(wallet, "front", view! { {front(card)} {wallet.then(|| foot(card))} }.into_any())}
            {panel(wallet, "back", view! { {back(card)} {(!wallet).then(|| foot(card))} }.into_any())}
        </article>
    }
}

/// One side: with marks to cut along, where it is cut.
fn panel(cut: bool, class: &'static str, inside: AnyView) -> impl IntoView + use<> {
    let marks = cut.then(|| {
        view! {
            <svg class="cut-marks" viewBox="0 0 97.6 66" aria-hidden="true">
                <path d="M6 0V4M91.6 0V4M6 62V66M91.6 62V66M0 6H4M0 60H4M93.6 6H97.6M93.6 60H97.6"></path>
            </svg>
        }
    });
    view! {
        <div class="card-panel">
            {marks}
            <div class=format!("card-side {class}")>{inside}</div>
        </div>
    }
}

fn lines(heading: &'static str, class: &'static str, all: Vec<String>) -> impl IntoView {
    let items = all.into_iter().map(|line| view! { <li>{line}</li> });
    view! { <h2>{heading}</h2> <ul class=class>{items.collect_view()}</ul> }
}

fn owned(all: &[&str]) -> Vec<String> {
    all.iter().map(|line| (*line).to_owned()).collect()
}

fn front(card: &RoadCard) -> AnyView {
    let borrowed = card.borrowed.clone().map(|words| {
        view! { <p class="card-borrowed">"Borrowed this bike? "<strong>{words}</strong></p> }
    });
    view! {
        <p class="card-bike">{card.bike.clone()}</p>
        {lines("To stop", "card-stop", card.stop.clone())}
        {borrowed}
        {lines("Hands", "card-hands", card.hands.clone())}
    }
    .into_any()
}

fn back(card: &RoadCard) -> AnyView {
    view! {
        {lines("When it does not shift", "card-order", owned(card.not_shifting))}
        {lines("Needs two hands: ask", "card-ask", owned(card.two_hands))}
        {lines("To get home", "card-home", owned(card.home))}
        <p class="card-phone">
            {card.phone}" "<span class="card-fill" role="img" aria-label="to fill in"></span>
        </p>
    }
    .into_any()
}

/// For which revision it is.
fn foot(card: &RoadCard) -> impl IntoView + use<> {
    let (revision, code) = card.revision;
    let date = match card.date.as_str() {
        "" => view! { "Date "<span class="card-fill" role="img" aria-label="to fill in"></span> }
            .into_any(),
        date => date.to_owned().into_any(),
    };
    view! { <p class="card-foot">{format!("Revision {revision}, {code}. ")}{date}</p> }
}
