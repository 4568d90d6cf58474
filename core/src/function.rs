//! What a button can do.

vocabulary! {
    /// A function of the shift system.
    pub enum Function as "function" {
        /// Moves the rear derailleur to a smaller cog.
        RearHarder = "rear-harder", "rear harder";
        /// Moves the rear derailleur to a larger cog.
        RearEasier = "rear-easier", "rear easier";
        /// Moves the chain to a larger ring.
        FrontLarger = "front-larger", "front larger";
        /// Moves the chain to a smaller ring.
        FrontSmaller = "front-smaller", "front smaller";
        /// Moves the chain to the other ring.
        FrontToggle = "front-toggle", "front toggle";
        /// One rung of the ladder harder.
        RungUp = "rung-up", "rung up";
        /// One rung of the ladder easier.
        RungDown = "rung-down", "rung down";
        /// Shows the next page of the head unit.
        NextScreen = "next-screen", "next screen";
        /// Turns the lights on and off.
        Lights = "lights", "lights";
    }
}

impl Function {
    /// Whether it moves the front derailleur and only that.
    pub const fn is_front(self) -> bool {
        matches!(
            self,
            Function::FrontLarger | Function::FrontSmaller | Function::FrontToggle
        )
    }

    /// Whether it moves the rear derailleur and only that.
    pub const fn is_rear(self) -> bool {
        matches!(self, Function::RearHarder | Function::RearEasier)
    }

    /// Whether it walks the ladder.
    pub const fn is_rung(self) -> bool {
        matches!(self, Function::RungUp | Function::RungDown)
    }

    /// Whether it shifts at all.
    pub const fn shifts(self) -> bool {
        self.is_front() || self.is_rear() || self.is_rung()
    }

    /// Whether several presses in a row make sense, so that a hold may repeat.
    pub const fn repeats(self) -> bool {
        self.is_rear() || self.is_rung()
    }

    /// What its name leaves open, in a rider's words; none where the name says
    /// it all.
    pub const fn gloss(self) -> Option<&'static str> {
        match self {
            Function::RungUp => Some("one gear harder"),
            Function::RungDown => Some("one gear easier"),
            Function::FrontToggle => Some("to the other ring"),
            _ => None,
        }
    }

    /// What a press of it comes to, in a rider's words.
    pub const fn effect(self) -> &'static str {
        match self {
            Function::RearHarder => "one gear harder, at the rear",
            Function::RearEasier => "one gear easier, at the rear",
            Function::FrontLarger => "to the larger ring: much harder",
            Function::FrontSmaller => "to the smaller ring: much easier",
            Function::FrontToggle => "to the other ring",
            Function::RungUp => "one gear harder; the front changes by itself where it must",
            Function::RungDown => "one gear easier; the front changes by itself where it must",
            Function::NextScreen => "the next page of the head unit",
            Function::Lights => "lights on or off",
        }
    }

    /// The function that undoes it, if it is one of a pair.
    pub const fn opposite(self) -> Option<Function> {
        match self {
            Function::RearHarder => Some(Function::RearEasier),
            Function::RearEasier => Some(Function::RearHarder),
            Function::FrontLarger => Some(Function::FrontSmaller),
            Function::FrontSmaller => Some(Function::FrontLarger),
            Function::RungUp => Some(Function::RungDown),
            Function::RungDown => Some(Function::RungUp),
            Function::FrontToggle | Function::NextScreen | Function::Lights => None,
        }
    }

    /// Whether a button with this function does what `wanted` asks: a front
    /// toggle serves for both front functions.
    pub fn serves(self, wanted: Function) -> bool {
        self == wanted
            || self == Function::FrontToggle
                && matches!(wanted, Function::FrontLarger | Function::FrontSmaller)
    }
}
