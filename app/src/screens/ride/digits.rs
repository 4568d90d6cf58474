//! What is counted of each finger, on and beside the drawn hands.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::drawing::hands::{HandPart, HandPicture};
use leverwright_core::ride::measure::{Measure, Who};
use leverwright_core::ride::study::Outcome;
use leverwright_core::rider::{Contact, Day, Side};

use super::desk::{Done, RideDesk};
use crate::erase::view_of;
use crate::widgets::Select;

/// Both hands, always, with bars for a usual and a bad day.
#[component]
pub fn Digits(done: Arc<Done>) -> impl IntoView {
    let desk = RideDesk::here();
    let most = done.outcomes.first();
    let most = most.map_or(Measure::PressesPerHour, |told| {
        Measure::of_most(&told.ride.load)
    });
    let measure = RwSignal::new(most);
    let set = move |chosen| measure.set(chosen);
    let mut measures = Vec::new();
    for measure in Measure::ALL {
        if measure.is_of_contacts() {
            measures.push((*measure, measure.words().to_owned()));
        }
    }
    view! {
        <Select label="Count" choices=Signal::derive(move || measures.clone())
            chosen=Signal::derive(move || Some(measure.get()))
            set=set/>
        <p class="quiet">
            "Solid bar: a usual day. Open bar: a bad day. The thin line is the range. The denser \
            the pattern on the hand, the more is asked of the finger."
        </p>
        {view_of(move || {
            let (shown, measure) = (desk.shown.get(), measure.get());
            let days: Vec<Outcome> = Day::ALL.iter()
                .filter_map(|day| done.outcome(shown, *day).cloned())
                .collect();
            let hands = Side::ALL.iter()
                .map(|side| hand(*side, measure, &days))
                .collect_view();
            view! { <div class="ride-hands">{hands}</div> }
        })}
    }
}

fn most(measure: Measure, days: &[Outcome]) -> f64 {
    let mut most = 0.0_f64;
    for outcome in days {
        for who in Who::all(&outcome.ride.load) {
            most = most.max(measure.span(who, outcome).high);
        }
    }
    most
}

fn hand(side: Side, measure: Measure, days: &[Outcome]) -> impl IntoView + use<> {
    let most = most(measure, days);
    let mut whom = vec![Who::Hand(side)];
    for contact in contacts(side, days) {
        whom.push(Who::Contact(side, contact));
    }
    let rows = whom
        .iter()
        .map(|who| row(*who, measure, days, most))
        .collect_view();
    view! {
        <section class="ride-hand" aria-label=format!("{side} hand")>
            {picture(side, measure, days, most)}
            <dl class="bars">{rows}</dl>
        </section>
    }
}

fn contacts(side: Side, days: &[Outcome]) -> Vec<Contact> {
    let works = |contact: &Contact| {
        days.iter().any(|day| {
            let all = &day.ride.load.contacts;
            all.iter()
                .any(|(hand, own, _)| *hand == side && own == contact)
        })
    };
    Contact::ALL.iter().copied().filter(works).collect()
}

fn row(who: Who, measure: Measure, days: &[Outcome], most: f64) -> impl IntoView + use<> {
    let name = match who {
        Who::Hand(side) => format!("{side} hand"),
        Who::Contact(_, contact) => contact.to_string(),
    };
    let values = days
        .iter()
        .map(|day| value(who, measure, day, most))
        .collect_view();
    view! { <div><dt>{name}</dt>{values}</div> }
}

fn value(who: Who, measure: Measure, outcome: &Outcome, most: f64) -> impl IntoView + use<> {
    let span = measure.span(who, outcome);
    let part = |value: f64| {
        if most > 0.0 {
            value / most * 100.0
        } else {
            0.0
        }
    };
    let told = format!("{:.1}%", part(span.told));
    let (low, wide) = (part(span.low), part(span.high) - part(span.low));
    view! {
        <dd class=outcome.day.code()>
            <span class="bar" aria-hidden="true">
                <span class="fill" style:width=told></span>
                <span class="span" style:left=format!("{low:.1}%") style:width=format!("{wide:.1}%")></span>
            </span>
            <span class="unseen">{format!("{}: ", outcome.day)}</span>
            <span class="range">{measure.range(who, outcome)}</span>
        </dd>
    }
}

fn picture(side: Side, measure: Measure, days: &[Outcome], most: f64) -> impl IntoView + use<> {
    let picture = HandPicture::of(side);
    let name = format!("ride-{}", side.code());
    let level = |contact| {
        let usual = days.first()?;
        let told = measure.span(Who::Contact(side, contact), usual).told;
        (told > 0.0 && most > 0.0).then(|| match told / most {
            part if part <= 1.0 / 3.0 => "little",
            part if part <= 2.0 / 3.0 => "some",
            _ => "most",
        })
    };
    let regions = picture
        .regions
        .iter()
        .map(|region| {
            let level = match region.part {
                HandPart::Contact(contact) => level(contact),
                HandPart::Back => None,
            };
            let fill = level.map_or_else(
                || "none".to_owned(),
                |level| format!("url(#{name}-{level})"),
            );
            view! { <path class="region" d=region.d.clone() fill=fill></path> }
        })
        .collect_view();
    view! {
        <svg class="hand-map ride-hand-map" viewBox=HandPicture::VIEW_BOX aria-hidden="true">
            {patterns(&name)}
            {regions}
            <path class="outline" d=picture.outline></path>
            <path class="fine" d=picture.creases></path>
            <path class="fine" d=picture.nails></path>
        </svg>
    }
}

/// Dots, hatching and a solid fill for little, some and most use.
pub fn patterns(name: &str) -> impl IntoView + use<> {
    let id = |level: &str| format!("{name}-{level}");
    view! {
        <defs>
            <pattern id=id("little") width="7" height="7" patternUnits="userSpaceOnUse">
                <rect class="use-tint" width="7" height="7"></rect>
                <circle class="use-ink" cx="3.5" cy="3.5" r="1.2"></circle>
            </pattern>
            <pattern id=id("some") width="6" height="6" patternUnits="userSpaceOnUse"
                patternTransform="rotate(45)">
                <rect class="use-tint more" width="6" height="6"></rect>
                <rect class="use-ink" width="6" height="2"></rect>
            </pattern>
            <pattern id=id("most") width="8" height="8" patternUnits="userSpaceOnUse">
                <rect class="use-ink" width="8" height="8"></rect>
            </pattern>
        </defs>
    }
}
