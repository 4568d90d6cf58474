//! A document names a button that is not on the bike.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::Freedom;
use crate::edit::{BikeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "button-not-on-bike",
    family: Family::Function,
    title: "The layout names a button that is not there",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Every button that the layout gives something, and every button that another copies, is on the bike. Leverwright keeps that itself; a file from elsewhere may not.",
    why: "The function was meant to be somewhere. Whoever builds by the sheet cannot find the place, and the rider misses the function.",
    remedy: "Take the entry out, or add the control that carries the button.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let named = situation.layout.buttons_named();
    let stray = named.into_iter().filter(|id| bike.button(*id).is_none());
    let mut findings: Vec<Finding> = stray
        .map(|id| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Button(id)],
            message: format!(
                "The layout gives something to the {} of control {}, which is not on this bike.",
                id.part, id.control
            ),
            fixes: vec![fixes::take_off(situation, id)],
        })
        .collect();
    for (id, _, button) in bike.buttons() {
        let Freedom::Copies(original) = button.freedom else {
            continue;
        };
        if bike.button(original).is_none() {
            let place = bike.place_of(id);
            findings.push(Finding {
                rule: RULE.id,
                severity: Severity::MustFix,
                acceptable: Acceptable::ByShop,
                places: vec![Place::Button(id)],
                message: format!(
                    "The {place} is said to copy a button that is not on this bike, so it does nothing."
                ),
                fixes: vec![Fix {
                    label: format!("Let the {place} take any function"),
                    edit: Edit::Bike(BikeEdit::Freedom(id, Freedom::Free)),
                }],
            });
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::{ButtonId, ButtonPart, ControlId, Freedom};
    use crate::function::Function::RearEasier;
    use crate::layout::Chord;
    use crate::rules::testing::{check_fixes, drop_bar, fired};

    const NOWHERE: ButtonId = ButtonId {
        control: ControlId(77),
        part: ButtonPart::Far,
    };

    #[test]
    fn fires_for_taps_and_chords_that_name_nothing() {
        let plan = drop_bar()
            .document(|plan, place| {
                let layout = plan.layout_mut();
                layout.taps.insert(NOWHERE, RearEasier);
                layout.chords.push(Chord {
                    first: NOWHERE,
                    second: place("left hood button"),
                    function: RearEasier,
                });
            })
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The layout gives something to the far button of control 77, which is not on this bike."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_a_copy_of_nothing() {
        let plan = drop_bar()
            .document(|plan, place| {
                let here = place("left hood button");
                let control = plan.bike.control_mut(here.control);
                let button =
                    control.and_then(|c| c.buttons.iter_mut().find(|b| b.part == here.part));
                button.expect("the button is there").freedom = Freedom::Copies(NOWHERE);
            })
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 1);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_where_every_name_is_on_the_bike() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
