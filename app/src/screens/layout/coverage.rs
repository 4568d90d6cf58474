//! The coverage table: for each function and wheel brake, from each hand
//! position, which button, hand and contact, how hard, or why not.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{Bike, HandPosition, Wheel};
use leverwright_core::coverage::{BrakeCell, BrakePull, Cell, Coverage, Way, WhyNot};
use leverwright_core::finding::Place;
use leverwright_core::function::Function;
use leverwright_core::rider::Day;

use super::bench::Bench;
use super::words::{FunctionIcons, step_words};
use crate::widgets::Choice;
use crate::workspace::Settled;

/// A row of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Line {
    Function(Function),
    Wheel(Wheel),
}

/// What a cell says.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Says {
    class: &'static str,
    balloons: Vec<usize>,
    who: String,
    how: String,
}

/// The table, for a usual or for a bad day.
#[component]
pub fn CoverageTable() -> impl IntoView {
    let bench = Bench::here();
    // The table is long and mostly below: it need not hold up slots and findings.
    let shown = bench.workspace.settled;
    let positions = of_coverage(shown, |coverage| coverage.positions.clone());
    let lines = of_coverage(shown, |coverage| {
        let functions = coverage.rows.iter().map(|row| Line::Function(row.function));
        let wheels = coverage.brakes.iter().map(|row| Line::Wheel(row.wheel));
        functions.chain(wheels).collect()
    });
    let days = vec![
        (Some(Day::Usual), Day::Usual.words().to_owned()),
        (Some(Day::Bad), Day::Bad.words().to_owned()),
    ];
    let choose = move |day: Option<Day>| bench.day.set(day.unwrap_or(Day::Usual));
    view! {
        <section class="coverage" aria-labelledby="coverage">
            <h2 id="coverage">"Coverage"</h2>
            <Choice legend="Shown for a" name="coverage-day" choices=days
                chosen=Signal::derive(move || Some(bench.day.get()))
                choose/>
            <div class="frame">
                <table role="table" aria-labelledby="coverage">
                    <thead role="rowgroup">
                        <tr role="row">
                            <th role="columnheader" scope="col">"What"</th>
                            <For each=move || positions.get() key=|p| *p let:position>
                                <ColumnHeader position/>
                            </For>
                        </tr>
                    </thead>
                    <tbody role="rowgroup">
                        <For each=move || lines.get() key=|line| *line let:line>
                            <LineView line positions shown/>
                        </For>
                    </tbody>
                </table>
            </div>
        </section>
    }
}

type Shown = RwSignal<Option<Settled>>;

fn of_coverage<T: Clone + PartialEq + Send + Sync + 'static>(
    shown: Shown,
    read: fn(&Coverage) -> Vec<T>,
) -> Memo<Vec<T>> {
    Memo::new(move |_| {
        shown.with(|shown| match shown {
            Some((_, derived)) => read(&derived.coverage),
            None => Vec::new(),
        })
    })
}

#[component]
fn ColumnHeader(position: HandPosition) -> impl IntoView {
    let bench = Bench::here();
    let is_lit = move || {
        bench
            .workspace
            .lit
            .get()
            .contains(&Place::Position(position))
    };
    view! { <th role="columnheader" scope="col" class:lit=is_lit>{position.words()}</th> }
}

#[component]
fn LineView(line: Line, positions: Memo<Vec<HandPosition>>, shown: Shown) -> impl IntoView {
    let bench = Bench::here();
    let place = match line {
        Line::Function(function) => Place::Function(function),
        Line::Wheel(wheel) => Place::Wheel(wheel),
    };
    let is_lit = move || bench.workspace.lit.get().contains(&place);
    let title = match line {
        Line::Function(function) => view! {
            <FunctionIcons function=Some(function)/>
            <span>{function.words()}</span>
        }
        .into_any(),
        Line::Wheel(wheel) => format!("{wheel} brake").into_any(),
    };
    view! {
        <tr role="row" class:lit=is_lit>
            <th role="rowheader" scope="row">{title}</th>
            <For each=move || positions.get() key=|p| *p let:position>
                <CellView line position shown/>
            </For>
        </tr>
    }
}

#[component]
fn CellView(line: Line, position: HandPosition, shown: Shown) -> impl IntoView {
    let day = Bench::here().day;
    let says = Memo::new(move |_| {
        let day = day.get();
        shown.with(|shown| {
            let (plan, derived) = shown.as_ref()?;
            says(&plan.bike, &derived.coverage, line, position, day)
        })
    });
    move || {
        let Says {
            class,
            balloons,
            who,
            how,
        } = says.get()?;
        let balloons = balloons
            .into_iter()
            .map(|number| view! { <span class="balloon-number">{number}</span>" " })
            .collect_view();
        Some(view! {
            <td role="cell" class=class>
                <span class="from" aria-hidden="true">{position.words()}</span>
                <span class="who">{balloons}{who}</span>
                <span class="how">" "{how}</span>
            </td>
        })
    }
}

fn says(
    bike: &Bike,
    coverage: &Coverage,
    line: Line,
    position: HandPosition,
    day: Day,
) -> Option<Says> {
    Some(match line {
        Line::Function(function) => function_cell(bike, coverage.cell(function, position, day)?),
        Line::Wheel(wheel) => brake_cell(bike, coverage.brake_cell(wheel, position, day)?),
    })
}

fn function_cell(bike: &Bike, cell: &Cell) -> Says {
    let by = |class, way: &Way| Says {
        class,
        balloons: way
            .via
            .buttons()
            .into_iter()
            .filter_map(|id| bike.balloon(id))
            .collect(),
        who: format!("{} {}", way.hand, way.contact),
        how: format!("{}, {}", way.ease, step_words(way.step)),
    };
    match cell {
        Cell::Reached(way) => by("reached", way),
        Cell::ByLettingGo(way) => by("letting-go", way),
        Cell::No(why) => not(why.to_string()),
    }
}

fn brake_cell(bike: &Bike, cell: &BrakeCell) -> Says {
    let by = |class, pull: &BrakePull| Says {
        class,
        balloons: Vec::new(),
        who: format!("{} {}", pull.hand, pull.contact),
        how: format!(
            "{}, {}, {}",
            bike.control(pull.lever)
                .map_or_else(String::new, |c| c.place()),
            pull.ease,
            step_words(pull.step)
        ),
    };
    match cell {
        BrakeCell::Reached(pull) => by("reached", pull),
        BrakeCell::ByLettingGo(pull) => by("letting-go", pull),
        BrakeCell::No(WhyNot::NoButton) => not("no lever brakes it".into()),
        BrakeCell::No(_) => {
            let why = cell.why_out_of_reach().unwrap_or_default();
            not(format!("out of reach: {why}"))
        }
    }
}

fn not(why: String) -> Says {
    Says {
        class: "not",
        balloons: Vec::new(),
        who: why,
        how: String::new(),
    }
}
