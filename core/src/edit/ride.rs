//! Changes to the road and to how the rider rides, and what is kept of rides.

use std::sync::Arc;

use super::EditError;
use crate::plan::Plan;
use crate::ride::habits::Habit;
use crate::ride::kept::{KnownRide, Remembered, RoadChoice};
use crate::ride::road::Road;

/// A change to the road and to how the rider rides.
#[derive(Debug, Clone, PartialEq)]
pub enum RideEdit {
    /// Another road is ridden.
    Road(RoadChoice),
    /// A road was imported, and is ridden.
    Import(Arc<Road>),
    /// The imported road is removed.
    RemoveImported,
    /// How the rider rides; `None`: not asked.
    Habit(Habit, Option<u16>),
    /// The ride that was fine.
    Known(Option<KnownRide>),
    /// What came of a ride, in place of what is remembered of its layout.
    Remember(Remembered),
    /// Nothing is remembered of any ride.
    Forget,
}

impl RideEdit {
    pub(super) fn label(&self) -> String {
        match self {
            RideEdit::Road(_) => "choose a road".into(),
            RideEdit::Import(_) => "import a road".into(),
            RideEdit::RemoveImported => "remove the imported road".into(),
            RideEdit::Habit(habit, _) => format!("how the rider rides: {habit}"),
            RideEdit::Known(Some(_)) => "name the ride that was fine".into(),
            RideEdit::Known(None) => "forget the ride that was fine".into(),
            RideEdit::Remember(_) => "keep what came of the ride".into(),
            RideEdit::Forget => "forget what came of rides".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        let rides = &mut plan.rides;
        match self {
            RideEdit::Road(RoadChoice::Imported) if rides.imported.is_none() => {
                let why = "There is no imported road. Import a track first.";
                return Err(EditError::NotPossible(why.into()));
            }
            RideEdit::Road(choice) => rides.choice = *choice,
            RideEdit::Import(road) => {
                rides.imported = Some(Arc::clone(road));
                rides.choice = RoadChoice::Imported;
            }
            RideEdit::RemoveImported => {
                rides.imported = None;
                if rides.choice == RoadChoice::Imported {
                    rides.choice = RoadChoice::default();
                }
            }
            RideEdit::Habit(habit, value) => set_habit(plan, *habit, *value)?,
            RideEdit::Known(known) => rides.known.clone_from(known),
            RideEdit::Remember(ride) => remember(plan, ride)?,
            RideEdit::Forget => rides.remembered.clear(),
        }
        Ok(())
    }
}

fn set_habit(plan: &mut Plan, habit: Habit, value: Option<u16>) -> Result<(), EditError> {
    let (least, most) = habit.range();
    if let Some(value) = value.filter(|value| !(least..=most).contains(value)) {
        return Err(EditError::OutOfRange {
            what: habit.label(),
            value: format!("{value} {}", habit.unit()),
            from: least.to_string(),
            to: format!("{most} {}", habit.unit()),
        });
    }
    plan.rides.habits.set(habit, value);
    Ok(())
}

fn remember(plan: &mut Plan, ride: &Remembered) -> Result<(), EditError> {
    if !plan.layouts.iter().any(|layout| layout.id == ride.layout) {
        return Err(EditError::NoSuchLayout);
    }
    let remembered = &mut plan.rides.remembered;
    remembered.retain(|other| other.layout != ride.layout);
    remembered.push(ride.clone());
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::Edit;
    use crate::ride::road::RoadKind;

    #[test]
    fn only_an_imported_road_can_be_chosen_as_imported() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let choose = Edit::Ride(RideEdit::Road(RoadChoice::Imported));
        let refused = plan.apply(&choose).expect_err("there is none");
        assert_eq!(
            refused.to_string(),
            "There is no imported road. Import a track first."
        );
        let town = Arc::new(Road::built_in(RoadKind::Town));
        let import = Edit::Ride(RideEdit::Import(Arc::clone(&town)));
        let plan = plan.apply(&import).expect("it is imported");
        assert_eq!(plan.rides.road(), town);
        let level = RideEdit::Road(RoadChoice::BuiltIn(RoadKind::Level));
        let plan = plan.apply(&Edit::Ride(level)).expect("it is chosen");
        let plan = plan.apply(&choose).expect("it is still there");
        assert_eq!(plan.rides.road(), town);
        let removed = plan.apply(&Edit::Ride(RideEdit::RemoveImported));
        let removed = removed.expect("it is removed").rides;
        assert_eq!(removed.choice, RoadChoice::default());
    }

    #[test]
    fn a_habit_out_of_range_is_refused_with_its_range() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let edit = Edit::Ride(RideEdit::Habit(Habit::LevelPower, Some(2000)));
        assert_eq!(
            plan.apply(&edit).expect_err("nobody does").to_string(),
            "Power on the level cannot be 2000 W. Enter a number from 15 to 400 W."
        );
        let edit = Edit::Ride(RideEdit::Habit(Habit::LevelPower, Some(60)));
        let plan = plan.apply(&edit).expect("it fits");
        assert_eq!(plan.rides.habits.answer(Habit::LevelPower), Some(60));
    }
}
