//! The cockpit with its balloons, leader lines and slots.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{ButtonId, ControlId, Ease};
use leverwright_core::drawing::{ButtonMark, Look, Owner, Picture, Point, Shape, Tone};
use leverwright_core::finding::Severity;
use leverwright_core::ordered::SmallMap;

use super::patterns::Patterns;
use super::slot::Slot;

/// Below this scale lines are drawn thinner, picture units per mm.
const SMALL: f64 = 0.9;

/// What a hand or pointer is doing with a button.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Touch {
    /// Nothing.
    #[default]
    Rest,
    /// Its function is picked up.
    PickedUp,
    /// What is picked up may be put down here.
    Target,
    /// What is picked up may not be put down here.
    Refuses,
    /// It is wanted.
    Wanted,
    /// It is down.
    Down,
}

impl Touch {
    const fn class(self) -> &'static str {
        match self {
            Touch::Rest => "",
            Touch::PickedUp => " picked-up",
            Touch::Target => " target",
            Touch::Refuses => " refuses",
            Touch::Wanted => " target",
            Touch::Down => " down",
        }
    }
}

/// What the drawing shows of a button besides its geometry.
#[derive(Debug, Clone, PartialEq)]
pub struct ButtonView {
    /// What its slot says.
    pub look: Look,
    /// What a screen reader says: place, function, standing.
    pub label: String,
    /// How well the chosen hand reaches it.
    pub reach: Option<Ease>,
    /// How much the finding weighs that is under pointer or focus and is about it.
    pub lit: Option<Severity>,
    /// What is being done with it.
    pub touch: Touch,
}

impl ButtonView {
    /// Class names for the style sheet.
    pub(super) fn class(&self) -> String {
        format!("{}{}", self.class_at_rest(), self.touch.class())
    }

    /// As [`Self::class`], whatever is done with it.
    fn class_at_rest(&self) -> String {
        let live = if self.look.live { "live" } else { "blank" };
        let lit = self.lit.map(|s| format!(" lit lit-{}", s.code()));
        let lit = lit.unwrap_or_default();
        format!("{live} {}{lit}", self.look.standing.class())
    }
}

/// The drawing. Everything that stands for a button carries `data-button` with its identity
/// ([`ButtonId`] as it prints), so that clicks and drops are told by one listener around it.
#[component]
pub fn Cockpit(
    /// The geometry.
    #[prop(into)]
    picture: Signal<Picture>,
    /// What the drawing is of, for a screen reader.
    #[prop(into)]
    label: Signal<String>,
    /// What each button shows.
    #[prop(into)]
    buttons: Signal<SmallMap<ButtonId, ButtonView>>,
    /// Blades, controls and other thumb work that a finding lights.
    #[prop(optional, into)]
    lit: Signal<Vec<(Owner, Severity)>>,
    /// Whether slots take focus and act as buttons; off for paper.
    #[prop(optional)]
    active: bool,
    /// Whether the screen lays slots of its own over the margins: then only touch areas are
    /// drawn for them, and balloons where there is no room for slots.
    #[prop(optional)]
    own_slots: bool,
    /// Levers whose blades can be pressed: each has a touch area that carries `data-brake` with
    /// the identity of its control.
    #[prop(optional, into)]
    blades: Vec<ControlId>,
    /// Whether numbers stand on the buttons themselves, in place of balloons: where only a part
    /// of the drawing is shown.
    #[prop(optional)]
    numbers_on_buttons: bool,
    /// The button that the Tab key reaches, while arrow keys walk the others.
    #[prop(optional, into)]
    tab_stop: Signal<Option<ButtonId>>,
    /// A name of its own where a page holds several drawings.
    #[prop(default = "cockpit".into(), into)]
    name: String,
) -> impl IntoView {
    let shows = move |id: ButtonId| Memo::new(move |_| buttons.with(|all| all.get(&id).cloned()));
    let drawn = move || {
        let picture = picture.get();
        let name = name.clone();
        let words = picture.has_slots;
        let small = picture.scale < SMALL;
        let marks = picture.buttons.clone();
        let blades = blades.iter().filter_map(|id| blade_hit(&picture, *id));
        let blades = blades.collect_view();
        view! {
            <svg
                class=format!("cockpit {}{}", if words { "wide" } else { "narrow" }, if small { " small" } else { "" })
                viewBox=picture.view_box()
                role=if active { "group" } else { "img" }
                aria-label=move || label.get()
            >
                <Patterns prefix=name.clone()/>
                <g class="art" aria-hidden="true">{art(&picture, &name, shows, lit)}</g>
                {(!numbers_on_buttons).then(|| view! {
                    <g class="leaders" aria-hidden="true">{marks.iter().map(|m| leader(m, shows(m.button).into())).collect_view()}</g>
                })}
                {numbers_on_buttons.then(|| view! {
                    <g class="numbers" aria-hidden="true">{marks.iter().map(|m| number(m, shows(m.button))).collect_view()}</g>
                })}
                {(active || own_slots).then(|| view! {
                    <g class="hits" aria-hidden="true">{blades}{marks.iter().map(hit).collect_view()}</g>
                })}
                {marks.into_iter().filter(|_| !(numbers_on_buttons || own_slots && words)).map(|mark| slot(mark, words, active, shows, tab_stop)).collect_view()}
            </svg>
        }
    };
    view! { {drawn} }
}

// Shapes in painting order; those that belong together share a group with its classes.
fn art(
    picture: &Picture,
    name: &str,
    shows: impl Fn(ButtonId) -> Memo<Option<ButtonView>>,
    lit: Signal<Vec<(Owner, Severity)>>,
) -> AnyView {
    picture
        .shapes
        .chunk_by(|a, b| a.owner == b.owner)
        .map(|run| match run[0].owner {
            Some(Owner::Button(id)) => button(run, id, name, shows(id)).into_any(),
            Some(owner) => {
                let class = move || {
                    lit.with(|all| all.iter().find(|(o, _)| *o == owner).map(|(_, s)| *s))
                        .map(|s| format!("part lit lit-{}", s.code()))
                        .unwrap_or_else(|| "part".into())
                };
                view! { <g class=class>{run.iter().map(shape).collect_view()}</g> }.into_any()
            }
            None => run.iter().map(shape).collect_view().into_any(),
        })
        .collect_view()
        .into_any()
}

fn shape(shape: &Shape) -> impl IntoView + use<> {
    let class = format!("{} {}", shape.ink.class(), shape.tone.class());
    view! { <path class=class d=shape.d.clone()></path> }
}

// A button: halo behind, face, reach over it, a second line within for copies, a cross for
// unplugged.
fn button(
    run: &[Shape],
    id: ButtonId,
    name: &str,
    shows: Memo<Option<ButtonView>>,
) -> impl IntoView + use<> {
    let class = move || {
        let class = shows.with(|s| s.as_ref().map(ButtonView::class));
        format!("button {}", class.unwrap_or_default())
    };
    let name = name.to_owned();
    let reach = move || {
        let reach = shows.with(|s| s.as_ref().and_then(|s| s.reach));
        reach.map_or_else(|| "none".into(), |ease| reach_fill(&name, ease))
    };
    let face = run
        .iter()
        .find(|s| s.tone == Tone::Face)
        .map(|s| s.d.clone())
        .unwrap_or_default();
    view! {
        <g class=class data-button=id.to_string()>
            <path class="halo" d=face.clone()></path>
            {run.iter().map(shape).collect_view()}
            <path class="reach" d=face.clone() fill=reach></path>
            <path class="twin" d=face></path>
        </g>
    }
}

/// What an element is filled with to show how well it is reached. `picture` is the name of a
/// drawing on the page, whose patterns it uses.
pub fn reach_fill(picture: &str, ease: Ease) -> String {
    match ease {
        Ease::Natural => "currentColor".into(),
        ease => format!("url(#{picture}-{})", ease.code()),
    }
}

fn leader(mark: &ButtonMark, shows: Signal<Option<ButtonView>>) -> impl IntoView + use<> {
    let points = points(&mark.leader);
    let anchor = mark.anchor;
    let class = move || {
        let class = shows.with(|s| s.as_ref().map(ButtonView::class_at_rest));
        format!("leader {}", class.unwrap_or_default())
    };
    view! {
        <g class=class>
            <polyline class="leader-casing" points=points.clone()></polyline>
            <polyline class="leader-line" points=points></polyline>
            <circle class="leader-end" cx=format!("{:.1}", anchor.x) cy=format!("{:.1}", anchor.y) r="2.6"></circle>
            <path class="cross" d=format!("M{0:.1} {1:.1}l12 12m0 -12l-12 12", anchor.x - 6.0, anchor.y - 6.0)></path>
        </g>
    }
}

fn hit(mark: &ButtonMark) -> impl IntoView + use<> {
    view! { <path class="hit" data-button=mark.button.to_string() d=mark.hit.clone()></path> }
}

// The number of a button on its face.
fn number(mark: &ButtonMark, shows: Memo<Option<ButtonView>>) -> impl IntoView + use<> {
    let (x, y) = (
        format!("{:.1}", mark.anchor.x),
        format!("{:.1}", mark.anchor.y),
    );
    let class = move || {
        let class = shows.with(|s| s.as_ref().map(ButtonView::class));
        format!("slot {}", class.unwrap_or_default())
    };
    view! {
        <g class=class>
            <circle class="balloon" cx=x.clone() cy=y.clone() r="8"></circle>
            <text class="balloon-number" x=x y=y>{mark.number}</text>
        </g>
    }
}

// Under the touch areas of buttons: those are small, a blade is long.
fn blade_hit(picture: &Picture, id: ControlId) -> Option<impl IntoView + use<>> {
    let area = picture.area_of(Owner::Blade(id))?;
    let d = format!(
        "M{:.0} {:.0}H{:.0}V{:.0}H{:.0}Z",
        area.x0, area.y0, area.x1, area.y1, area.x0
    );
    Some(view! { <path class="hit" data-brake=id.to_string() d=d></path> })
}

fn slot(
    mark: ButtonMark,
    words: bool,
    active: bool,
    shows: impl Fn(ButtonId) -> Memo<Option<ButtonView>>,
    tab_stop: Signal<Option<ButtonId>>,
) -> impl IntoView {
    let id = mark.button;
    let shows = shows(id);
    let class = move || {
        let class = shows.with(|s| s.as_ref().map(ButtonView::class));
        format!("slot {}", class.unwrap_or_default())
    };
    let label = move || shows.with(|s| s.as_ref().map(|s| s.label.clone()));
    let tab = move || {
        active.then(|| {
            if tab_stop.get() == Some(id) {
                "0"
            } else {
                "-1"
            }
        })
    };
    view! {
        <g
            class=class
            data-button=id.to_string()
            role=active.then_some("button")
            aria-label=label
            tabindex=tab
        >
            <Slot mark words shows/>
        </g>
    }
}

fn points(line: &[Point]) -> String {
    let points: Vec<String> = line
        .iter()
        .map(|p| format!("{:.1},{:.1}", p.x, p.y))
        .collect();
    points.join(" ")
}
