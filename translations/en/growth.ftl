### Weight and output against age: labels, cautions and questions.

## Labels of figures; the value stands beside or below.

growth-age = Age
growth-birth-weight = Birth weight
growth-last-weight = Last weight
growth-change = Change from birth weight
growth-gain = Gain per day
growth-gain-range = { $value } a day ({ $low } to { $high })
growth-test-weighing = Intake by test weighing
growth-test-weighing-range = { $value } ({ $low } to { $high })
growth-below-resolution = Less than the scale can tell
growth-line = -2.5 SDS line on day { $day }: { $line }
growth-median = Published median at { $hours }: { $loss }
growth-median-vaginal = Born vaginally, exclusively breastfed
growth-median-caesarean = Born by caesarean, exclusively breastfed
growth-back = Birth weight back at { $age } of age
growth-feeds-least = At least { $count } feeds in 24 hours
growth-usual-feed = Usual for one feed at this age: { $low } to { $high }. Reported averages, not a prescription.

## $z "-0.59".

growth-z = WHO z { $z }

## A centile: a number as "27.8", or outside what is shown as a number.

centile-who = WHO centile { $value }
centile-below = Below the 0.4th WHO centile
centile-above = Above the 99.6th WHO centile

## Expected nappies. $wet and $dirty are counts, $from and $to days of life.

expected-days = Days { $from } to { $to }
expected-wet = At least { $count } wet
expected-wet-heavy = At least { $count } wet and heavy
expected-dirty = At least { $count } dirty
expected-urates = Pink or red staining may be seen

## Cautions, beside the figures they are about.

caution-uk-early-days = UK charts plot the first two weeks on a birth standard; this is the WHO standard.
caution-preterm = Born before 37 weeks: the WHO standard is for babies born at term.
caution-clothed = The last weight was taken in clothes: the true one is lower.
caution-after-feed = The last weight was taken just after a feed.
caution-asked = A weight is to be checked.

## Why a weight is asked about; the weight stands beside it.

question-implausible = Far outside what is seen at this age. Is it right?
question-factor-of-ten = Ten times off. A digit too many or too few?
question-pounds = Pounds instead of kilograms?
question-swapped = Lighter after the feed than before. Swapped?
question-before-birth = Before birth. Is the time right?
question-after-now = Later than now. Is the time right?
