//! Plans to look around in: riders, bikes and their valley are invented.
//!
//! The touring club of the Ossenbrook, a valley of our own, calls its riders by
//! birds. Each plan is made by edits, as people would make it, so that it
//! follows the model.

mod dipper;
mod plover;
mod wren;

use super::{TemplateId, template};
use crate::cockpit::{ButtonId, ButtonPart, ControlId, ControlKind};
use crate::edit::{Edit, EditError, PlanEdit, RiderEdit};
use crate::finding::{Acceptance, Role};
use crate::plan::Plan;
use crate::rider::{Ability, Answer, Difficulty, Evidence, Later, Side, Source, Worn, YesNo};
use crate::rules;
use crate::text::{Date, Text};
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// The demo plans.
    pub enum DemoId as "demo plan" {
        /// A drop bar ridden with the left hand, ready to build.
        Wren = "wren", "Wren’s road bike, one hand, ready";
        /// A flat bar whose left thumb rests, with points to decide.
        Plover = "plover", "Plover’s flat bar, two ideas to compare";
        /// A tricycle as it came in, with work to do.
        Dipper = "dipper", "Dipper’s tricycle, work still to do";
    }
}

/// A plan to look around in.
#[derive(Debug, Clone, PartialEq)]
pub struct Demo {
    /// Which one.
    pub id: DemoId,
    /// What it is called in a list.
    pub title: &'static str,
    /// Two or three sentences about the rider, the bike and what to look at.
    pub story: &'static str,
    /// The plan.
    pub plan: Plan,
}

/// A demo plan by its name.
pub fn demo(id: DemoId) -> Demo {
    let (story, work) = match id {
        DemoId::Wren => (wren::STORY, wren::work()),
        DemoId::Plover => (plover::STORY, plover::work()),
        DemoId::Dipper => (dipper::STORY, dipper::work()),
    };
    Demo {
        id,
        title: id.words(),
        story,
        plan: work.plan,
    }
}

/// A plan in the making, and what was refused on the way: nothing, as a test
/// proves.
struct Work {
    plan: Plan,
    refused: Vec<EditError>,
}

impl Work {
    fn on(id: TemplateId, name: &str) -> Work {
        Work {
            plan: template(id).plan(name),
            refused: Vec::new(),
        }
    }

    /// The plan after some edits.
    fn then(mut self, edits: impl IntoIterator<Item = Edit>) -> Work {
        for edit in edits {
            match self.plan.apply(&edit) {
                Ok(next) => {
                    self.plan = Plan {
                        revision: next.revision + 1,
                        ..next
                    };
                }
                Err(error) => self.refused.push(error),
            }
        }
        self
    }

    /// Whatever a rule says about the plan is accepted for a reason.
    fn accept(self, rule: &str, reason: &str, by: &str, role: Role) -> Work {
        let edits: Vec<Edit> = rules::findings(&self.plan)
            .into_iter()
            .filter(|finding| finding.rule == rule)
            .map(|finding| {
                Edit::Plan(PlanEdit::Accept(Acceptance {
                    finding: finding.key(),
                    reason: Text::new(reason),
                    by: Text::new(by),
                    role,
                    date: self.plan.date,
                    lapsed: false,
                }))
            })
            .collect();
        self.then(edits)
    }

    fn control(&self, side: Side, kind: ControlKind) -> ControlId {
        let mut controls = self.plan.bike.controls.iter();
        controls
            .find(|c| c.kind == kind && c.side.hand() == Some(side))
            .map_or(ControlId(0), |c| c.id)
    }

    fn button(&self, side: Side, kind: ControlKind, part: ButtonPart) -> ButtonId {
        ButtonId {
            control: self.control(side, kind),
            part,
        }
    }
}

/// Seen by the fitter in riding gloves.
fn seen(day: Option<Date>) -> Option<Evidence> {
    Some(Evidence {
        source: Source::SeenByFitter,
        date: day,
        worn: Some(Worn::Glove),
        in_one_tap: false,
    })
}

/// What one tap leaves open about a hand that works, asked singly: no pain, and
/// an arm that does nothing by itself and stays the same.
fn asked_singly(side: Side, day: Option<Date>) -> [Edit; 3] {
    [
        RiderEdit::Ability(side, Ability::Comfort, told(Difficulty::None, day)),
        RiderEdit::MovesByItself(side, told(YesNo::No, day)),
        RiderEdit::Later(side, told(Later::Same, day)),
    ]
    .map(Edit::Rider)
}

/// As the rider told it.
fn told<T>(value: T, day: Option<Date>) -> Answer<T> {
    Answer::with(
        value,
        Some(Evidence {
            source: Source::Told,
            date: day,
            worn: None,
            in_one_tap: false,
        }),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cockpit::Zone;
    use crate::document;
    use crate::edit::{BikeEdit, BrakeEdit, LayoutEdit};
    use crate::finding::Severity;
    use crate::sheet::{Readiness, Sheet, SheetOptions};
    use crate::situation::Situation;
    use crate::summary;

    fn must_fix(plan: &Plan) -> Vec<String> {
        rules::findings(plan)
            .iter()
            .filter(|finding| finding.severity == Severity::MustFix)
            .map(|finding| finding.key())
            .collect()
    }

    fn open_checks(plan: &Plan) -> Vec<&'static str> {
        rules::findings(plan)
            .iter()
            .filter(|f| f.severity == Severity::Check && plan.acceptance_of(f).is_none())
            .map(|finding| finding.rule)
            .collect()
    }

    fn readiness(plan: &Plan) -> Readiness {
        Sheet::of(plan, SheetOptions::default()).verdict.readiness
    }

    fn summary(plan: &Plan) -> String {
        summary::of(&Situation::of(plan)).to_string()
    }

    #[test]
    fn nothing_is_refused_on_the_way() {
        for work in [wren::work(), plover::work(), dipper::work()] {
            assert_eq!(work.refused, []);
        }
    }

    #[test]
    fn each_opens_from_a_file_as_it_is() {
        for id in DemoId::ALL {
            let demo = demo(*id);
            let opened = document::read(document::write(&demo.plan)).expect("it opens");
            assert_eq!((opened.plan, opened.notes), (demo.plan, Vec::new()), "{id}");
        }
    }

    #[test]
    fn wren_is_ready_with_four_points_decided() {
        let plan = demo(DemoId::Wren).plan;
        assert_eq!(must_fix(&plan), [""; 0]);
        assert_eq!(open_checks(&plan), [""; 0]);
        assert_eq!(plan.accepted.len(), 4);
        assert_eq!(readiness(&plan), Readiness::Ready);
        assert_eq!(
            summary(&plan),
            "Left hand: hood button other ring, outer paddle easier, inner paddle harder; brakes both wheels. Right hand: rests; its buttons do nothing."
        );
    }

    #[test]
    fn plover_has_two_ideas_and_two_points_to_decide() {
        let plan = demo(DemoId::Plover).plan;
        assert_eq!(plan.layouts.len(), 2);
        for layout in &plan.layouts {
            let edit = Edit::Plan(PlanEdit::SelectLayout(layout.id));
            let plan = plan.apply(&edit).expect("the layout is there");
            assert_eq!(must_fix(&plan), [""; 0], "{}", layout.name);
            assert_eq!(
                open_checks(&plan),
                ["riding-hurts", "brake-grip-takes-effort"],
                "{}",
                layout.name
            );
        }
        assert_eq!(readiness(&plan), Readiness::CheckFirst);
        assert_eq!(
            summary(&plan),
            "Left hand: nothing to press; brakes the front wheel. Right hand: thumb pod far button harder, thumb pod near button easier; brakes the rear wheel."
        );
    }

    #[test]
    fn dipper_has_six_points_to_fix() {
        let plan = demo(DemoId::Dipper).plan;
        assert_eq!(
            must_fix(&plan),
            [
                "brake-out-of-reach|wheel:rear-left|position:grip",
                "brake-out-of-reach|wheel:rear-right|position:grip",
                "brake-throw-untested|control:2",
                "live-button-under-resting-hand|button:3.far|hand:right",
                "live-button-under-resting-hand|button:3.near|hand:right",
                "parking-latch-untried|control:1|hand:left",
            ]
        );
        assert_eq!(readiness(&plan), Readiness::NotReady);
    }

    #[test]
    fn dipper_can_be_worked_off() {
        let mut plan = demo(DemoId::Dipper).plan;
        let left = plan.bike.brakes.runs[0].lever;
        let right = plan.bike.brakes.runs[1].lever;
        let yes = Answer::of(YesNo::Yes);
        for edit in [
            Edit::Bike(BikeEdit::Add(ControlKind::Pod, Side::Left, Zone::Grip)),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
            Edit::Brakes(BrakeEdit::AllOnLever(left)),
            Edit::Bike(BikeEdit::BladeFitted(right, false)),
            Edit::Brakes(BrakeEdit::ThrowTested(left, yes)),
            Edit::Bike(BikeEdit::Latch(
                left,
                Some(crate::cockpit::Latch { tried: yes }),
            )),
        ] {
            plan = plan.apply(&edit).expect("the edit is possible");
        }
        assert_eq!(must_fix(&plan), [""; 0]);
    }
}
