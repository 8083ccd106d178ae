### The printed catalogue of the rules, for review by a ward's clinical lead.
### One line each; may be long.

## Labels. $date as "2026-11-25".

rules-title = Feedside: the rules of the findings
rules-count = { $rules } rules in { $families } families, version { $version } of { $date }.
rules-policy = Thresholds as in ward policy { $name }, version { $version }, { $date }, by { $author }.
rules-caution = For review by the ward's clinical lead. The rules describe and never diagnose; local policy and the clinician decide. No rule holds on missing data, and none at the level “Medical review now” can be switched off.
rules-level = Level
rules-when = Holds when
rules-fixed = No threshold that a ward may set
rules-threshold = Threshold
rules-threshold-value = { $name }: { $value }; published bounds { $low } to { $high }
rules-source = Source
rules-tried = Usually tried
rules-agreed = Usually agreed
rules-call = Call
rules-changed = Last change
rules-changed-value = { $version }, { $date }
rules-thresholds = Thresholds that a ward may set

## Families of rules, as headings.

family-baby = Baby
family-mother = Mother
family-weight = Weight
family-output = Nappies
family-feeds = Feeds
family-signs = Position and attachment
family-rhythm = Rhythm
family-pain = Pain
family-nipple = Nipple and breast
family-risk = Known beforehand

## Thresholds that a ward may set, as they stand before a value.

limit-weight-loss-watch-percent = Loss above which it is watched
limit-weight-loss-act-percent = Loss above which it is assessed today
limit-weight-loss-medical-percent = Loss above which a doctor is needed now
limit-weight-fresh-hours = How long a weight tells the present, first 14 days
limit-gain-least-g-per-day = Least gain a day
limit-feeds-least = Least feeds in 24 hours
limit-wet-gap-act-hours = Time without a wet nappy that is acted on
limit-wet-gap-medical-hours = Time without a wet nappy that needs a doctor now
limit-first-flow-within-s = Time at the breast within which flow is looked for
limit-flow-least-s = Least milk flow
limit-pain-from-score = Score from which pain counts
limit-pain-end-score = Score from which pain at the end is acted on
limit-temperature-high-celsius = Temperature above which a doctor is needed now
limit-temperature-low-celsius = Temperature below which a doctor is needed now

## When each rule holds, after "Holds when".

rule-danger = Recorded among the danger signs that were asked and looked for.
rule-sign-not-seen = The sign was looked for and not seen when last told of a feed.
rule-baby-jaundice-first-day = Yellow skin is seen before 24 hours of age, or was recorded as having been seen then.
rule-baby-jaundice-extensive = Yellow to hands and feet, or very deep, at any age.
rule-baby-sleepy-yellow-few-feeds = From 24 hours of age: needs waking, yellow skin and fewer feeds than the ward's least, all three.
rule-baby-temperature-fever = 38.0 degrees or more.
rule-baby-temperature-high = Above the ward's upper temperature and below 38.0 degrees.
rule-baby-temperature-low = Below the ward's lower temperature.
rule-baby-stool-pale = A pale stool was told or seen.
rule-baby-urine-dark-yellow = Dark urine was told, and yellow skin.
rule-baby-urine-dark = Dark urine was told, and no yellow skin.
rule-baby-stool-bloody = A stool with blood was told or seen.
rule-baby-jaundice = Yellow face or body from 24 hours of age, up to 14 days (21 if born before 37 weeks).
rule-baby-jaundice-prolonged = Yellow face or body after more than 14 days (21 if born before 37 weeks).
rule-baby-temperature-cool = Below 36.5 degrees and not below the ward's lower temperature.
rule-weight-below-line = More lost than the -2.5 SDS line of the day of the weighing, days 2 to 11.
rule-weight-loss-second-week = More than 10.0 % lost in a weight of days 7 to 13.
rule-weight-loss-medical = More lost than the ward's limit for a medical review.
rule-weight-loss-with-signs = More lost than the ward's limit for action, and a danger sign, sleepiness, yellow skin, a temperature out of range, few wet nappies, or pink or red staining from 48 hours on.
rule-weight-not-back-21 = Below birth weight in a weight of 21 days or later.
rule-weight-loss-over-ten = More lost than the ward's limit for action.
rule-weight-not-back-14 = Below birth weight in a weight of days 14 to 20.
rule-weight-falling = From 120 hours of age: lighter than at an earlier weighing of 96 hours or later, by more than scale and handling explain.
rule-weight-below-second-centile = From 14 days on, born at term: below -2 standard deviations of the WHO standard.
rule-weight-centile-fall = From 28 days on, born at term: fallen since birth by one centile space or more (born below the 9th centile), two (9th to 91st) or three (above the 91st); a space is two thirds of a standard deviation.
rule-weight-loss-born-early = Born at 34 to 36 weeks, in the first 14 days: more than 3 % lost for each day begun, or more than 7 %.
rule-weight-asked = A weight is beyond what is plausible, about ten times off, as if in pounds, far from the one before, before birth, or later than now.
rule-weight-swapped = More than 30 g lighter after a feed than before it.
rule-weight-loss-watch = More lost than the ward's limit for watching, and no more than its limit for action.
rule-weight-gain-slow = From 120 hours to 91 days: gains less a day than the ward's least, since a weighing of 96 hours or later.
rule-weight-test-low = The upper end of a test weighing of the last 24 hours lies below the least usual feed of the age (30 ml after the tables, born at term).
rule-weight-back = Birth weight was reached again after the first day, and the last weight is not below it.
rule-weight-gaining = From 120 hours to 91 days: gains at least the ward's least a day.
rule-weight-test-enough = The lower end of a test weighing of the last 24 hours is at least the least usual feed of the age.
rule-output-no-wet = From 24 hours of age: no wet nappy in 24 hours, or, from 48 hours of age, none for as long as the ward's limit; none seen in the visit.
rule-output-no-meconium-long = From 48 hours of age: no stool since birth, as told; none seen in the visit.
rule-output-no-meconium = From 24 to 48 hours of age: no stool since birth, as told, or none counted in 24 hours at 24 hours of age; none seen in the visit.
rule-output-wet-gap = From 96 hours of age: no wet nappy for as long as the ward's limit for action, and less than its limit for a doctor.
rule-output-few-wet = Some wet nappies in 24 hours, fewer than the table's least for the day.
rule-output-no-dirty = From 24 hours of age: no dirty nappy in 24 hours.
rule-output-few-dirty = Some dirty nappies in 24 hours, fewer than the table's least for the day.
rule-output-black-late = The latest stool is black on day 5 or later.
rule-output-urates = Pink or red staining from 48 hours of age on.
rule-output-colour-behind = The latest stool is black or green on a day on which the table expects a later colour.
rule-output-as-expected = Wet and dirty nappies and the colour as the table expects, no staining out of time, and no long gap.
rule-feeds-none = From 24 hours of age: no feed in 24 hours, and no milk given another way.
rule-feeds-none-first-day = From 6 to 24 hours of age: no feed, and no milk given another way.
rule-feeds-few = From 36 hours of age: fewer feeds in 24 hours than the ward's least.
rule-feeds-few-first-day = From 24 to 36 hours of age, while most of the last 24 hours lay in the first day: fewer than 3 feeds in 24 hours.
rule-feeds-sleepy = Needs waking for most feeds.
rule-feeds-baby-hungry-after = Still hungry after the last feed.
rule-feeds-baby-sleepy-after = Fell asleep early in the last feed.
rule-feeds-baby-unsettled-after = Crying or arching after the last feed.
rule-feeds-supplement = Any formula or donor milk in the last 24 hours.
rule-feeds-given-above-usual = Up to 96 hours of age: more milk given another way in 24 hours than eight feeds at the upper end of the usual.
rule-feeds-very-often = From 24 hours of age: more than 18 feeds in 24 hours.
rule-feeds-long = A watched feed lasted longer than 40 minutes.
rule-feeds-short = The visit's feeds together lasted less than 5 minutes, and the baby ended the last.
rule-feeds-often = From 24 hours of age: at least the ward's least, and at most 18 feeds in 24 hours.
rule-feeds-baby-content = Content after the last feed.
rule-signs-position-good = All signs of position were seen in each feed.
rule-signs-attachment-good = All signs of attachment were seen in each feed.
rule-rhythm-no-first-flow = No milk flow in as much watched time at the breast as the ward's limit.
rule-rhythm-only-flutter = In at least 60 seconds of sucking no milk flow, and 90 % or more flutter.
rule-rhythm-flow-short = Milk flow was seen, in all shorter than the ward's least.
rule-rhythm-no-swallow = From 72 hours of age: no swallow in at least 120 seconds of sucking.
rule-rhythm-flow-seen = Milk flow of at least the ward's least, with swallows.
rule-pain-severe = 7 or more, later than 20 seconds after going on.
rule-pain-severe-latching = 7 or more in the first 20 seconds after going on, and the baby came off within them with no lower score told, or it was so again in the same feed.
rule-pain-through-feed = The ward's score or more each time it was told after the first 20 seconds, over at least 2 minutes.
rule-pain-at-end = The ward's score for the end or more when last told in an ended feed.
rule-pain-beyond-start = The ward's score or more later than 20 seconds after going on, not through the feed.
rule-pain-after = The ward's score or more, told after the end of a feed.
rule-pain-settled = In the last feed first the ward's score or more, at last below it, and not again afterwards.
rule-pain-none = In the last feed and after it always below the ward's score, told after the first 20 seconds.
rule-nipple-damaged = Cracked or bleeding before a feed, or damaged after one.
rule-nipple-misshapen = Flattened or creased after a feed.
rule-nipple-blanched = White tip after a feed.
rule-breast-red = A red or hot area before a feed.
rule-breast-lump = A lump before a feed.
rule-breast-engorged = Full, tight and hard before a feed.
rule-nipple-sore = Sore or red before a feed.
rule-nipple-flat = Flat or turned in before a feed.
rule-breast-not-softer = No softer after the last feed.
rule-breast-not-filling = Both breasts soft before a feed from 72 hours to 7 days of age.
rule-nipple-rounded = Rounded after every feed of the visit.
rule-breast-softer = Softer after the last feed.
rule-risk-born-early = Born before 37 weeks, in the first 28 days.
rule-risk-twins = Two babies or more born together, in the first 28 days.
rule-risk-low-sugar = Born before 37 weeks, or noted as preterm, small, or the mother's diabetes; in the first 48 hours.
rule-risk-jaundice = Born before 38 weeks, or noted as such or as treated jaundice; in the first 48 hours.
rule-risk-milk-later = Blood loss, breast surgery, separation or diabetes noted, in the first 14 days.
rule-risk-tongue = Restricted tongue movement noted, and clicking, a nipple that is not rounded after a feed, or pain of the ward's score or more.
