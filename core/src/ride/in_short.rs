//! What rides ask of the hands, in a few sentences for people who read no tables.

use super::compare::{are_alike, words};
use super::load::Load;
use super::measure::{Measure, Who};
use super::study::{Outcome, Span};
use crate::rider::{Day, Side};
use crate::text::capital;
use crate::vocabulary::Vocabulary;

/// Fewer presses in an hour, both hands together, are few (our judgement: less
/// than one in a minute and a half).
const FEW: f64 = 40.0;

/// What the hands do in each subject on a usual day, then what the road makes of
/// that: why subjects come out alike, and whether braking is most of the work.
pub fn in_short(outcomes: &[Outcome]) -> Vec<String> {
    let usual: Vec<&Outcome> = outcomes.iter().filter(|o| o.day == Day::Usual).collect();
    let mut said: Vec<String> = usual.iter().map(|outcome| asked(outcome)).collect();
    said.extend(few_presses(&usual));
    said.extend(mostly_braking(&usual));
    said
}

/// "“Both”. Left hand: about 110–260 brake pulls, about 14–41 presses. Right
/// hand: no presses and no brake pulls." What is more comes first.
fn asked(outcome: &Outcome) -> String {
    let mut said = format!("“{}”.", outcome.subject.name);
    for side in Side::ALL {
        let of = |measure: Measure| measure.span(Who::Hand(*side), outcome);
        let mut parts = vec![
            (of(Measure::Presses), "presses"),
            (of(Measure::Pulls), "brake pulls"),
        ];
        if parts[1].0.told > parts[0].0.told {
            parts.reverse();
        }
        let does: Vec<String> = (parts.into_iter())
            .filter(|(span, _)| span.high > 0.0)
            .map(|(span, what)| format!("{} {what}", words(span)))
            .collect();
        let does = match does.is_empty() {
            true => "no presses and no brake pulls".to_owned(),
            false => does.join(", "),
        };
        said.push_str(&format!(" {} hand: {does}.", capital(side.words())));
    }
    said
}

/// Layouts differ in how they shift, so they differ little where hardly anybody
/// shifts. Of a part of the road, or where shifts are out of reach, few presses
/// say nothing about the road.
fn few_presses(usual: &[&Outcome]) -> Option<String> {
    let (first, others) = usual.split_first()?;
    let per_hour = over(usual, &|load| load.per_hour(load.presses()));
    let is_whole = |outcome: &&Outcome| {
        outcome.is_finished() && outcome.loads.iter().all(|load| load.missing == 0)
    };
    if per_hour.high >= FEW || !usual.iter().all(is_whole) {
        return None;
    }
    let few = format!(
        "This road needs few presses: {} an hour, both hands together.",
        words(per_hour)
    );
    Some(match others {
        [] => format!("{few} Layouts that shift in other ways can differ little on it."),
        others if others.iter().all(|other| are_alike(first, other)) => {
            format!("{few} That is why these come out alike.")
        }
        _ => few,
    })
}

fn mostly_braking(usual: &[&Outcome]) -> Option<String> {
    let brakes = |outcome: &&Outcome| outcome.ride.load.is_mostly_braking();
    if usual.is_empty() || !usual.iter().all(brakes) {
        return None;
    }
    let count = |of: fn(&Load) -> u32| words(over(usual, &|load| f64::from(of(load))));
    let (pulls, presses) = (count(Load::pulls), count(Load::presses));
    Some(match presses.as_str() {
        "none" => format!("All that the hands do here is braking: {pulls} pulls."),
        _ => {
            format!(
                "Most of what the hands do here is braking: {pulls} pulls, and {presses} presses."
            )
        }
    })
}

/// The range of something over several outcomes.
fn over(outcomes: &[&Outcome], of: &dyn Fn(&Load) -> f64) -> Span {
    let mut spans = outcomes.iter().map(|outcome| outcome.span(of));
    let first = spans.next().unwrap_or(Span {
        low: 0.0,
        told: 0.0,
        high: 0.0,
    });
    spans.fold(first, |all, span| Span {
        low: all.low.min(span.low),
        told: all.told,
        high: all.high.max(span.high),
    })
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::catalogue::{DemoId, TemplateId, demo, template};
    use crate::edit::{Edit, LayoutEdit};
    use crate::plan::Plan;
    use crate::ride::compare::differences;
    use crate::ride::road::{Road, RoadKind};
    use crate::ride::study::{Study, Subject};
    use crate::shift_plan::ShiftPlanKind;

    fn ridden(plan: &Plan, kind: RoadKind, under: &[ShiftPlanKind]) -> Vec<Outcome> {
        let mut subjects = vec![Subject::layout(plan, plan.current).expect("it is there")];
        subjects.extend(
            under
                .iter()
                .map(|kind| Subject::under(plan, *kind).expect("it goes")),
        );
        let road = Arc::new(Road::built_in(kind));
        let mut study = Study::new(road, plan.rides.habits, subjects).expect("it can be ridden");
        assert!(study.advance(usize::MAX));
        study.outcomes()
    }

    fn has(said: &[String], part: &str) -> bool {
        said.iter().any(|sentence| sentence.contains(part))
    }

    #[test]
    fn a_long_climb_says_why_layouts_come_out_alike_and_what_the_load_is() {
        let plan = demo(DemoId::Plover).plan;
        let found = ridden(&plan, RoadKind::Pass, &[ShiftPlanKind::Ladder]);
        assert!(differences(&found[0], &found[2])[0].starts_with("No difference"));
        let said = in_short(&found);
        assert_eq!(said.len(), 4, "{said:?}");
        let pulls = Measure::Pulls.span(Who::Hand(Side::Left), &found[0]);
        let first = format!(
            "“{}”. Left hand: {} brake pulls",
            found[0].subject.name,
            words(pulls)
        );
        assert!(said[0].starts_with(&first), "{said:?}");
        let presses = over(&[&found[0], &found[2]], &|load| {
            load.per_hour(load.presses())
        });
        let few = format!(
            "This road needs few presses: {} an hour, both hands together. That is why these come out alike.",
            words(presses)
        );
        assert_eq!(said[2], few);
        assert!(said[3].starts_with("Most of what the hands do here is braking: about "));
        let alone = in_short(&found[..2]);
        assert!(has(&alone, "can differ little on it."), "{alone:?}");
        assert!(!has(&alone, "these come out alike"));
    }

    /// Brakes that another hand pulls are a difference, few presses or not.
    #[test]
    fn brakes_that_move_to_the_other_hand_are_not_called_alike() {
        let plan = demo(DemoId::Plover).plan;
        let found = ridden(&plan, RoadKind::Pass, &[ShiftPlanKind::Ladder]);
        let mut others = found.clone();
        for load in &mut others[2].loads {
            load.left.work.pulls += load.right.work.pulls;
            load.right.work.pulls = 0;
        }
        others[2].ride.load = others[2].loads[0].clone();
        let said = differences(&others[0], &others[2]);
        assert!(
            has(&said, "Left hand: brake pulls go from about "),
            "{said:?}"
        );
        assert!(has(&said, " to none."), "{said:?}");
        let short = in_short(&others);
        assert!(has(&short, "This road needs few presses"), "{short:?}");
        assert!(!has(&short, "come out alike"), "{short:?}");
    }

    #[test]
    fn where_hands_shift_much_neither_is_said() {
        let plan = demo(DemoId::Wren).plan;
        let said = in_short(&ridden(&plan, RoadKind::Rolling, &[]));
        assert_eq!(said.len(), 1, "{said:?}");
        assert!(
            said[0].contains(" presses, about ")
                && said[0].ends_with("Right hand: no presses and no brake pulls.")
        );
    }

    #[test]
    fn shifts_out_of_reach_are_not_taken_for_a_road_that_needs_few() {
        let clear = Edit::Layout(LayoutEdit::Clear);
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let plan = plan.apply(&clear).expect("it can be cleared");
        let found = ridden(&plan, RoadKind::Pass, &[]);
        assert!(found[0].ride.load.missing > 0);
        let said = in_short(&found);
        assert!(!has(&said, "few presses"), "{said:?}");
        assert!(has(&said, "All that the hands do here is braking: about "));
    }
}
