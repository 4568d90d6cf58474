//! A hold or two buttons together take a button, and a tap on it does nothing.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::ButtonId;
use crate::edit::{Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::layout::Hold;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "tap-lost",
    family: Family::Function,
    title: "A tap is lost to a hold or to two buttons together",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "A button that has a hold, or that is pressed together with another, does something on a tap as well.",
    why: "A tap is the easiest press there is. Where it does nothing, the button is half wasted, and a short press looks like a fault.",
    remedy: "Give the button a tap function, or make its hold a tap.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let layout = situation.layout;
    bike.buttons()
        .into_iter()
        .filter(|(id, control, button)| {
            control.connected
                && button.is_remappable()
                && !layout.is_blank(*id)
                && !layout.taps.contains_key(id)
        })
        .map(|(id, ..)| {
            let taken_by = match layout.holds.get(&id) {
                Some(Hold::Repeats(_)) => "a hold that repeats nothing",
                Some(Hold::Does(_)) => "a hold",
                None => "being pressed together with another",
            };
            Finding {
                rule: RULE.id,
                severity: Severity::Check,
                acceptable: Acceptable::ByShop,
                places: vec![Place::Button(id)],
                message: format!(
                    "A tap on the {} does nothing: the button is taken by {taken_by}.",
                    bike.place_of(id)
                ),
                fixes: situation.propose(|| proposals(situation, id)),
            }
        })
        .collect()
}

/// What it did when it came in, else its hold made a tap, else nothing at all.
fn proposals(situation: &Situation<'_>, id: ButtonId) -> Vec<Fix> {
    let plan = situation.plan;
    let mut proposals = Vec::new();
    let was = plan.as_found.get(&id).copied().flatten();
    if let Some(was) =
        was.filter(|f| plan.bike.can_do(id, *f) && plan.shift_plan.has_use_for(*f, &plan.bike))
    {
        proposals.push(Fix {
            label: format!("Make a tap “{was}”, as it was"),
            edit: Edit::Layout(LayoutEdit::Tap(id, Some(was))),
        });
    }
    match situation.layout.holds.get(&id) {
        Some(Hold::Does(function)) => proposals.push(Fix {
            label: format!("Make “{function}” a tap instead"),
            edit: Edit::Several {
                label: format!("{function} by a tap"),
                edits: vec![
                    Edit::Layout(LayoutEdit::Hold(id, None)),
                    Edit::Layout(LayoutEdit::Tap(id, Some(*function))),
                ],
            },
        }),
        Some(Hold::Repeats(_)) => proposals.push(fixes::no_hold(situation, id)),
        None => proposals.push(fixes::silence(situation, id)),
    }
    proposals
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::HoldRun;
    use crate::function::Function::{FrontToggle, Lights};
    use crate::layout::Hold;
    use crate::rules::testing::{check_fixes, drop_bar, fired, fixes_of};

    #[test]
    fn fires_for_a_hold_and_gives_back_what_was_found() {
        let plan = drop_bar()
            .tap("left outer paddle", None)
            .hold("left outer paddle", Hold::Does(Lights))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "A tap on the left outer paddle does nothing: the button is taken by a hold."
        );
        assert_eq!(
            fixes_of(&plan, &RULE),
            [
                "Make a tap “front larger”, as it was",
                "Make “lights” a tap instead"
            ]
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_both_buttons_pressed_together_and_for_an_empty_repeat() {
        let plan = drop_bar()
            .chord("left hood button", "right hood button", FrontToggle)
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
        check_fixes(&plan, &RULE);
        let plan = drop_bar()
            .hold("left hood button", Hold::Repeats(HoldRun::ToEnd))
            .plan();
        assert_eq!(fixes_of(&plan, &RULE), ["No hold on the left hood button"]);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_where_a_tap_does_something() {
        let plan = drop_bar()
            .hold("left outer paddle", Hold::Does(Lights))
            .chord("left outer paddle", "right outer paddle", FrontToggle)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
