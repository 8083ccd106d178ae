### Findings: what a rule says, why, and where it comes from.
### Shown as cards and in every report. A reason may take two lines.

## Numbers come as text with their unit, as "10.4 %" or "3 days"; counts and scores as plain numbers.

## Baby.

finding-baby-hard-to-wake = Hard to wake, or does not respond as usual
finding-baby-hard-to-wake-reason = A baby that cannot be woken as usual may be seriously ill.
finding-baby-floppy = Floppy
finding-baby-floppy-reason = A floppy baby may be seriously ill.
finding-baby-fit = A fit
finding-baby-fit-reason = A fit in a young baby is always a reason for a doctor now.
finding-baby-breathing = Fast, laboured or grunting breathing
finding-baby-breathing-reason = 60 breaths a minute or more, drawing in of the chest, or grunting may mean serious illness.
finding-baby-colour = Blue, grey, mottled or very pale
finding-baby-colour-reason = A changed colour of the skin may mean serious illness.
finding-baby-green-vomit = Green vomit
finding-baby-green-vomit-reason = Green vomit may mean a blocked bowel.
finding-baby-bulging-fontanelle = Bulging fontanelle
finding-baby-bulging-fontanelle-reason = A bulging fontanelle may mean serious illness.
finding-baby-rash = A rash that does not fade when pressed
finding-baby-rash-reason = Such a rash may mean serious infection.
finding-baby-cord = Redness or pus at the cord
finding-baby-cord-reason = It may mean infection of the cord.
finding-baby-not-feeding = Will not feed at all
finding-baby-not-feeding-reason = A young baby that stops feeding may be seriously ill.
finding-baby-distension = Swollen, tense tummy
finding-baby-distension-reason = It may mean a blocked bowel or serious infection.
finding-baby-danger-other = A danger sign that this version does not know
finding-baby-danger-other-reason = A newer version recorded a danger sign. Read the record and look at the baby.
finding-baby-jaundice-first-day = Yellow within the first 24 hours
finding-baby-jaundice-first-day-reason = Yellow skin in the first 24 hours of life has to be measured and seen by a doctor urgently.
finding-baby-jaundice-extensive = Yellow to hands and feet, or very deep
finding-baby-jaundice-extensive-reason = Extensive yellow skin may mean a level that needs treatment.
finding-baby-sleepy-yellow-few-feeds = Sleepy, yellow and few feeds together
finding-baby-sleepy-yellow-few-feeds-reason = { $feeds } feeds in 24 hours, at least { $least } expected; the three together can quickly make each other worse.
finding-baby-temperature-fever = Fever
finding-baby-temperature-fever-reason = { $temperature }; under three months, 38 degrees or more needs a doctor now.
finding-baby-temperature-high = Temperature too high
finding-baby-temperature-high-reason = { $temperature }, above { $limit }. Lists differ; the more careful one is used here.
finding-baby-temperature-low = Temperature too low
finding-baby-temperature-low-reason = { $temperature }, below { $limit }. Lists differ; the more careful one is used here.
finding-baby-stool-pale = Pale stool
finding-baby-stool-pale-reason = Pale, chalky stool may mean a blocked flow of bile.
finding-baby-stool-bloody = Blood in the stool
finding-baby-stool-bloody-reason = Blood in the stool has to be looked at by a doctor.
finding-baby-urine-dark-yellow = Dark urine in a yellow baby
finding-baby-urine-dark-yellow-reason = Dark urine with yellow skin may mean a blocked flow of bile.
finding-baby-urine-dark = Dark urine
finding-baby-urine-dark-reason = A baby's urine is usually without colour. Look for yellow skin and pale stool, and whether the baby drinks enough.
finding-baby-jaundice = Yellow skin
finding-baby-jaundice-reason = Seen at { $age } of age. To be measured, not judged by eye.
finding-baby-jaundice-prolonged = Yellow for longer than usual
finding-baby-jaundice-prolonged-reason = Still seen at { $age } of age; beyond { $limit } it needs investigating. Note the colour of stool and urine.
finding-baby-temperature-cool = A little cool
finding-baby-temperature-cool-reason = { $temperature }, below 36.5 degrees. Warm skin to skin and measure again.
finding-baby-clicking = Clicking at the breast
finding-baby-clicking-reason = Clicking often means that the seal breaks: shallow attachment, fast flow, or restricted tongue movement.

## Mother.

finding-mother-bleeding = Mother: heavy bleeding or faintness
finding-mother-bleeding-reason = Sudden or increasing loss, or faintness with it, may be a haemorrhage.
finding-mother-infection = Mother: fever, shivering, tummy pain or offensive loss
finding-mother-infection-reason = It may be a serious infection.
finding-mother-headache = Mother: headache with disturbed vision, nausea or vomiting
finding-mother-headache-reason = It may be dangerously high blood pressure after birth.
finding-mother-calf = Mother: pain or swelling in one calf
finding-mother-calf-reason = It may be a clot in a vein.
finding-mother-chest = Mother: short of breath or chest pain
finding-mother-chest-reason = It may be a clot in the lung or a heart problem.
finding-mother-sepsis = Mother: confused, mottled or passing no urine
finding-mother-sepsis-reason = It may be sepsis.
finding-mother-breast = Mother: spreading hot red breast, or a lump that may be an abscess
finding-mother-breast-reason = It needs medical treatment.
finding-mother-mind = Mother: thoughts of harming herself or the baby, or strange beliefs
finding-mother-mind-reason = Do not leave her alone; she needs help now.
finding-mother-danger-other = Mother: a danger sign that this version does not know
finding-mother-danger-other-reason = A newer version recorded a danger sign. Read the record and look at the mother.

## Weight.

finding-weight-below-line = Weight below the -2.5 SDS line
finding-weight-below-line-reason = { $loss } of the birth weight lost; at an age of { $day } the line is at { $line }. Very few healthy breastfed babies lose more.
finding-weight-loss-second-week = More than a tenth still lost in the second week
finding-weight-loss-second-week-reason = { $loss } of the birth weight lost at { $age } of age; more than { $limit } in the second week is a reason for referral.
finding-weight-loss-medical = Very large weight loss
finding-weight-loss-medical-reason = { $loss } of the birth weight lost at { $age } of age, more than { $limit }. Few babies lose so much.
finding-weight-loss-with-signs = Large weight loss with another sign
finding-weight-loss-with-signs-reason = { $loss } of the birth weight lost at { $age } of age, more than { $limit }, and another sign that the baby may be unwell or dry.
finding-weight-not-back-21 = Birth weight not back at three weeks
finding-weight-not-back-21-reason = { $short } below birth weight at { $age } of age. Most babies are back by three weeks.
finding-weight-loss-over-ten = Large weight loss
finding-weight-loss-over-ten-reason = { $loss } of the birth weight lost at { $age } of age, more than { $limit }. Look for dryness and illness, take a feeding history, watch a feed.
finding-weight-not-back-14 = Birth weight not back at two weeks
finding-weight-not-back-14-reason = { $short } below birth weight at { $age } of age. About one in seven to one in four is not back by then.
finding-weight-falling = Still losing weight after day five
finding-weight-falling-reason = { $fall } lost in { $hours }. The first loss usually stops by about day three to four.
finding-weight-below-second-centile = Below the second centile
finding-weight-below-second-centile-reason = { $z } at { $age } of age, against the WHO standard.
finding-weight-centile-fall = Falling across centiles
finding-weight-centile-fall-reason = { $fall } lower against the WHO standard than at birth, at { $age }; from { $limit } on it is to be assessed.
finding-weight-loss-born-early = Loss too large for a baby born early
finding-weight-loss-born-early-reason = { $loss } of the birth weight lost at { $age }; for a baby born at 34 to 36 weeks more than { $limit } is to be assessed.
finding-weight-asked = A weight to check
finding-weight-asked-reason = { $count } to be checked: it does not fit the others or the age. Nothing was dropped.
finding-weight-swapped = Weights before and after the feed swapped
finding-weight-swapped-reason = { $count } lighter after a feed than before it, by more than handling explains. Check the two and weigh again.
finding-weight-loss-watch = Weight loss to watch
finding-weight-loss-watch-reason = { $loss } of the birth weight lost at { $age } of age, more than { $limit }.
finding-weight-gain-slow = Slow weight gain
finding-weight-gain-slow-reason = { $gain } a day over { $hours }; at least { $least } a day is usual in these weeks.
finding-weight-test-low = Little milk in the test weighing
finding-weight-test-low-reason = { $intake }, at most { $end } with what the scale allows; { $least } or more is usual. One feed says little: look at the whole day.
finding-weight-back = Birth weight is back
finding-weight-back-reason = First seen at { $age } of age.
finding-weight-gaining = Gaining well
finding-weight-gaining-reason = { $gain } a day over { $hours }; at least { $least } a day is usual.
finding-weight-test-enough = Enough milk in the test weighing
finding-weight-test-enough-reason = { $intake }, at least { $end } with what the scale allows; { $least } or more is usual.

## Output.

finding-output-no-wet = No wet nappy
finding-output-no-wet-reason = None for { $hours } or more at { $age } of age. The baby may be dry.
finding-output-wet-gap = A long time since the last wet nappy
finding-output-wet-gap-reason = { $hours }; act from { $limit }.
finding-output-no-meconium-long = No stool since birth
finding-output-no-meconium-long-reason = None at { $age } of age. None by 48 hours may mean that the bowel is blocked.
finding-output-no-meconium = No first stool yet
finding-output-no-meconium-reason = None at { $age } of age. The first stool usually comes within 24 hours.
finding-output-few-wet = Few wet nappies
finding-output-few-wet-reason = { $count } in 24 hours; at least { $least } expected on day { $day } of life.
finding-output-no-dirty = No dirty nappy
finding-output-no-dirty-reason = None in 24 hours; at least { $least } expected on day { $day } of life. If there was none since birth, call today.
finding-output-few-dirty = Few dirty nappies
finding-output-few-dirty-reason = { $count } in 24 hours; at least { $least } expected on day { $day } of life. Half of all breastfed babies have four or more on day four.
finding-output-black-late = Stool still black
finding-output-black-late-reason = On day { $day } of life. By then it is usually yellow; black stool this late goes with little milk.
finding-output-urates = Pink or brick-red staining
finding-output-urates-reason = Seen at { $age } of age. After the first two days it may mean too little milk.
finding-output-colour-behind = Stool colour behind its day
finding-output-colour-behind-reason = On day { $day } of life it is usually further on.
finding-output-as-expected = Nappies as expected
finding-output-as-expected-reason = { $wet } wet and { $dirty } dirty in 24 hours on day { $day } of life, and the colour fits.

## Feeds.

finding-feeds-none = No feed in 24 hours
finding-feeds-none-reason = No feed at the breast and no milk given another way, at { $age } of age.
finding-feeds-none-first-day = No feed yet
finding-feeds-none-first-day-reason = No feed at the breast and no milk given another way, at { $age } of age. A first feed is usual by { $by }; local policy decides.
finding-feeds-few = Few feeds
finding-feeds-few-reason = { $feeds } in 24 hours; at least { $least } are usual.
finding-feeds-few-first-day = Few feeds in the first day
finding-feeds-few-first-day-reason = { $feeds } in 24 hours, most of them in the first day of life; at least { $least } are usual then, and about four on average. Local policy decides.
finding-feeds-sleepy = Needs waking for most feeds
finding-feeds-sleepy-reason = A baby that does not wake by itself may take too little.
finding-feeds-baby-hungry-after = Still hungry after the feed
finding-feeds-baby-hungry-after-reason = The baby was rooting or hungry at the end.
finding-feeds-baby-sleepy-after = Fell asleep early
finding-feeds-baby-sleepy-after-reason = The baby fell asleep early and was hard to wake.
finding-feeds-baby-unsettled-after = Unsettled after the feed
finding-feeds-baby-unsettled-after-reason = The baby cried or arched at the end. Fast flow, air or hunger are usual causes.
finding-feeds-supplement = Formula or donor milk given
finding-feeds-supplement-reason = { $given } in 24 hours. Ask why and how it was given; expressing keeps milk coming meanwhile.
finding-feeds-given-above-usual = More milk given another way than usual
finding-feeds-given-above-usual-reason = { $given } in 24 hours; eight usual feeds at this age come to { $usual } at most. It may leave little hunger for the breast.
finding-feeds-very-often = Very many feeds
finding-feeds-very-often-reason = { $feeds } in 24 hours, more than { $most }. With little weight gain or few nappies, milk may not be getting across.
finding-feeds-long = Very long feed
finding-feeds-long-reason = { $lasted }, longer than { $most }. With quick or flutter sucks most of the time, little milk may be getting across.
finding-feeds-short = Very short feed
finding-feeds-short-reason = { $lasted } in all, shorter than { $least }, and ended by the baby.
finding-feeds-often = Feeds often enough
finding-feeds-often-reason = { $feeds } in 24 hours; at least { $least } are usual.
finding-feeds-baby-content = Content after the feed
finding-feeds-baby-content-reason = The baby was relaxed at the end.

## Position and attachment.

finding-sign-not-close = Not close enough
finding-sign-not-close-reason = With a gap the baby has to reach and slips to the nipple. Usual remedy: bring the whole baby in.
finding-sign-head-not-free = Head not free to tip back
finding-sign-head-not-free-reason = A hand or arm behind the head stops the mouth from opening wide. Usual remedy: hold neck and shoulders.
finding-sign-not-in-line = Ear, shoulder and hip not in line
finding-sign-not-in-line-reason = A turned head makes swallowing hard. Usual remedy: turn the body to face the mother.
finding-sign-nose-not-to-nipple = Nose not level with the nipple
finding-sign-nose-not-to-nipple-reason = Starting lower or higher, the nipple does not reach the back of the palate. Usual remedy: slide the baby until the nose meets the nipple.
finding-sign-cannot-be-kept-up = Cannot be kept up
finding-sign-cannot-be-kept-up-reason = A hold that tires is given up early. Usual remedy: support back, arms and feet, or another hold.
finding-sign-mouth-not-wide = Mouth not wide
finding-sign-mouth-not-wide-reason = A narrow mouth takes only the nipple. Usual remedy: break the seal, wait for a wider mouth, attach again.
finding-sign-chin-not-in = Chin not into the breast
finding-sign-chin-not-in-reason = The baby is too far off below. Usual remedy: bottom in, chin first.
finding-sign-nose-not-clear = Nose not clear
finding-sign-nose-not-clear-reason = The angle is off. Usual remedy: bottom closer, head free to tip back.
finding-sign-cheeks-not-full = Cheeks drawn in
finding-sign-cheeks-not-full-reason = Dimpled cheeks mean a poor seal. Usual remedy: attach again.
finding-sign-areola-not-above = Not more areola above than below
finding-sign-areola-not-above-reason = The nipple lies in the middle of the mouth, not at the palate. Usual remedy: nose to nipple, chin planted lower.
finding-sign-lower-lip-not-out = Lower lip not turned out
finding-sign-lower-lip-not-out-reason = A lip that is drawn in rubs. Usual remedy: attach again.
finding-signs-position-good = Good position
finding-signs-position-good-reason = All signs of position were seen.
finding-signs-attachment-good = Good attachment
finding-signs-attachment-good-reason = All signs of attachment were seen.

## Rhythm.

finding-rhythm-no-first-flow = No milk flow seen
finding-rhythm-no-first-flow-reason = None in { $watched } at the breast; it is looked for within { $limit }.
finding-rhythm-only-flutter = Only flutter
finding-rhythm-only-flutter-reason = { $flutter } of { $sucking } sucking were flutter, and no milk flow was seen.
finding-rhythm-flow-short = Short milk flow
finding-rhythm-flow-short-reason = { $flow } in all, less than { $limit }.
finding-rhythm-no-swallow = No swallow noticed
finding-rhythm-no-swallow-reason = None in { $sucking } of sucking, at { $age } of age. From day 3 or 4 swallows are usually heard often.
finding-rhythm-flow-seen = Milk flow with swallows
finding-rhythm-flow-seen-reason = It began after { $first } and lasted { $flow }, with { $swallows } swallows counted in the visit.

## Pain.

finding-pain-severe = Severe pain
finding-pain-severe-reason = { $score } after the first seconds; from { $limit } it is severe.
finding-pain-severe-latching = Severe pain as the baby goes on
finding-pain-severe-latching-reason = { $score } in the first seconds; from { $limit } on it is severe. Times the baby went on so: { $count }. The baby came off before it could ease, or it came back with going on again.
finding-pain-through-feed = Pain through the feed
finding-pain-through-feed-reason = Up to { $score }, going on for { $seconds }. Pain that stays means adjust or get help.
finding-pain-at-end = Pain at the end of the feed
finding-pain-at-end-reason = { $score } when last told; act from { $limit }.
finding-pain-beyond-start = Pain beyond the first seconds
finding-pain-beyond-start-reason = { $score } more than about 20 seconds after going on; it counts from { $limit }.
finding-pain-after = Pain after the feed
finding-pain-after-reason = { $score } after the end; it counts from { $limit }. Pressure, damage, cold and tightened vessels are usual causes.
finding-pain-settled = Pain settled
finding-pain-settled-reason = From { $before } to { $after }.
finding-pain-none = No pain to speak of
finding-pain-none-reason = She was asked during the feed.

## Nipple and breast.

finding-nipple-damaged = Nipple damaged
finding-nipple-damaged-reason = Cracked, blistered or bleeding. The usual cause is how the baby is attached.
finding-nipple-misshapen = Nipple flattened or creased after the feed
finding-nipple-misshapen-reason = It was compressed: often shallow attachment.
finding-nipple-blanched = Nipple white after the feed
finding-nipple-blanched-reason = It was compressed, or its vessels tightened (vasospasm).
finding-breast-red = Red or hot area of the breast
finding-breast-red-reason = It may be inflamed. No better within a day of good feeding: medical review.
finding-breast-lump = Lump in the breast
finding-breast-lump-reason = It may be a blocked area. If it stays: medical review.
finding-breast-engorged = Breast full and tight
finding-breast-engorged-reason = A tight areola is hard to take. Usual remedy: soften it by expressing a little first.
finding-nipple-sore = Nipple sore or red
finding-nipple-sore-reason = The usual cause is how the baby is attached.
finding-nipple-flat = Nipple flat or turned in
finding-nipple-flat-reason = Some babies need more help to attach.
finding-breast-not-softer = Breast no softer after the feed
finding-breast-not-softer-reason = Little milk may have moved.
finding-breast-not-filling = Breasts not filling yet
finding-breast-not-filling-reason = Both soft before the feed at { $age } of age. From 72 hours on most are filling; milk may be late.
finding-nipple-rounded = Nipple rounded after the feed
finding-nipple-rounded-reason = It kept its shape and colour.
finding-breast-softer = Breast softer after the feed
finding-breast-softer-reason = Milk has moved.

## What is known beforehand.

finding-risk-born-early = Born early
finding-risk-born-early-reason = Born at { $weeks } whole weeks. Such babies tire early, wake less and feed less well than they seem to.
finding-risk-twins = Twins or more
finding-risk-twins-reason = { $babies } babies. Each needs a watched feed of its own, and milk for all of them.
finding-risk-low-sugar = At risk of low blood sugar
finding-risk-low-sugar-reason = Small, born early, or the mother has diabetes; { $age } of age. Follow the ward's own policy.
finding-risk-jaundice = At risk of jaundice
finding-risk-jaundice-reason = Born before 38 weeks, or jaundice was treated in the family; { $age } of age. Look at the skin in good light within 48 hours.
finding-risk-milk-later = Milk may come later
finding-risk-milk-later-reason = { $notes } noted: blood loss, breast surgery, separation or diabetes. Early and frequent feeding or expressing helps.
finding-risk-tongue = Tongue looks restricted, and the feed shows signs of it
finding-risk-tongue-reason = Clicking, a compressed nipple or pain was found as well. Someone trained in it should look.

## Sources, as they stand below a finding. Titles of publications stay as they are.

source-abm-3 = Academy of Breastfeeding Medicine, Clinical Protocol 3, 2017
source-abm-1 = Academy of Breastfeeding Medicine, Clinical Protocol 1, 2021
source-abm-10 = Academy of Breastfeeding Medicine, Clinical Protocol 10, 2016
source-abm-36 = Academy of Breastfeeding Medicine, Clinical Protocol 36, 2022
source-gardner-2015 = Gardner et al. 2015, BMC Pregnancy and Childbirth 15:156
source-hartmann-2011 = Hartmann et al. 2011, FASEB Journal 25 (supplement), 589.1
source-kent-2015 = Kent et al. 2015, Int J Environ Res Public Health 12:12247
source-kent-2006 = Kent et al. 2006, Pediatrics 117:e387
source-nhs-checklist = NHS checklists for parents: is my baby getting enough milk
source-macdonald-2003 = Macdonald et al. 2003, Arch Dis Child Fetal Neonatal Ed 88:F472; Davanzo et al. 2013, J Hum Lact 29:374
source-nice-cg98 = NICE CG98, Jaundice in newborn babies, 2010
source-nice-cg192 = NICE CG192, Antenatal and postnatal mental health, 2014
source-nice-ng51 = NICE NG51, Sepsis, 2016
source-nice-ng75 = NICE NG75, Faltering growth, 2017
source-nice-ng143 = NICE NG143, Fever in under 5s, 2019
source-nice-ng194 = NICE NG194, Postnatal care, 2021
source-paul-2016 = Paul et al. 2016, Pediatrics 138:e20162625
source-van-dommelen-2007 = van Dommelen et al. 2007, Arch Dis Child 92:490
source-who-counselling = WHO and UNICEF, Breastfeeding counselling: a training course, 1993
source-who-imci = WHO, Integrated Management of Childhood Illness, 2014
source-who-newborn = WHO, Managing newborn problems, 2003
source-who-thermal = WHO, Thermal protection of the newborn, 1997
source-who-2006 = WHO Child Growth Standards, 2006
source-flaherman-2015 = Flaherman et al. 2015, Pediatrics 135:e16
source-savenije-2006 = Savenije and Brand 2006, Arch Dis Child Fetal Neonatal Ed 91:F330
source-yicss-2008 = Young Infants Clinical Signs Study Group 2008, Lancet 371:135
source-yamauchi-1990 = Yamauchi and Yamanouchi 1990, Pediatrics 86:171
source-uk-checklist = UNICEF UK Baby Friendly Initiative, breastfeeding assessment tool
source-uk-urgent = United Kingdom, urgent signs in babies under three months, advice to parents
source-common-practice = Common practice
source-newer-list = A list of a newer version

## What was missing, in a list after "could not be judged".

missing-birth = The birth time, before now
missing-birth-weight = The birth weight
missing-weight = A weight after birth
missing-unclothed-weight = A weight without clothes
missing-recent-weight = A recent weight
missing-checked-weight = A checked weight
missing-second-weight = A second weight, 24 hours apart
missing-sex = The baby's sex
missing-gestation = The gestation at birth
missing-supplement = How much formula or donor milk was given
missing-expressed = How much expressed milk was given
missing-pain-after = Pain asked after each feed
missing-way-of-birth = The way of birth
missing-early-reference = A growth reference for babies born early
missing-whole-day = A whole day since birth, over which to count
missing-meconium = Whether a stool was ever passed
missing-dark-urine = Whether the urine is dark
missing-feeds = Feeds in 24 hours
missing-wet = Wet nappies in 24 hours
missing-wet-gap = Hours since the last wet nappy
missing-dirty = Dirty nappies in 24 hours
missing-stool-colour = The stool's colour
missing-urates = Whether pink or red staining was seen
missing-sleepy = Whether the baby needs waking
missing-jaundice = Whether the skin looks yellow
missing-temperature = The temperature
missing-baby-danger = The baby's danger signs
missing-mother-danger = The mother's danger signs
missing-sign = A look for this sign
missing-sign-clear = A clear view of this sign
missing-feed = A watched feed
missing-watched-time = More watched time at the breast
missing-clean-rhythm = A feed watched without long gaps
missing-feed-end = The end of the feed
missing-pain = Pain told after the first seconds
missing-nipple-before = Both nipples before the feed
missing-breast-before = Both breasts before the feed
missing-nipple-after = The nipple after each feed
missing-breast-after = The breast after the feed
missing-baby-state = The baby's state after the feed

## Levels, gravest first.

level-medical-review-now = Medical review now
level-act-today = Act today
level-keep-watching = Keep watching
level-going-well = Going well

## Whom to call, where the ward's policy names nobody.

call-baby-doctor = Doctor for the baby
call-mother-doctor = Doctor for the mother
call-midwife-in-charge = Midwife in charge
call-feeding-team = Feeding team
call-nobody = Nobody further
# { $what } whom to call, or that they are to be called; { $number } the ward's own words, as "bleep 101".
call-with-number = { $what } ({ $number })

## Beside every list of findings.

