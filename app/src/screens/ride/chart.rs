//! Height, speed, gear and what hands do, along one axis.

use std::fmt::Write;
use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::ride::profile::{Axis, Lane, Profile, Section, Strip, Tick};
use leverwright_core::ride::road::Road;
use leverwright_core::ride::study::Outcome;

/// Lanes are drawn in a box of this size and stretched to their place; lines
/// keep their width.
const WIDE: f64 = 1000.0;
const HIGH: f64 = 100.0;

/// Lanes one above the other, and the same as a table.
#[component]
pub fn Chart(road: Arc<Road>, outcome: Outcome, axis: Axis) -> impl IntoView {
    let profile = Profile::of(&road, &outcome.ride, &outcome.gearbox, axis);
    let ticks = profile.ticks.clone();
    let labels = ticks.iter().map(tick).collect_view();
    let grid = grid(&ticks);
    view! {
        <figure class="ride-chart">
            <div class="lanes" aria-hidden="true">
                {lane(&profile.height, "height", &grid, true)}
                {lane(&profile.speed, "speed", &grid, false)}
                {lane(&profile.gear, "gear", &grid, false)}
                {hand(&profile, 0, "Left hand", &grid)}
                {hand(&profile, 1, "Right hand", &grid)}
                <div class="axis-ticks">{labels}</div>
            </div>
            <figcaption class="quiet">
                "Gear: how far one turn of the pedals takes you. Bars up: presses. Open bars down: \
                brake pulls. Triangles are clashes: a shift while the same hand brakes, a shift that \
                has to wait, or a brake needed while the hand is away."
            </figcaption>
        </figure>
        <details>
            <summary>"The same as a table"</summary>
            {sections(&profile.table)}
        </details>
    }
}

fn tick(tick: &Tick) -> impl IntoView + use<> {
    let left = format!("{:.2}%", tick.at * 100.0);
    view! { <span style:left=left>{tick.label.clone()}</span> }
}

fn grid(ticks: &[Tick]) -> String {
    let mut d = String::new();
    for tick in ticks {
        let _ = write!(d, "M{:.1} 0V{HIGH}", tick.at * WIDE);
    }
    d
}

fn lane(lane: &Lane, class: &'static str, grid: &str, filled: bool) -> impl IntoView + use<> {
    let mut d = String::new();
    for (n, (x, y)) in lane.points.iter().enumerate() {
        let start = if n == 0 { 'M' } else { 'L' };
        let _ = write!(d, "{start}{:.1} {:.1}", x * WIDE, (1.0 - y) * HIGH);
    }
    let under = match (filled, lane.points.first(), lane.points.last()) {
        (true, Some(first), Some(last)) => {
            format!(
                "{d}L{:.1} {HIGH}L{:.1} {HIGH}Z",
                last.0 * WIDE,
                first.0 * WIDE
            )
        }
        _ => String::new(),
    };
    view! {
        <div class=format!("lane {class}")>
            <span class="lane-name">{lane.label}</span>
            <span class="lane-high">{format!("{:.0}", lane.high)}</span>
            <span class="lane-low">{format!("{:.0}", lane.low)}</span>
            <svg viewBox="0 0 1000 100" preserveAspectRatio="none">
                <path class="grid" d=grid.to_owned()></path>
                <path class="under" d=under></path>
                <path class="run" d=d></path>
            </svg>
        </div>
    }
}

fn hand(profile: &Profile, hand: usize, name: &'static str, grid: &str) -> impl IntoView + use<> {
    let most = f64::from(profile.most.max(1));
    let width = WIDE / profile.strips.len().max(1) as f64;
    let (mut presses, mut pulls, mut clashes) = (String::new(), String::new(), String::new());
    for (n, strip) in profile.strips.iter().enumerate() {
        let Strip {
            presses: up,
            pulls: down,
            clashes: marks,
            ..
        } = strip;
        let x = n as f64 * width + 0.15 * width;
        let bar = |d: &mut String, height: f64| {
            let _ = write!(d, "M{x:.1} 60v{height:.1}h{:.1}V60z", 0.7 * width);
        };
        if up[hand] > 0 {
            bar(&mut presses, -52.0 * f64::from(up[hand]) / most);
        }
        if down[hand] > 0 {
            bar(
                &mut pulls,
                (52.0 * f64::from(down[hand]) / most).clamp(8.0, 38.0),
            );
        }
        if *marks > 0 && up[hand] + down[hand] > 0 {
            let _ = write!(
                clashes,
                "M{x:.1} 0h{:.1}l-{:.1} 9z",
                0.9 * width,
                0.45 * width
            );
        }
    }
    view! {
        <div class="lane hand">
            <span class="lane-name">{name}</span>
            <span class="lane-high">{profile.most}</span>
            <svg viewBox="0 0 1000 100" preserveAspectRatio="none">
                <path class="grid" d=grid.to_owned()></path>
                <path class="grid" d="M0 60H1000"></path>
                <path class="presses" d=presses></path>
                <path class="pulls" d=pulls></path>
                <path class="clashes" d=clashes></path>
            </svg>
        </div>
    }
}

const HEADS: [&str; 9] = [
    "Where",
    "Slope",
    "Speed",
    "Gears",
    "Left presses",
    "Right presses",
    "Left pulls",
    "Right pulls",
    "Clashes",
];

fn sections(table: &[Section]) -> impl IntoView + use<> {
    let head = HEADS
        .map(|head| view! { <th scope="col">{head}</th> })
        .collect_view();
    let rows = table.iter().map(section).collect_view();
    view! {
        <div class="table-scroll" tabindex="0" role="region" aria-label="The ride by section">
            <table class="ride-table sections">
                <thead><tr>{head}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

fn section(section: &Section) -> impl IntoView + use<> {
    let hands = section.hands;
    let counts = [
        hands.presses[0],
        hands.presses[1],
        hands.pulls[0],
        hands.pulls[1],
        hands.clashes,
    ];
    view! {
        <tr>
            <th scope="row">{section.place.clone()}</th>
            <td>{section.slope.clone()}</td>
            <td>{section.speed.clone()}</td>
            <td>{section.gears.clone()}</td>
            {counts.map(|count| view! { <td class="count">{count}</td> }).collect_view()}
        </tr>
    }
}
