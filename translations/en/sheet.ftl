### The mother's sheet. Plain words, short sentences: a test measures how easy it reads. No name.

sheet-title = You and your baby
# { $date } a date, { $days } the baby's age in whole days.
sheet-day =
    { $days ->
        [0] We looked at a feed on { $date }. Your baby was less than a day old.
        [one] We looked at a feed on { $date }. Your baby was one day old.
       *[other] We looked at a feed on { $date }. Your baby was { $days } days old.
    }
sheet-day-only = We looked at a feed on { $date }.

## Medical review now: before all else.

sheet-review = A doctor is needed now
sheet-review-baby = A doctor needs to see your baby now. If no one has come, ask again. Do not wait.
sheet-review-mother = A doctor needs to see you now. If no one has come, ask again. Do not wait.

## What was seen to be good.

sheet-well = What went well
sheet-well-flow = Your milk came, and your baby swallowed.
sheet-well-mouth = Your baby took the breast with a wide mouth.
sheet-well-chin = Your baby's chin was close to your breast.
sheet-well-close = You held your baby close.
sheet-well-pain = There was little or no pain at the end.
sheet-well-nipple = Your nipple looked well after the feed.
sheet-well-softer = Your breast felt soft after the feed.
sheet-well-content = Your baby was calm after the feed.
sheet-well-together = You and your baby tried it with each other. You both learn a bit each time.

## What was agreed, as said to her.

sheet-try = What to try
sheet-plan-feed-often = Feed your baby when your baby asks, by day and by night.
sheet-plan-skin-to-skin = Hold your baby on your bare skin as much as you like.
sheet-plan-wake-for-feeds = Wake your baby for feeds for now.
sheet-plan-keep-hold = Keep the hold that felt good today.
sheet-plan-work-on-attachment = Wait for a wide mouth. Then bring your baby in, chin first.
sheet-plan-compressions = Press your breast gently when the sucks get slow.
sheet-plan-both-breasts = Offer both breasts at each feed.
sheet-plan-express-after-feeds = Express some milk by hand or by pump after feeds.
sheet-plan-give-expressed-milk = Give this milk after feeds, in the way we showed you.
sheet-plan-weigh-again = We will weigh your baby again.
sheet-plan-count-nappies = Count the wet and the dirty nappies.
sheet-plan-nipple-care = Take care of your nipples in the way we showed you.
sheet-plan-watch-next-feed = Ask one of us to be with you at the next feed.
sheet-plan-call-baby-doctor = Tell us at once if it gets worse. A doctor will then see your baby.
sheet-plan-call-mother-doctor = Tell us at once if it gets worse. A doctor will then see you.
sheet-plan-call-midwife-in-charge = Tell us at once if it gets worse. The midwife in charge will then come to you.
sheet-plan-call-feeding-team = Tell us if it gets worse. The feeding team will then help you.
sheet-plan-medical-team-told = We have told a doctor.

## Signs that milk goes in.

sheet-milk = How to tell that your baby is getting milk
sheet-milk-1 = The sucks are fast at first. Then they get slow and deep.
sheet-milk-2 = You hear or see your baby swallow.
sheet-milk-3 = It does not hurt once the first few sucks are over.
sheet-milk-4 = Your breast feels soft after the feed.
sheet-milk-5 = Your baby lets go and is calm.

## The next days. The numbers come from the growth tables.

sheet-expect = What comes next
sheet-weight-birth = Your baby weighed { $grams } at birth.
sheet-weight-now = On { $date } it was { $grams }.
sheet-weight-usual = Most babies lose some weight at first. From about day five most gain again. Most are back at their birth weight by three weeks.
sheet-nappies = Nappies tell you how much goes in. This is the least you should see in a day and a night.
sheet-nappies-later = By now you should see six or more wet nappies in a day and a night. They should feel heavy.
sheet-nappies-day = Day
sheet-nappies-wet = Wet
sheet-nappies-dirty = Dirty
sheet-nappies-colour = Colour
sheet-nappies-least = { $count } or more
sheet-nappies-heavy = { $count } or more, heavy
sheet-colour-black = black
sheet-colour-green = green
sheet-colour-yellow = yellow

## When to get help.

sheet-help = Get help now, by day or by night, if
sheet-help-how = Ring the bell on the ward. At home, call the number that the ward gave you. If you think that life is at risk, call the emergency number.
sheet-help-baby-1 = your baby is hard to wake or is floppy
sheet-help-baby-2 = your baby breathes fast, grunts, or has to work to breathe
sheet-help-baby-3 = your baby looks blue, grey or very pale
sheet-help-baby-4 = your baby does not want to feed, or has had no wet nappy for 8 hours
sheet-help-baby-5 = your baby feels hot or cold, or has a fit
sheet-help-baby-6 = your baby looks more and more yellow, or the poo is white
sheet-help-baby-7 = your baby throws up green, or there is blood in the nappy
sheet-help-mother-1 = you bleed a lot, or feel faint
sheet-help-mother-2 = you have a fever, or a part of your breast is hot, red and sore
sheet-help-mother-3 = your head hurts badly, or you cannot see well
sheet-help-mother-4 = your chest or one calf hurts, or you are short of breath
sheet-help-mother-5 = you have thoughts of harming yourself or your baby

## The end.

sheet-next = Your next visit
sheet-next-at = We will look again on { $due }.
sheet-next-ask = Ask your midwife when we will look again.
sheet-sources = Nappies: UK checklists for parents, such as those of the UNICEF UK Baby Friendly Initiative. Weight: NICE guideline NG75 (2017). Your ward may use other numbers. Then follow what your ward says.
sheet-foot = This sheet does not take the place of advice from your midwife or doctor. Visit { $id }
