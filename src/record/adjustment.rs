//! What can be tried at the breast to make the feed better.

use super::word::words;

words!(
    /// An adjustment that the specialist suggested and the mother tried.
    Adjustment {
        /// Bring the whole baby in, closer.
        CloserIn = "closer_in",
        /// Turn the body to face the mother, in one line.
        TurnBody = "turn_body",
        /// Free the head: hand or arm down to the neck and shoulders.
        FreeHead = "free_head",
        /// Slide the baby until the nose meets the nipple.
        SlideToNose = "slide_to_nose",
        /// Bottom tucked in, chin first.
        ChinFirst = "chin_first",
        /// Break the seal and attach again on a wider gape.
        AttachAgain = "attach_again",
        /// Support the mother's back, arms or feet.
        SupportMother = "support_mother",
        /// Change the hold.
        ChangeHold = "change_hold",
        /// Compress the breast while the baby sucks.
        Compress = "compress",
        /// Change to the other breast.
        OtherBreast = "other_breast",
        /// Skin to skin, or wake the baby.
        Wake = "wake",
        /// Express a little first to soften the areola.
        SoftenFirst = "soften_first",
        /// Take the baby off, let it burp or rest, start again.
        PauseAndBurp = "pause_and_burp",
        /// Something else, told in a note.
        Other = "other",
    }
);
