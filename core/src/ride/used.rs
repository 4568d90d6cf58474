//! How much each button and blade of the cockpit is used on a ride.

use super::event::What;
use super::simulation::Ride;
use crate::cockpit::{ButtonId, ControlId};
use crate::ordered::SmallMap;

vocabulary! {
    /// How much something is used beside what is used most.
    pub enum Use as "use" {
        /// Up to a third.
        Little = "little", "little";
        /// Up to two thirds.
        Some = "some", "some";
        /// More.
        Most = "most", "most";
    }
}

impl Use {
    fn of(count: u32, most: u32) -> Use {
        match 3 * count {
            n if n <= most => Use::Little,
            n if n <= 2 * most => Use::Some,
            _ => Use::Most,
        }
    }
}

/// How much each part is used; parts that are not used are absent.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Used {
    /// Presses of each button; two that are pressed together count one each.
    pub buttons: SmallMap<ButtonId, u32>,
    /// Pulls of each lever.
    pub levers: SmallMap<ControlId, u32>,
}

impl Used {
    /// What a ride uses.
    pub fn of(ride: &Ride) -> Used {
        let mut used = Used::default();
        for event in &ride.events {
            match event.what {
                What::Press { via, .. } => {
                    for button in via.buttons() {
                        let count = used.buttons.get(&button).copied().unwrap_or(0);
                        used.buttons.insert(button, count + 1);
                    }
                }
                What::Pull { lever, .. } => {
                    let count = used.levers.get(&lever).copied().unwrap_or(0);
                    used.levers.insert(lever, count + 1);
                }
                _ => {}
            }
        }
        used
    }

    /// How much a button is used beside the one that is used most.
    pub fn button(&self, button: ButtonId) -> Option<Use> {
        let most = self.buttons.iter().map(|(_, count)| *count).max()?;
        self.buttons.get(&button).map(|count| Use::of(*count, most))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::ride::study::{Study, Subject};

    #[test]
    fn each_press_and_pull_of_a_ride_is_counted_once() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let own = Subject::layout(&plan, plan.current).expect("it is there");
        let mut study =
            Study::new(plan.rides.road(), plan.rides.habits, vec![own]).expect("it can be ridden");
        study.advance(usize::MAX);
        let ride = &study.outcomes()[0].ride;
        let used = Used::of(ride);
        let presses: u32 = used.buttons.iter().map(|(_, count)| *count).sum();
        assert!(presses > 0);
        assert_eq!(presses, ride.load.presses());
        let most = used.buttons.iter().max_by_key(|(_, count)| **count);
        let (most, _) = most.expect("one is pressed");
        assert_eq!(used.button(*most), Some(Use::Most));
    }
}
