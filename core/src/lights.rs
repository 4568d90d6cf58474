//! What of the cockpit lights up for the places of a finding.

use crate::cockpit::{ButtonId, ControlId};
use crate::finding::Place;
use crate::function::Function;
use crate::layout::Hold;
use crate::ordered::SmallSet;
use crate::plan::Plan;

/// Buttons and controls that places stand for.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Lights {
    /// Buttons.
    pub buttons: SmallSet<ButtonId>,
    /// Controls, their blades above all.
    pub controls: SmallSet<ControlId>,
    /// Other work for a thumb, by its place in the bike's list.
    pub thumb_work: SmallSet<usize>,
}

impl Lights {
    /// What places light up under the layout in hand. A function lights every
    /// button that calls it up, a wheel every lever that brakes it; hands,
    /// positions and gears have no place on the cockpit.
    pub fn of(plan: &Plan, places: &[Place]) -> Lights {
        let mut lights = Lights::default();
        for place in places {
            match place {
                Place::Button(id) => lights.buttons.extend([*id]),
                Place::Control(id) => lights.controls.extend([*id]),
                Place::Function(function) => lights.buttons.extend(buttons_with(plan, *function)),
                Place::Wheel(wheel) => lights
                    .controls
                    .extend(plan.bike.brakes.levers_of(*wheel).map(|run| run.lever)),
                Place::ThumbWork(kind) => {
                    let work = plan.bike.thumb_work.iter();
                    lights.thumb_work.extend(
                        work.zip(0..)
                            .filter(|(w, _)| w.kind == *kind)
                            .map(|(_, at)| at),
                    );
                }
                Place::Hand(_) | Place::Position(_) | Place::Gear(_) | Place::Derailleur(_) => {}
            }
        }
        lights
    }
}

fn buttons_with(plan: &Plan, function: Function) -> impl Iterator<Item = ButtonId> {
    let layout = plan.layout();
    let all = plan.bike.buttons().into_iter().map(|(id, ..)| id);
    all.filter(move |id| {
        let tap = layout.tap(&plan.bike, *id);
        let hold = match layout.holds.get(id) {
            Some(Hold::Does(function)) => Some(*function),
            Some(Hold::Repeats(_)) | None => None,
        };
        let chords = layout.chords.iter().filter(|chord| chord.includes(*id));
        tap.into_iter()
            .chain(hold)
            .chain(chords.map(|chord| chord.function))
            .any(|given| given.serves(function))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::Wheel;

    #[test]
    fn a_function_lights_the_buttons_that_call_it_up() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let lit = Lights::of(&plan, &[Place::Function(Function::RearEasier)]);
        // Right outer paddle, right tops pod, left sprint button.
        assert_eq!(lit.buttons.len(), 3);
        assert!(lit.controls.is_empty());
    }

    #[test]
    fn a_chord_lights_both_of_its_buttons() {
        let plan = template(TemplateId::RoadOnePaddle).plan("Test");
        let lit = Lights::of(&plan, &[Place::Function(Function::FrontLarger)]);
        let chord = plan.layout().chords[0];
        assert_eq!(lit.buttons, [chord.first, chord.second].into());
    }

    #[test]
    fn a_wheel_lights_its_lever() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let lit = Lights::of(&plan, &[Place::Wheel(Wheel::Rear)]);
        let lever = plan.bike.brakes.levers_of(Wheel::Rear).next();
        assert_eq!(
            lit.controls,
            [lever.expect("the rear wheel brakes").lever].into()
        );
    }
}
