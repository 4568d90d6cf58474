//! A device or strap that was not seen to let go in a fall.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Side, YesNo};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "device-release-untested",
    family: Family::Brake,
    title: "A device’s release was not tested",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "A device or strap that joins a hand to the bar was tried and seen to let go by itself in a fall.",
    why: "A hand that stays tied to a bike that falls goes where the bike goes.",
    remedy: "Try its release with the bike held by a helper, in every direction, and note the outcome under Rider. The device’s maker and the clinician who fitted it have the last word.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    Side::ALL
        .iter()
        .filter_map(|side| {
            let hand = situation.hand(*side);
            let device = hand.device.filter(|_| hand.on_bar())?;
            (!device.releases_in_fall.is_yes()).then(|| Finding {
                rule: RULE.id,
                severity: Severity::MustFix,
                acceptable: Acceptable::Never,
                places: vec![Place::Hand(*side)],
                message: match device.releases_in_fall.value {
                    Some(YesNo::No) => {
                        format!("The device on the {side} hand does not let go in a fall.")
                    }
                    _ => format!(
                        "Whether the device on the {side} hand lets go in a fall was not tested."
                    ),
                },
                fixes: Vec::new(),
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::RiderEdit;
    use crate::finding::Acceptable;
    use crate::rider::{Answer, Device, HandPlace, Side, YesNo};
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_until_the_release_was_seen() {
        let with = |releases_in_fall| {
            let device = Device {
                releases_in_fall,
                ..Device::default()
            };
            let setup = drop_bar().rider_edit(RiderEdit::Device(Side::Left, Some(device)));
            fired(&setup.plan(), &RULE)
        };
        assert_eq!(with(Answer::NOT_ASKED)[0].acceptable, Acceptable::Never);
        assert_eq!(with(Answer::of(YesNo::No)).len(), 1);
        assert!(with(Answer::of(YesNo::Yes)).is_empty());
    }

    #[test]
    fn is_silent_without_a_device_or_off_the_bar() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        let device = RiderEdit::Device(Side::Left, Some(Device::default()));
        let setup = drop_bar().rider_edit(device);
        let place = RiderEdit::Place(Side::Left, Answer::of(HandPlace::OffBar));
        assert!(fired(&setup.rider_edit(place).plan(), &RULE).is_empty());
    }
}
