//! One contact must brake and shift.

use super::{Family, Origin, Rule, braking, fixes};
use crate::cockpit::HandPosition;
use crate::coverage::{BrakePull, Way, ways_to};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::rider::{Contact, Day, Side, Standing};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "same-contact-brakes-and-shifts",
    family: Family::Brake,
    title: "One contact must brake and shift",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "A hand that brakes with one contact only does not need that very contact for a needed function.",
    why: "Before corners and crossings a rider brakes and shifts at once; a contact that is on the blade is not on the button.",
    remedy: "Put the function where another contact or the other hand presses it, or practise shifting before braking.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let places = situation.positions().iter().copied();
    places
        .flat_map(|position| Side::ALL.iter().map(move |side| (position, *side)))
        .filter_map(|(position, side)| {
            let contact = only_brake_contact(situation, side, position)?;
            let functions: Vec<Function> = situation
                .plan
                .needed_functions()
                .iter()
                .copied()
                .filter(|f| needs(situation, *f, position, side, contact))
                .collect();
            (!functions.is_empty()).then(|| Finding {
                fixes: situation.propose(|| {
                    let puts = |f: &Function| fixes::put(situation, *f, Day::Usual, |_| true);
                    functions.iter().flat_map(puts).collect()
                }),
                ..finding(position, side, contact, &functions)
            })
        })
        .collect()
}

fn finding(
    position: HandPosition,
    side: Side,
    contact: Contact,
    functions: &[Function],
) -> Finding {
    let named = functions.iter().map(|function| format!("“{function}”"));
    let mut places = vec![Place::Hand(side), Place::Position(position)];
    places.extend(functions.iter().copied().map(Place::Function));
    Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places,
        message: format!(
            "From the {position} the {side} hand has only its {contact} to brake with, and only that for {}: it cannot do both at once.",
            braking::listed(named)
        ),
        fixes: Vec::new(),
    }
}

/// The contact with which a hand brakes from a position, if there is just one
/// that is able.
fn only_brake_contact(
    situation: &Situation<'_>,
    side: Side,
    position: HandPosition,
) -> Option<Contact> {
    let pulls = situation.live_runs().flat_map(|run| {
        let pulls = situation.coverage.pulls(run.lever, position, Day::Usual);
        pulls
            .iter()
            .filter(|pull| pull.hand == side && pull.counts())
    });
    let able = |pull: &&BrakePull| {
        let step = situation.hand(side).contact_step(pull.contact, Day::Usual);
        step.is_none_or(|step| step.standing() == Standing::Able)
    };
    only(pulls.filter(able).map(|pull| pull.contact))
}

/// Whether a function is called up from a position by this hand and this
/// contact and by nothing else that is able.
fn needs(
    situation: &Situation<'_>,
    function: Function,
    position: HandPosition,
    side: Side,
    contact: Contact,
) -> bool {
    let (plan, layout) = (situation.plan, situation.layout);
    let able = |way: &Way| {
        let step = way.step;
        way.keeps_hold() && step.is_none_or(|step| step.standing() == Standing::Able)
    };
    let ways = ways_to(plan, layout, function, position, Day::Usual);
    let able = ways.into_iter().filter(able);
    only(able.map(|way| (way.hand, way.contact))) == Some((side, contact))
}

/// What all items are, if there are any and they are all the same.
fn only<T: PartialEq>(mut items: impl Iterator<Item = T>) -> Option<T> {
    let first = items.next()?;
    items.all(|item| item == first).then_some(first)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::{Edit, LayoutEdit, RiderEdit};
    use crate::rider::{Answer, Contact, Difficulty, HandPlace, Side};
    use crate::rules::testing::{Setup, drop_bar, fired};

    /// A left hand alone with these contacts, all shifting and braking on it.
    fn left_hand_with(contacts: &[Contact]) -> Setup {
        let mut setup = drop_bar().hand_does_nothing(Side::Right, HandPlace::Rests);
        for contact in crate::rider::digits().filter(|c| !contacts.contains(c)) {
            let none = Answer::of(Difficulty::Complete);
            setup = setup.rider_edit(RiderEdit::Contact(Side::Left, contact, none));
        }
        setup.edit(&Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)))
    }

    #[test]
    fn fires_where_one_finger_must_do_both() {
        let found = fired(&left_hand_with(&[Contact::Index]).plan(), &RULE);
        assert_eq!(found.len(), 2, "from the hoods and from the drops");
        assert!(found[0].message.contains("index finger"));
    }

    #[test]
    fn is_silent_where_a_second_finger_brakes_or_the_thumb_shifts() {
        let plan = left_hand_with(&[Contact::Index, Contact::Middle]).plan();
        assert!(fired(&plan, &RULE).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
