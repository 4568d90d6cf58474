//! What presses.

vocabulary! {
    /// The part of the hand, arm or device that presses a button.
    pub enum Contact as "contact" {
        /// The thumb, digit 1.
        Thumb = "thumb", "thumb";
        /// The index finger, digit 2.
        Index = "index", "index finger";
        /// The middle finger, digit 3.
        Middle = "middle", "middle finger";
        /// The ring finger, digit 4.
        Ring = "ring", "ring finger";
        /// The little finger, digit 5.
        Little = "little", "little finger";
        /// The heel of the hand.
        Heel = "heel", "heel of the hand";
        /// The side of the hand.
        HandSide = "hand-side", "side of the hand";
        /// A knuckle.
        Knuckle = "knuckle", "knuckle";
        /// The forearm.
        Forearm = "forearm", "forearm";
        /// A residual limb.
        ResidualLimb = "residual-limb", "residual limb";
        /// The tip of a device.
        DeviceTip = "device-tip", "tip of the device";
    }
}

/// The contacts that everybody is asked about; others are asked on request.
pub const MAIN_CONTACTS: &[Contact] = &[Contact::Thumb, Contact::Index, Contact::Middle];

impl Contact {
    /// Whether it is one of the five digits.
    pub const fn is_digit(self) -> bool {
        matches!(
            self,
            Contact::Thumb | Contact::Index | Contact::Middle | Contact::Ring | Contact::Little
        )
    }
}
