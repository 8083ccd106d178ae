### One message for every stored word of the record. Ids are the thing and the stored word.
### Seen on every screen and in every report.

## Signs: the name on its key at the bedside. At most about 18 characters.
## `-look`: what to look for, one sentence, on the card that a long touch opens.
## `-try`: what is usually tried, on the same card.

sign-close = Close
sign-close-look = Chest and tummy lie against the mother, with no gap and no reaching.
sign-close-try = Bring the whole baby in to the breast, and take away a cushion that sets the height.
sign-head-free = Head free
sign-head-free-look = The head can tip back: no hand or arm presses behind it.
sign-head-free-try = Hold the neck and shoulders instead of the head, and move the hand or arm further down.
sign-in-line = In line
sign-in-line-look = Ear, shoulder and hip lie in one straight line, with the neck not turned.
sign-in-line-try = Turn the whole body to face the mother.
sign-nose-to-nipple = Nose to nipple
sign-nose-to-nipple-look = At the start the nose is level with the nipple, so that the head tips back to reach it.
sign-nose-to-nipple-try = Slide the baby towards the feet until the nose meets the nipple, and wait for a wide mouth.
sign-can-be-kept-up = Can be kept up
sign-can-be-kept-up-look = Mother and baby are well supported, her shoulders are down, and both could stay like this.
sign-can-be-kept-up-try = Support her back, arms or feet, or change the hold.
sign-mouth-wide = Mouth wide
sign-mouth-wide-look = The mouth is wide open around the breast, not closed on the nipple.
sign-mouth-wide-try = Break the seal with a clean finger, wait for a wider mouth, and attach again.
sign-chin-in = Chin in
sign-chin-in-look = The chin presses into the breast.
sign-chin-in-try = Tuck the baby's bottom in closer, so that the chin comes first.
sign-nose-clear = Nose clear
sign-nose-clear-look = The nose is free of the breast without anyone holding the breast away.
sign-nose-clear-try = Tuck the bottom in closer and let the head tip back.
sign-cheeks-full = Cheeks full
sign-cheeks-full-look = The cheeks stay full and round, with no dimples as the baby sucks.
sign-cheeks-full-try = Attach again; if the dimples stay, think of having the mouth looked at.
sign-more-areola-above = More areola above
sign-more-areola-above-look = More of the areola is seen above the top lip than below the lower lip.
sign-more-areola-above-try = Attach again off centre: chin lower on the breast, nipple aimed at the roof of the mouth.
sign-lower-lip-out = Lower lip out
sign-lower-lip-out-look = The lower lip is turned outwards; the top lip may lie flat.
sign-lower-lip-out-try = Attach again, with the baby a little lower.
sign-quiet = Quiet, no click
sign-quiet-look = Swallows may be heard, but no clicking or smacking.
sign-quiet-try = Bring the baby closer or attach again; if the clicking stays, think of having the mouth looked at.

## States of a sign. Beside a tick, a question mark and a cross.

state-seen = Seen
state-unclear = Unclear
state-not-seen = Not seen
state-not-looked = Not looked yet

## The breast, from the mother's side.

side-left = Left
side-right = Right

## Holds. On a key: at most about 20 characters.

hold-cradle = Cradle
hold-cross-cradle = Cross-cradle
hold-underarm = Underarm
hold-laid-back = Laid back
hold-side-lying = Side-lying
hold-upright = Upright
hold-twins-underarm = Twins underarm
hold-twins-cradle = Twins cradle
hold-twins-combined = Twins combined
hold-twins-laid-back = Twins laid back

## What can be tried at the breast. On a key: at most about 28 characters.

adjustment-closer-in = Bring closer in
adjustment-turn-body = Turn body to face her
adjustment-free-head = Free the head
adjustment-slide-to-nose = Slide until nose meets nipple
adjustment-chin-first = Bottom in, chin first
adjustment-attach-again = Attach again, mouth wider
adjustment-support-mother = Support the mother
adjustment-change-hold = Change the hold
adjustment-compress = Breast compressions
adjustment-other-breast = Other breast
adjustment-wake = Skin to skin, wake
adjustment-soften-first = Express a little first
adjustment-pause-and-burp = Pause and burp
adjustment-other = Something else

## What is agreed. A line of the plan and of the mother's sheet.

plan-feed-often = Feed whenever the baby asks, day and night
plan-skin-to-skin = Plenty of skin to skin
plan-wake-for-feeds = Wake the baby for feeds for now
plan-keep-hold = Keep the hold that worked today
plan-work-on-attachment = Wide mouth and chin in at each feed
plan-compressions = Breast compressions when sucking slows
plan-both-breasts = Offer both breasts
plan-express-after-feeds = Express after feeds
plan-give-expressed-milk = Give the expressed milk after feeds, in the agreed way
plan-weigh-again = Weigh again
plan-count-nappies = Count wet and dirty nappies
plan-nipple-care = Care for the nipples
plan-watch-next-feed = Someone watches the next feed
plan-call-baby-doctor = If it gets worse, call the doctor for the baby
plan-call-mother-doctor = If it gets worse, call the doctor for the mother
plan-call-midwife-in-charge = If it gets worse, call the midwife in charge
plan-call-feeding-team = If it gets worse, call the feeding team
plan-medical-team-told = The medical team has been told

## Why a pair may need more help.

risk-preterm = Born before 37 weeks
risk-early-term = Born at 37 or 38 weeks
risk-small-baby = Small for age
risk-diabetes = Mother has diabetes
risk-blood-loss = Large blood loss at birth
risk-separated = Separated after birth
risk-jaundice-treated = Jaundice treated, now or in a sibling
risk-earlier-trouble = Trouble feeding an earlier baby
risk-breast-surgery = Breast surgery
risk-tongue = Tongue movement looks restricted
risk-medicine = Medicine that may matter for feeding
risk-first-baby = First baby

## Why the specialist was called.

reason-first-look = First look
reason-pain = Pain
reason-not-attaching = Not attaching
reason-sleepy = Too sleepy
reason-weight = Weight
reason-nappies = Few nappies
reason-jaundice = Yellow skin
reason-milk-supply = Worry about milk
reason-engorgement = Full, tight breasts
reason-twins = Twins or more
reason-mother-asked = Mother's request
reason-before-home = Before going home

## The baby's sex, as the growth standard needs it.

sex-female = Girl
sex-male = Boy
sex-not-stated = Not stated

## Way of birth.

birth-vaginal = Vaginal
birth-assisted = Forceps or vacuum
birth-caesarean = Caesarean

## Colour of stool.

stool-black = Black, tarry (meconium)
stool-green = Green or brown
stool-yellow = Yellow
stool-pale = Pale, chalky
stool-bloody = With blood

## How far yellow skin is seen.

jaundice-none = None
jaundice-face = Face only
jaundice-body = Face and body
jaundice-extensive = To hands and feet, or deep

## Danger signs of the baby. On a key, and in a report.

baby-danger-hard-to-wake = Hard to wake
baby-danger-floppy = Floppy
baby-danger-fit = A fit
baby-danger-breathing = Fast, laboured or grunting breathing
baby-danger-colour = Blue, grey, mottled or very pale
baby-danger-green-vomit = Green vomit
baby-danger-bulging-fontanelle = Bulging fontanelle
baby-danger-rash = Rash that does not fade when pressed
baby-danger-cord = Redness or pus at the cord
baby-danger-not-feeding = Will not feed at all
baby-danger-jaundice-first-day = Yellow within the first 24 hours
baby-danger-distension = Swollen, tense tummy

## Danger signs of the mother. On a key, and in a report.

mother-danger-bleeding = Heavy or increasing bleeding, or faint
mother-danger-infection = Fever, shivering, tummy pain or offensive loss
mother-danger-headache = Headache with disturbed vision or vomiting
mother-danger-calf = Pain or swelling in one calf
mother-danger-chest = Short of breath, or chest pain
mother-danger-sepsis = Confused, mottled, or passing no urine
mother-danger-breast = Hot red breast that spreads, or a possible abscess
mother-danger-mind = Thoughts of harming herself or the baby, or strange beliefs

## Breasts and nipples before the feed.

breast-soft = Soft
breast-filling = Filling
breast-engorged = Full, tight, hard
breast-red = Red or hot area
breast-lump = Lump
nipple-intact = Intact
nipple-flat = Flat
nipple-inverted = Turned in
nipple-sore = Sore or red
nipple-cracked = Cracked or blistered
nipple-bleeding = Bleeding

## After the feed.

nipple-after-rounded = Rounded, same colour
nipple-after-flattened = Flattened or slanted
nipple-after-creased = Crease or stripe
nipple-after-blanched = White tip
nipple-after-damaged = Cracked, blistered or bleeding
breast-after-softer = Softer
breast-after-unchanged = No change felt
breast-after-unclear = Cannot be told
baby-state-content = Content
baby-state-hungry = Still hungry
baby-state-sleepy = Fell asleep early, hard to wake
baby-state-unsettled = Crying or arching

## Who ended the feed.

ended-by-baby = The baby
ended-by-mother = The mother
ended-by-specialist = The specialist
ended-by-interrupted = Interrupted

## When a weight was taken.

weighing-routine = Not tied to a feed
weighing-before-feed = Before a feed
weighing-after-feed = After a feed

## Rows of the feed's story.

tap-on = On the breast
tap-off = Off the breast
tap-suck = Suck
tap-suck-swallow = Suck with swallow
tap-swallow = Swallow alone
tap-unwatched = Nobody watching from here
tap-watched = Watched again
tap-end = Feed ended
