//! A document gives a fixed button another function.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::Freedom;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "fixed-button-reassigned",
    family: Family::Function,
    title: "A fixed button is given something else",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "The layout gives nothing to a button whose function is fixed by how it is fitted. Leverwright refuses that itself; a file from elsewhere may still say so.",
    why: "The button goes on doing what it is fixed to. Whoever programs by the sheet looks for a setting that does not exist.",
    remedy: "Take the entry out. To change what the button does, refit it on the other side, or unplug it.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    situation
        .layout
        .buttons_named()
        .into_iter()
        .filter_map(|id| match bike.button(id)?.1.freedom {
            Freedom::Fixed(function) => Some((id, function)),
            _ => None,
        })
        .map(|(id, function)| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Button(id)],
            message: format!(
                "The {} is fixed to “{function}” by how it is fitted; the layout gives it something else.",
                bike.place_of(id)
            ),
            fixes: vec![fixes::take_off(situation, id)],
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::function::Function::{FrontToggle, Lights};
    use crate::layout::Hold;
    use crate::rules::testing::{bike, check_fixes, fired};

    #[test]
    fn fires_for_a_tap_and_a_hold_that_a_document_gives() {
        let plan = bike(TemplateId::RoadPods)
            .document(|plan, place| {
                let layout = plan.layout_mut();
                layout.taps.insert(place("left sprint button"), FrontToggle);
                layout
                    .holds
                    .insert(place("right sprint button"), Hold::Does(Lights));
            })
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The left sprint button is fixed to “rear easier” by how it is fitted; the layout gives it something else."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_a_fixed_button_left_alone() {
        assert!(fired(&bike(TemplateId::RoadPods).plan(), &RULE).is_empty());
    }
}
