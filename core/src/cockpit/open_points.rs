//! What has not been noted about a bike yet.

use super::{Bike, Joint, ProfileOrigin};

impl Bike {
    /// What has not been noted yet and matters, in words, each to be completed
    /// by "is not noted yet" (common practice of what a fitter looks at).
    pub fn open_points(&self) -> Vec<String> {
        let mut points = Vec::new();
        if self.system.origin == ProfileOrigin::Generic {
            points.push("what the manual says the shift system can program".to_owned());
        }
        if self.has_front_derailleur() && !self.chain_catcher.is_known() {
            points.push("whether a chain catcher is fitted".to_owned());
        }
        for run in &self.brakes.runs {
            let Some(lever) = self.control(run.lever).filter(|lever| lever.has_blade()) else {
                continue;
            };
            if run.joint != Joint::Direct && !run.throw_tested.is_known() {
                points.push(format!("the throw test of the {}", lever.place()));
            }
            let blade = lever.blade.as_ref();
            if blade.is_some_and(|blade| blade.reach.is_none()) {
                points.push(format!("the blade reach of the {}", lever.place()));
            }
            if blade
                .and_then(|blade| blade.latch)
                .is_some_and(|latch| !latch.tried.is_known())
            {
                points.push(format!("the parking latch of the {}", lever.place()));
            }
        }
        for brake in &self.brakes.wheels {
            let left_of_two = brake
                .wheel
                .beside()
                .is_some_and(|other| brake.wheel < other);
            if left_of_two && !brake.balanced.is_known() {
                points.push(format!(
                    "whether the {} and the one beside it brake alike",
                    brake.wheel
                ));
            }
        }
        points
    }
}

#[cfg(test)]
mod tests {
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::ProfileOrigin;
    use crate::rider::{Answer, YesNo};
    use crate::units::Mm;

    #[test]
    fn noting_everything_closes_every_point() {
        let mut bike = template(TemplateId::Tricycle).bike;
        let before = bike.open_points();
        assert!(
            before.iter().any(|point| point.contains("parking latch")),
            "{before:?}"
        );
        assert!(
            before.iter().any(|point| point.contains("brake alike")),
            "{before:?}"
        );
        bike.system.origin = ProfileOrigin::FromManual;
        for run in &mut bike.brakes.runs {
            run.throw_tested = Answer::of(YesNo::Yes);
        }
        for wheel in &mut bike.brakes.wheels {
            wheel.balanced = Answer::of(YesNo::No);
        }
        for blade in bike
            .controls
            .iter_mut()
            .filter_map(|control| control.blade.as_mut())
        {
            blade.reach = Some(Mm(70.0));
            if let Some(latch) = &mut blade.latch {
                latch.tried = Answer::of(YesNo::Yes);
            }
        }
        assert_eq!(bike.open_points(), [""; 0]);
    }
}
