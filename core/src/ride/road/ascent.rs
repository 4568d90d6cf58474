//! Metres climbed, brought near the truth.
//!
//! A recorder's heights wander by a metre or more while the road is level, and
//! every wander upwards would count as climbed: a flat ride of 36 km then shows
//! three times its ascent. Heights are therefore smoothed over the road, and a
//! rise counts only once it is higher than [`RISE`]. Both numbers were chosen so
//! that a hilly and a flat ride come near the totals that recorders with a
//! barometer gave for them; the reference checks hold them to it.

/// Width of the smoothing along the road, in metres: one standard deviation of
/// a bell curve (our judgement, see above).
const WIDTH: f64 = 50.0;

/// A rise or fall smaller than this, in metres, is taken as wander (*common
/// practice*: recorders use 1 to 3 m).
pub const RISE: f64 = 2.0;

/// Heights at even distances, smoothed along the road.
pub fn smoothed(heights: &[f64], spacing: f64) -> Vec<f64> {
    let reach = (3.0 * WIDTH / spacing) as usize;
    let bell: Vec<f64> = (0..=reach)
        .map(|n| n as f64 * spacing / WIDTH)
        .map(|far| libm::exp(-0.5 * far * far))
        .collect();
    let mut smooth = Vec::with_capacity(heights.len());
    for at in 0..heights.len() {
        let (mut sum, mut weight) = (heights[at], 1.0);
        for (n, share) in bell.iter().enumerate().skip(1) {
            let before = at.checked_sub(n).map(|n| heights[n]);
            for height in before.into_iter().chain(heights.get(at + n).copied()) {
                sum += share * height;
                weight += share;
            }
        }
        smooth.push(sum / weight);
    }
    smooth
}

/// The metres climbed: rises from a low point to the next high point, as far as
/// they are higher than what counts as a rise.
pub fn ascent(heights: impl Iterator<Item = f64>) -> f64 {
    let (mut climbed, mut low, mut high) = (0.0, f64::INFINITY, f64::NEG_INFINITY);
    let mut rising = false;
    for height in heights {
        if rising {
            high = height.max(high);
            if high - height >= RISE {
                climbed += high - low;
                (low, rising) = (height, false);
            }
        } else {
            low = height.min(low);
            if height - low >= RISE {
                (high, rising) = (height, true);
            }
        }
    }
    if rising {
        climbed += high - low;
    }
    climbed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wander_is_no_climb() {
        let wander = (0..500).map(|n| if n % 2 == 0 { 100.0 } else { 101.5 });
        assert_eq!(ascent(wander), 0.0);
    }

    #[test]
    fn hills_are_climbed_from_foot_to_top() {
        let hill = [0.0, 5.0, 4.0, 9.0, 3.0, 3.5, 1.0, 6.0];
        assert_eq!(ascent(hill.into_iter()), 9.0 + 5.0);
        assert_eq!(ascent([-20.0, -5.0].into_iter()), 15.0);
        assert_eq!(ascent([].into_iter()), 0.0);
        assert_eq!(ascent([9.0, 1.0].into_iter()), 0.0);
    }

    #[test]
    fn smoothing_keeps_a_slope_and_takes_a_spike() {
        let slope: Vec<f64> = (0..100).map(f64::from).collect();
        let smooth = smoothed(&slope, 10.0);
        assert!((smooth[50] - 50.0).abs() < 1e-9);
        let mut spike = vec![0.0; 100];
        spike[50] = 8.0;
        let smooth = smoothed(&spike, 10.0);
        assert!(smooth.iter().all(|height| *height < 0.7));
        assert!((smooth.iter().sum::<f64>() - 8.0).abs() < 1e-9);
    }
}
