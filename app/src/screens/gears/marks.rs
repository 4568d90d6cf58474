//! A mark for each gear: one stop of the Tab key, arrows walk from gear to gear.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::gears::Gear;
use leverwright_core::gears::plot::{GearPlot, Mark};

use super::desk::GearDesk;
use super::drawn::{CROSSED, TWIN, mark_class, place, shape};
use crate::erase::{memo, text, view_of};
use crate::focus::focus_on;

/// The name of a mark on the page.
fn name(gear: Gear) -> String {
    format!("gear-{}-{}", gear.ring, gear.cog)
}

/// All marks.
#[component]
pub fn Marks() -> impl IntoView {
    let desk = GearDesk::here();
    let gears = memo(move || {
        let gears = |plot: &GearPlot| plot.marks.iter().map(|mark| mark.gear).collect::<Vec<_>>();
        desk.plot
            .with(|plot| plot.as_deref().map(gears))
            .unwrap_or_default()
    });
    let title = text(move || {
        desk.plot
            .with(|plot| plot.as_ref().map(|p| p.title.clone()).unwrap_or_default())
    });
    let key = move |event: KeyboardEvent| {
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        let from = untrack(|| desk.shown_gear());
        let to = desk
            .plot
            .with_untracked(|plot| step(plot.as_deref()?, from, &event.key()));
        if let Some(to) = to {
            event.prevent_default();
            desk.shown.set(to);
            focus_on(&format!("#{}", name(to)));
        }
    };
    view! {
        <g role="listbox" aria-label=title aria-describedby="gears-summary" on:keydown=key>
            <For each=move || gears.get() key=|gear| *gear let:gear>
                <GearMark gear/>
            </For>
        </g>
    }
}

#[component]
fn GearMark(gear: Gear) -> impl IntoView {
    let desk = GearDesk::here();
    let mark = memo(move || {
        desk.plot.with(|plot| {
            let marks = plot.as_ref()?.marks.iter();
            marks.clone().find(|mark| mark.gear == gear).cloned()
        })
    });
    let read = move |read: fn(&Mark) -> String| {
        text(move || mark.with(|mark| mark.as_ref().map(read).unwrap_or_default()))
    };
    let is_shown = memo(move || desk.shown_gear() == gear);
    let band = |mark: &Mark| match mark.band {
        Some((from, to)) => format!(
            "M{0:.1} -14v28M{1:.1} -14v28M{0:.1} 0H{1:.1}",
            from - mark.at.0,
            to - mark.at.0
        ),
        None => String::new(),
    };
    view! {
        <g id=name(gear) role="option" class=read(mark_class) class:shown=move || is_shown.get()
            transform=read(|mark| place(mark.at))
            tabindex=move || if is_shown.get() { "0" } else { "-1" }
            aria-selected=move || if is_shown.get() { "true" } else { "false" }
            aria-label=read(|mark| mark.words.clone())
            on:focus=move |_| desk.shown.set(gear)>
            <path class="band" d=read(band)></path>
            <circle class="halo" r="14"></circle>
            <path class="stroke" d=CROSSED></path>
            <circle class="outline" r=TWIN></circle>
            <path class="shape" d=read(|mark| shape(mark.shape).to_owned())></path>
        </g>
    }
}

/// The teeth of each cog beside its mark. They are no part of what a screen
/// reader is told, which says more.
#[component]
pub fn CogTeeth() -> impl IntoView {
    let desk = GearDesk::here();
    let words = |mark: &Mark| {
        let foot = format!("{:.1}", mark.label_foot?);
        let class = format!("cog-teeth {}", mark.shape.code());
        let x = format!("{:.1}", mark.at.0);
        Some(view! { <text class=class x=x y=foot>{mark.label.clone()}</text> })
    };
    let all = memo(move || {
        let marks = |plot: &GearPlot| plot.marks.clone();
        desk.plot
            .with(|plot| plot.as_deref().map(marks))
            .unwrap_or_default()
    });
    view! {
        <g aria-hidden="true">
            {view_of(move || all.with(|marks| marks.iter().filter_map(words).collect_view()))}
        </g>
    }
}

/// Where a key leads: along the ring, to the nearest gear of the next ring, to
/// the easiest or the hardest.
fn step(plot: &GearPlot, from: Gear, key: &str) -> Option<Gear> {
    let has = |gear: Gear| plot.marks.iter().any(|mark| mark.gear == gear);
    let along = |cog: Option<u8>| Some(Gear { cog: cog?, ..from });
    let to = match key {
        "ArrowRight" => along(from.cog.checked_add(1)),
        "ArrowLeft" => along(from.cog.checked_sub(1)),
        "ArrowUp" => beside(plot, from, from.ring.checked_add(1)?),
        "ArrowDown" => beside(plot, from, from.ring.checked_sub(1)?),
        "Home" => plot.marks.first().map(|mark| mark.gear),
        "End" => plot.marks.last().map(|mark| mark.gear),
        _ => None,
    };
    to.filter(|gear| has(*gear))
}

/// The gear of a ring that lies nearest to another.
fn beside(plot: &GearPlot, from: Gear, ring: u8) -> Option<Gear> {
    let (x, _) = plot.marks.iter().find(|mark| mark.gear == from)?.at;
    nearest_to(plot, |mark| match mark.gear.ring == ring {
        true => (mark.at.0 - x).abs(),
        false => f64::INFINITY,
    })
}

/// The gear whose mark lies nearest to a place.
pub fn nearest(desk: GearDesk, (x, y): (f64, f64)) -> Option<Gear> {
    desk.plot.with(|plot| {
        nearest_to(plot.as_deref()?, |mark| {
            let (dx, dy) = (mark.at.0 - x, mark.at.1 - y);
            dx * dx + dy * dy
        })
    })
}

fn nearest_to(plot: &GearPlot, far: impl Fn(&Mark) -> f64) -> Option<Gear> {
    let marks = plot.marks.iter();
    marks
        .min_by(|a, b| far(a).total_cmp(&far(b)))
        .map(|mark| mark.gear)
}

/// The next gear by hardness, whatever its ring; of gears alike the one on the smaller ring first.
pub fn next_by_hardness(plot: &GearPlot, from: Gear, harder: bool) -> Option<Gear> {
    let own = plot.marks.iter().find(|mark| mark.gear == from)?;
    let order = |a: &Mark, b: &Mark| {
        let by_place = a.at.0.total_cmp(&b.at.0);
        by_place.then(a.gear.ring.cmp(&b.gear.ring))
    };
    let ahead = |mark: &&Mark| match harder {
        true => order(mark, own).is_gt(),
        false => order(mark, own).is_lt(),
    };
    let ahead = plot.marks.iter().filter(ahead);
    let next = match harder {
        true => ahead.min_by(|a, b| order(a, b)),
        false => ahead.max_by(|a, b| order(a, b)),
    };
    next.map(|mark| mark.gear)
}

#[cfg(test)]
mod tests {
    use super::*;
    use leverwright_core::catalogue::{TemplateId, template};
    use leverwright_core::gears::plot::PlotOptions;

    fn plot() -> GearPlot {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        GearPlot::of(&plan, PlotOptions::default()).expect("teeth are entered")
    }

    #[test]
    fn arrows_walk_along_a_ring_and_to_the_nearest_gear_of_the_next() {
        let plot = plot();
        let walk = |from, key| step(&plot, from, key);
        let easiest = Gear::new(0, 0);
        assert_eq!(walk(easiest, "ArrowRight"), Some(Gear::new(0, 1)));
        assert_eq!(walk(easiest, "ArrowLeft"), None);
        assert_eq!(walk(easiest, "ArrowDown"), None);
        // 34×17 is 2.00; 50×24 is 2.08.
        assert_eq!(walk(Gear::new(0, 6), "ArrowUp"), Some(Gear::new(1, 3)));
        assert_eq!(walk(easiest, "End"), Some(Gear::new(1, 11)));
        assert_eq!(walk(Gear::new(1, 11), "ArrowRight"), None);
    }

    #[test]
    fn by_hardness_every_gear_is_visited_once() {
        let plot = plot();
        let mut gear = Gear::new(0, 0);
        let mut visited = 1;
        while let Some(next) = next_by_hardness(&plot, gear, true) {
            gear = next;
            visited += 1;
        }
        assert_eq!((gear, visited), (Gear::new(1, 11), plot.marks.len()));
        assert_eq!(next_by_hardness(&plot, Gear::new(0, 0), false), None);
    }
}
