//! The pictures of the gears as elements: what screen and paper share.

use std::fmt::Write;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::gears::Direction;
use leverwright_core::gears::plot::{Axis, GearPlot, Mark, MarkShape, StepBar, StepPlot, WayLine};

/// How long the lines of the axis are.
const TICK: f64 = 9.0;
const FINE: f64 = 5.0;

/// Disc, square, small ring, cross.
pub const fn shape(shape: MarkShape) -> &'static str {
    match shape {
        MarkShape::Used => "M-5.5 0a5.5 5.5 0 1 1 11 0a5.5 5.5 0 1 1 -11 0z",
        MarkShape::Crossover => "M-6 -6H6V6H-6z",
        MarkShape::Unused => "M-3.5 0a3.5 3.5 0 1 1 7 0a3.5 3.5 0 1 1 -7 0z",
        MarkShape::Forbidden => "M-5.5 -5.5L5.5 5.5M5.5 -5.5L-5.5 5.5",
    }
}

/// The slanted stroke of a crossed chain.
pub const CROSSED: &str = "M-9 9L9 -9";
/// Half the size of the outline of a gear that another ring has, too.
pub const TWIN: &str = "9.5";

/// Class names of a mark.
pub fn mark_class(mark: &Mark) -> String {
    let twin = if mark.duplicate { " twin" } else { "" };
    let crossed = if mark.crossed { " crossed" } else { "" };
    format!("gear-mark {}{twin}{crossed}", mark.shape.code())
}

/// Where a group stands.
pub fn place((x, y): (f64, f64)) -> String {
    format!("translate({x:.1} {y:.1})")
}

/// The arrowhead where a crossover lands.
pub fn head((x, y): (f64, f64), way: Direction) -> String {
    let back = if way == Direction::Up { 10 } else { -10 };
    format!("M{x:.1} {y:.1}l-4.5 {back}h9z")
}

/// A way along its rings.
pub fn stretches(way: &WayLine) -> String {
    let mut d = String::new();
    for ((from, y), (to, _)) in &way.stretches {
        let _ = write!(d, "M{from:.1} {y:.1}H{to:.1}");
    }
    d
}

/// Axis, grid, and a line for each ring.
pub fn ground(plot: &GearPlot) -> impl IntoView + use<> {
    let (width, _) = plot.size;
    let rows = plot
        .rows
        .iter()
        .map(|row| {
            let y = row.y;
            view! {
                <path class="row-line" d=format!("M40 {y:.1}H{:.1}", width - 12.0)></path>
                <circle class="ring-sign" cx="20" cy=format!("{y:.1}") r="15"></circle>
                <text class="ring-teeth" x="20" y=format!("{:.1}", y + 4.5)>{row.label.clone()}</text>
            }
        })
        .collect_view();
    let top = plot.rows.first().map_or(0.0, |row| row.y) - 30.0;
    view! {
        {axis(&plot.axis, top, width)}
        {rows}
    }
}

fn axis(axis: &Axis, top: f64, width: f64) -> impl IntoView + use<> {
    let y = axis.y;
    let (mut fine, mut ticks, mut grid) = (String::new(), String::new(), String::new());
    for x in &axis.fine {
        let _ = write!(fine, "M{x:.1} {y:.1}v{FINE}");
    }
    for tick in &axis.ticks {
        let x = tick.at;
        let _ = write!(ticks, "M{x:.1} {y:.1}v{TICK}");
        let _ = write!(grid, "M{x:.1} {top:.1}V{y:.1}");
    }
    let labels = axis
        .ticks
        .iter()
        .map(|tick| {
            let (x, y) = (format!("{:.1}", tick.at), format!("{:.1}", y + 22.0));
            view! { <text class="tick" x=x y=y>{tick.label.clone()}</text> }
        })
        .collect_view();
    let end = width - 12.0;
    view! {
        <path class="grid" d=grid></path>
        <path class="axis-line" d=format!("M40 {y:.1}H{end:.1}")></path>
        <path class="axis-fine" d=fine></path>
        <path class="axis-tick" d=ticks></path>
        {labels}
        <text class="axis-label" x=format!("{end:.1}") y=format!("{:.1}", y + 39.0)>
            {axis.label.clone()}
        </text>
    }
}

/// All gears, as one image.
pub fn gears_on_paper(plot: &GearPlot) -> impl IntoView + use<> {
    let ways = plot
        .ways
        .iter()
        .map(|way| {
            view! { <path class=format!("way {}", way.way.code()) d=stretches(way)></path> }
        })
        .collect_view();
    let crossovers = plot
        .crossovers
        .iter()
        .map(|line| {
            let way = line.crossover.way;
            let class = format!("way {}", way.code());
            view! {
                <path class=class d=line.d.clone()></path>
                <path class="way-head" d=head(line.to, way)></path>
            }
        })
        .collect_view();
    let marks = plot.marks.iter().map(still_mark).collect_view();
    let (width, height) = plot.size;
    view! {
        <svg class="gear-plot" viewBox=format!("0 0 {width} {height}") role="img"
            aria-label=plot.title.clone()>
            <g aria-hidden="true">{ground(plot)}{ways}{crossovers}{marks}</g>
        </svg>
    }
}

fn still_mark(mark: &Mark) -> impl IntoView + use<> {
    let (x, y) = mark.at;
    let label = mark.label_foot.map(|foot| {
        let foot = format!("{:.1}", foot - y);
        view! { <text class="cog-teeth" x="0" y=foot>{mark.label.clone()}</text> }
    });
    view! {
        <g class=mark_class(mark) transform=place((x, y))>
            {mark.crossed.then(|| view! { <path class="stroke" d=CROSSED></path> })}
            {mark.duplicate.then(|| view! { <circle class="outline" r=TWIN></circle> })}
            <path class="shape" d=shape(mark.shape)></path>
            {label}
        </g>
    }
}

/// Class names of a step.
pub fn bar_class(bar: &StepBar) -> String {
    let front = if bar.front { " front" } else { "" };
    let wide = if bar.wide { " wide" } else { "" };
    format!("step-bar{front}{wide}")
}

/// Least width of a bar whose number stands on it.
const NUMBERED: f64 = 17.0;

/// Heights of percents, and the line above which a step is wide.
pub fn step_ground(plot: &StepPlot) -> impl IntoView + use<> {
    let end = plot.size.0 - 12.0;
    let mut grid = String::new();
    for (y, _) in &plot.ticks {
        let _ = write!(grid, "M40 {y:.1}H{end:.1}");
    }
    let labels = plot
        .ticks
        .iter()
        .map(|(y, percent)| {
            let y = format!("{:.1}", y + 4.0);
            view! { <text class="percent" x="36" y=y>{percent.to_string()}</text> }
        })
        .collect_view();
    view! {
        <path class="grid" d=grid></path>
        {labels}
        <path class="wide-line" d=format!("M40 {:.1}H{end:.1}", plot.wide)></path>
        <text class="wide-word" x=format!("{end:.1}") y=format!("{:.1}", plot.wide - 5.0)>
            "wide"
        </text>
        <path class="axis-line" d=format!("M40 {:.1}H{end:.1}", plot.ground)></path>
    }
}

/// One bar: hatched where the front changes, with a sign on top where it is wide.
pub fn bar_parts(bar: &StepBar, ground: f64) -> impl IntoView + use<> {
    let (x, middle) = (bar.x, bar.x + bar.width / 2.0);
    let d = format!(
        "M{x:.1} {ground:.1}V{:.1}h{:.1}V{ground:.1}",
        bar.top, bar.width
    );
    let mut hatch = String::new();
    if bar.front {
        let mut y = bar.top + 6.0;
        while y < ground {
            let _ = write!(hatch, "M{x:.1} {y:.1}h{:.1}", bar.width);
            y += 6.0;
        }
    }
    let sign = bar.wide.then(|| {
        let d = format!("M{middle:.1} {:.1}l-6 -10h12z", bar.top - 18.0);
        view! { <path class="wide-sign" d=d></path> }
    });
    view! {
        <path class="bar-face" d=d></path>
        <path class="bar-hatch" d=hatch></path>
        {sign}
    }
}

/// The number above a bar and the gear below it. They are no part of what a
/// screen reader is told, which says more.
pub fn bar_words(bar: &StepBar, ground: f64) -> impl IntoView + use<> {
    let middle = bar.x + bar.width / 2.0;
    let number = (bar.width >= NUMBERED).then(|| {
        let y = format!("{:.1}", bar.top - 5.0);
        let step = format!("{:.0}", bar.step.0);
        view! { <text class="step" x=format!("{middle:.1}") y=y>{step}</text> }
    });
    let (x, y) = (middle + 4.0, ground + 6.0);
    let turned = format!("translate({x:.1} {y:.1}) rotate(-90)");
    view! {
        {number}
        <text class="to-gear" transform=turned>{bar.label.clone()}</text>
    }
}

/// The steps, as one image.
pub fn steps_on_paper(plot: &StepPlot) -> impl IntoView + use<> {
    let bars = plot
        .bars
        .iter()
        .map(|bar| {
            view! {
                <g class=bar_class(bar)>
                    {bar_parts(bar, plot.ground)}{bar_words(bar, plot.ground)}
                </g>
            }
        })
        .collect_view();
    let (width, height) = plot.size;
    view! {
        <svg class="step-plot" viewBox=format!("0 0 {width} {height}") role="img"
            aria-label=plot.title.clone()>
            <g aria-hidden="true">{step_ground(plot)}{bars}</g>
        </svg>
    }
}
