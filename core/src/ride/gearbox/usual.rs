//! Gears of a bike of which only their number is known.
use super::{GearMark, Gearbox, Shift};
use crate::function::Function;
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;

impl Gearbox {
    /// TEMPORARY.
    pub fn of(plan: &Plan) -> Option<Gearbox> {
        let rings: &[u8] = match plan.bike.rings {
            1 => &[40],
            2 => &[34, 50],
            _ => &[26, 36, 48],
        };
        let cogs = plan.bike.cogs.max(1);
        let count = usize::from(cogs);
        let tooth = |cog: usize| {
            let share = cog as f64 / (count.max(2) - 1) as f64;
            34.0 * libm::pow(11.0 / 34.0, share)
        };
        let mut gears = Vec::new();
        for (ring, teeth) in rings.iter().enumerate() {
            for cog in 0..count {
                gears.push(GearMark {
                    ring: ring as u8,
                    cog: cog as u8,
                    development: f64::from(*teeth) / tooth(cog) * 2.155,
                    crossed: rings.len() > 1
                        && (ring == 0 && cog + 2 >= count || ring + 1 == rings.len() && cog < 2),
                });
            }
        }
        let at = |ring: usize, cog: usize| ring * count + cog;
        let kind = plan.shift_plan;
        let rear = move |gear: usize, by: isize| {
            let (ring, cog) = (gear / count, gear % count);
            let cog = cog.checked_add_signed(by).filter(|cog| *cog < count)?;
            Some(Shift {
                to: at(ring, cog),
                front: false,
                cogs: by.unsigned_abs() as u8,
            })
        };
        let n_rings = rings.len();
        let front = move |gear: usize, by: isize| {
            let (ring, cog) = (gear / count, gear % count);
            let ring = ring.checked_add_signed(by).filter(|r| *r < n_rings)?;
            let shift = if kind == ShiftPlanKind::Paired || kind == ShiftPlanKind::Ladder {
                -2 * by
            } else {
                0
            };
            let cog = (cog as isize + shift).clamp(0, count as isize - 1) as usize;
            Some(Shift {
                to: at(ring, cog),
                front: true,
                cogs: shift.unsigned_abs() as u8,
            })
        };
        let ladder = kind == ShiftPlanKind::Ladder;
        Gearbox::new(gears, ladder, move |gear, function| match function {
            Function::RearEasier if !ladder => rear(gear, -1),
            Function::RearHarder if !ladder => rear(gear, 1),
            Function::FrontSmaller if !ladder => front(gear, -1),
            Function::FrontLarger if !ladder => front(gear, 1),
            Function::RungUp if ladder => {
                if gear % count + 4 >= count && gear / count + 1 < n_rings {
                    front(gear, 1)
                } else {
                    rear(gear, 1)
                }
            }
            Function::RungDown if ladder => {
                if gear % count <= 3 && gear / count > 0 {
                    front(gear, -1)
                } else {
                    rear(gear, -1)
                }
            }
            _ => None,
        })
    }
}
