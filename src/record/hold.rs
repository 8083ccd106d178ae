//! How the baby is held, and at which breast.

use super::word::words;

words!(
    /// The breast, named from the mother's side. Never mirrored by language.
    Side {
        /// The mother's left breast.
        Left = "left",
        /// The mother's right breast.
        Right = "right",
    }
);

impl Side {
    /// The other breast.
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

words!(
    /// A hold, for one baby or for two.
    Hold {
        /// Head in the crook of the arm on the side of the breast.
        Cradle = "cradle",
        /// Head and shoulders in the opposite hand.
        CrossCradle = "cross_cradle",
        /// Body along the mother's side, under her arm.
        Underarm = "underarm",
        /// Mother reclined, baby on her front.
        LaidBack = "laid_back",
        /// Both lying on their sides.
        SideLying = "side_lying",
        /// Baby sitting upright astride the mother's thigh.
        Upright = "upright",
        /// Two babies, one under each arm.
        TwinsUnderarm = "twins_underarm",
        /// Two babies, both across the front.
        TwinsCradle = "twins_cradle",
        /// Two babies, one across the front and one under the arm.
        TwinsCombined = "twins_combined",
        /// Two babies, mother reclined.
        TwinsLaidBack = "twins_laid_back",
    }
);

impl Hold {
    /// The holds to choose from for a mother of so many babies: those for two babies at once only
    /// where there is more than one.
    pub fn offered(babies: u8) -> impl Iterator<Item = Self> {
        let all = Self::ALL.iter().copied();
        all.filter(move |hold| 1 < babies || !hold.is_for_twins())
    }

    /// Whether it is a hold for two babies at once.
    pub const fn is_for_twins(self) -> bool {
        matches!(
            self,
            Self::TwinsUnderarm | Self::TwinsCradle | Self::TwinsCombined | Self::TwinsLaidBack
        )
    }
}
