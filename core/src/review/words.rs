//! The words of a review.

vocabulary! {
    /// Who sees a comment.
    pub enum Audience as "audience" {
        /// Everyone who has the plan.
        Everyone = "everyone", "everyone";
        /// The rider and clinicians.
        RiderAndClinician = "rider-and-clinician", "rider and clinician only";
    }
}

vocabulary! {
    /// What a rider says of a button.
    pub enum MarkKind as "mark" {
        /// Pressing it hurts.
        Hurts = "hurts", "hurts";
        /// It confuses.
        Confuses = "confuses", "confuses";
        /// It should do something else.
        Change = "change", "change";
    }
}

vocabulary! {
    /// What a clinician decides.
    pub enum Decision as "decision" {
        /// The hands can meet the demands.
        Matches = "matches", "hand demands match what I saw: go to the rider check";
        /// Each change is tied to a button.
        AfterChanges = "after-changes", "go on after these changes";
        /// Where, with whom, stop if, review by.
        SupervisedTrial = "supervised-trial", "supervised trial first";
        /// The demands are beyond the hands.
        Exceeds = "exceeds", "not as laid out: demands exceed what I saw";
        /// No decision.
        NotEnough = "not-enough", "not enough information, or outside my scope";
    }
}

vocabulary! {
    /// What a review rests on.
    pub enum Basis as "basis" {
        /// The rider was there.
        InPerson = "in-person", "in person";
        /// By video.
        Video = "video", "video";
        /// Only the plan was read.
        PlanOnly = "plan-only", "plan only";
    }
}

vocabulary! {
    /// What a review did not look at.
    pub enum NotAssessed as "point not assessed" {
        /// Grip force.
        GripForce = "grip-force", "grip force, measured";
        /// Braking hard on a moving bike.
        MovingBrake = "moving-brake", "braking hard on a moving bike";
        /// Tiring and cold.
        BadDay = "bad-day", "after an hour, in the cold";
        /// Bumps.
        Bumps = "bumps", "staying on over bumps";
        /// Mounting.
        Mounting = "mounting", "mounting and dismounting";
        /// Traffic.
        Traffic = "traffic", "riding in traffic";
        /// Falls.
        Fall = "fall", "coming off the bike in a fall";
        /// The next morning.
        NextMorning = "next-morning", "the next morning";
    }
}

vocabulary! {
    /// What makes another review due.
    pub enum ReviewEvent as "event" {
        /// Pain on the day after.
        NextDayPain = "next-day-pain", "pain on the next day";
        /// Numbness.
        Numbness = "numbness", "numbness";
        /// A mark on the skin.
        SkinMark = "skin-mark", "a mark on the skin";
        /// A fall.
        Fall = "fall", "a fall";
        /// Another splint or device.
        ChangedSplint = "changed-splint", "a changed splint or device";
    }
}
