//! Changes to the plan as a document.

use super::EditError;
use super::layout::{may_chord, may_hold};
use crate::cockpit::Bike;
use crate::finding::{Acceptable, Acceptance, Role};
use crate::layout::{Chord, Chosen, Hold, Layout, LayoutId};
use crate::limits::{MOST_ACCEPTED, MOST_LAYOUTS};
use crate::plan::Plan;
use crate::record::PartKey;
use crate::rider::Side;
use crate::rules;
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;
use crate::text::{Date, Text};
use crate::units::free_number;
use crate::vocabulary::Vocabulary;

/// A change to the plan as a document.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanEdit {
    /// What people call it.
    Name(Text),
    /// The shop's job number.
    Job(Text),
    /// The day of the work.
    Date(Option<Date>),
    /// How the derailleurs work together. Buttons keep what they have; what
    /// has no use any more becomes a finding.
    ShiftPlan(ShiftPlanKind),
    /// How the derailleurs work together, and each button's function replaced
    /// by the one that takes its place.
    ShiftPlanAndButtons(ShiftPlanKind),
    /// Notes what each button does now as what was found.
    NoteAsFound,
    /// A finding is accepted with a reason.
    Accept(Acceptance),
    /// A finding is no longer accepted.
    Withdraw(String),
    /// A blank layout, which becomes the one in hand.
    AddLayout(Text),
    /// A copy of the layout in hand, which becomes the one in hand.
    DuplicateLayout(Text),
    /// Another name for the layout in hand.
    RenameLayout(Text),
    /// Another layout is taken in hand.
    SelectLayout(LayoutId),
    /// A layout is moved to a place in the list, counted from 0.
    MoveLayout(LayoutId, usize),
    /// A layout is chosen for the sheet, and taken in hand; or the choice is
    /// taken back.
    ChooseLayout(Option<Chosen>),
    /// A layout is removed.
    RemoveLayout(LayoutId),
    /// Everything about the hands is removed, on this day.
    RemoveHandDetails(Option<Date>),
}

impl PlanEdit {
    pub(super) fn label(&self) -> String {
        match self {
            PlanEdit::Name(_) => "rename the plan".into(),
            PlanEdit::Job(_) => "write the job number".into(),
            PlanEdit::Date(_) => "set the date".into(),
            PlanEdit::ShiftPlan(kind) | PlanEdit::ShiftPlanAndButtons(kind) => {
                format!("shift plan: {kind}")
            }
            PlanEdit::NoteAsFound => "note what was found".into(),
            PlanEdit::Accept(_) => "accept a finding".into(),
            PlanEdit::Withdraw(_) => "withdraw an acceptance".into(),
            PlanEdit::AddLayout(_) => "add a layout".into(),
            PlanEdit::DuplicateLayout(_) => "copy the layout".into(),
            PlanEdit::RenameLayout(_) => "rename the layout".into(),
            PlanEdit::SelectLayout(_) => "change to another layout".into(),
            PlanEdit::MoveLayout(..) => "move a layout".into(),
            PlanEdit::ChooseLayout(Some(_)) => "choose the layout for the sheet".into(),
            PlanEdit::ChooseLayout(None) => "choose no layout".into(),
            PlanEdit::RemoveLayout(_) => "remove a layout".into(),
            PlanEdit::RemoveHandDetails(_) => "remove hand details".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        match self {
            PlanEdit::Name(text) => plan.name = text.clone(),
            PlanEdit::Job(text) => plan.job = text.clone(),
            PlanEdit::Date(date) => plan.date = *date,
            PlanEdit::ShiftPlan(kind) => set_shift_plan(plan, *kind)?,
            PlanEdit::ShiftPlanAndButtons(kind) => {
                set_shift_plan(plan, *kind)?;
                replace_functions(plan, *kind);
            }
            PlanEdit::NoteAsFound => {
                let layout = plan.layout();
                plan.as_found = plan
                    .bike
                    .buttons()
                    .iter()
                    .map(|(id, ..)| (*id, layout.tap(&plan.bike, *id)))
                    .collect();
            }
            PlanEdit::Accept(acceptance) => accept(plan, acceptance)?,
            PlanEdit::Withdraw(finding) => plan.accepted.retain(|a| a.finding != *finding),
            PlanEdit::AddLayout(name) => {
                add_layout(plan, Layout::blank(plan.current, name.as_str()))?
            }
            PlanEdit::DuplicateLayout(name) => duplicate_layout(plan, name)?,
            PlanEdit::RenameLayout(name) => rename_layout(plan, name)?,
            PlanEdit::SelectLayout(id) => {
                find_layout(plan, *id)?;
                plan.current = *id;
            }
            PlanEdit::MoveLayout(id, to) => move_layout(plan, *id, *to)?,
            PlanEdit::ChooseLayout(chosen) => choose_layout(plan, chosen.as_ref())?,
            PlanEdit::RemoveLayout(id) => remove_layout(plan, *id)?,
            PlanEdit::RemoveHandDetails(on) => plan.remove_hand_details(*on),
        }
        Ok(())
    }
}

fn accept(plan: &mut Plan, acceptance: &Acceptance) -> Result<(), EditError> {
    if acceptance.reason.is_empty() || acceptance.by.is_empty() {
        return Err(EditError::NotPossible(
            "Accepting a finding needs a reason and a name. Write why it may stand, and who says so."
                .into(),
        ));
    }
    may_accept(plan, acceptance)?;
    plan.accepted.retain(|a| a.finding != acceptance.finding);
    if plan.accepted.len() >= MOST_ACCEPTED {
        return Err(EditError::TooMany {
            what: "accepted findings",
            limit: MOST_ACCEPTED,
        });
    }
    plan.accepted.push(acceptance.clone());
    Ok(())
}

/// Refuses an acceptance by somebody who may not give it. A finding that does
/// not stand now is judged by its rule.
fn may_accept(plan: &Plan, acceptance: &Acceptance) -> Result<(), EditError> {
    let rule = acceptance.finding.split('|').next().and_then(rules::rule);
    let situation = Situation::of_layout(plan, plan.layout());
    let finding = rules::findings_in(&situation)
        .into_iter()
        .find(|finding| finding.key() == acceptance.finding);
    let acceptable = match (&finding, rule) {
        (Some(finding), _) => finding.acceptable,
        (None, Some(rule)) => rule.acceptable,
        (None, None) => Acceptable::ByClinician,
    };
    if acceptable.by(acceptance.role) {
        return Ok(());
    }
    let (title, why) = rule.map_or(("This finding", ""), |rule| (rule.title, rule.why));
    Err(EditError::NotPossible(match (acceptable, acceptance.role) {
        (Acceptable::Never, _) => {
            format!("“{title}” can never be accepted away. {why} Change the plan instead.")
        }
        (_, Role::Rider) => {
            "A finding is accepted by the shop or a clinician. Say what you think of it in a comment.".into()
        }
        _ => format!(
            "“{title}” is not about how hands are used, and a clinician accepts only that. Leave it to the shop, or write a comment."
        ),
    }))
}

fn set_shift_plan(plan: &mut Plan, kind: ShiftPlanKind) -> Result<(), EditError> {
    let single = kind == ShiftPlanKind::SingleRing;
    if single == plan.bike.has_front_derailleur() {
        return Err(EditError::NotPossible(if single {
            "A bike with a front derailleur cannot follow the single-ring plan. Set its chainrings to one first.".into()
        } else {
            format!(
                "The {kind} plan needs a front derailleur. Set the chainrings to two or three first."
            )
        }));
    }
    plan.shift_plan = kind;
    Ok(())
}

fn replace_functions(plan: &mut Plan, kind: ShiftPlanKind) {
    let bike = plan.bike.clone();
    let layout = plan.layout_mut();
    for (id, function) in layout.taps.clone() {
        let replaced = kind.in_place_of(function);
        match replaced {
            Some(new) if bike.button(id).is_some_and(|(_, b)| b.takes(new)) => {
                layout.taps.insert(id, new);
            }
            _ if kind.has_use_for(function, &bike) => {}
            _ => {
                // What else the button is given may have its use still.
                layout.taps.remove(&id);
                if matches!(layout.holds.get(&id), Some(Hold::Repeats(_))) {
                    layout.holds.remove(&id);
                }
            }
        }
    }
    replace_in_holds(layout, &bike, kind);
    replace_in_chords(layout, &bike, kind);
}

/// A hold that did what has no use any more does what takes its place, or goes.
fn replace_in_holds(layout: &mut Layout, bike: &Bike, kind: ShiftPlanKind) {
    for (id, hold) in layout.holds.clone() {
        let Hold::Does(function) = hold else { continue };
        let replaced = kind.in_place_of(function).map(Hold::Does);
        match replaced.filter(|new| may_hold(bike, id, *new).is_ok()) {
            Some(new) => {
                layout.holds.insert(id, new);
            }
            None if kind.has_use_for(function, bike) => {}
            None => {
                layout.holds.remove(&id);
            }
        }
    }
}

/// Two buttons together, the same.
fn replace_in_chords(layout: &mut Layout, bike: &Bike, kind: ShiftPlanKind) {
    let chords = std::mem::take(&mut layout.chords);
    for chord in chords {
        let replaced = kind
            .in_place_of(chord.function)
            .map(|function| Chord { function, ..chord });
        match replaced.filter(|new| may_chord(bike, new).is_ok()) {
            Some(new) => layout.chords.push(new),
            None if kind.has_use_for(chord.function, bike) => layout.chords.push(chord),
            None => {}
        }
    }
}

pub(super) fn find_layout(plan: &Plan, id: LayoutId) -> Result<&Layout, EditError> {
    plan.layouts
        .iter()
        .find(|l| l.id == id)
        .ok_or(EditError::NoSuchLayout)
}

fn duplicate_layout(plan: &mut Plan, name: &Text) -> Result<(), EditError> {
    let mut copy = plan.layout().clone();
    copy.name = name.clone();
    add_layout(plan, copy)
}

/// Adds a layout under an identity of its own and takes it in hand.
pub(crate) fn add_layout(plan: &mut Plan, mut layout: Layout) -> Result<(), EditError> {
    if plan.layouts.len() >= MOST_LAYOUTS {
        return Err(EditError::TooMany {
            what: "layouts",
            limit: MOST_LAYOUTS,
        });
    }
    layout.id = LayoutId(free_number(taken_numbers(plan).into_iter()));
    plan.current = layout.id;
    plan.layouts.push(layout);
    Ok(())
}

/// The numbers of layouts that are there or once were: a copy of the plan may
/// still have them.
fn taken_numbers(plan: &Plan) -> Vec<u16> {
    let stamps = plan.record.stamps.iter();
    let once = stamps.filter_map(|stamp| match &stamp.part {
        PartKey::Layout(id) => Some(id.0),
        _ => None,
    });
    plan.layouts.iter().map(|l| l.id.0).chain(once).collect()
}

fn move_layout(plan: &mut Plan, id: LayoutId, to: usize) -> Result<(), EditError> {
    find_layout(plan, id)?;
    if let Some(from) = plan.layouts.iter().position(|l| l.id == id) {
        let layout = plan.layouts.remove(from);
        plan.layouts.insert(to.min(plan.layouts.len()), layout);
    }
    Ok(())
}

fn choose_layout(plan: &mut Plan, chosen: Option<&Chosen>) -> Result<(), EditError> {
    if let Some(chosen) = chosen {
        find_layout(plan, chosen.layout)?;
        if chosen.reason.is_empty() {
            return Err(EditError::NotPossible(
                "Choosing a layout needs a reason. Write why this one.".into(),
            ));
        }
        plan.current = chosen.layout;
    }
    plan.chosen = chosen.cloned();
    Ok(())
}

fn rename_layout(plan: &mut Plan, name: &Text) -> Result<(), EditError> {
    if name.is_empty() {
        return Err(EditError::NotPossible(
            "A layout is told from others by its name. Type at least one letter.".into(),
        ));
    }
    plan.layout_mut().name = name.clone();
    Ok(())
}

fn remove_layout(plan: &mut Plan, id: LayoutId) -> Result<(), EditError> {
    find_layout(plan, id)?;
    if plan.layouts.len() == 1 {
        return Err(EditError::LastLayout);
    }
    plan.layouts.retain(|l| l.id != id);
    plan.rides.remembered.retain(|ride| ride.layout != id);
    if plan
        .chosen
        .as_ref()
        .is_some_and(|chosen| chosen.layout == id)
    {
        plan.chosen = None;
    }
    if plan.current == id {
        plan.current = plan.layouts[0].id;
    }
    Ok(())
}

impl Plan {
    /// The plan without what it says about the hands: answers, the rider's own
    /// words, reach seen on this rider, what rides asked, and why findings were
    /// accepted. Parts
    /// of the file that this version does not know go too, wherever they stand:
    /// nobody can tell what they say. The layout itself still implies hand use.
    /// That they were removed on this day is kept.
    pub fn without_hand_details(&self, on: Option<Date>) -> Plan {
        let mut plan = self.clone();
        plan.rider = plan.rider.without_hand_details(on);
        plan.accepted.clear();
        plan.rides = plan.rides.without_hand_details();
        plan.unknown.clear();
        plan.record = plan.record.without_hand_details();
        for control in &mut plan.bike.controls {
            for button in &mut control.buttons {
                button.seen_reach.clear();
            }
        }
        for together in &mut plan.bike.brakes.together {
            together.tried = crate::rider::Answer::NOT_ASKED;
        }
        plan
    }

    /// Removes what the plan says about the hands, for good: what an older copy
    /// says of them is not taken up again.
    pub(crate) fn remove_hand_details(&mut self, on: Option<Date>) {
        let removals = self.record.removals.saturating_add(1);
        *self = self.without_hand_details(on);
        self.record.removals = removals;
    }

    /// Whether the plan says anything about the hands, or may say it in parts
    /// that this version does not know.
    pub fn has_hand_details(&self) -> bool {
        self.without_hand_details(self.rider.hand_details_removed) != *self
            || Side::ALL
                .iter()
                .any(|side| *self.rider.hands.get(*side) != crate::rider::Hand::default())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{Freedom, HandPosition};
    use crate::edit::{BikeEdit, Edit, LayoutEdit, RiderEdit};
    use crate::function::Function::{
        FrontLarger, Lights, RearEasier, RearHarder, RungDown, RungUp,
    };
    use crate::rider::{Answer, Evidence, HandPlace, Source, Use, Worn};
    use crate::testing::button;

    fn road() -> Plan {
        template(TemplateId::RoadPlain).plan("Test")
    }

    fn after(plan: &Plan, edit: PlanEdit) -> Plan {
        plan.apply(&Edit::Plan(edit)).expect("the edit is possible")
    }

    fn refusal(plan: &Plan, edit: PlanEdit) -> String {
        let refused = plan.apply(&Edit::Plan(edit));
        refused.expect_err("the edit is refused").to_string()
    }

    #[test]
    fn another_shift_plan_may_take_its_functions_along() {
        let plan = road();
        let right = [
            button(&plan, "right outer paddle"),
            button(&plan, "right inner paddle"),
        ];
        let left = button(&plan, "left outer paddle");
        let does = |plan: &Plan| right.map(|id| plan.layout().taps.get(&id).copied());

        let kept = after(&plan, PlanEdit::ShiftPlan(ShiftPlanKind::Ladder));
        assert_eq!(does(&kept), [Some(RearEasier), Some(RearHarder)]);

        let ladder = after(&plan, PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder));
        assert_eq!(does(&ladder), [Some(RungDown), Some(RungUp)]);
        assert_eq!(ladder.layout().taps.get(&left), Some(&FrontLarger));

        let back = after(
            &ladder,
            PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Paired),
        );
        assert_eq!(does(&back), [Some(RearEasier), Some(RearHarder)]);
    }

    #[test]
    fn a_button_that_cannot_take_the_new_function_goes_blank() {
        let plan = road();
        let outer = button(&plan, "right outer paddle");
        let ladder = after(&plan, PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder));
        let limited = BikeEdit::Freedom(outer, Freedom::Limited(vec![RungDown, Lights]));
        let ladder = ladder
            .apply(&Edit::Bike(limited))
            .expect("a button is described");
        let separate = after(
            &ladder,
            PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Separate),
        );
        assert!(separate.layout().is_blank(outer));
    }

    #[test]
    fn a_shift_plan_goes_with_the_rings() {
        assert_eq!(
            refusal(&road(), PlanEdit::ShiftPlan(ShiftPlanKind::SingleRing)),
            "A bike with a front derailleur cannot follow the single-ring plan. Set its chainrings to one first."
        );
        let single = template(TemplateId::Gravel).plan("Test");
        assert_eq!(
            refusal(
                &single,
                PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder)
            ),
            "The ladder plan needs a front derailleur. Set the chainrings to two or three first."
        );
    }

    #[test]
    fn what_was_found_stays_beside_what_is_now() {
        let plan = road();
        let outer = button(&plan, "right outer paddle");
        let tap = Edit::Layout(LayoutEdit::Tap(outer, Some(Lights)));
        let plan = plan.apply(&tap).expect("the button is free");
        assert_eq!(plan.as_found.get(&outer), Some(&Some(RearEasier)));
        let noted = after(&plan, PlanEdit::NoteAsFound);
        assert_eq!(noted.as_found.get(&outer), Some(&Some(Lights)));
    }

    #[test]
    fn layouts_are_copied_chosen_and_removed_but_for_the_last() {
        let plan = road();
        assert_eq!(
            refusal(&plan, PlanEdit::RemoveLayout(plan.current)),
            "A plan keeps at least one layout. Add another before removing this one."
        );
        let first = plan.current;
        let two = after(&plan, PlanEdit::DuplicateLayout("Evening".into()));
        assert_ne!(two.current, first);
        assert_eq!(two.layout().taps, plan.layout().taps);
        let blank = two
            .apply(&Edit::Layout(LayoutEdit::Clear))
            .expect("a layout is cleared");
        let chosen = after(&blank, PlanEdit::SelectLayout(first));
        assert_eq!(chosen.layout().taps, plan.layout().taps);
        let one = after(&chosen, PlanEdit::RemoveLayout(first));
        assert_eq!(
            (one.layouts.len(), one.layout().name.as_str()),
            (1, "Evening")
        );
        let named = after(&one, PlanEdit::RenameLayout("Morning".into()));
        assert_eq!(named.layout().name.as_str(), "Morning");
        assert_eq!(
            refusal(&named, PlanEdit::SelectLayout(first)),
            "That layout is not in this plan. Choose one from the list of layouts."
        );
        let full = (1..MOST_LAYOUTS).fold(named, |plan, _| {
            after(&plan, PlanEdit::DuplicateLayout("More".into()))
        });
        assert_eq!(
            refusal(&full, PlanEdit::DuplicateLayout("More".into())),
            "A plan holds at most 12 layouts. Remove one first."
        );
    }

    #[test]
    fn a_layout_keeps_a_name() {
        let named = after(&road(), PlanEdit::RenameLayout("Left only".into()));
        assert_eq!(named.layout().name.as_str(), "Left only");
        assert!(refusal(&named, PlanEdit::RenameLayout("  ".into())).contains("name"));
    }

    #[test]
    fn a_finding_is_accepted_once_and_the_acceptance_withdrawn() {
        let accept = |reason: &str| {
            PlanEdit::Accept(Acceptance {
                finding: "some-rule".into(),
                reason: reason.into(),
                by: "T.".into(),
                role: Role::Shop,
                date: None,
                lapsed: false,
            })
        };
        let plan = after(&after(&road(), accept("first")), accept("second"));
        assert_eq!(plan.accepted.len(), 1);
        assert_eq!(plan.accepted[0].reason.as_str(), "second");
        let plan = after(&plan, PlanEdit::Withdraw("some-rule".into()));
        assert!(plan.accepted.is_empty());
    }

    #[test]
    fn nobody_accepts_without_a_reason_and_a_name() {
        for (reason, by) in [("", "T."), ("seen in the stand", ""), ("", "")] {
            let accept = PlanEdit::Accept(Acceptance {
                finding: "some-rule".into(),
                reason: reason.into(),
                by: by.into(),
                role: Role::Clinician,
                date: None,
                lapsed: false,
            });
            assert!(refusal(&road(), accept).contains("needs a reason and a name"));
        }
    }

    #[test]
    fn hand_details_go_and_the_layout_stays() {
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
        let plan = road();
        assert!(!plan.has_hand_details());
        let told = plan.apply(&Edit::Rider(rests)).expect("a hand can rest");
        assert!(told.has_hand_details());
        let today = Date::new(2031, 5, 9);
        let gone = after(&told, PlanEdit::RemoveHandDetails(today));
        assert!(!gone.has_hand_details());
        assert_eq!(gone.layout(), told.layout());
        assert_eq!(gone.rider.hand_details_removed, today);
    }

    /// Who saw where the rider rides, when and with what on the hand, tells of a
    /// visit and of what is worn.
    #[test]
    fn where_the_rider_rides_stays_without_who_saw_it() {
        let evidence = Some(Evidence {
            source: Source::SeenByClinician,
            date: Date::new(2031, 4, 30),
            worn: Some(Worn::Splint),
            in_one_tap: false,
        });
        let mostly = Answer::with(Use::Mostly, evidence);
        let seen = RiderEdit::Position(HandPosition::Hoods, mostly);
        let plan = road().apply(&Edit::Rider(seen)).expect("it was seen");
        assert!(plan.has_hand_details());
        let gone = after(&plan, PlanEdit::RemoveHandDetails(None));
        let answer = gone.rider.positions.get(HandPosition::Hoods);
        assert_eq!(answer, Answer::of(Use::Mostly));
        assert!(!gone.has_hand_details());
    }
}
