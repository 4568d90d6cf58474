//! A document gives a copying button a function of its own.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::Freedom;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "copying-button-reassigned",
    family: Family::Function,
    title: "A copying button is given something of its own",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "The layout gives nothing to a button that does what another button does. Leverwright refuses that itself; a file from elsewhere may still say so.",
    why: "The button goes on doing what its original does, whatever the sheet says.",
    remedy: "Take the entry out. To change what the button does, change its original.",
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
            Freedom::Copies(original) => Some((id, original)),
            _ => None,
        })
        .map(|(id, original)| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Button(id), Place::Button(original)],
            message: format!(
                "The {} does what the {} does; the layout gives it something of its own.",
                bike.place_of(id),
                bike.place_of(original)
            ),
            fixes: vec![fixes::take_off(situation, id)],
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::Freedom;
    use crate::function::Function::Lights;
    use crate::rules::testing::{check_fixes, drop_bar, fired};

    #[test]
    fn fires_for_what_a_document_gives_it() {
        let plan = drop_bar()
            .freedom_of("right hood button", |place| {
                Freedom::Copies(place("left hood button"))
            })
            .document(|plan, place| {
                let to = place("right hood button");
                plan.layout_mut().taps.insert(to, Lights);
            })
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The right hood button does what the left hood button does; the layout gives it something of its own."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_a_copy_left_alone() {
        let plan = drop_bar()
            .freedom_of("right hood button", |place| {
                Freedom::Copies(place("left hood button"))
            })
            .tap("left hood button", Some(Lights))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
