//! Heights and bends as short texts, as files keep them: the difference of each
//! height from the one before, runs of the same thing once with their number.

use thiserror::Error;

use super::{Bend, Road, Stop};
use crate::text::Text;
use crate::vocabulary::Vocabulary;

/// What is wrong with a packed road.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum PackedError {
    /// Heights cannot be read.
    #[error("expected heights such as 6800,-2,0*12")]
    Heights,
    /// Bends cannot be read.
    #[error("expected bends such as 120straight,3tight")]
    Bends,
    /// It is no road.
    #[error("expected a road of 100 m to 2,000 km with as many bends as heights")]
    NoRoad,
}

impl Road {
    /// The heights in centimetres: the first one, then differences, each
    /// followed by how often it comes where that is more than once.
    pub fn packed_heights(&self) -> String {
        let mut text = self.heights[0].to_string();
        let steps = || self.heights.windows(2).map(|pair| pair[1] - pair[0]);
        runs(steps(), |step, times| {
            text.push(',');
            text.push_str(&step.to_string());
            if times > 1 {
                text.push('*');
                text.push_str(&times.to_string());
            }
        });
        text
    }

    /// The bends: how often each comes in a row, and its code.
    pub fn packed_bends(&self) -> String {
        let mut text = String::new();
        runs(self.bends.iter().copied(), |bend, times| {
            if !text.is_empty() {
                text.push(',');
            }
            text.push_str(&times.to_string());
            text.push_str(bend.code());
        });
        text
    }

    /// A road from what [`Road::packed_heights`] and [`Road::packed_bends`]
    /// gave.
    ///
    /// # Errors
    /// When a text is not of that kind, or they make no road.
    pub fn unpack(
        name: Text,
        length: f64,
        heights: &str,
        bends: &str,
        stops: Vec<Stop>,
    ) -> Result<Road, PackedError> {
        let heights = unpack_heights(heights).ok_or(PackedError::Heights)?;
        let bends = unpack_bends(bends).ok_or(PackedError::Bends)?;
        Road::of_centimetres(name, length, heights, bends, stops).ok_or(PackedError::NoRoad)
    }
}

/// Calls with each item and how often it comes in a row.
fn runs<T: PartialEq + Copy>(items: impl Iterator<Item = T>, mut take: impl FnMut(T, usize)) {
    let mut run: Option<(T, usize)> = None;
    for item in items {
        run = match run {
            Some((last, times)) if last == item => Some((last, times + 1)),
            Some((last, times)) => {
                take(last, times);
                Some((item, 1))
            }
            None => Some((item, 1)),
        };
    }
    if let Some((last, times)) = run {
        take(last, times);
    }
}

fn unpack_heights(text: &str) -> Option<Vec<i32>> {
    let mut parts = text.split(',');
    let mut height: i32 = parts.next()?.parse().ok()?;
    let mut heights = vec![height];
    for part in parts {
        let (step, times) = part.split_once('*').unwrap_or((part, "1"));
        let (step, times): (i32, usize) = (step.parse().ok()?, times.parse().ok()?);
        if times == 0 || heights.len().checked_add(times)? > super::MOST_HEIGHTS {
            return None;
        }
        for _ in 0..times {
            height = height.checked_add(step)?;
            heights.push(height);
        }
    }
    Some(heights)
}

fn unpack_bends(text: &str) -> Option<Vec<Bend>> {
    let mut bends = Vec::new();
    for part in text.split(',') {
        let code = part.trim_start_matches(|c: char| c.is_ascii_digit());
        let times: usize = part[..part.len() - code.len()].parse().ok()?;
        if times == 0 || bends.len().checked_add(times)? > super::MOST_HEIGHTS {
            return None;
        }
        bends.resize(bends.len() + times, Bend::from_code(code)?);
    }
    Some(bends)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::ride::road::RoadKind;

    #[test]
    fn our_own_roads_come_back_as_they_were() {
        for kind in RoadKind::ALL {
            let road = Road::built_in(*kind);
            let again = Road::unpack(
                road.name.clone(),
                road.length(),
                &road.packed_heights(),
                &road.packed_bends(),
                road.stops().to_vec(),
            );
            assert_eq!(again.as_ref(), Ok(&road), "{kind}");
        }
    }

    #[test]
    fn packed_text_is_short() {
        let pass = Road::built_in(RoadKind::Pass);
        assert!(pass.packed_heights().len() < pass.samples() * 4);
        assert!(pass.packed_bends().len() < pass.samples());
    }

    proptest! {
        #[test]
        fn no_text_panics_or_makes_a_giant(heights in "[0-9,*-]{0,40}", bends in "[0-9a-z,]{0,40}") {
            let road = Road::unpack("x".into(), 1000.0, &heights, &bends, Vec::new());
            if let Ok(road) = road {
                prop_assert!(road.samples() <= crate::ride::road::MOST_HEIGHTS);
            }
        }
    }
}
