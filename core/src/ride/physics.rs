//! The power balance of a bike on a road, and how speed follows from it.
//!
//! Power at the crank times efficiency goes into air, rolling, climbing and
//! getting faster (Martin et al., J Appl Biomech 1998;14:276-291):
//!
//! ```text
//! efficiency * P = [ρ/2 (CdA + Fw) Va² + Crr m g cos b + m g sin b + m_eff dV/dt] V
//! ```
//!
//! with b = atan(grade), Va the speed through the air, and m_eff the mass with
//! the wheels' inertia added as if it rolled along.

/// Standard gravity, in m/s² (9.80665 rounded as the published examples have it).
pub const GRAVITY: f64 = 9.81;

/// What moves and what holds it back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Machine {
    /// Rider, bike and what they carry, in kg.
    pub mass: f64,
    /// What the wheels' inertia adds to the mass when speed changes, in kg.
    pub spin: f64,
    /// Drag coefficient times frontal area, in m².
    pub drag_area: f64,
    /// The spokes' drag as an area, in m².
    pub spokes: f64,
    /// Rolling resistance per weight.
    pub rolling: f64,
    /// How much of the crank's power reaches the wheel, 0 to 1.
    pub efficiency: f64,
}

/// The air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// In kg/m³.
    pub density: f64,
    /// Wind from ahead, in m/s; negative is from behind.
    pub headwind: f64,
}

/// Air of 15 °C at sea level (International Standard Atmosphere, *from memory*).
pub const STILL_AIR: Air = Air {
    density: 1.225,
    headwind: 0.0,
};

/// What holds a bike back, each in newtons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Resistance {
    /// Air; negative where the wind pushes.
    pub air: f64,
    /// Rolling.
    pub rolling: f64,
    /// The slope; negative downhill.
    pub slope: f64,
}

impl Resistance {
    /// All of it.
    pub fn sum(self) -> f64 {
        self.air + self.rolling + self.slope
    }
}

/// Where a bike is and how fast.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Motion {
    /// Along the road, in metres.
    pub at: f64,
    /// In m/s, never negative.
    pub speed: f64,
}

impl Machine {
    /// The mass that a force has to speed up, in kg.
    pub fn moved_mass(&self) -> f64 {
        self.mass + self.spin
    }

    /// What holds the bike back at a speed in m/s on a grade.
    pub fn resistance(&self, speed: f64, grade: f64, air: &Air) -> Resistance {
        // cos and sin of atan(grade), without either.
        let cos = 1.0 / (1.0 + grade * grade).sqrt();
        let weight = self.mass * GRAVITY;
        Resistance {
            air: self.air(speed, air),
            rolling: self.rolling * weight * cos,
            slope: weight * cos * grade,
        }
    }

    /// What the air holds back at a speed in m/s, in newtons.
    pub fn air(&self, speed: f64, air: &Air) -> f64 {
        let through = speed + air.headwind;
        let area = self.drag_area + self.spokes;
        0.5 * air.density * area * through * through.abs()
    }

    /// The power at the crank, in watts, that a speed and an acceleration in
    /// m/s² take; negative where the bike would have to be braked.
    pub fn power(&self, speed: f64, acceleration: f64, grade: f64, air: &Air) -> f64 {
        let force = self.resistance(speed, grade, air).sum() + self.moved_mass() * acceleration;
        force * speed / self.efficiency
    }

    /// The speed in m/s at which a power at the crank balances a grade; zero
    /// where none does. Without power downhill it is the coasting speed.
    pub fn steady_speed(&self, power: f64, grade: f64, air: &Air) -> f64 {
        // The surplus falls from plus to minus once: halve the span around it.
        let surplus =
            |speed: f64| power * self.efficiency - self.resistance(speed, grade, air).sum() * speed;
        let (mut low, mut high) = (1e-6, 1.0);
        if surplus(low) <= 0.0 {
            return 0.0;
        }
        while surplus(high) > 0.0 {
            high *= 2.0;
            if high > 1e4 {
                return high;
            }
        }
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if surplus(middle) > 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high)
    }
}

/// The slowest speed in m/s at which power is turned into force: below it legs
/// push with the force they have there (our judgement), and the equation would
/// ask for a force without bounds.
pub const PUSH_OFF: f64 = 1.5;

/// The force at the wheel in newtons of a power at the crank.
pub fn push(machine: &Machine, power: f64, speed: f64) -> f64 {
    machine.efficiency * power / speed.max(PUSH_OFF)
}

/// One step of time under a force at the wheel that may change with place and
/// speed: classical Runge-Kutta of the fourth order. `force` gives the sum of
/// what drives and what holds back, in newtons, at a place and a speed.
///
/// Where force changes smoothly the error of a step is of the order of `dt` to
/// the fifth; a kink in the road inside a step costs some of that. The
/// reference checks hold a whole ride at [`STEP`] to 0.5 % of a general solver
/// in time and distance.
pub fn step(from: Motion, dt: f64, mass: f64, force: impl Fn(Motion) -> f64) -> Motion {
    let after = |speed: f64, gain: f64, part: f64| Motion {
        at: from.at + speed * part,
        speed: (from.speed + gain * part).max(0.0),
    };
    let gain = |motion: Motion| force(motion) / mass;
    let a = gain(from);
    let second = after(from.speed, a, 0.5 * dt);
    let b = gain(second);
    let third = after(second.speed, b, 0.5 * dt);
    let c = gain(third);
    let fourth = after(third.speed, c, dt);
    let d = gain(fourth);
    let mean = |a: f64, b: f64, c: f64, d: f64| (a + 2.0 * b + 2.0 * c + d) / 6.0;
    Motion {
        at: from.at + dt * mean(from.speed, second.speed, third.speed, fourth.speed),
        speed: (from.speed + dt * mean(a, b, c, d)).max(0.0),
    }
}

/// The step of time of a ride, in seconds.
pub const STEP: f64 = 0.5;

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const TOURING: Machine = Machine {
        mass: 90.0,
        spin: 1.5,
        drag_area: 0.463,
        spokes: 0.0044,
        rolling: 0.0045,
        efficiency: 0.96,
    };

    proptest! {
        #[test]
        fn at_steady_speed_the_power_is_the_power(
            power in 20.0..400.0, grade in -0.03..0.12, headwind in -4.0..6.0
        ) {
            let air = Air { headwind, ..STILL_AIR };
            let speed = TOURING.steady_speed(power, grade, &air);
            let needed = TOURING.power(speed, 0.0, grade, &air);
            prop_assert!((needed - power).abs() < 1e-6 * power, "{}: {}", speed, needed);
        }

        #[test]
        fn more_power_is_faster_and_a_slope_slower(power in 20.0..300.0, grade in -0.05..0.1) {
            let speed = |power, grade| TOURING.steady_speed(power, grade, &STILL_AIR);
            prop_assert!(speed(power + 5.0, grade) > speed(power, grade));
            prop_assert!(speed(power, grade + 0.01) < speed(power, grade));
        }
    }

    #[test]
    fn nothing_moves_uphill_without_power() {
        assert_eq!(TOURING.steady_speed(0.0, 0.02, &STILL_AIR), 0.0);
        assert!(TOURING.steady_speed(0.0, -0.05, &STILL_AIR) > 8.0);
    }

    /// The speed of free fall against drag has a closed form: with force
    /// F - k v² from rest, v = c tanh(k c t / m) and x = m/k ln cosh(k c t / m)
    /// with c = sqrt(F / k) (elementary mechanics).
    #[test]
    fn a_step_is_of_the_fourth_order() {
        let (force, k, mass) = (60.0_f64, 0.3_f64, 90.0);
        let end = 40.0;
        let error = |dt: f64| {
            let steps = (end / dt).round() as usize;
            let mut motion = Motion::default();
            for _ in 0..steps {
                motion = step(motion, dt, mass, |m| force - k * m.speed * m.speed);
            }
            let c = (force / k).sqrt();
            let turn = k * c * end / mass;
            let at = mass / k * turn.cosh().ln();
            (
                (motion.speed - c * turn.tanh()).abs() / c,
                (motion.at - at).abs() / at,
            )
        };
        let (coarse, fine) = (error(2.0), error(1.0));
        assert!(
            coarse.0 / fine.0 > 12.0 && coarse.1 / fine.1 > 12.0,
            "{coarse:?} {fine:?}"
        );
        let own = error(STEP);
        assert!(own.0 < 1e-7 && own.1 < 1e-7, "{own:?}");
    }
}
