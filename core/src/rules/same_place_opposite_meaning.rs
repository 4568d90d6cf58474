//! The same place means opposite things on the left and on the right.

use super::{Family, Origin, Rule};
use crate::cockpit::{ButtonId, Control};
use crate::edit::{Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "same-place-opposite-meaning",
    family: Family::Clash,
    title: "The same place means opposite things",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "Where both hands shift, the same button of a left and of a right control of one kind does not do opposite things. Controls with a single button are left out: there the side itself tells which way it shifts.",
    why: "In a hurry a hand does what the other hand has learnt.",
    remedy: "Exchange the functions of two buttons on one of the controls.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    if !Side::ALL.iter().all(|side| situation.hand(*side).works()) {
        return Vec::new();
    }
    let bike = &situation.plan.bike;
    let on = |side: Side| {
        let controls = bike.controls.iter();
        controls.filter(move |c| c.side.hand() == Some(side) && c.buttons.len() > 1)
    };
    let mut findings = Vec::new();
    for left in on(Side::Left) {
        for right in on(Side::Right) {
            if (left.kind, left.zone) == (right.kind, right.zone) {
                findings.extend(clashes(situation, left, right));
            }
        }
    }
    findings
}

fn clashes(situation: &Situation<'_>, left: &Control, right: &Control) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let tap = |id| situation.layout.tap(bike, id);
    let parts = left.buttons.iter().map(|button| button.part);
    parts
        .filter_map(|part| {
            let (a, b) = (left.button_id(part), right.button_id(part));
            let (means, otherwise) = (tap(a)?, tap(b)?);
            if means.opposite() != Some(otherwise) {
                return None;
            }
            Some(Finding {
                rule: RULE.id,
                severity: Severity::Check,
                acceptable: Acceptable::ByClinician,
                places: vec![Place::Button(a), Place::Button(b)],
                message: format!(
                    "The {} does “{means}”, the {} does “{otherwise}”: the same place means opposite things to the two hands.",
                    left.place_of(part),
                    right.place_of(part),
                ),
                fixes: [(right, b), (left, a)]
                    .into_iter()
                    .filter_map(|(control, id)| exchange(situation, control, id))
                    .collect(),
            })
        })
        .collect()
}

/// Exchanges a button with the neighbour that does the opposite.
fn exchange(situation: &Situation<'_>, control: &Control, id: ButtonId) -> Option<Fix> {
    let (bike, layout) = (&situation.plan.bike, situation.layout);
    let opposite = layout.tap(bike, id)?.opposite()?;
    let plain = |id: ButtonId| {
        !layout.holds.contains_key(&id) && !layout.chords.iter().any(|c| c.includes(id))
    };
    let buttons = control.buttons.iter().map(|b| control.button_id(b.part));
    let other = buttons
        .filter(|other| *other != id && layout.tap(bike, *other) == Some(opposite))
        .find(|other| plain(*other) && plain(id))?;
    Some(Fix {
        label: format!(
            "Exchange the {} and the {}",
            control.place_of(id.part),
            control.place_of(other.part)
        ),
        edit: Edit::Layout(LayoutEdit::Swap(id, other)),
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::edit::{Edit, LayoutEdit};
    use crate::function::Function::{RearEasier, RearHarder};
    use crate::rider::{HandPlace, Side};
    use crate::rules::testing::{Setup, bike, button, check_fixes, fired};

    fn gravel_with_opposites() -> Setup {
        let mut setup = bike(TemplateId::Gravel);
        for (place, function) in [
            ("left outer paddle", RearEasier),
            ("left inner paddle", RearHarder),
            ("right outer paddle", RearHarder),
            ("right inner paddle", RearEasier),
        ] {
            let id = button(&setup, place);
            setup = setup.edit(&Edit::Layout(LayoutEdit::Tap(id, Some(function))));
        }
        setup
    }

    #[test]
    fn fires_for_each_place_and_offers_an_exchange() {
        let plan = gravel_with_opposites().plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 2);
        assert!(found.iter().all(|f| !f.fixes.is_empty()));
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_one_hand_and_where_the_side_tells() {
        let plan = gravel_with_opposites()
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        for single in [TemplateId::RoadOnePaddle, TemplateId::AeroOneButton] {
            assert!(fired(&bike(single).plan(), &RULE).is_empty(), "{single}");
        }
    }
}
