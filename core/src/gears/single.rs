//! The bike with one ring: for one hand often the right answer.

use super::{Gears, Percent, Ratio, Teeth};

/// What a conversion to one ring keeps and loses.
#[derive(Debug, Clone, PartialEq)]
pub struct SingleRing {
    /// The gears after it.
    pub gears: Gears,
    /// The range after it: hardest by easiest.
    pub range: Ratio,
    /// The range before it.
    pub range_before: Ratio,
    /// By how much the easiest gear becomes harder; below zero it becomes
    /// easier.
    pub easy_end: Percent,
    /// By how much the hardest gear becomes easier; below zero it becomes
    /// harder.
    pub hard_end: Percent,
    /// The largest step from cog to cog.
    pub largest_step: Percent,
    /// Gears before, duplicates taken once.
    pub gears_before: usize,
}

impl SingleRing {
    /// The bike with one ring, on these cogs from the largest, else on its own.
    pub fn of(before: &Gears, ring: Teeth, cogs: Option<&[Teeth]>) -> SingleRing {
        let gears = Gears {
            rings: vec![ring],
            cogs: cogs.unwrap_or(&before.cogs).to_vec(),
            ..before.clone()
        };
        let ratio = |gears: &Gears, gear| gears.ratio(gear).0;
        let easy = ratio(&gears, gears.easiest()) / ratio(before, before.easiest());
        let hard = ratio(&gears, gears.hardest()) / ratio(before, before.hardest());
        SingleRing {
            range: gears.range(),
            range_before: before.range(),
            easy_end: Percent((easy - 1.0) * 100.0),
            hard_end: Percent((1.0 - hard) * 100.0),
            largest_step: gears.largest_cog_step(),
            gears_before: before.distinct(),
            gears,
        }
    }

    /// What it keeps and loses, in words.
    pub fn words(&self) -> String {
        let end = |percent: Percent, more: &str, less: &str| match percent.0 < 0.0 {
            true => format!("{} {less}", Percent(-percent.0)),
            false => format!("{percent} {more}"),
        };
        format!(
            "With one ring of {} teeth on these cogs: a range of {} in place of {}; the easiest gear {}, the hardest {}; {} gears in place of {} that differ; the largest step {}.",
            self.gears.largest_ring(),
            self.range,
            self.range_before,
            end(self.easy_end, "harder", "easier"),
            end(self.hard_end, "easier", "harder"),
            self.gears.cogs.len(),
            self.gears_before,
            self.largest_step,
        )
    }

    /// The ring that loses as much at either end: between the largest and the
    /// smallest by the geometric mean (our judgement; hills ask for a smaller
    /// one).
    pub fn usual_ring(before: &Gears) -> Teeth {
        let smallest = f64::from(before.ring(before.easiest()));
        let largest = f64::from(before.largest_ring());
        Teeth(libm::round(libm::sqrt(smallest * largest)) as u8)
    }
}

impl Gears {
    /// How many gears there are, duplicates taken once.
    pub fn distinct(&self) -> usize {
        let mut again: Vec<super::Gear> = Vec::new();
        for (_, later) in self.duplicates(super::SAME_GEAR) {
            if !again.contains(&later) {
                again.push(later);
            }
        }
        self.rings.len() * self.cogs.len() - again.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gears::testing::{ROAD_12, gears};

    #[test]
    fn a_conversion_says_what_it_loses() {
        let before = gears("34 50", ROAD_12);
        let ring = SingleRing::usual_ring(&before);
        assert_eq!(ring, Teeth(41));
        let single = SingleRing::of(&before, ring, None);
        assert_eq!(single.range.to_string(), "3.09");
        assert_eq!(single.range_before.to_string(), "4.55");
        assert_eq!(single.easy_end.to_string(), "21 %");
        assert_eq!(single.hard_end.to_string(), "18 %");
        assert_eq!(single.largest_step.to_string(), "14 %");
        assert_eq!(
            single.words(),
            "With one ring of 41 teeth on these cogs: a range of 3.09 in place of 4.55; the easiest gear 21 % harder, the hardest 18 % easier; 12 gears in place of 23 that differ; the largest step 14 %."
        );
        let wide = gears("40", "11 13 15 18 21 24 28 32 37 44 51");
        let single = SingleRing::of(&before, Teeth(40), Some(&wide.cogs));
        assert!(single.easy_end.0 < 0.0 && single.hard_end.0 > 0.0);
    }
}
