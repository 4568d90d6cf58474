//! What may be assigned to a button, and the reach that the fitter saw.

use crate::erase::memo;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{Button, ButtonId, Ease, Freedom, HandPosition, SeenReach};
use leverwright_core::edit::BikeEdit;
use leverwright_core::function::Function;
use leverwright_core::rider::Contact;
use leverwright_core::units::Mm;

use super::Stand;
use crate::widgets::{NumberField, Select, Tick};

/// The kinds of freedom, apart from what they hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Free,
    Limited,
    Copies,
    Fixed,
}

/// One button of a control.
#[component]
pub fn ButtonRow(id: ButtonId) -> impl IntoView {
    let stand = Stand::here();
    let place = memo(move || stand.read(|bike| bike.place_of(id)).unwrap_or_default());
    let kind = memo(move || read(stand, id, |b| kind_of(&b.freedom)));
    let kinds = Signal::stored(vec![
        (Kind::Free, "any function".to_owned()),
        (Kind::Limited, "only some functions".to_owned()),
        (Kind::Copies, "copies another button".to_owned()),
        (Kind::Fixed, "fixed by how it is fitted".to_owned()),
    ]);
    let set_kind = move |kind| {
        let Some(freedom) = start_of(stand, id, kind) else {
            return;
        };
        stand.commit(BikeEdit::Freedom(id, freedom));
    };
    view! {
        <div class="button-row" role="group" aria-label=place>
            <h4>{place}</h4>
            <div class="fields">
                <Select label="Takes" choices=kinds chosen=kind set=set_kind/>
                <FreedomDetail id kind/>
                <NumberField label="Travel until it acts (mm)" least=0.0 most=80.0
                    value={memo(move || read(stand, id, |b| b.travel.0))}
                    set={move |n: Option<f64>| stand.commit(BikeEdit::Travel(id, Mm(n.unwrap_or(0.0))))}/>
            </div>
            <SeenReachEditor id/>
        </div>
    }
}

fn read<T>(stand: Stand, id: ButtonId, read: impl FnOnce(&Button) -> T) -> Option<T> {
    stand
        .read(|bike| bike.button(id).map(|(_, b)| read(b)))
        .flatten()
}

fn kind_of(freedom: &Freedom) -> Kind {
    match freedom {
        Freedom::Free => Kind::Free,
        Freedom::Limited(_) => Kind::Limited,
        Freedom::Copies(_) => Kind::Copies,
        Freedom::Fixed(_) => Kind::Fixed,
    }
}

/// A freedom of a kind to start from; the details are chosen next.
fn start_of(stand: Stand, id: ButtonId, kind: Kind) -> Option<Freedom> {
    Some(match kind {
        Kind::Free => Freedom::Free,
        Kind::Limited => Freedom::Limited(Function::ALL.to_vec()),
        Kind::Fixed => Freedom::Fixed(Function::RearEasier),
        Kind::Copies => Freedom::Copies(others(stand, id).first()?.0),
    })
}

fn others(stand: Stand, id: ButtonId) -> Vec<(ButtonId, String)> {
    stand
        .read(|bike| {
            bike.buttons()
                .into_iter()
                .filter(|(other, ..)| *other != id)
                .map(|(other, ..)| (other, bike.place_of(other)))
                .collect()
        })
        .unwrap_or_default()
}

#[component]
fn FreedomDetail(id: ButtonId, kind: Memo<Option<Kind>>) -> impl IntoView {
    let stand = Stand::here();
    let freedom = memo(move || read(stand, id, |b| b.freedom.clone()));
    move || match kind.get() {
        Some(Kind::Fixed) => {
            let functions = Signal::stored(
                Function::ALL
                    .iter()
                    .map(|f| (*f, f.words().to_owned()))
                    .collect::<Vec<_>>(),
            );
            let chosen = memo(move || match freedom.get() {
                Some(Freedom::Fixed(function)) => Some(function),
                _ => None,
            });
            view! {
                <Select label="Fixed to" choices=functions chosen
                    set={move |f: Function| stand.commit(BikeEdit::Freedom(id, Freedom::Fixed(f)))}/>
            }
            .into_any()
        }
        Some(Kind::Copies) => {
            let choices = memo(move || others(stand, id));
            let chosen = memo(move || match freedom.get() {
                Some(Freedom::Copies(original)) => Some(original),
                _ => None,
            });
            view! {
                <Select label="Copies" choices chosen
                    set={move |b: ButtonId| stand.commit(BikeEdit::Freedom(id, Freedom::Copies(b)))}/>
            }
            .into_any()
        }
        Some(Kind::Limited) => view! { <LimitedSet id freedom/> }.into_any(),
        Some(Kind::Free) | None => ().into_any(),
    }
}

#[component]
fn LimitedSet(id: ButtonId, freedom: Memo<Option<Freedom>>) -> impl IntoView {
    let stand = Stand::here();
    let set = memo(move || match freedom.get() {
        Some(Freedom::Limited(set)) => set,
        _ => Vec::new(),
    });
    let ticks = Function::ALL
        .iter()
        .map(|function| {
            let function = *function;
            let on = memo(move || set.with(|set| set.contains(&function)));
            let change = move |on: bool| {
                let mut next = set.get_untracked();
                next.retain(|f| *f != function);
                if on {
                    next.push(function);
                }
                stand.commit(BikeEdit::Freedom(id, Freedom::Limited(next)));
            };
            view! { <Tick label=function.words() on set=change/> }
        })
        .collect_view();
    view! { <div class="ticks" role="group" aria-label="Takes only">{ticks}</div> }
}

/// Reach the fitter saw goes before the usual one.
#[component]
fn SeenReachEditor(id: ButtonId) -> impl IntoView {
    let stand = Stand::here();
    let from = RwSignal::new(None::<HandPosition>);
    let contact = RwSignal::new(Contact::Thumb);
    let seen = memo(move || read(stand, id, |b| b.seen_reach.clone()).unwrap_or_default());
    let positions = memo(move || {
        stand
            .read(|bike| {
                let all = bike.bar.kind.positions();
                all.iter()
                    .map(|p| (*p, p.words().to_owned()))
                    .collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    let position = memo(move || from.get().or_else(|| positions.get().first().map(|p| p.0)));
    let contacts = Signal::stored(
        Contact::ALL
            .iter()
            .map(|c| (*c, c.words().to_owned()))
            .collect::<Vec<_>>(),
    );
    let eases = Signal::stored(
        Ease::ALL
            .iter()
            .filter(|e| **e != Ease::CrossOver)
            .map(|e| (Some(*e), e.words().to_owned()))
            .chain([(None, "not at all".to_owned())])
            .collect::<Vec<_>>(),
    );
    let chosen = memo(move || {
        let (position, contact) = (position.get()?, contact.get());
        seen.get()
            .iter()
            .find(|s| (s.from, s.contact) == (position, contact))
            .map(|s| s.ease)
    });
    let set = move |ease| {
        if let Some(from) = position.get_untracked() {
            let contact = contact.get_untracked();
            stand.commit(BikeEdit::SeenReach(
                id,
                SeenReach {
                    from,
                    contact,
                    ease,
                },
            ));
        }
    };
    view! {
        <details class="seen-reach">
            <summary>"Reach seen on this rider"</summary>
            <div class="fields">
                <Select label="From" choices=positions chosen=position
                    set={move |p: HandPosition| from.set(Some(p))}/>
                <Select label="with" choices=contacts
                    chosen={Signal::derive(move || Some(contact.get()))}
                    set={move |c: Contact| contact.set(c)}/>
                <Select label="is" choices=eases chosen set/>
            </div>
            <ul>
                {move || seen.get().iter().map(|s| view! {
                    <li>{format!("from the {}, {}: {}", s.from, s.contact,
                        s.ease.map_or("not at all", Ease::words))}</li>
                }).collect_view()}
            </ul>
        </details>
    }
}
