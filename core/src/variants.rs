//! The layouts of a plan beside each other.

use crate::cockpit::ButtonId;
use crate::coverage::Cell;
use crate::finding::{Finding, Place, Severity};
use crate::gears::{Demand, UsualMove};
use crate::layout::{Hold, Layout, LayoutId};
use crate::plan::Plan;
use crate::practice;
use crate::record::Code;
use crate::review::{self, MarkLine};
use crate::revision;
use crate::rider::{Day, Side};
use crate::rules;
use crate::sheet::Readiness;
use crate::situation::Situation;
use crate::summary::{self, Summary};
use crate::tally::Tally;
use crate::text::{capital, list};
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// What the lines of a comparison are about, in the order of reading.
    pub enum Topic as "topic of a comparison" {
        /// What each button does.
        Buttons = "buttons", "buttons";
        /// What the rider says of single buttons.
        Marks = "marks", "what the rider marked";
        /// What the rules say.
        Findings = "findings", "findings";
        /// What is reached from where.
        Coverage = "coverage", "coverage";
        /// Gears.
        Gears = "gears", "gears";
        /// What a ride asks of the hands.
        Loads = "loads", "on a ride";
        /// How practice went.
        Practice = "practice", "practice";
    }
}

/// The layouts of a plan beside each other.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// A column for each layout, in their order.
    pub columns: Vec<Column>,
    /// The lines, topic by topic.
    pub lines: Vec<Line>,
    /// What matters in plain sentences.
    pub sentences: Vec<String>,
    /// Buttons that do not do the same in all of them.
    pub differing: Vec<ButtonId>,
}

/// A layout at the head of its column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// The layout.
    pub layout: LayoutId,
    /// Its name.
    pub name: String,
    /// Its revision code.
    pub code: Code,
    /// Whether it is chosen for the sheet.
    pub is_chosen: bool,
    /// The word of its sheet.
    pub readiness: Readiness,
    /// How many findings stand open.
    pub tally: Tally,
    /// What each hand has to do.
    pub summary: Summary,
}

/// A line of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What it is about.
    pub topic: Topic,
    /// Its head.
    pub head: String,
    /// A cell for each layout; empty for nothing.
    pub cells: Vec<String>,
    /// Where on the drawing.
    pub places: Vec<Place>,
}

impl Line {
    /// A line about a topic.
    pub fn new(topic: Topic, head: impl Into<String>, cells: Vec<String>) -> Line {
        Line {
            topic,
            head: head.into(),
            cells,
            places: Vec::new(),
        }
    }

    /// Whether not all layouts are alike in it.
    pub fn differs(&self) -> bool {
        self.cells.windows(2).any(|pair| pair[0] != pair[1])
    }
}

/// A layout with what follows from it.
struct Looked<'a> {
    situation: Situation<'a>,
    findings: Vec<Finding>,
    tally: Tally,
}

impl Comparison {
    /// All layouts of a plan.
    pub fn of(plan: &Plan) -> Comparison {
        let looked: Vec<Looked<'_>> = plan
            .layouts
            .iter()
            .map(|layout| Looked::at(plan, layout))
            .collect();
        let columns: Vec<Column> = looked.iter().map(column).collect();
        let mut lines = buttons(plan);
        let differing = differing(&lines);
        let marks = Marked::all(plan, &columns);
        lines.extend(marks.iter().map(Marked::line));
        lines.extend(findings(plan, &looked));
        lines.extend(coverage(&looked));
        lines.extend(gears(plan));
        lines.extend(loads(plan));
        lines.extend(practised(plan));
        Comparison {
            sentences: sentences(plan, &columns, &lines, &marks, differing.len()),
            columns,
            lines,
            differing,
        }
    }
}

impl<'a> Looked<'a> {
    fn at(plan: &'a Plan, layout: &'a Layout) -> Looked<'a> {
        let situation = Situation::of_layout(plan, layout);
        let findings = rules::findings_in(&situation);
        Looked {
            tally: Tally::of(plan, &findings),
            situation,
            findings,
        }
    }
}

fn column(looked: &Looked<'_>) -> Column {
    let (plan, layout) = (looked.situation.plan, looked.situation.layout);
    Column {
        layout: layout.id,
        name: layout.name.to_string(),
        code: revision::code_of(plan, layout),
        is_chosen: plan
            .chosen
            .as_ref()
            .is_some_and(|chosen| chosen.layout == layout.id),
        readiness: Readiness::of(&looked.tally),
        tally: looked.tally,
        summary: summary::of(&looked.situation),
    }
}

/// The buttons that do not do the same, alone or with another.
fn differing(buttons: &[Line]) -> Vec<ButtonId> {
    let mut found = Vec::new();
    let lines = buttons.iter().filter(|line| line.differs());
    for place in lines.flat_map(|line| &line.places) {
        if let Place::Button(id) = place
            && !found.contains(id)
        {
            found.push(*id);
        }
    }
    found
}

/// What each button does, then what two do together.
fn buttons(plan: &Plan) -> Vec<Line> {
    let bike = &plan.bike;
    let buttons = bike.buttons().into_iter().zip(1..);
    let mut lines: Vec<Line> = buttons
        .map(|((id, control, _), number)| {
            let does = plan.layouts.iter().map(|layout| does(plan, layout, id));
            let head = format!("{number} {}", control.place_of(id.part));
            Line {
                places: vec![Place::Button(id)],
                ..Line::new(Topic::Buttons, head, does.collect())
            }
        })
        .collect();
    let mut pairs: Vec<(ButtonId, ButtonId)> = Vec::new();
    for chord in plan.layouts.iter().flat_map(|layout| &layout.chords) {
        let pair = (chord.first.min(chord.second), chord.first.max(chord.second));
        if !pairs.contains(&pair) {
            pairs.push(pair);
        }
    }
    lines.extend(pairs.into_iter().map(|(a, b)| {
        let does = plan.layouts.iter().map(|layout| {
            let mut chords = layout.chords.iter();
            let found = chords.find(|chord| chord.includes(a) && chord.includes(b));
            found.map_or_else(|| "nothing".into(), |chord| chord.function.to_string())
        });
        let head = format!("{} with {}", bike.place_of(a), bike.place_of(b));
        Line {
            places: vec![Place::Button(a), Place::Button(b)],
            ..Line::new(Topic::Buttons, head, does.collect())
        }
    }));
    lines
}

fn does(plan: &Plan, layout: &Layout, id: ButtonId) -> String {
    let tap = layout.tap(&plan.bike, id);
    let does = tap.map_or_else(|| "blank".into(), |function| function.to_string());
    match layout.holds.get(&id) {
        None => does,
        Some(Hold::Repeats(run)) => format!("{does}; held: {run}"),
        Some(Hold::Does(function)) => format!("{does}; held: {function}"),
    }
}

/// A button that the rider marked, with what it does in each layout: what hurts
/// in one may be blank in another.
struct Marked {
    mark: MarkLine,
    /// "2 left inner paddle: hurts: after an hour".
    words: String,
    /// The layouts that are as the one of which it was said.
    of: Vec<String>,
    /// What the button does, a cell for each layout.
    does: Vec<String>,
}

impl Marked {
    /// The marks on buttons that are still on the bike.
    fn all(plan: &Plan, columns: &[Column]) -> Vec<Marked> {
        let marks = review::marks(plan).into_iter();
        let there = marks.filter(|mark| plan.bike.balloon(mark.button).is_some());
        there
            .map(|mark| {
                let said_of = columns.iter().filter(|column| column.code == mark.code);
                let layouts = plan.layouts.iter();
                Marked {
                    words: mark.said(plan),
                    of: said_of.map(|column| column.name.clone()).collect(),
                    does: layouts.map(|own| does(plan, own, mark.button)).collect(),
                    mark,
                }
            })
            .collect()
    }

    fn line(&self) -> Line {
        Line {
            places: vec![Place::Button(self.mark.button)],
            ..Line::new(Topic::Marks, self.words.clone(), self.does.clone())
        }
    }

    /// "The rider marked 2 left inner paddle: hurts, said of “Both”. What it
    /// does: rear easier in “Both”; blank in “Left”."
    fn sentence(&self, columns: &[Column]) -> String {
        let quoted: Vec<String> = self.of.iter().map(|name| format!("“{name}”")).collect();
        let of = match quoted.is_empty() {
            true => "said before the plan changed".to_owned(),
            false => format!("said of {}", list(&quoted, "and")),
        };
        let does: Vec<String> = columns
            .iter()
            .zip(&self.does)
            .map(|(column, does)| format!("{does} in “{}”", column.name))
            .collect();
        let alike = self.does.windows(2).all(|two| two[0] == two[1]);
        let does = match (alike, self.does.first()) {
            (true, Some(does)) => format!("{does} in all of them"),
            _ => does.join("; "),
        };
        format!(
            "The rider marked {}, {of}. What it does: {does}.",
            self.words
        )
    }
}

/// Each open finding once, with what it weighs in each layout.
fn findings(plan: &Plan, looked: &[Looked<'_>]) -> Vec<Line> {
    let mut known: Vec<(String, &Finding)> = Vec::new();
    for finding in looked.iter().flat_map(|looked| &looked.findings) {
        let key = finding.key();
        let is_open = plan.acceptance_of(finding).is_none();
        if is_open
            && finding.severity != Severity::GoodToKnow
            && !known.iter().any(|(k, _)| *k == key)
        {
            known.push((key, finding));
        }
    }
    known
        .sort_unstable_by(|(a, first), (b, second)| (first.severity, a).cmp(&(second.severity, b)));
    let line = |(key, finding): (String, &Finding)| {
        let weighs = looked.iter().map(|looked| {
            let mut own = looked.findings.iter();
            let found = own.find(|f| f.key() == key && plan.acceptance_of(f).is_none());
            found.map(|f| f.severity.to_string()).unwrap_or_default()
        });
        Line {
            places: finding.places.clone(),
            ..Line::new(Topic::Findings, finding.message.clone(), weighs.collect())
        }
    };
    known.into_iter().map(line).collect()
}

/// How each needed function is called up from each position on a usual day.
fn coverage(looked: &[Looked<'_>]) -> Vec<Line> {
    let Some(first) = looked.first() else {
        return Vec::new();
    };
    let plan = first.situation.plan;
    let mut lines = Vec::new();
    for function in plan.needed_functions() {
        for position in first.situation.positions() {
            let cells = looked.iter().map(|looked| {
                let cell = looked
                    .situation
                    .coverage
                    .cell(*function, *position, Day::Usual);
                cell.map(|cell| said(plan, cell)).unwrap_or_default()
            });
            let head = format!("{}, from the {position}", capital(&function.to_string()));
            lines.push(Line {
                places: vec![Place::Function(*function), Place::Position(*position)],
                ..Line::new(Topic::Coverage, head, cells.collect())
            });
        }
    }
    lines
}

fn said(plan: &Plan, cell: &Cell) -> String {
    let lets_go = match cell {
        Cell::Reached(_) => "",
        Cell::ByLettingGo(_) => ", letting go",
        Cell::No(why) => return why.to_string(),
    };
    let Some(way) = cell.way() else {
        return String::new();
    };
    let numbers: Vec<String> = (way.via.buttons().into_iter())
        .filter_map(|id| plan.bike.balloon(id))
        .map(|number| number.to_string())
        .collect();
    let step = way.step.map(|step| format!(", {step}")).unwrap_or_default();
    format!(
        "{} with the {} {}{step}{lets_go}",
        list(&numbers, "and"),
        way.hand,
        way.contact
    )
}

/// Presses from gear to gear with the holds of each layout, where the teeth are
/// known.
fn gears(plan: &Plan) -> Vec<Line> {
    let demands = plan.layouts.iter().map(|layout| {
        Demand::of_plan(&Plan {
            current: layout.id,
            ..plan.clone()
        })
    });
    let Ok(demands) = demands.collect::<Result<Vec<Demand>, _>>() else {
        return Vec::new();
    };
    let line = |head: String, say: &dyn Fn(&Demand) -> String| {
        Line::new(Topic::Gears, head, demands.iter().map(say).collect())
    };
    let mut lines: Vec<Line> = UsualMove::ALL
        .iter()
        .map(|usual| {
            line(format!("Presses, {usual}"), &|demand| {
                let mut moves = demand.moves.iter();
                let found = moves.find(|(of, _)| of == usual);
                found
                    .map(|(_, trip)| trip.presses.to_string())
                    .unwrap_or_default()
            })
        })
        .collect();
    lines.push(line(
        "Most presses from any gear to any other".into(),
        &|demand| demand.worst.to_string(),
    ));
    lines
}

/// What the ride that is remembered of each layout asked of each hand.
fn loads(plan: &Plan) -> Vec<Line> {
    let ridden = |layout: &Layout| {
        let mut rides = plan.rides.remembered.iter();
        rides.find(|ride| ride.layout == layout.id)
    };
    if !plan.layouts.iter().any(|layout| ridden(layout).is_some()) {
        return Vec::new();
    }
    let line = |side: Side| {
        let cells = plan.layouts.iter().map(|layout| match ridden(layout) {
            None => "not ridden yet".into(),
            Some(ride) if ride.is_stale(plan) => "ridden before the last change".into(),
            Some(ride) => {
                let hand = ride.hand(side);
                format!(
                    "{} presses and {} brake pulls in {} min; {} of the presses while braking",
                    hand.presses, hand.pulls, ride.minutes, hand.clashes
                )
            }
        });
        let head = format!("What the {side} hand does");
        Line {
            places: vec![Place::Hand(side)],
            ..Line::new(Topic::Loads, head, cells.collect())
        }
    };
    Side::ALL.iter().copied().map(line).collect()
}

fn practised(plan: &Plan) -> Vec<Line> {
    let totals = plan
        .layouts
        .iter()
        .map(|layout| practice::total(plan, layout.id));
    let totals: Vec<_> = totals.collect();
    if totals.iter().all(Option::is_none) {
        return Vec::new();
    }
    let cells = |say: fn(&practice::Total) -> String| -> Vec<String> {
        let said = totals
            .iter()
            .map(|total| total.as_ref().map(say).unwrap_or_default());
        said.collect()
    };
    vec![
        Line::new(
            Topic::Practice,
            "Right first time",
            cells(|total| format!("{} of {}", total.right_first, total.calls)),
        ),
        Line::new(
            Topic::Practice,
            "Wrong button",
            cells(|total| total.wrong.to_string()),
        ),
    ]
}

/// What matters, for people who do not read tables.
fn sentences(
    plan: &Plan,
    columns: &[Column],
    lines: &[Line],
    marks: &[Marked],
    differing: usize,
) -> Vec<String> {
    if columns.len() < 2 {
        return vec!["There is one layout. Copy it to try another idea beside it.".into()];
    }
    let mut said: Vec<String> = columns
        .iter()
        .map(|column| format!("“{}”: {}.", column.name, column.tally))
        .collect();
    said.push(match differing {
        0 => "Every button does the same in all of them.".into(),
        1 => "One button differs.".into(),
        count => format!("{count} buttons differ."),
    });
    let reached: Vec<&Line> = lines
        .iter()
        .filter(|l| l.topic == Topic::Coverage && l.differs())
        .collect();
    if !reached.is_empty() {
        let heads: Vec<String> = reached
            .iter()
            .map(|line| line.head.to_lowercase())
            .collect();
        said.push(format!("Reached otherwise: {}.", list(&heads, "and")));
    }
    said.extend(marks.iter().map(|marked| marked.sentence(columns)));
    if let Some(chosen) = &plan.chosen {
        let name = columns
            .iter()
            .find(|column| column.is_chosen)
            .map(|column| &column.name);
        let name = name.map(String::as_str).unwrap_or_default();
        said.push(match chosen.reason.as_str() {
            "" => format!("“{name}” is chosen for the sheet."),
            reason => format!("“{name}” is chosen for the sheet: {reason}"),
        });
    }
    said
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{Comparison, Topic};
    use crate::catalogue::{DemoId, demo};
    use crate::edit::{Edit, LayoutEdit, PlanEdit, RecordEdit};
    use crate::finding::Role;
    use crate::function::Function;
    use crate::layout::Chosen;
    use crate::plan::Plan;
    use crate::record::Matter;
    use crate::review::MarkKind;
    use crate::testing::{button, plan};

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]

        #[test]
        fn every_line_has_a_cell_for_each_layout(plan in plan()) {
            let compared = Comparison::of(&plan);
            prop_assert_eq!(compared.columns.len(), plan.layouts.len());
            for line in &compared.lines {
                prop_assert_eq!(line.cells.len(), plan.layouts.len());
                prop_assert!(plan.layouts.len() > 1 || !line.differs());
            }
            prop_assert!(!compared.sentences.is_empty());
        }

        #[test]
        fn copies_do_not_differ(plan in plan()) {
            let mut plan = plan;
            plan.layouts.truncate(1);
            plan.current = plan.layouts[0].id;
            plan.chosen = None;
            // A ride belongs to one layout.
            plan.rides.remembered.clear();
            let copied = after(&plan, PlanEdit::DuplicateLayout("copy".into()));
            let compared = Comparison::of(&copied);
            prop_assert!(compared.differing.is_empty());
            let differs = compared.lines.iter().any(|l| l.topic != Topic::Practice && l.differs());
            prop_assert!(!differs);
            prop_assert_eq!(compared.columns[0].code, compared.columns[1].code);
        }
    }

    fn after(plan: &Plan, edit: PlanEdit) -> Plan {
        plan.apply(&Edit::Plan(edit)).expect("the edit is possible")
    }

    #[test]
    fn two_ideas_are_told_apart() {
        let plan = demo(DemoId::Wren).plan;
        let before = plan.layouts.len();
        let plan = after(&plan, PlanEdit::DuplicateLayout("With lights".into()));
        let hood = button(&plan, "left outer paddle");
        let tap = Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights)));
        let plan = plan.apply(&tap).expect("the button is free");
        let compared = Comparison::of(&plan);
        assert!(compared.differing.contains(&hood));
        let line = compared
            .lines
            .iter()
            .find(|l| l.head.ends_with("left outer paddle"));
        let cells = &line.expect("every button has a line").cells;
        assert_eq!(
            (cells.len(), cells[before].as_str()),
            (before + 1, "lights")
        );
        // Rung down is now missing: a finding in the new one only.
        let missing = compared.lines.iter().filter(|l| l.topic == Topic::Findings);
        assert!(
            missing
                .into_iter()
                .any(|l| l.cells[0].is_empty() && l.cells[before] == "must fix")
        );
        assert!(compared.columns[before].tally.must_fix > compared.columns[0].tally.must_fix);
    }

    #[test]
    fn gears_and_rides_stand_beside_each_other() {
        let plan = demo(DemoId::Wren).plan;
        let mut plan = after(&plan, PlanEdit::DuplicateLayout("Two".into()));
        let own = |plan: &Plan, topic| {
            let lines = Comparison::of(plan).lines.into_iter();
            lines.filter(|line| line.topic == topic).collect::<Vec<_>>()
        };
        let gears = own(&plan, Topic::Gears);
        assert!(gears.len() > 2 && gears.iter().all(|l| l.cells.iter().all(|c| !c.is_empty())));
        assert!(own(&plan, Topic::Loads).is_empty());
        plan.rides
            .remembered
            .push(crate::ride::kept::Remembered::blank(&plan));
        let loads = own(&plan, Topic::Loads);
        let last = |line: &super::Line| line.cells.last().cloned();
        assert_eq!(
            last(&loads[0]),
            Some("0 presses and 0 brake pulls in 60 min; 0 of the presses while braking".into())
        );
        assert!(loads.iter().all(|l| l.cells[0] == "not ridden yet"));
    }

    #[test]
    fn what_the_rider_marked_is_told_with_what_the_button_does_in_each() {
        let plan = demo(DemoId::Plover).plan;
        let pod = button(&plan, "left thumb pod, near button");
        let first = plan.layouts[0].id;
        let plan = after(&plan, PlanEdit::SelectLayout(first));
        let mark = Edit::Record(RecordEdit {
            by: "".into(),
            role: Role::Rider,
            date: None,
            layout: None,
            matter: Matter::Mark {
                button: pod,
                kind: MarkKind::Hurts,
                text: "after an hour".into(),
            },
        });
        let plan = plan.apply(&mark).expect("the rider marks it");
        let said = |plan: &Plan| {
            let compared = Comparison::of(plan);
            let lines = compared.lines.into_iter();
            let own: Vec<_> = lines.filter(|line| line.topic == Topic::Marks).collect();
            let mut sentences = compared.sentences.into_iter();
            (own, sentences.find(|said| said.contains("marked")))
        };
        let (lines, sentence) = said(&plan);
        assert_eq!(lines.len(), 1);
        assert_eq!(
            lines[0].head,
            "2 left thumb pod, near button: hurts: after an hour"
        );
        assert_eq!(lines[0].cells, ["front toggle", "blank"]);
        let of = |name: &str, does: &str| {
            format!(
                "The rider marked 2 left thumb pod, near button: hurts: after an hour, said of {name}. What it does: {does}."
            )
        };
        let both = "front toggle in “Front under the left index finger”; blank in “Ladder under the right thumb”";
        let own = "“Front under the left index finger”";
        assert_eq!(sentence, Some(of(own, both)));
        // Which layout is in hand makes no difference.
        let other = after(&plan, PlanEdit::SelectLayout(plan.layouts[1].id));
        assert_eq!(said(&other).1, Some(of(own, both)));
        // A layout that changed since is not the one it was said of.
        let tap = Edit::Layout(LayoutEdit::Tap(pod, None));
        let blank = plan.apply(&tap).expect("the button can be cleared");
        let (lines, sentence) = said(&blank);
        assert!(!lines[0].differs());
        let sentence = sentence.expect("it is told");
        assert!(
            sentence
                .ends_with(", said before the plan changed. What it does: blank in all of them."),
            "{sentence}"
        );
    }

    #[test]
    fn one_is_chosen_for_a_reason() {
        let plan = demo(DemoId::Plover).plan;
        let chosen = |reason: &str| {
            PlanEdit::ChooseLayout(Some(Chosen {
                layout: plan.layouts[1].id,
                reason: reason.into(),
                by: "M.".into(),
                role: Role::Rider,
                date: None,
            }))
        };
        let refused = plan
            .apply(&Edit::Plan(chosen(" ")))
            .expect_err("it is refused");
        assert_eq!(
            refused.to_string(),
            "Choosing a layout needs a reason. Write why this one."
        );
        let made = after(&plan, chosen("fewer mix-ups"));
        assert_eq!(made.current, plan.layouts[1].id);
        let compared = Comparison::of(&made);
        let marks: Vec<bool> = compared.columns.iter().map(|c| c.is_chosen).collect();
        assert_eq!(marks, [false, true]);
        let last = compared.sentences.last().expect("there are some");
        assert!(
            last.ends_with("is chosen for the sheet: fewer mix-ups"),
            "{last}"
        );
        let sheet = |plan: &Plan| crate::sheet::Sheet::of(plan, Default::default()).to_text();
        let title = format!("{} (chosen is “", plan.layouts[0].name);
        assert!(!sheet(&made).contains(&title));
        let other = after(&made, PlanEdit::SelectLayout(plan.layouts[0].id));
        assert!(sheet(&other).contains(&title));
        let gone = after(&made, PlanEdit::RemoveLayout(plan.layouts[1].id));
        assert_eq!(gone.chosen, None);
    }

    #[test]
    fn layouts_are_added_blank_and_moved() {
        let plan = demo(DemoId::Plover).plan;
        let first = plan.layouts[0].id;
        let added = after(&plan, PlanEdit::AddLayout("Blank".into()));
        assert!(added.layout().taps.is_empty() && added.layout().name.as_str() == "Blank");
        let moved = after(&added, PlanEdit::MoveLayout(added.current, 0));
        assert_eq!(moved.layouts[0].id, added.current);
        let last = after(&moved, PlanEdit::MoveLayout(first, 99));
        assert_eq!(last.layouts.last().map(|l| l.id), Some(first));
    }
}
