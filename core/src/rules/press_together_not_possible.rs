//! Two buttons that do something together, which the hands cannot press together.

use super::{Family, Origin, Rule};
use crate::coverage::chord_cell;
use crate::edit::{Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::layout::Chord;
use crate::rider::Day;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "press-together-not-possible",
    family: Family::Clash,
    title: "Two buttons cannot be pressed together",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByClinician,
    what: "Two buttons that do something together can be pressed together by the hands that work, from at least one position in use. Must fix where a needed function depends on it, else check.",
    why: "What asks for both hands at once is out of the question for a hand that rests, and one hand is in one place at a time.",
    remedy: "Put the function on one button of its own, or choose a shift plan that does not need it, and take the pair away.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let chords = situation.layout.chords.iter();
    chords
        .filter(|chord| is_connected(situation, chord) && !can_be_pressed(situation, **chord))
        .map(|chord| finding(situation, *chord))
        .collect()
}

fn finding(situation: &Situation<'_>, chord: Chord) -> Finding {
    let needed = is_depended_on(situation, chord);
    let bike = &situation.plan.bike;
    let (first, second) = (bike.place_of(chord.first), bike.place_of(chord.second));
    Finding {
        rule: RULE.id,
        severity: if needed {
            Severity::MustFix
        } else {
            Severity::Check
        },
        acceptable: Acceptable::ByClinician,
        places: vec![
            Place::Button(chord.first),
            Place::Button(chord.second),
            Place::Function(chord.function),
        ],
        message: format!(
            "“{}” asks for the {first} and the {second} together, which the hands that work cannot press at the same time{}.",
            chord.function,
            if needed {
                ", and no other button does it"
            } else {
                ""
            }
        ),
        fixes: vec![Fix {
            label: "Take this pair away".into(),
            edit: Edit::Layout(LayoutEdit::RemoveChord(chord)),
        }],
    }
}

fn is_connected(situation: &Situation<'_>, chord: &Chord) -> bool {
    let bike = &situation.plan.bike;
    let connected = |id| {
        bike.button(id)
            .is_some_and(|(control, _)| control.connected)
    };
    connected(chord.first) && connected(chord.second)
}

fn can_be_pressed(situation: &Situation<'_>, chord: Chord) -> bool {
    situation.positions().iter().any(|position| {
        let (plan, layout) = (situation.plan, situation.layout);
        situation.callable(&chord_cell(plan, layout, chord, *position, Day::Usual))
    })
}

/// Whether a function that the shift plan needs is called up by nothing else.
fn is_depended_on(situation: &Situation<'_>, chord: Chord) -> bool {
    let from_anywhere = |function| {
        let mut positions = situation.positions().iter();
        positions.any(|position| situation.callable_from(function, *position))
    };
    let needed = situation.plan.needed_functions().iter();
    needed
        .copied()
        .any(|function| chord.function.serves(function) && !from_anywhere(function))
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::edit::{Edit, LayoutEdit};
    use crate::finding::Severity;
    use crate::function::Function;
    use crate::layout::Chord;
    use crate::rider::{HandPlace, Side};
    use crate::rules::testing::{bike, button, check_fixes, drop_bar, fired};

    #[test]
    fn must_be_fixed_where_the_front_depends_on_a_hand_that_rests() {
        let plan = bike(TemplateId::RoadOnePaddle)
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].severity, Severity::MustFix);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_a_check_where_nothing_needed_depends_on_it() {
        let setup = drop_bar();
        let chord = Chord {
            first: button(&setup, "left inner paddle"),
            second: button(&setup, "right inner paddle"),
            function: Function::Lights,
        };
        let plan = setup
            .edit(&Edit::Layout(LayoutEdit::AddChord(chord)))
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].severity, Severity::Check);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_two_hands_and_for_two_fingers_of_one() {
        assert!(fired(&bike(TemplateId::RoadOnePaddle).plan(), &RULE).is_empty());
        let setup = drop_bar();
        let chord = Chord {
            first: button(&setup, "left outer paddle"),
            second: button(&setup, "left inner paddle"),
            function: Function::FrontToggle,
        };
        let plan = setup
            .edit(&Edit::Layout(LayoutEdit::AddChord(chord)))
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
