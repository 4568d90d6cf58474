//! What a hand is asked to do on a bike.

vocabulary! {
    /// Something a hand may be asked to do while riding.
    ///
    /// Each is asked as a step of difficulty; the words fit after "this hand".
    pub enum Ability as "ability" {
        /// Stays on over bumps and takes weight.
        StaysOn = "stays-on", "stays on over bumps and takes weight";
        /// Steers alone for a moment.
        SteersAlone = "steers-alone", "steers alone for a moment";
        /// Steers while the other hand brakes hard.
        SteersWhileOtherBrakes = "steers-while-other-brakes", "steers while the other hand brakes hard";
        /// Keeps steady: does not brush what is near.
        Steady = "steady", "keeps steady, without brushing what is near";
        /// Swings a long paddle.
        SwingsPaddle = "swings-paddle", "swings a long paddle";
        /// Keeps a button pressed for three seconds.
        KeepsPressed = "keeps-pressed", "keeps a button pressed for three seconds";
        /// Lets go of a button at once.
        LetsGo = "lets-go", "lets go of a button at once";
        /// Brakes hard.
        BrakesHard = "brakes-hard", "brakes hard";
        /// Brakes down a long hill, ten firm pulls without fading.
        BrakesLong = "brakes-long", "brakes down a long hill";
        /// Lets the brake go.
        ReleasesBrake = "releases-brake", "lets the brake go";
        /// Moves along the bar and back without looking.
        MovesAlong = "moves-along", "moves along the bar and back without looking";
        /// Tells two buttons apart without looking.
        TellsApart = "tells-apart", "tells two buttons apart without looking";
        /// Pain during the ride or next morning.
        Comfort = "comfort", "rides without pain, also next morning";
    }
}
