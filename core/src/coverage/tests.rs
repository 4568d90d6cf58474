//! Tests of the coverage table.

use proptest::prelude::*;

use super::*;
use crate::catalogue::{TemplateId, template};
use crate::cockpit::HandPosition::{Drops, Grip, Hoods, Tops};
use crate::cockpit::{ControlKind, SeenReach, Wheel, Zone};
use crate::edit::{BikeEdit, Edit, LayoutEdit, RiderEdit};
use crate::function::Function::{
    FrontLarger, FrontSmaller, FrontToggle, Lights, RearEasier, RearHarder,
};
use crate::layout::Hold;
use crate::rider::{Ability, Answer, HandPlace, Later, Use};
use crate::testing::{button, plan_and_edits, plan_from_document};

fn after(plan: Plan, edit: Edit) -> Plan {
    plan.apply(&edit).expect("the edit is possible")
}

fn rider(plan: Plan, edit: RiderEdit) -> Plan {
    after(plan, Edit::Rider(edit))
}

/// A template with two able hands.
fn able(id: TemplateId) -> Plan {
    let hands = [Side::Left, Side::Right].map(|side| RiderEdit::HandDoesAll(side, None));
    hands.into_iter().fold(template(id).plan("Test"), rider)
}

fn contact(plan: Plan, side: Side, contact: Contact, step: Difficulty) -> Plan {
    rider(plan, RiderEdit::Contact(side, contact, Answer::of(step)))
}

fn ability(plan: Plan, side: Side, ability: Ability, step: Difficulty) -> Plan {
    rider(plan, RiderEdit::Ability(side, ability, Answer::of(step)))
}

fn uses(plan: Plan, position: HandPosition) -> Plan {
    rider(plan, RiderEdit::Position(position, Answer::of(Use::Mostly)))
}

fn rests(plan: Plan, side: Side) -> Plan {
    rider(
        plan,
        RiderEdit::HandDoesNothing(side, HandPlace::Rests, None),
    )
}

fn tap(plan: Plan, place: &str, function: Function) -> Plan {
    let edit = LayoutEdit::Tap(button(&plan, place), Some(function));
    after(plan, Edit::Layout(edit))
}

#[track_caller]
fn cell(plan: &Plan, function: Function, position: HandPosition, day: Day) -> Cell {
    let coverage = Coverage::of(plan, plan.layout());
    let cell = coverage.cell(function, position, day);
    cell.expect("the table has the cell").clone()
}

#[track_caller]
fn usual(plan: &Plan, function: Function, position: HandPosition) -> Cell {
    cell(plan, function, position, Day::Usual)
}

#[track_caller]
fn reached(plan: &Plan, function: Function, position: HandPosition) -> Way {
    let cell = usual(plan, function, position);
    *cell.reached().unwrap_or_else(|| panic!("{cell:?}"))
}

#[test]
fn names_button_hand_contact_and_reason() {
    let plan = able(TemplateId::RoadPlain);
    let way = reached(&plan, RearEasier, Hoods);
    assert_eq!(way.via, Via::Tap(button(&plan, "right outer paddle")));
    assert_eq!(
        (way.hand, way.contact, way.ease, way.step),
        (
            Side::Right,
            Contact::Index,
            Ease::Natural,
            Some(Difficulty::None)
        )
    );
    assert_eq!(
        way.reason,
        "it lies just behind the blade under the fingers"
    );
}

#[test]
fn tells_what_moves_from_what_is_reached() {
    let plan = uses(able(TemplateId::RoadPlain), Tops);
    let Cell::ByLettingGo(way) = usual(&plan, RearEasier, Tops) else {
        panic!("the hand goes to the hood");
    };
    assert_eq!((way.hand, way.ease), (Side::Right, Ease::Move));
}

#[test]
fn says_why_not() {
    let plan = able(TemplateId::RoadPlain);
    let blank = after(plan.clone(), Edit::Layout(LayoutEdit::Clear));
    assert_eq!(usual(&blank, RearEasier, Hoods), Cell::No(WhyNot::NoButton));

    let mut system = plan.bike.system.clone();
    system.functions.remove(&RearEasier);
    let poor = after(plan.clone(), Edit::Bike(BikeEdit::System(system)));
    assert_eq!(
        usual(&poor, RearEasier, Hoods),
        Cell::No(WhyNot::NotProgrammable)
    );

    let off = rests(rests(plan.clone(), Side::Left), Side::Right);
    assert_eq!(
        usual(&off, RearEasier, Hoods),
        Cell::No(WhyNot::UnderIdleHand(Side::Right))
    );

    let fingers = [Contact::Index, Contact::Middle];
    let unable = [Side::Left, Side::Right]
        .into_iter()
        .fold(plan, |plan, side| {
            let each = fingers.into_iter();
            each.fold(plan, |plan, c| contact(plan, side, c, Difficulty::Complete))
        });
    assert!(matches!(
        usual(&unable, RearEasier, Hoods),
        Cell::No(WhyNot::HandCannot(_))
    ));

    let stem = BikeEdit::Add(ControlKind::SinglePod, Side::Left, Zone::Stem);
    let stem = after(able(TemplateId::RoadPlain), Edit::Bike(stem));
    let stem = tap(stem, "stem one-button pod", Lights);
    assert_eq!(usual(&stem, Lights, Drops), Cell::No(WhyNot::OutOfReach));
}

#[test]
fn an_able_contact_that_stretches_goes_before_one_at_step_3() {
    let plan = tap(
        able(TemplateId::RoadPods),
        "left tops pod, near button",
        Lights,
    );
    let plan = uses(
        contact(plan, Side::Left, Contact::Thumb, Difficulty::Severe),
        Tops,
    );
    let way = reached(&plan, Lights, Tops);
    assert_eq!((way.contact, way.ease), (Contact::Index, Ease::Stretch));
}

#[test]
fn what_was_not_asked_is_usable_but_comes_after_what_is_known_to_be_easy() {
    let plan = rider(
        able(TemplateId::RoadPlain),
        RiderEdit::ForgetHand(Side::Right),
    );
    assert_eq!(reached(&plan, RearEasier, Hoods).step, None);
    let plan = contact(plan, Side::Right, Contact::Middle, Difficulty::Mild);
    assert_eq!(reached(&plan, RearEasier, Hoods).contact, Contact::Middle);
}

#[test]
fn a_hold_asks_for_keeping_pressed_as_well() {
    let plan = able(TemplateId::RoadPlain);
    let outer = button(&plan, "right outer paddle");
    let hold = Edit::Layout(LayoutEdit::Hold(outer, Some(Hold::Does(Lights))));
    let plan = after(plan, hold);
    let keeps = |step| {
        let plan = ability(plan.clone(), Side::Right, Ability::KeepsPressed, step);
        usual(&plan, Lights, Hoods)
    };
    let way = |cell: Cell| cell.reached().copied().expect("the hold is reached");
    assert_eq!(
        way(keeps(Difficulty::Severe)).step,
        Some(Difficulty::Severe)
    );
    assert_eq!(way(keeps(Difficulty::None)).via, Via::Hold(outer));
    // Nor does the other hand cross over to where the only contact is unable.
    let cell = keeps(Difficulty::Complete);
    assert!(!matches!(cell, Cell::Reached(_)), "{cell:?}");
}

#[test]
fn two_buttons_together_are_as_hard_and_as_far_as_the_worse_of_both() {
    let plan = able(TemplateId::RoadOnePaddle);
    let plan = ability(
        plan,
        Side::Left,
        Ability::SwingsPaddle,
        Difficulty::Moderate,
    );
    let way = reached(&plan, FrontLarger, Drops);
    assert_eq!(
        (way.hand, way.step),
        (Side::Left, Some(Difficulty::Moderate))
    );
    // A toggle serves for both directions.
    assert_eq!(reached(&plan, FrontSmaller, Drops).via, way.via);
    // One hand is not at two levers.
    let one = rests(plan, Side::Left);
    assert!(matches!(usual(&one, FrontLarger, Drops), Cell::No(_)));
}

#[test]
fn letting_go_is_left_to_the_hand_that_may() {
    // Only the left hand steers; the button lies in the middle.
    let stem = BikeEdit::Add(ControlKind::SinglePod, Side::Left, Zone::Stem);
    let plan = after(able(TemplateId::FlatSingle), Edit::Bike(stem));
    let plan = tap(plan, "stem one-button pod", Lights);
    let plan = ability(
        plan,
        Side::Right,
        Ability::SteersAlone,
        Difficulty::Complete,
    );
    let plan = contact(plan, Side::Right, Contact::Thumb, Difficulty::Moderate);
    let Cell::ByLettingGo(way) = usual(&plan, Lights, Grip) else {
        panic!("a hand goes to the middle");
    };
    assert_eq!(way.hand, Side::Right);
}

#[test]
fn a_hand_that_does_not_move_along_the_bar_gets_nowhere() {
    let plan = uses(able(TemplateId::RoadPlain), Tops);
    let plan = ability(plan, Side::Right, Ability::MovesAlong, Difficulty::Complete);
    // The left hand would cross over instead.
    let Cell::ByLettingGo(way) = usual(&plan, RearEasier, Tops) else {
        panic!("the other hand crosses over");
    };
    assert_eq!((way.hand, way.ease), (Side::Left, Ease::CrossOver));
    let plan = rests(plan, Side::Left);
    assert_eq!(
        usual(&plan, RearEasier, Tops),
        Cell::No(WhyNot::HandCannot(Side::Right))
    );
}

#[test]
fn what_the_fitter_saw_goes_before_the_table() {
    let plan = able(TemplateId::Gravel);
    let hood = button(&plan, "right hood button");
    let plan = tap(plan, "right hood button", Lights);
    let seen = |ease| {
        Edit::Bike(BikeEdit::SeenReach(
            hood,
            SeenReach {
                from: Drops,
                contact: Contact::Thumb,
                ease,
            },
        ))
    };
    assert!(matches!(usual(&plan, Lights, Drops), Cell::ByLettingGo(_)));
    let near = after(plan.clone(), seen(Some(Ease::Stretch)));
    assert_eq!(reached(&near, Lights, Drops).reason, "seen by the fitter");
    let not = after(rests(plan, Side::Left), seen(None));
    assert_eq!(usual(&not, Lights, Drops), Cell::No(WhyNot::OutOfReach));
}

#[test]
fn a_bad_day_is_one_step_harder_or_not_to_be_counted_on() {
    let plan = able(TemplateId::RoadPlain);
    let later = |later| {
        let edit = RiderEdit::Later(Side::Right, Answer::of(later));
        cell(&rider(plan.clone(), edit), RearHarder, Hoods, Day::Bad)
    };
    let step = |cell: Cell| cell.reached().and_then(|way| way.step);
    assert_eq!(step(later(Later::Same)), Some(Difficulty::None));
    assert_eq!(step(later(Later::OneStepHarder)), Some(Difficulty::Mild));
    assert_eq!(step(later(Later::DoNotCountOnIt)), None);
}

/// A hand that is not to be counted on brakes nothing, and the other one, which
/// could cross over easily, makes no easy brake of it.
#[test]
fn a_brake_by_crossing_over_is_out_of_reach_on_any_day() {
    let plan = able(TemplateId::RoadPlain);
    let later = RiderEdit::Later(Side::Left, Answer::of(Later::DoNotCountOnIt));
    let front = |plan: &Plan, day| {
        let coverage = Coverage::of(plan, plan.layout());
        let cell = coverage.brake_cell(Wheel::Front, Hoods, day);
        cell.expect("the bike has a front brake").clone()
    };
    let tired = rider(plan.clone(), later);
    assert!(front(&tired, Day::Usual).reached().is_some());
    let gone = BrakeCell::No(WhyNot::HandCannot(Side::Left));
    assert_eq!(front(&tired, Day::Bad), gone);
    assert_eq!(
        gone.why_out_of_reach().as_deref(),
        Some("the left hand does not pull it")
    );
    let unable = ability(plan, Side::Left, Ability::BrakesHard, Difficulty::Complete);
    assert_eq!(front(&unable, Day::Usual), gone);
}

#[test]
fn an_unplugged_control_does_nothing() {
    let plan = able(TemplateId::RoadPlain);
    let lever = button(&plan, "right outer paddle").control;
    let plan = after(plan, Edit::Bike(BikeEdit::Connect(lever, false)));
    assert_eq!(usual(&plan, RearEasier, Hoods), Cell::No(WhyNot::NoButton));
}

#[test]
fn rows_are_what_is_needed_and_what_is_given() {
    let plan = tap(able(TemplateId::Gravel), "left hood button", FrontToggle);
    let coverage = Coverage::of(&plan, plan.layout());
    let rows: Vec<(Function, bool)> = coverage
        .rows
        .iter()
        .map(|r| (r.function, r.needed))
        .collect();
    assert_eq!(
        rows,
        [(RearHarder, true), (RearEasier, true), (FrontToggle, false)]
    );
    assert_eq!(coverage.cell(RearEasier, Grip, Day::Usual), None);
    assert_eq!(coverage.cell(Lights, Hoods, Day::Usual), None);
}

#[test]
fn positions_come_from_the_rider_or_else_from_the_bar() {
    let plan = able(TemplateId::RoadPlain);
    assert_eq!(plan.positions_used(), [Hoods, Drops]);
    let never = |plan, position| rider(plan, RiderEdit::Position(position, Answer::of(Use::Never)));
    assert_eq!(never(plan.clone(), Drops).positions_used(), [Hoods]);
    assert_eq!(uses(plan.clone(), Tops).positions_used(), [Tops]);
    // A rider rides somewhere, whatever was answered.
    let nowhere = [Tops, Hoods, Drops].into_iter().fold(plan, never);
    assert_eq!(nowhere.positions_used(), [Hoods, Drops]);
}

proptest! {
    #[test]
    fn a_change_leaves_the_same_table_as_starting_anew((plan, edits) in plan_and_edits()) {
        let coverage = Coverage::of(&plan, plan.layout());
        for edit in &edits {
            if let Ok(next) = plan.apply(edit) {
                let after = Coverage::after((&plan, plan.layout(), &coverage), &next, next.layout());
                prop_assert_eq!(after, Coverage::of(&next, next.layout()));
            }
        }
    }

    #[test]
    fn the_table_is_whole_and_keeps_its_word(plan in plan_from_document()) {
        let coverage = Coverage::of(&plan, plan.layout());
        let columns = coverage.positions.len() * Day::ALL.len();
        prop_assert_eq!(coverage.columns().count(), columns);
        for row in &coverage.rows {
            prop_assert_eq!(row.cells.len(), columns);
            for ((position, day), cell) in coverage.columns().zip(&row.cells) {
                prop_assert_eq!(coverage.cell(row.function, position, day), Some(cell));
                match cell {
                    Cell::Reached(way) => prop_assert!(way.keeps_hold() && way.is_usable()),
                    Cell::ByLettingGo(way) => prop_assert!(!way.keeps_hold() && way.is_usable()),
                    Cell::No(_) => {}
                }
                if let Some(way) = cell.way() {
                    prop_assert!(plan.rider.hands.get(way.hand).works());
                    for id in way.via.buttons() {
                        let control = plan.bike.control(id.control).expect("its control is there");
                        prop_assert!(control.connected);
                    }
                }
            }
        }
    }

    #[test]
    fn a_bad_day_brings_nothing_within_reach(plan in plan_from_document()) {
        let coverage = Coverage::of(&plan, plan.layout());
        for row in &coverage.rows {
            for days in row.cells.chunks(Day::ALL.len()) {
                let [usual, bad] = days else { panic!("two days") };
                if bad.reached().is_some() {
                    prop_assert!(usual.reached().is_some(), "{:?}", row);
                }
                if bad.way().is_some() {
                    prop_assert!(usual.way().is_some(), "{:?}", row);
                }
                if let (Some(usual), Some(bad)) = (usual.reached(), bad.reached()) {
                    prop_assert!(usual.difficulty() <= bad.difficulty(), "{:?}", row);
                }
            }
        }
        for row in &coverage.brakes {
            for days in row.cells.chunks(Day::ALL.len()) {
                let [usual, bad] = days else { panic!("two days") };
                for cell in days {
                    let crosses = matches!(cell, BrakeCell::ByLettingGo(p) if p.crosses_over());
                    prop_assert!(!crosses, "{:?}", row);
                }
                if let Some(bad) = bad.reached() {
                    let rank = |step: Option<Difficulty>| step.unwrap_or(Difficulty::Moderate);
                    let usual = usual.reached().map(|pull| rank(pull.step));
                    prop_assert!(usual.is_some_and(|usual| usual <= rank(bad.step)), "{:?}", row);
                }
            }
        }
    }

    /// What is reached by one hand is reached by another just as able on the
    /// other side of a mirrored bike.
    #[test]
    fn left_and_right_are_alike(plan in plan_from_document()) {
        let mut mirrored = plan.apply(&Edit::Bike(BikeEdit::MirrorAll)).expect("always possible");
        mirrored.rider.hands = mirrored.rider.hands.mirrored();
        // What is fixed by the side of fitting does not go along.
        let fixed = |c: &crate::cockpit::Control| c.kind == ControlKind::SprintButton;
        prop_assume!(!plan.bike.controls.iter().any(fixed));
        let (here, there) = (
            Coverage::of(&plan, plan.layout()),
            Coverage::of(&mirrored, mirrored.layout()),
        );
        prop_assert_eq!(here.rows.len(), there.rows.len());
        for (a, b) in here.rows.iter().zip(&there.rows) {
            for (a, b) in a.cells.iter().zip(&b.cells) {
                let told = |cell: &Cell| match cell {
                    Cell::Reached(way) => (0, Some((way.ease, way.step))),
                    Cell::ByLettingGo(way) => (1, Some((way.ease, way.step))),
                    Cell::No(_) => (2, None),
                };
                prop_assert_eq!(told(a), told(b));
            }
        }
    }
}
