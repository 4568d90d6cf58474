//! How a bench program reports what it measured to `cargo xtask numbers`.

use serde::Serialize;

/// One measured number.
#[derive(Debug, Clone, Serialize)]
pub struct Number<'a> {
    /// What was measured.
    pub name: &'a str,
    /// How much.
    pub value: f64,
    /// Of what, such as `µs` or `KB`.
    pub unit: &'a str,
    /// The most that it should be, in the same unit. `None` for a number that has no limit.
    pub limit: Option<f64>,
    /// What it was compared with in the same run, in words and figures.
    pub against: &'a str,
}

impl Number<'_> {
    /// Prints the line that `cargo xtask numbers` collects.
    ///
    /// # Panics
    /// When the value is not a number, which JSON cannot carry.
    pub fn report(&self) {
        assert!(
            self.value.is_finite(),
            "{}: measured {}",
            self.name,
            self.value
        );
        let fields = serde_json::to_string(self).expect("plain fields always serialise");
        println!("number: {fields}");
    }
}

/// The value below which `share` of the samples lie, by the nearest rank: 0.5 gives the median.
///
/// # Panics
/// When there are no samples.
pub fn quantile(samples: &[f64], share: f64) -> f64 {
    assert!(!samples.is_empty(), "no samples");
    let mut sorted = samples.to_vec();
    sorted.sort_by(f64::total_cmp);
    let rank = (share * sorted.len() as f64).ceil() as usize;
    sorted[rank.clamp(1, sorted.len()) - 1]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_are_nearest_ranks() {
        // The worked example of the nearest-rank method in general statistics texts (memory).
        let samples = [15.0, 20.0, 35.0, 40.0, 50.0];
        assert_eq!(quantile(&samples, 0.05), 15.0);
        assert_eq!(quantile(&samples, 0.3), 20.0);
        assert_eq!(quantile(&samples, 0.4), 20.0);
        assert_eq!(quantile(&samples, 0.5), 35.0);
        assert_eq!(quantile(&samples, 1.0), 50.0);
    }
}
