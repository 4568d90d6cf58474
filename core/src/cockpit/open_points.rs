//! What has not been noted about a bike yet.

use super::{Bike, Joint, ProfileOrigin};
use crate::spot::Spot;

impl Bike {
    /// Where something that matters has not been noted yet (common practice of
    /// what a fitter looks at).
    pub fn open_points(&self) -> Vec<Spot> {
        let mut points = Vec::new();
        if self.system.origin == ProfileOrigin::Generic {
            points.push(Spot::System);
        }
        if self.has_front_derailleur() && !self.chain_catcher.is_known() {
            points.push(Spot::ChainCatcher);
        }
        for run in &self.brakes.runs {
            let Some(lever) = self.control(run.lever).filter(|lever| lever.has_blade()) else {
                continue;
            };
            if run.joint != Joint::Direct && !run.throw_tested.is_known() {
                points.push(Spot::Throw(lever.id));
            }
            let blade = lever.blade.as_ref();
            if blade.is_some_and(|blade| blade.reach.is_none()) {
                points.push(Spot::Blade(lever.id));
            }
            if blade
                .and_then(|blade| blade.latch)
                .is_some_and(|latch| !latch.tried.is_known())
            {
                points.push(Spot::Latch(lever.id));
            }
        }
        for brake in &self.brakes.wheels {
            let left_of_two = brake
                .wheel
                .beside()
                .is_some_and(|other| brake.wheel < other);
            if left_of_two && !brake.balanced.is_known() {
                points.push(Spot::Axle(brake.wheel));
            }
        }
        points
    }
}

#[cfg(test)]
mod tests {
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{ProfileOrigin, Wheel};
    use crate::rider::{Answer, YesNo};
    use crate::spot::Spot;
    use crate::units::Mm;

    #[test]
    fn noting_everything_closes_every_point() {
        let mut bike = template(TemplateId::Tricycle).bike;
        let before = bike.open_points();
        let latch = |point: &Spot| matches!(point, Spot::Latch(_));
        assert!(before.iter().any(latch), "{before:?}");
        assert!(before.contains(&Spot::Axle(Wheel::RearLeft)), "{before:?}");
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
        assert_eq!(bike.open_points(), []);
    }
}
